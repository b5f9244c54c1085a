import { LEAST_SEAT_IN, RAFTER_DEFLECTION, RAISED_TIES } from '../../tables/irc/index.js'
import { DEEPEST_END_NOTCH } from '../../tables/nds/index.js'
import { at, type Inches, radiansOf } from '../../values/index.js'
import type { FramingSpec } from './framing-spec.js'
import type { RafterInput } from './rafter-input.js'
import type { RafterPart } from './rafter-parts.js'
import { ENDS_ENOUGH_DEPTH_IN, lowerEdgeStability } from './stability.js'
import { woodStrength, type WoodStrength } from './wood-strength.js'

/** Share of the moment that raised ties leave; 1 with ties at the plate. @source IRC table R802.4.1(9) (from memory) */
export function tieFactor({ ties, tieHeightShare }: Pick<FramingSpec, 'ties' | 'tieHeightShare'>): number {
  if (ties !== 'raised_ties') return 1
  const row =
    RAISED_TIES.find(({ upToShare }) => (tieHeightShare ?? 1) <= upToShare + 1e-9) ??
    at(RAISED_TIES, RAISED_TIES.length - 1)
  return row.spanFactor ** 2
}

/** n of the deflection limit span / n. @source IRC table R301.7 (secondary) */
export function deflectionLimit({ ceiling }: Pick<FramingSpec, 'ceiling'>, tiltDeg: number): number {
  if (ceiling.finish === 'plaster') return RAFTER_DEFLECTION.plaster
  const isSteep = 12 * Math.tan(radiansOf(tiltDeg)) > RAFTER_DEFLECTION.steepFromRise
  return isSteep && ceiling.attached === false ? RAFTER_DEFLECTION.steepOpen : RAFTER_DEFLECTION.other
}

/** Seat and notch at the wall, in, with what the code allows at most or least where they are not stated. */
export function seatOf(
  { seatIn, notchIn, depthIn }: Pick<FramingSpec, 'seatIn' | 'notchIn' | 'depthIn'>,
  tiltDeg: number,
): { seatIn: Inches; notchIn: Inches; deepestIn: Inches } {
  const deepestIn = DEEPEST_END_NOTCH * depthIn
  const cut = seatIn === undefined ? deepestIn : seatIn * Math.sin(radiansOf(tiltDeg))
  return { seatIn: seatIn ?? LEAST_SEAT_IN, notchIn: notchIn ?? cut, deepestIn }
}

/** Bearing of a rafter on a purlin or wall of 2 in lumber on edge, in. @source American Softwood Lumber Standard PS 20 (from memory) */
export const PURLIN_IN = 1.5

/** Limits of one part, in lb, in and psi. */
export interface PartStrength {
  readonly wood: WoodStrength
  /** Fb' of the upper edge pressed, without CD. */
  readonly bendingPsi: number
  readonly lowerEdge: (loadDuration: number) => number
  readonly seatIn: Inches
  /** Depth over the notch at the wall, in. */
  readonly overNotchIn: Inches
  readonly deflectionLimit: number
}

/** Share of the depth that is left over a notch at least, so that figures stay finite. */
export const LEAST_OVER_NOTCH = 0.05

export function strengthOf(input: RafterInput, wood: WoodStrength, part: RafterPart): PartStrength {
  const { framing, plane } = input
  const seat = seatOf(framing, plane.tiltDeg)
  const bendingPsi = wood.bendingPsi * tieFactor(framing)
  const gaps = part.supportsIn.slice(1).map((x, i) => x - at(part.supportsIn, i))
  const unbracedIn = Math.max(...gaps) / Math.cos(radiansOf(plane.tiltDeg))
  const isHeld = framing.ceiling.attached === true
  const asShallow = shareOfShallow(input, wood)
  const known = new Map<number, number>()
  return {
    wood,
    bendingPsi,
    lowerEdge: (loadDuration) => {
      const held = known.get(loadDuration)
      if (held !== undefined) return held
      const factor = lowerEdgeStability(wood, unbracedIn, bendingPsi * loadDuration, { isHeld, asShallow })
      known.set(loadDuration, factor)
      return factor
    },
    seatIn: seat.seatIn,
    // A cut through the whole rafter leaves next to nothing, and fails.
    overNotchIn: Math.max(LEAST_OVER_NOTCH * wood.depthIn, wood.depthIn - seat.notchIn),
    deflectionLimit: deflectionLimit(framing, plane.tiltDeg),
  }
}

/** Bending that a 2x8 of the same wood bears, over that of the rafter; 0 where its values are not held. */
export function shareOfShallow({ framing }: RafterInput, wood: WoodStrength): number {
  const depthIn = Math.min(framing.depthIn, ENDS_ENOUGH_DEPTH_IN)
  const shallow = woodStrength({ ...framing, nominalSize: '2x8', depthIn })
  if (shallow === undefined) return 0
  return (shallow.bendingPsi * shallow.sectionModulusIn3) / (wood.bendingPsi * wood.sectionModulusIn3)
}
