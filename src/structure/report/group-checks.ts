import { LOAD_DURATION } from '../../tables/nds/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import { inchesOf, type Inches, type Pounds, type PoundsPerSquareFoot } from '../../values/index.js'
import type { PartCheck } from '../model/index.js'
import {
  clipCapacityLb,
  clipReactionLb,
  NAIL_REACH_FT,
  suctionOnNailsLb,
  type DeckMount,
  type SeamClampMount,
} from '../mounts/index.js'
import type { RailKit, SolvedPlane } from '../planes/index.js'
import { roofSuctionPsf } from '../wind/index.js'
import { mountRows } from './mount-rows.js'
import { basisOf } from './part-checks.js'

/** A mount where it stands, with the load that it gives to what it shares with its neighbours. */
interface Placed {
  readonly id: string
  readonly xIn: number
  readonly yIn: number
  readonly upliftLb: Pounds
  readonly alongLb: Pounds
  /** ASD suction of wind on the roof there. */
  readonly roofUpliftPsf: PoundsPerSquareFoot
}

/** Checks of what the mounts of a plane hold together: clips and fixed points of panels, nails of the sheathing. */
export function groupChecks(plane: SolvedPlane, kit: RailKit, worksheet: Worksheet): PartCheck[] {
  const { mount } = plane
  if (mount.kind === 'standing_seam_clamp') return seamChecks(placedMounts(plane), mount, kit, worksheet)
  if (mount.kind === 'deck') return deckChecks(placedMounts(plane), plane, mount, kit, worksheet)
  return []
}

function placedMounts(plane: SolvedPlane): Placed[] {
  return plane.rails.flatMap((rail) => {
    const factor = Math.max(
      0,
      ...rail.loaded.combinations.filter((c) => c.direction === 'uplift').map((c) => c.windFactor),
    )
    return mountRows(plane, rail).map((row) => ({
      id: row.id,
      xIn: row.x_in,
      yIn: row.y_in,
      upliftLb: row.uplift_lb,
      alongLb: row.along_lb,
      roofUpliftPsf: factor * roofSuctionPsf(rail.loaded.wind, row.zone),
    }))
  })
}

/** Places that differ by less are one line, in. */
const SAME_LINE_IN = 0.01

function seamChecks(mounts: readonly Placed[], clamp: SeamClampMount, kit: RailKit, worksheet: Worksheet): PartCheck[] {
  const parts: PartCheck[] = []
  const add = (name: string, where: string, demand: Pounds, capacity: Pounds): void => {
    parts.push({ name, demand, capacity, unit: 'lb', where, ...basisOf(name, kit, '') })
  }
  for (const first of mounts) {
    const seam = mounts.filter((m) => Math.abs(m.xIn - first.xIn) < SAME_LINE_IN)
    if (seam[0] !== first) continue
    const along = seam.reduce((sum, m) => sum + m.alongLb, 0)
    add('panel fixed point', `seam at ${first.xIn.toFixed(1)} in`, along, clamp.fixedPointLb)
    for (const one of seam) {
      const above = seam.filter((m) => m.yIn > one.yIn).toSorted((a, b) => a.yIn - b.yIn)[0]
      if (above === undefined) continue
      const apart = above.yIn - one.yIn
      if (apart < clamp.clipSpacingIn - SAME_LINE_IN) reportClose(one, above, apart, clamp, worksheet)
      const share = neighbourShare(clamp, apart)
      for (const [own, next] of [
        [one, above],
        [above, one],
      ] as const) {
        const shared = clipReactionLb(clamp, own.upliftLb, own.roofUpliftPsf) + share * next.upliftLb
        add('seam clip', `${own.id}, with ${next.id}`, shared, clipCapacityLb(clamp, LOAD_DURATION.wind))
      }
    }
  }
  return parts
}

/** Share of its pull that the next clamp on the seam gives to the same clip, which lies between them. */
function neighbourShare({ clipSpacingIn, clampFromClipIn }: SeamClampMount, apartIn: Inches): number {
  const fromClip = Math.abs(apartIn - clampFromClipIn)
  return Math.max(0, (clipSpacingIn - fromClip) / clipSpacingIn)
}

function reportClose(one: Placed, above: Placed, apartIn: Inches, clamp: SeamClampMount, worksheet: Worksheet): void {
  worksheet.find({
    severity: 'error',
    id: 'structure.seam-clamps-close',
    message: `clamps ${one.id} and ${above.id} stand ${apartIn.toFixed(1)} in apart on one seam, closer than its clips (${clamp.clipSpacingIn} in), so the seam between two clips carries both`,
    where: 'structure.mount_layout',
    source: { document: 'Safe rule for seams: clamps no closer than clips', standing: 'common practice, no source' },
    fix: 'Stagger the rails, turn the modules, or put the rails farther apart.',
  })
}

function deckChecks(
  mounts: readonly Placed[],
  plane: SolvedPlane,
  mount: DeckMount,
  kit: RailKit,
  worksheet: Worksheet,
): PartCheck[] {
  const parts: PartCheck[] = []
  const add = (name: string, where: string, demand: Pounds, capacity: Pounds): void => {
    parts.push({ name, demand, capacity, unit: 'lb', where, ...basisOf(name, kit, plane.model.geometry.id) })
  }
  const reachIn = 2 * inchesOf(NAIL_REACH_FT)
  const spacing = mount.rafterSpacingIn
  for (const one of mounts) {
    const near = mounts.filter((m) => Math.abs(m.yIn - one.yIn) < reachIn)
    // The farther rafter gets less of every mount on this line, and is the nearer one of the next line.
    const rafterIn = one.xIn - mount.fromRafterIn
    const pull = near.reduce((sum, m) => sum + m.upliftLb * Math.max(0, 1 - Math.abs(m.xIn - rafterIn) / spacing), 0)
    const demand = pull + suctionOnNailsLb(mount, Math.max(...near.map((m) => m.roofUpliftPsf)))
    add('sheathing nails', `${one.id}, rafter at ${rafterIn.toFixed(1)} in`, demand, mount.nailsLb * LOAD_DURATION.wind)
    reportCrowded(one, mounts, kit, worksheet)
  }
  return parts
}

/** Two deck mounts closer than their sheet allows. */
function reportCrowded(one: Placed, mounts: readonly Placed[], { mount }: RailKit, worksheet: Worksheet): void {
  const least = mount.product.deck?.least_spacing_in ?? 0
  const other = mounts.find((m) => m.id > one.id && Math.hypot(m.xIn - one.xIn, m.yIn - one.yIn) < least - SAME_LINE_IN)
  if (other === undefined) return
  worksheet.find({
    severity: 'error',
    id: 'structure.deck-mounts-close',
    message: `deck mounts ${one.id} and ${other.id} stand ${Math.hypot(other.xIn - one.xIn, other.yIn - one.yIn).toFixed(1)} in apart; their sheet asks for ${least} in`,
    where: `${mount.at}.deck.least_spacing_in`,
    source: { document: mount.product.sheet ?? `sheet of mount ${mount.id}`, standing: 'project file' },
    fix: 'Put the mounts or the rails farther apart.',
  })
}
