import { NIPPLE_LENGTH_IN, type ConductorMaterial, type WiringMethodRow } from '../../tables/nec/index.js'
import { StageError } from '../../worksheet/index.js'
import { adjustmentFactor, ambientFactor, rooftopAdderRow, type AmpacityLimit } from '../conductors/index.js'
import { finite, outdoorDesignC, practice, type Job } from '../system/index.js'
import { bundleOf } from './cable-bundle.js'
import { checkMethodKeys } from './check-method-keys.js'
import { checkPlace } from './check-place.js'
import { coverOf, type ConductorCover } from './conductor-cover.js'
import { limitOfMethod } from './method-limit.js'
import type { RacewaySegment } from './raceway-segment.js'
import { methodRow } from './wiring-method.js'
import { feetOf, type Celsius, type Kelvins } from '../../values/index.js'

/** Everything that lowers ampacity in one segment. */
export interface SegmentConditions {
  readonly method: WiringMethodRow
  readonly insulation: ConductorCover
  readonly material: ConductorMaterial
  readonly freeAir: boolean
  readonly ambientC: Celsius
  readonly adderC: Kelvins
  /** Section of the rooftop adder; undefined where none applies. */
  readonly adderSection: string | undefined
  readonly temperatureC: Celsius
  /** Column that correction and adjustment start from, deg C. */
  readonly factorC: 60 | 75 | 90
  readonly correction: number
  readonly currentCarrying: number
  readonly nipple: boolean
  readonly adjustment: number
  /** Column that the method holds the final ampacity to; undefined where only terminals do. */
  readonly limit: AmpacityLimit | undefined
  /** Whether the 10 ft rule may be used here. */
  readonly tenFootRule: boolean
}

/**
 * Ambient, rooftop adder, correction and adjustment of one segment.
 *
 * @throws StageError when a height, an attic temperature or a suitable insulation is missing, or a nipple is too long.
 */
export function segmentConditions(job: Job, segment: RacewaySegment): SegmentConditions {
  const { stated, where } = segment
  checkMethodKeys(segment)
  const method = methodRow(stated.raceway)
  const { cover, factorC } = coverOf(job, segment)
  const material = materialOf(job, segment)
  checkPlace(job, segment, cover)
  const ambientC = ambientOf(job, segment)
  const adder = adderOf(job, segment, cover)
  const temperatureC = ambientC + (adder?.adderC ?? 0)
  const correction = ambientFactor(temperatureC, factorC)
  if (correction === undefined)
    throw new StageError(
      where,
      `${temperatureC} deg C round the conductors (${ambientC} deg C air and ${adder?.adderC ?? 0} deg C from the roof) is too hot for ${factorC} deg C insulation`,
      'Raise the raceway above the roof, or take it out of the sun',
    )
  const { currentCarrying, tenFootRule } = bundleOf(job, segment)
  const nipple = nippleOf(job, segment)
  return {
    method,
    insulation: cover,
    material,
    freeAir: method.form === 'open',
    ambientC,
    adderC: adder?.adderC ?? 0,
    adderSection: adder?.section,
    temperatureC,
    factorC,
    correction,
    currentCarrying,
    nipple,
    adjustment: adjustmentFactor(currentCarrying, nipple),
    limit: limitOfMethod(job, method, stated.in_insulation === true),
    tenFootRule,
  }
}

function materialOf(job: Job, { stated, sizeWhere }: RacewaySegment): ConductorMaterial {
  const material =
    stated.material ??
    job.worksheet.assume({
      path: 'electrical.runs.material',
      value: 'copper' as const,
      unit: '',
      why: 'Copper where no metal is stated',
      source: practice(''),
    })
  if (material === 'aluminum' && stated.size_awg === '14')
    throw new StageError(
      sizeWhere,
      'aluminum conductors begin at 12 AWG; 14 AWG is not allowed',
      'Name 12 AWG or larger, or copper',
    )
  return material
}

/** Whether the segment is stated to be a nipple; a short piece between fittings is none. */
function nippleOf(job: Job, { stated, where, developedIn }: RacewaySegment): boolean {
  if (stated.nipple !== true) return false
  const rule = job.nec('nipple').place
  if (stated.raceway === 'none')
    throw new StageError(
      `${where}.nipple`,
      'conductors without raceway are no nipple',
      'Name the raceway, or delete nipple',
    )
  if (developedIn > NIPPLE_LENGTH_IN * (1 + 1e-9))
    throw new StageError(
      `${where}.nipple`,
      `a raceway of ${Number(developedIn.toFixed(2))} in is no nipple; ${NIPPLE_LENGTH_IN} in is the most (${job.edition}, ${rule})`,
      `Delete nipple, or state a length_ft of at most ${feetOf(NIPPLE_LENGTH_IN)}, with what lies behind a conduit body`,
    )
  return true
}

function ambientOf(job: Job, { stated, where }: RacewaySegment): number {
  if (stated.ambient_c !== undefined) return finite(stated.ambient_c, `${where}.ambient_c`)
  if (stated.location === 'attic')
    throw new StageError(
      `${where}.ambient_c`,
      'the temperature of the attic is not stated, and it is hotter than the outdoor design temperature',
      'Ask the authority which attic temperature it wants (60 deg C is a usual answer), or take the raceway outside',
    )
  return outdoorDesignC(job)
}

function adderOf(job: Job, { stated, where }: RacewaySegment, cover: ConductorCover) {
  const onRoof = stated.location === 'roof' || stated.location === 'array'
  const sun = stated.sun ?? stated.location === 'roof'
  if (!onRoof || !sun) return undefined
  if (stated.height_above_roof_in === undefined)
    throw new StageError(
      `${where}.height_above_roof_in`,
      'the height of the raceway above the roof is not stated, and the sun heats a low raceway by up to 33 deg C',
      'Measure from the roof surface to the bottom of the raceway; its supports decide it',
    )
  return rooftopAdderRow(job.edition, finite(stated.height_above_roof_in, `${where}.height_above_roof_in`), cover)
}
