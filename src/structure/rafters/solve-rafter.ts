import { DEEPEST_END_NOTCH } from '../../tables/nds/index.js'
import { LEAST_SEAT_IN, RAFTER_DEFLECTION, RAISED_TIES } from '../../tables/irc/index.js'
import { at, feetOf, radiansOf, type Feet, type Inches, type PoundInches, type Pounds } from '../../values/index.js'
import { beamLines, stationAt, stationsOf, type BeamLines } from '../beam/index.js'
import type { FramingSpec } from './framing-spec.js'
import type { RafterInput } from './rafter-input.js'
import { deflectionCases, strengthCases, type RafterCase, type Roof } from './rafter-cases.js'
import { bareLoads, rafterLoads, type LoadKind, type RafterLoad } from './rafter-loads.js'
import type { RafterPlace } from './rafter-place.js'
import type { RafterSpans } from './rafter-spans.js'
import { ENDS_ENOUGH_DEPTH_IN, lowerEdgeStability } from './stability.js'
import { woodStrength, type WoodStrength } from './wood-strength.js'

export type RafterCheckName = 'bending' | 'shear' | 'bearing' | 'deflection'

/** The worst of one check of a rafter. */
export interface RafterCheck {
  readonly check: RafterCheckName
  readonly combination: string
  readonly demand: number
  readonly capacity: number
  readonly unit: 'psi' | 'in'
  readonly ratio: number
  /** Horizontal distance from the lower support, ft; negative on the overhang. */
  readonly atFt: Feet
  readonly place: RafterPlace
  /** What the figures are made of, for the proof. */
  readonly loadDuration: number
  /** CL of bending, 1 for other checks. */
  readonly stability: number
  /** lb-in for bending, lb for shear and bearing, in for deflection. */
  readonly action: number
  /** Whether a load without the array governs. */
  readonly isBare: boolean
}

/** What a rafter carries of what it can, combination by combination. */
export interface CombinationLine {
  readonly name: string
  readonly momentLbIn: number
  readonly stressPsi: number
  readonly allowablePsi: number
  readonly atFt: Feet
  /** What each load brings to the moment there, its factor in it. */
  readonly shares: () => readonly LoadShare[]
}

/** One load of a combination at one place. */
export interface LoadShare {
  readonly kind: LoadKind
  readonly factor: number
  /** Without the factor, lb-in. */
  readonly momentLbIn: PoundInches
}

export interface SolvedRafter {
  readonly checks: readonly RafterCheck[]
  /** The worst bending of each combination. */
  readonly lines: readonly CombinationLine[]
  /** Largest force that lifts the rafter off the wall, lb; 0 when none does. */
  readonly upliftAtWallLb: number
  /** Its beams with their moments, load by load. */
  readonly parts: readonly SolvedPart[]
}

/** A rafter on its supports, with the strength of its wood. */
export interface RafterToSolve {
  readonly number: number
  readonly xIn: number
  readonly spans: RafterSpans
  readonly wood: WoodStrength
}

/** A stretch of the rafter as a beam. */
export interface RafterPart {
  readonly startIn: Inches
  readonly endIn: Inches
  readonly supportsIn: readonly Inches[]
  /** Number of its first support, 0 at the wall. */
  readonly firstSupport: number
}

/**
 * Beams that a rafter may be: each span by itself, and in one piece over its supports where it may be, and the lowest span with
 * the overhang. Where it is not known whether it runs through, both are taken, and the worse counts.
 */
function partsOf({ lowIn, supportsIn }: RafterSpans, continuous: boolean | undefined): RafterPart[] {
  const last = supportsIn.length - 1
  const parts: RafterPart[] = []
  if (continuous !== true || last === 1) {
    for (let i = 0; i < last; i++) {
      const ends = [at(supportsIn, i), at(supportsIn, i + 1)] as const
      parts.push({ startIn: ends[0], endIn: ends[1], supportsIn: ends, firstSupport: i })
    }
  }
  if (continuous !== false && last > 1) {
    parts.push({ startIn: at(supportsIn, 0), endIn: at(supportsIn, last), supportsIn, firstSupport: 0 })
  }
  if (at(supportsIn, 0) - lowIn > 1) {
    const ends = [at(supportsIn, 0), at(supportsIn, 1)]
    parts.push({ startIn: lowIn, endIn: at(ends, 1), supportsIn: ends, firstSupport: 0 })
  }
  return parts
}

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
const PURLIN_IN = 1.5

/**
 * Bending, shear, bearing and deflection of one rafter under every combination.
 *
 * @returns The worst of each check; ratios over 1 fail.
 * @source NDS 2018 chapter 3, allowable stress design (secondary); statics; deflection limits of IRC table R301.7 (secondary)
 * @limits Shear is not reduced near supports. Deflection on the horizontal span, as the code's tables have it. No overhang
 *   deflection, no thrust.
 */
export function solveRafter(input: RafterInput, rafter: RafterToSolve, roof: Roof): SolvedRafter {
  const { supportsIn, lowIn, highIn } = rafter.spans
  const longestSpanIn = Math.max(...supportsIn.slice(1).map((x, i) => x - at(supportsIn, i)))
  const placed = { number: rafter.number, xIn: rafter.xIn, lowIn, highIn, longestSpanIn }
  const loads = roof === 'with the array' ? rafterLoads(input, placed) : bareLoads(input, placed)
  const cases = strengthCases(loads, input.combinations, roof)
  const sags = deflectionCases(loads, input.combinations)
  const found = new Worst(at(supportsIn, 0))
  const parts = partsOf(rafter.spans, input.framing.continuous).map((part): SolvedPart => {
    const stations = stationsOf({ ...part, loads: [] }, loads, PIECES)
    const lines = loads.map((load) => linesOf(part, load, stations))
    return { part, stations, loads, lines, buffer: new Float64Array(stations.length) }
  })
  for (const solved of parts) {
    const strength = strengthOf(input, rafter.wood, solved.part)
    for (const each of cases) checkStrength(solved, each, strength, found)
    for (const each of sags) checkDeflection(solved, each, strength, found)
  }
  return { ...found.result(), parts }
}

/** Pieces of a span; the largest moment and deflection are looked for between them too. */
const PIECES = 10

/** The worse of two answers, check by check. */
export function worseOf(a: SolvedRafter, b: SolvedRafter): SolvedRafter {
  return {
    checks: a.checks.map((check) => {
      const other = b.checks.find((each) => each.check === check.check)
      return other !== undefined && other.ratio > check.ratio ? other : check
    }),
    lines: [...a.lines, ...b.lines],
    upliftAtWallLb: Math.max(a.upliftAtWallLb, b.upliftAtWallLb),
    parts: a.parts,
  }
}

const linesOf = (part: RafterPart, { loads }: RafterLoad, stations: Float64Array): BeamLines | undefined =>
  loads.length === 0 ? undefined : beamLines({ ...part, loads }, stations)

/** A beam that a rafter may be, with the lines of each of its loads. */
export interface SolvedPart {
  readonly part: RafterPart
  readonly stations: Float64Array
  readonly loads: readonly RafterLoad[]
  readonly lines: readonly (BeamLines | undefined)[]
  /** Room for one sum at a time. */
  readonly buffer: Float64Array
}

/** Limits of one part, in lb, in and psi. */
interface PartStrength {
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
const LEAST_OVER_NOTCH = 0.05

function strengthOf(input: RafterInput, wood: WoodStrength, part: RafterPart): PartStrength {
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
function shareOfShallow({ framing }: RafterInput, wood: WoodStrength): number {
  const depthIn = Math.min(framing.depthIn, ENDS_ENOUGH_DEPTH_IN)
  const shallow = woodStrength({ ...framing, nominalSize: '2x8', depthIn })
  if (shallow === undefined) return 0
  return (shallow.bendingPsi * shallow.sectionModulusIn3) / (wood.bendingPsi * wood.sectionModulusIn3)
}

type Line = 'momentLbIn' | 'shearLb' | 'shearBeforeLb' | 'sagTimesStiffness'

/** One line of all loads of a case together; it holds until the next sum of the part. */
function summed({ lines, buffer }: SolvedPart, { terms }: RafterCase, name: Line): Float64Array {
  buffer.fill(0)
  for (const { load, factor } of terms) {
    const line = lines[load]?.[name]
    if (line === undefined) continue
    for (let k = 0; k < buffer.length; k++) buffer[k]! += factor * line[k]!
  }
  return buffer
}

function reactionLb({ lines }: SolvedPart, { terms }: RafterCase, support: number): Pounds {
  return terms.reduce((total, { load, factor }) => total + factor * (lines[load]?.reactionsLb[support] ?? 0), 0)
}

/** Sum of one line of all loads of a case at one station. */
function summedAt({ lines }: SolvedPart, { terms }: RafterCase, name: Line, k: number): number {
  return terms.reduce((sum, { load, factor }) => sum + factor * (lines[load]?.[name][k] ?? 0), 0)
}

/**
 * The largest moment beside a station with the largest: where the shear passes zero between two stations the parabola has its top.
 *
 * @source statics: M = M0 + V0^2 / (2 w) at V0 / w from a station
 */
function peakAt(solved: SolvedPart, each: RafterCase, k: number): { xIn: Inches; momentLbIn: PoundInches } {
  const { stations } = solved
  let peak = { xIn: at(stations, k), momentLbIn: summedAt(solved, each, 'momentLbIn', k) }
  for (const left of [k - 1, k]) {
    if (left < 0 || left + 1 >= stations.length) continue
    const from = summedAt(solved, each, 'shearLb', left)
    const to = summedAt(solved, each, 'shearBeforeLb', left + 1)
    const xIn = at(stations, left)
    const lbPerIn = (from - to) / (at(stations, left + 1) - xIn)
    if (from * to >= 0 || lbPerIn === 0) continue
    const momentLbIn = summedAt(solved, each, 'momentLbIn', left) + from ** 2 / (2 * lbPerIn)
    if (Math.abs(momentLbIn) > Math.abs(peak.momentLbIn)) peak = { xIn: xIn + from / lbPerIn, momentLbIn }
  }
  return peak
}

/** The moment of each load of a case at a place. */
function sharesAt({ stations, loads, lines }: SolvedPart, { terms }: RafterCase, xIn: Inches): LoadShare[] {
  let k = 0
  while (k + 2 < stations.length && stations[k + 1]! <= xIn) k += 1
  const [h, dx] = [at(stations, k + 1) - at(stations, k), xIn - at(stations, k)]
  return terms.flatMap(({ load, factor }) => {
    const [line, of] = [lines[load], loads[load]]
    if (line === undefined || of === undefined) return []
    const shear = at(line.shearLb, k)
    const lbPerIn = (shear - at(line.shearBeforeLb, k + 1)) / h
    const momentLbIn = at(line.momentLbIn, k) + shear * dx - (lbPerIn * dx ** 2) / 2
    return [{ kind: of.kind, factor, momentLbIn }]
  })
}

/** The top of the parabola through three neighbouring values, the middle one the largest. */
function vertexOf(values: Float64Array, stations: Float64Array, k: number): number {
  if (k === 0 || k + 1 >= stations.length) return at(values, k)
  const [x0, x1, x2] = [at(stations, k - 1), at(stations, k), at(stations, k + 1)]
  const [y0, y1, y2] = [at(values, k - 1), at(values, k), at(values, k + 1)]
  const [left, right] = [(y1 - y0) / (x1 - x0), (y2 - y1) / (x2 - x1)]
  const curve = (right - left) / (x2 - x0)
  if (curve === 0) return y1
  const slope = left + curve * (x1 - x0)
  const top = y1 - slope ** 2 / (4 * curve)
  return Math.abs(top) > Math.abs(y1) ? top : y1
}

/** Places of the largest and the smallest value. */
function extremesOf(values: Float64Array): { most: number; least: number } {
  let [most, least] = [0, 0]
  for (let k = 1; k < values.length; k++) {
    if (values[k]! > values[most]!) most = k
    if (values[k]! < values[least]!) least = k
  }
  return { most, least }
}

function checkStrength(solved: SolvedPart, each: RafterCase, strength: PartStrength, found: Worst): void {
  const { wood } = strength
  const { loadDuration } = each
  const upper = strength.bendingPsi * loadDuration
  const { most, least } = extremesOf(summed(solved, each, 'momentLbIn'))
  for (const k of most === least ? [most] : [most, least]) {
    const { xIn, momentLbIn: moment } = peakAt(solved, each, k)
    const stability = moment >= 0 ? 1 : strength.lowerEdge(loadDuration)
    const stress = Math.abs(moment) / wood.sectionModulusIn3
    found.bending(solved, each, xIn, { moment, stress, limit: upper * stability, stability })
  }
  const capacity = wood.shearPsi * loadDuration
  const addShear = (shears: Float64Array): void => {
    const ends = extremesOf(shears)
    const k = -at(shears, ends.least) > at(shears, ends.most) ? ends.least : ends.most
    const force = Math.abs(at(shears, k))
    found.keep('shear', solved, each, at(solved.stations, k), {
      demand: (1.5 * force) / wood.areaIn2,
      capacity,
      action: force,
    })
  }
  addShear(summed(solved, each, 'shearBeforeLb'))
  const after = summed(solved, each, 'shearLb')
  addShear(after)
  checkSupports(solved, each, strength, after, found)
  if (solved.part.firstSupport === 0 && each.direction === 'uplift') found.lift(-reactionLb(solved, each, 0))
}

/** The notch at the wall, and bearing on it and on supports between spans. */
function checkSupports(
  solved: SolvedPart,
  each: RafterCase,
  strength: PartStrength,
  shears: Float64Array,
  found: Worst,
): void {
  const { wood, overNotchIn: over } = strength
  const { part, stations } = solved
  for (const [index, x] of part.supportsIn.entries()) {
    const number = part.firstSupport + index
    const isTop = index === part.supportsIn.length - 1
    if (isTop) continue
    const k = stationAt(stations, x)
    const reaction = reactionLb(solved, each, index)
    const seat = number === 0 ? strength.seatIn : PURLIN_IN
    found.keep('bearing', solved, each, x, {
      demand: Math.max(0, reaction) / (wood.breadthIn * seat),
      capacity: wood.bearingPsi,
      action: Math.max(0, reaction),
    })
    if (number > 0 || over >= wood.depthIn || each.direction === 'uplift') continue
    const force = Math.max(0, at(shears, k))
    const capacity = wood.shearPsi * each.loadDuration
    const demand = ((1.5 * force) / (wood.breadthIn * over)) * (wood.depthIn / over) ** 2
    found.keep('shear', solved, each, x, { demand, capacity, action: force })
  }
}

function checkDeflection(solved: SolvedPart, each: RafterCase, strength: PartStrength, found: Worst): void {
  const { wood, deflectionLimit: limit } = strength
  const { part, stations } = solved
  const stiffness = wood.elasticityPsi * wood.momentOfInertiaIn4
  const sags = summed(solved, each, 'sagTimesStiffness')
  for (let i = 0; i + 1 < part.supportsIn.length; i++) {
    const [from, to] = [at(part.supportsIn, i), at(part.supportsIn, i + 1)]
    let worst = -1
    for (let k = 0; k < stations.length; k++) {
      const x = at(stations, k)
      if (x <= from || x >= to) continue
      if (worst < 0 || Math.abs(at(sags, k)) > Math.abs(at(sags, worst))) worst = k
    }
    if (worst < 0) continue
    const sag = Math.abs(vertexOf(sags, stations, worst)) / stiffness
    found.keep('deflection', solved, each, at(stations, worst), {
      demand: sag,
      capacity: (to - from) / limit,
      action: sag,
    })
  }
}

interface Figures {
  readonly demand: number
  readonly capacity: number
  readonly action: number
}

/** Keeps the worst of each check. */
class Worst {
  private readonly checks = new Map<RafterCheckName, RafterCheck>()
  private readonly lines = new Map<string, CombinationLine>()
  private readonly wallIn: Inches
  private liftLb = 0

  constructor(wallIn: Inches) {
    this.wallIn = wallIn
  }

  bending(
    solved: SolvedPart,
    each: RafterCase,
    xIn: Inches,
    { moment, stress, limit, stability }: { moment: number; stress: number; limit: number; stability: number },
  ): void {
    this.keep('bending', solved, each, xIn, { demand: stress, capacity: limit, action: moment }, stability)
    const held = this.lines.get(each.name)
    if (held !== undefined && held.stressPsi / held.allowablePsi >= stress / limit) return
    const atFt = feetOf(xIn - this.wallIn)
    const shares = (): LoadShare[] => sharesAt(solved, each, xIn)
    this.lines.set(each.name, {
      name: each.name,
      momentLbIn: moment,
      stressPsi: stress,
      allowablePsi: limit,
      atFt,
      shares,
    })
  }

  lift(lb: number): void {
    this.liftLb = Math.max(this.liftLb, lb)
  }

  keep(
    check: RafterCheckName,
    { part }: SolvedPart,
    each: RafterCase,
    xIn: Inches,
    { demand, capacity, action }: Figures,
    stability = 1,
  ): void {
    const ratio = demand / capacity
    const held = this.checks.get(check)
    if (held !== undefined && held.ratio >= ratio) return
    this.checks.set(check, {
      check,
      combination: each.name,
      demand,
      capacity,
      unit: check === 'deflection' ? 'in' : 'psi',
      ratio,
      atFt: feetOf(xIn - this.wallIn),
      place: placeAt(part, xIn),
      loadDuration: check === 'bearing' || check === 'deflection' ? 1 : each.loadDuration,
      stability,
      action,
      isBare: each.name.endsWith('without the array'),
    })
  }

  result(): Omit<SolvedRafter, 'parts'> {
    return {
      checks: [...this.checks.values()],
      lines: [...this.lines.values()],
      upliftAtWallLb: this.liftLb,
    }
  }
}

function placeAt({ supportsIn, firstSupport }: RafterPart, x: number): RafterPlace {
  const on = supportsIn.findIndex((support) => Math.abs(support - x) < 1e-6)
  if (on >= 0) return { kind: 'support', number: firstSupport + on }
  const above = supportsIn.filter((support) => support < x).length
  return above === 0 ? { kind: 'overhang', number: 0 } : { kind: 'span', number: firstSupport + above }
}
