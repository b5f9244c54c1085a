import { conductorSizes, insulationTypes, type ConductorSize, type Insulation } from '../../tables/nec/index.js'
import { StageError } from '../../worksheet/index.js'
import type { RacewayVerdict } from './choose-raceway.js'
import { isAc, polesOf, type Circuit, type ConductorCount } from '../system/index.js'
import {
  conductorAreaIn2,
  equipmentGroundSize,
  increasedGroundSize,
  largerOf,
  type SizedConductor,
} from '../conductors/index.js'
import { verdictOf } from './segment-fill.js'
import type { ConductorCover } from './conductor-cover.js'
import type { RacewaySegment } from './raceway-segment.js'
import type { SegmentConditions } from './segment-conditions.js'
import type { SquareInches } from '../../values/index.js'

/** What lies in a raceway and how full it is. */
export interface RacewayContents {
  readonly conductors: readonly ConductorCount[]
  readonly count: number
  readonly areaIn2: SquareInches
  /** undefined for exposed wire, for cables, and where the inside of the raceway is not known. */
  readonly verdict: RacewayVerdict | undefined
}

/**
 * Equipment grounding conductor of a raceway: one for all its circuits, by the largest need.
 *
 * The increase is reckoned from the size without correction and adjustment. The code reckons from the size with them,
 * which is never more; so heat never makes the ground smaller.
 *
 * @source NEC 250.122(A), (B), (C); 250.122(B) is not applied to DC circuits (690.45)
 */
export function racewayGround(circuits: readonly Circuit[], sized: ReadonlyMap<string, SizedConductor>): ConductorSize {
  return circuits
    .map((circuit) => {
      const base = equipmentGroundSize(circuit.groundingDeviceA, circuit.where)
      const conductor = sized.get(circuit.id)
      if (conductor === undefined) throw new Error(`circuit ${circuit.id} is not sized`)
      return increasedGroundSize(base, isAc(circuit) ? conductor.increase : 1, conductor.size)
    })
    .reduce(largerOf)
}

/**
 * Counts the conductors of a raceway and chooses its trade size, or judges the one that is named.
 *
 * @throws StageError when the named trade size is too small, no size is large enough, or a diameter is missing.
 */
export function fillRaceway(
  segment: RacewaySegment,
  conditions: SegmentConditions,
  sized: ReadonlyMap<string, SizedConductor>,
  ground: ConductorSize | null,
): RacewayContents {
  const { stated } = segment
  const conductors = countConductors(segment, conditions, sized, ground)
  const areaIn2 = (stated.other_conductors?.area_in2 ?? 0) + totalArea(segment, conditions, conductors)
  const others = stated.other_conductors
  const count = conductors.reduce((sum, row) => sum + row.count, 0) + (others?.total ?? others?.current_carrying ?? 0)
  const verdict =
    conditions.method.form === 'raceway' ? verdictOf(segment, count, areaIn2, conditions.nipple) : undefined
  return { conductors, count, areaIn2, verdict }
}

function countConductors(
  { circuits, neutral }: RacewaySegment,
  { insulation, material, method }: SegmentConditions,
  sized: ReadonlyMap<string, SizedConductor>,
  ground: ConductorSize | null,
): ConductorCount[] {
  const rows = circuits.flatMap((circuit): ConductorCount[] => {
    const row = (use: ConductorCount['use'], count: number): ConductorCount => ({
      circuit: circuit.id,
      use,
      count,
      size_awg: sized.get(circuit.id)?.size ?? '',
      material,
      insulation,
    })
    const lines = row('current_carrying', polesOf(circuit))
    return neutral && isAc(circuit) ? [lines, row('neutral', 1)] : [lines]
  })
  if (ground === null) return rows
  const grounding = { use: 'grounding', count: 1, size_awg: ground, material: 'copper' } as const
  // Each cable brings its own; in a raceway one serves all circuits.
  if (method.form === 'cable')
    return [...rows, ...circuits.map(({ id }) => ({ ...grounding, circuit: id, insulation: `in ${insulation}` }))]
  return [
    ...rows,
    { ...grounding, circuit: '', insulation: method.form === 'open' ? 'bare' : groundInsulation(insulation) },
  ]
}

/** PV wire and USE-2 are not made as a green grounding conductor for raceways; THWN-2 is. */
function groundInsulation(insulation: string): string {
  return insulation === 'PV wire' || insulation === 'USE-2' ? 'THWN-2' : insulation
}

const isInsulation = (cover: ConductorCover): cover is Insulation => insulationTypes.some(({ type }) => type === cover)

function totalArea(
  segment: RacewaySegment,
  conditions: SegmentConditions,
  conductors: readonly ConductorCount[],
): SquareInches {
  if (conditions.method.form !== 'raceway') return 0
  return conductors.reduce((sum, row) => sum + row.count * lineAreaIn2(segment, conditions, row), 0)
}

/** Area of one conductor of a line of the raceway, over its insulation. */
export function lineAreaIn2(
  { where, stated }: RacewaySegment,
  { insulation }: SegmentConditions,
  row: ConductorCount,
): SquareInches {
  const size = conductorSizes.find((candidate) => candidate === row.size_awg)
  if (size === undefined) throw new Error(`no size ${row.size_awg}`)
  const grounding = row.use === 'grounding'
  const area = grounding
    ? conductorAreaIn2(size, insulation === 'XHHW-2' ? 'XHHW-2' : 'THWN-2', undefined)
    : isInsulation(insulation)
      ? conductorAreaIn2(size, insulation, stated.conductor_diameter_in)
      : undefined
  if (area !== undefined) return area
  throw new StageError(
    `${where}.conductor_diameter_in`,
    `the tables have no outside diameter of ${insulation} ${size} AWG`,
    "Take the diameter from the wire's data sheet",
  )
}
