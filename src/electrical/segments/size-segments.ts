import { CONTINUOUS_FACTOR, UNPROTECTED_GROUND_AWG, type ConductorSize } from '../../tables/nec/index.js'
import { type Circuit, isAc, isStorage, isSupplyTap, type Job } from '../system/index.js'
import {
  largerOf,
  type ConductorDemand,
  sizeConductor,
  type SizedConductor,
  tenFootNeighbour,
  terminalTemperatureC,
} from '../conductors/index.js'
import {
  placeCableClips,
  placeStraps,
  type Straps,
  type ConductorCover,
  type RacewaySegment,
  segmentConditions,
  type SegmentConditions,
  fillRaceway,
  racewayGround,
  type RacewayContents,
} from '../raceways/index.js'
import type { Amperes } from '../../values/index.js'
import { wholeConductors } from './whole-conductors.js'
import { impedanceLimits, powerFactorOf, voltageFloor } from '../voltage/index.js'

/** One circuit in one segment: what it has to carry, with which factors, and the conductor. */
export interface CircuitInSegment {
  readonly circuit: Circuit
  readonly demand: ConductorDemand
  /** Segment whose higher factors are used by the 10 ft rule. */
  readonly borrowedFrom: string | undefined
  readonly sized: SizedConductor
}

/** A segment with everything in it. */
export interface SizedSegment {
  readonly segment: RacewaySegment
  readonly conditions: SegmentConditions
  readonly circuits: readonly CircuitInSegment[]
  /** Equipment grounding conductor; null ahead of a service disconnect, where the neutral carries fault current. */
  readonly ground: ConductorSize | null
  readonly contents: RacewayContents
  readonly straps: Straps
}

/** Sizes conductors, grounding conductor, raceway and straps of every segment. */
export function sizeSegments(
  job: Job,
  circuits: readonly Circuit[],
  segments: readonly RacewaySegment[],
): SizedSegment[] {
  const limits = impedanceLimits(job, circuits, segments)
  const powerFactor = powerFactorOf(job)
  const conditions = new Map(segments.map((segment) => [segment, segmentConditions(job, segment)]))
  const pieces = segments.flatMap((segment) =>
    segment.circuits.map((circuit): CircuitPiece => {
      const here = need(conditions.get(segment))
      const borrowed = borrowFrom(job, circuit, segment, segments, conditions)
      const factors = borrowed === undefined ? here : need(conditions.get(borrowed))
      const demand: ConductorDemand = {
        continuousA: circuit.continuousA,
        requiredA: requiredOf(circuit),
        deviceA: circuit.deviceA,
        material: here.material,
        terminalC: terminalTemperatureC(job, circuit),
        freeAir: here.freeAir,
        factorC: here.factorC,
        limit: here.limit,
        correction: factors.correction,
        adjustment: factors.adjustment,
        voltageFloor: voltageFloor(
          limits.get(circuit.id) ?? Infinity,
          here.material,
          segment.stated.raceway,
          isAc(circuit),
          powerFactor,
        ),
        service: circuit.floor,
      }
      return { segment, circuit, demand, borrowedFrom: borrowed?.id, insulation: here.insulation }
    }),
  )
  const sized = sizeWholeConductors(pieces)
  return segments.map((segment) => {
    const here = need(conditions.get(segment))
    const inSegment = pieces
      .filter((piece) => piece.segment === segment)
      .map((piece): CircuitInSegment => ({ ...piece, sized: need(sized.get(piece)) }))
    const byId = new Map(inSegment.map((entry) => [entry.circuit.id, entry.sized]))
    const inRaceway = segment.circuits.some(isSupplyTap) ? null : racewayGround(segment.circuits, byId)
    const ground = here.freeAir && inRaceway !== null ? largerOf(inRaceway, UNPROTECTED_GROUND_AWG) : inRaceway
    const contents = fillRaceway(segment, here, byId, ground)
    return { segment, conditions: here, circuits: inSegment, ground, contents, straps: strapsOf(segment, contents) }
  })
}

/**
 * Ampacity that a conductor needs at its terminals, A: 125 percent of the current; of storage the rating of its device.
 *
 * @source NEC 706.20(B), 2017 read: not below the rating of the overcurrent device of the storage
 */
const requiredOf = (circuit: Circuit): Amperes =>
  Math.max(CONTINUOUS_FACTOR * circuit.continuousA, isStorage(circuit) ? (circuit.deviceA ?? 0) : 0)

/** One circuit in one segment, before it has a size. */
export interface CircuitPiece extends Omit<CircuitInSegment, 'sized'> {
  readonly segment: RacewaySegment
  readonly insulation: ConductorCover
}

function sizeWholeConductors(pieces: readonly CircuitPiece[]): Map<CircuitPiece, SizedConductor> {
  const sized = new Map<CircuitPiece, SizedConductor>()
  for (const whole of wholeConductors(pieces)) {
    const sizes = sizeConductor(
      whole.map(({ segment, demand }) => ({
        id: segment.id,
        where: segment.where,
        sizeWhere: segment.sizeWhere,
        demand,
        named: segment.stated.size_awg,
      })),
    )
    whole.forEach((piece, i) => sized.set(piece, need(sizes[i])))
  }
  return sized
}

function strapsOf({ stated }: RacewaySegment, { verdict }: RacewayContents): Straps {
  if (stated.raceway === 'none') return placeCableClips(stated.length_ft)
  return placeStraps(stated.raceway, verdict?.tradeSize ?? stated.trade_size ?? null, stated.length_ft)
}

function borrowFrom(
  job: Job,
  circuit: Circuit,
  segment: RacewaySegment,
  segments: readonly RacewaySegment[],
  conditions: ReadonlyMap<RacewaySegment, SegmentConditions>,
): RacewaySegment | undefined {
  if (job.electrical.use_10ft_rule !== true || !need(conditions.get(segment)).tenFootRule) return undefined
  const path = segments.filter((candidate) => candidate.circuits.includes(circuit))
  const parts = path.map((part) => {
    const { correction, adjustment, freeAir, material, factorC } = need(conditions.get(part))
    const here = need(conditions.get(segment))
    const alike = freeAir === here.freeAir && material === here.material && factorC === here.factorC
    return { lengthFt: part.stated.length_ft, factor: alike ? correction * adjustment : 0 }
  })
  const neighbour = tenFootNeighbour(parts, path.indexOf(segment))
  return neighbour === undefined ? undefined : path[neighbour]
}

function need<T>(value: T | undefined): T {
  if (value === undefined) throw new Error('a segment is not known')
  return value
}
