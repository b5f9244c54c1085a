import type { Worksheet } from '../../worksheet/index.js'
import type { FramingSpec } from '../rafters/index.js'
import type { RailKit } from '../planes/index.js'

type Covering = NonNullable<FramingSpec['covering']>

interface CoveringRule {
  readonly severity: 'error' | 'warning'
  /** What goes wrong with a lag screw through it. */
  readonly why: string
  readonly fix: string
}

const NAME_IT = 'When the sheet of the mount shows this covering, name it under coverings of the mount.'

/** Coverings through which a mount with lag screws is wrong unless it is made for them. @source common practice, no source */
const RULES: Readonly<Partial<Record<Covering, CoveringRule>>> = {
  standing_seam: {
    severity: 'error',
    why: 'a lag screw through a standing seam roof pins panels that have to move and leaks',
    fix: 'Use seam clamps of the maker for this very profile and gauge, with their test sheet, and have a structural engineer check clamps, clips and deck screws; this method covers lag screws only.',
  },
  metal: {
    severity: 'error',
    why: 'a mount for shingles does not seal on a metal roof screwed through its face',
    fix: `Use a bracket whose sheet shows this metal profile with its seal, screwed into the rafter; on standing seams use seam clamps and state covering: standing_seam. ${NAME_IT}`,
  },
  membrane: {
    severity: 'error',
    why: 'a lag screw through a membrane roof leaks, and a flashing for shingles cannot be tied into it',
    fix: `Have the roofer set and flash posts into the membrane, fixed to the framing, and use that mount. ${NAME_IT}`,
  },
  tile: {
    severity: 'warning',
    why: 'tile must not carry the mount; its base has to rest on the sheathing or rafter',
    fix: `Use a tile hook or a mount that replaces the tile, and state stands_off and its tested load along the slope. ${NAME_IT}`,
  },
  slate: {
    severity: 'warning',
    why: 'slate breaks under a mount and around a screw; its base has to rest on the sheathing or rafter',
    fix: `Have a slater set a slate hook with its flashing, and state stands_off and its tested load along the slope. ${NAME_IT}`,
  },
  wood_shake: {
    severity: 'warning',
    why: 'wood shake must not carry the mount; its base has to rest on the sheathing or rafter',
    fix: `Use a mount made for this covering, and state stands_off and its tested load along the slope. ${NAME_IT}`,
  },
}

/** Finding about a mount on a covering that it is not made for. */
export function reportCovering(
  plane: string,
  covering: Covering | undefined,
  { mount }: RailKit,
  worksheet: Worksheet,
): void {
  const where = `structure.framing.${plane}.covering`
  if (covering === undefined) {
    worksheet.find({
      severity: 'warning',
      id: 'structure.covering-not-stated',
      message: `plane '${plane}': the roof covering is not stated, so whether mount '${mount.id}' suits it is not checked`,
      where,
      fix: 'State the covering.',
    })
    return
  }
  const rule = RULES[covering]
  const isMadeForIt = covering !== 'standing_seam' && mount.product.coverings?.includes(covering) === true
  const isForOthers = mount.product.coverings !== undefined && !isMadeForIt
  if (rule === undefined ? !isForOthers : isMadeForIt) return
  const named = covering.replaceAll('_', ' ')
  worksheet.find({
    severity: rule?.severity ?? 'warning',
    id: 'structure.covering',
    message: `plane '${plane}' with ${named}: ${rule?.why ?? `the sheet of mount '${mount.id}' shows it for other coverings`}`,
    where,
    source: { document: 'Trade practice for mounts by covering', standing: 'common practice, no source' },
    fix: rule?.fix ?? `Use a mount for this covering. ${NAME_IT}`,
  })
}
