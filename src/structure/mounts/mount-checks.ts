import type { Pounds, PoundsPerSquareFoot } from '../../values/index.js'
import { deckMountChecks } from './deck-mount.js'
import { lagMountChecks } from './lag-mount.js'
import type { MountCheck, MountStrength } from './mount-strength.js'
import { seamClampChecks } from './seam-clamp.js'
import { structuralScrewChecks } from './structural-screw.js'
import { tileHookChecks } from './tile-hook.js'

/**
 * Checks of a mount of any kind under one load combination.
 *
 * @param normalLb At right angles to the roof, lb; positive pulls the mount out, negative presses it down.
 * @param alongLb Along the slope, lb, 0 or more.
 * @param loadDuration CD of the combination.
 * @param roofUpliftPsf Suction of wind on the roof itself in this combination, psf, 0 or more; what holds a seam clamp or a
 *   deck mount holds the roof too.
 */
export function mountChecks(
  mount: MountStrength,
  normalLb: Pounds,
  alongLb: Pounds,
  loadDuration: number,
  roofUpliftPsf: PoundsPerSquareFoot,
): MountCheck[] {
  const load = { normalLb, alongLb, loadDuration, roofUpliftPsf }
  switch (mount.kind) {
    case 'standing_seam_clamp':
      return seamClampChecks(mount, load)
    case 'tile_hook':
      return tileHookChecks(mount, load)
    case 'deck':
      return deckMountChecks(mount, load)
    case 'structural_screw':
      return structuralScrewChecks(mount, load)
    case undefined:
    case 'rafter_screw':
      break
  }
  return lagMountChecks(mount, load)
}
