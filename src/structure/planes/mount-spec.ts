import type { RoofProject } from '../../project/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import { own, type Inches } from '../../values/index.js'
import { need } from '../model/index.js'
import type { MountStrength } from '../mounts/index.js'
import type { FramingSpec } from '../rafters/index.js'
import { deckMount } from './deck-spec.js'
import type { Chosen, MountProduct } from './equipment-spec.js'
import { hookMount } from './hook-spec.js'
import { screwMount } from './screw-spec.js'
import { seamMount } from './seam-spec.js'

/** Lines up the slope on which mounts stand: rafters, seams, or lines on the sheathing. */
export interface MountLines {
  readonly spacingIn: Inches
  readonly firstOffsetIn: Inches
}

/** The mount of the project on one plane: what it holds there, and where it may stand. */
export interface PlaneMount {
  readonly strength: MountStrength
  readonly lines: MountLines
}

/**
 * The mount on one plane.
 *
 * @throws StageError when a safety input of its kind is missing or does not fit the roof.
 */
export function mountOnPlane(
  project: RoofProject,
  mount: Chosen<MountProduct>,
  framing: FramingSpec,
  plane: string,
  worksheet: Worksheet,
): PlaneMount {
  const at = `structure.framing.${plane}`
  const stated = own(project.structure?.framing, plane) ?? {}
  const rafters = { spacingIn: framing.spacingIn, firstOffsetIn: framing.firstOffsetIn }
  switch (mount.product.kind) {
    case 'standing_seam_clamp': {
      const strength = seamMount(mount, stated, at)
      const first = need(
        stated.standing_seam?.first_seam_in,
        `${at}.standing_seam.first_seam_in`,
        'the place of the first seam',
        'Measure it from the left end of the eave.',
      )
      return { strength, lines: { spacingIn: strength.panelWidthIn, firstOffsetIn: first } }
    }
    case 'tile_hook':
      return { strength: hookMount(mount, framing, stated, at), lines: rafters }
    case 'deck': {
      const strength = deckMount(mount, framing, stated, at, worksheet)
      return { strength, lines: { ...rafters, firstOffsetIn: framing.firstOffsetIn + strength.fromRafterIn } }
    }
    case undefined:
    case 'rafter_screw':
      break
  }
  return { strength: screwMount(mount, framing), lines: rafters }
}
