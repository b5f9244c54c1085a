import { at } from '../../values/index.js'
import { stationAt, stationsOf } from '../beam/index.js'
import { deflectionCases, type RafterCase, type Roof, strengthCases } from './rafter-cases.js'
import type { RafterInput } from './rafter-input.js'
import { type PartStrength, PURLIN_IN, strengthOf } from './rafter-limits.js'
import { bareLoads, rafterLoads } from './rafter-loads.js'
import { linesOf, partsOf, type SolvedPart } from './rafter-parts.js'
import type { RafterSpans } from './rafter-spans.js'
import { extremesOf, peakAt, reactionLb, summed, vertexOf } from './rafter-sums.js'
import type { WoodStrength } from './wood-strength.js'
import { Worst, type WorstOfRafter } from './worst-checks.js'

/** A rafter under one roof, solved. */
export interface SolvedRafter extends WorstOfRafter {
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
export function worseOf(a: WorstOfRafter, b: WorstOfRafter): WorstOfRafter {
  return {
    checks: a.checks.map((check) => {
      const other = b.checks.find((each) => each.check === check.check)
      return other !== undefined && other.ratio > check.ratio ? other : check
    }),
    lines: [...a.lines, ...b.lines],
    upliftAtWallLb: Math.max(a.upliftAtWallLb, b.upliftAtWallLb),
  }
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
