import type { Worksheet } from '../../worksheet/index.js'
import type { FramingSpec } from '../rafters/index.js'
import type { RailKit } from '../planes/index.js'

type Covering = NonNullable<FramingSpec['covering']>
type Kind = NonNullable<RailKit['mount']['product']['kind']>

interface CoveringRule {
  /** What goes wrong with a screw for shingles through it. */
  readonly why: string
  readonly fix: string
}

const NAME_IT = 'When the sheet of the mount shows this covering, name it under coverings of the mount.'

/** Coverings through which a mount with screws is wrong unless it is made for them. @source common practice, no source */
const RULES: Readonly<Partial<Record<Covering, CoveringRule>>> = {
  standing_seam: {
    why: 'a lag screw through a standing seam roof pins panels that have to move and leaks',
    fix: 'Use seam clamps of the maker for this very profile and gauge, with their test sheet (kind: standing_seam_clamp).',
  },
  metal: {
    why: 'a mount for shingles does not seal on a metal roof screwed through its face',
    fix: `Use a bracket whose sheet shows this metal profile with its seal, screwed into the rafter; on standing seams use seam clamps and state covering: standing_seam. ${NAME_IT}`,
  },
  membrane: {
    why: 'a lag screw through a membrane roof leaks, and a flashing for shingles cannot be tied into it',
    fix: `Have the roofer set and flash posts into the membrane, fixed to the framing, and use that mount. ${NAME_IT}`,
  },
  tile: {
    why: 'tile must not carry the mount; its base has to rest on the sheathing or rafter',
    fix: `Use a tile hook (kind: tile_hook), or a mount that replaces the tile with stands_off and its tested load along the slope. ${NAME_IT}`,
  },
  slate: {
    why: 'slate breaks under a mount and around a screw; its base has to rest on the sheathing or rafter',
    fix: `Have a slater set a slate hook with its flashing, and state stands_off and its tested load along the slope. ${NAME_IT}`,
  },
  wood_shake: {
    why: 'wood shake must not carry the mount; its base has to rest on the sheathing or rafter',
    fix: `Use a mount made for this covering, and state stands_off and its tested load along the slope. ${NAME_IT}`,
  },
}

/** The one covering that a kind of mount is for, whatever its sheet says. */
const ONLY: Readonly<Partial<Record<Kind, readonly Covering[]>>> = {
  standing_seam_clamp: ['standing_seam'],
  tile_hook: ['tile', 'slate'],
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
  const why = wrongFor(covering, mount)
  if (why === undefined) return
  worksheet.find({
    severity: 'error',
    id: 'structure.covering',
    message: `plane '${plane}' with ${covering.replaceAll('_', ' ')}: ${why}`,
    where,
    source: { document: 'Trade practice for mounts by covering', standing: 'common practice, no source' },
    fix: RULES[covering]?.fix ?? `Use a mount for this covering. ${NAME_IT}`,
  })
}

/** What is wrong with a mount on a covering, or undefined when nothing is. */
function wrongFor(covering: Covering, { id, product }: RailKit['mount']): string | undefined {
  const kind = product.kind ?? 'rafter_screw'
  const only = ONLY[kind]
  if (only !== undefined && !only.includes(covering)) {
    return `mount '${id}' is a ${kind.replaceAll('_', ' ')}, which holds on ${only.join(' and ').replaceAll('_', ' ')} only`
  }
  const named = product.coverings?.includes(covering)
  if (only !== undefined) return named === false ? `the sheet of mount '${id}' shows it for other coverings` : undefined
  if (covering === 'standing_seam') return RULES.standing_seam?.why
  if (named === true) return undefined
  return (
    RULES[covering]?.why ?? (named === false ? `the sheet of mount '${id}' shows it for other coverings` : undefined)
  )
}
