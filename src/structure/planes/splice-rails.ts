import {
  cutRail,
  HINGE_SHARES,
  holdsThere,
  jointPlaces,
  type LaidRail,
  type RailCut,
  railDemand,
  type RailPieces,
  spliceForces,
  type SpliceForces,
  type SpliceStrength,
} from '../rails/index.js'
import { at, type Inches } from '../../values/index.js'
import { need } from '../model/index.js'
import type { RailKit } from './plane-rails.js'

/** How far a cut obeys the rules: all; all but what the joint takes; not even two mounts a piece; or there is none. */
export type CutState = 'sound' | 'hinge off zero' | 'joint too weak' | 'piece on one mount' | 'no cut'

/** A laid rail cut to pieces, its forces worked out with the joints that are hinges. */
export interface SplicedRail extends LaidRail {
  readonly pieces: RailPieces | undefined
  readonly state: CutState
  readonly strength: SpliceStrength
  /** Forces at the joints. */
  readonly joints: readonly SpliceForces[]
}

const SHEET = 'It stands on the data sheet of the rail.'

/** What the joints of the rail take; without a stated moment they are hinges. */
export function spliceStrength({ rail }: Pick<RailKit, 'rail'>): SpliceStrength {
  const { splice } = rail.product
  return {
    momentLbIn: splice?.hinge === true ? undefined : splice?.moment_lb_in,
    shearLb: splice?.shear_lb,
    ...(splice?.min_from_mount_in === undefined ? {} : { leastFromMountIn: splice.min_from_mount_in }),
  }
}

/**
 * Cuts a laid rail where its joints hold: a joint with bending strength where moment and shear are within it, a hinge where
 * the moment is next to nothing, the rail then being solved with the hinge.
 *
 * @throws StageError when the sheet's stock lengths or splice rules are needed and missing.
 */
export function spliceRail(rail: LaidRail, kit: RailKit): SplicedRail {
  const asked = railCutOf(rail, kit)
  const strength = spliceStrength(kit)
  const { pieces, state } = bestCut(rail, asked, strength, kit)
  const splicesIn = pieces?.splicesIn ?? []
  if (splicesIn.length === 0) return { ...rail, pieces, state, strength, joints: [] }
  const isHinged = strength.momentLbIn === undefined && state !== 'piece on one mount'
  const supported = { supportsIn: rail.supportsIn, hingesIn: isHinged ? splicesIn : [] }
  return {
    ...rail,
    pieces,
    state,
    strength,
    joints: spliceForces(rail.loaded, supported, splicesIn),
    demand: isHinged ? railDemand(rail.loaded, supported) : rail.demand,
  }
}

/** What to cut: the rail, its mounts, and what the sheet says of stock lengths and splices. */
function railCutOf(rail: LaidRail, kit: RailKit): RailCut {
  const { startIn, endIn } = rail.loaded.line
  const { product, at: sheet } = kit.rail
  const stock = need(product.stock_lengths_in, `${sheet}.stock_lengths_in`, 'the stock lengths of the rail', SHEET)
  const needsSplice = endIn - startIn > Math.max(...stock) + 1e-9
  return {
    startIn,
    endIn,
    mountsIn: rail.supportsIn,
    stockLengthsIn: stock,
    minFromMountIn: needsSplice
      ? need(
          product.splice?.min_from_mount_in,
          `${sheet}.splice.min_from_mount_in`,
          'the least distance from a splice to a mount',
          SHEET,
        )
      : 0,
    maxFromMountOfSpan: product.splice?.max_from_mount_of_span ?? 0.5,
    allowedInEndSpan: product.splice?.allowed_in_end_span ?? !needsSplice,
  }
}

/** The soundest cut that there is. */
function bestCut(
  rail: LaidRail,
  asked: RailCut,
  strength: SpliceStrength,
  kit: RailKit,
): { readonly pieces: RailPieces | undefined; readonly state: CutState } {
  if (asked.endIn - asked.startIn <= Math.max(...asked.stockLengthsIn) + 1e-9) {
    return { pieces: cutRail(asked), state: 'sound' }
  }
  const hinged = strength.momentLbIn === undefined
  for (const allowed of allowedPlaces(rail, asked, strength, kit)) {
    const pieces = cutRail({ ...asked, isAllowed: (x) => allowed.has(x) })
    if (pieces !== undefined) return { pieces, state: 'sound' }
    // A joint that takes the moment holds a piece on one mount.
    const onOne = hinged ? undefined : cutRail({ ...asked, isAllowed: (x) => allowed.has(x) }, 1)
    if (onOne !== undefined) return { pieces: onOne, state: 'sound' }
  }
  const anywhere = cutRail(asked)
  if (anywhere !== undefined) return { pieces: anywhere, state: hinged ? 'hinge off zero' : 'joint too weak' }
  const loose = cutRail(asked, 0)
  return { pieces: loose, state: loose === undefined ? 'no cut' : 'piece on one mount' }
}

/** Sets of places for joints, the soundest first. */
function allowedPlaces(rail: LaidRail, asked: RailCut, strength: SpliceStrength, kit: RailKit): Set<Inches>[] {
  const places = jointPlaces(asked).map(({ x }) => x)
  const forces = spliceForces(rail.loaded, { supportsIn: rail.supportsIn }, places)
  const setOf = (holds: (forces: SpliceForces) => boolean): Set<Inches> =>
    new Set(places.filter((_, index) => holds(at(forces, index))))
  if (strength.momentLbIn !== undefined) {
    return [setOf((one) => holdsThere(one, strength, rail.supportsIn, kit.railStrength.momentXLbIn))]
  }
  const most = Math.max(
    0,
    ...spliceForces(rail.loaded, { supportsIn: rail.supportsIn }, rail.supportsIn).map((f) => f.momentLbIn),
    ...forces.map((f) => f.momentLbIn),
  )
  return HINGE_SHARES.map((share) =>
    setOf((one) => one.momentLbIn <= share * most && one.shearLb <= (strength.shearLb ?? Infinity)),
  )
}
