import { insulationTypes, NIPPLE_LENGTH_IN, type ConductorMaterial, type Insulation } from '../../tables/nec/index.js'
import { StageError } from '../../worksheet/index.js'
import { adjustmentFactor, ambientFactor, rooftopAdderRow } from '../conductors/index.js'
import { countedConductors, isAc, finite, outdoorDesignC, practice, type Job } from '../system/index.js'
import type { RacewaySegment } from './raceway-segment.js'
import { feetOf, inchesOf, type Celsius, type Kelvins } from '../../values/index.js'

/** Everything that lowers ampacity in one segment. */
export interface SegmentConditions {
  readonly insulation: Insulation
  readonly material: ConductorMaterial
  readonly freeAir: boolean
  readonly ambientC: Celsius
  readonly adderC: Kelvins
  /** Section of the rooftop adder; undefined where none applies. */
  readonly adderSection: string | undefined
  readonly temperatureC: Celsius
  readonly correction: number
  readonly currentCarrying: number
  readonly nipple: boolean
  readonly adjustment: number
}

/** Locations whose raceways are wet inside. @source NEC 300.9 */
const WET = new Set(['array', 'roof', 'outdoor_wall', 'buried'])

/**
 * Ambient, rooftop adder, correction and adjustment of one segment.
 *
 * @throws StageError when a height, an attic temperature or a suitable insulation is missing, or a nipple is too long.
 */
export function segmentConditions(job: Job, segment: RacewaySegment): SegmentConditions {
  const { stated, where } = segment
  const freeAir = stated.raceway === 'none'
  const insulation = insulationOf(job, segment, freeAir)
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
      segment.sizeWhere,
      'aluminum conductors begin at 12 AWG; 14 AWG is not allowed',
      'Name 12 AWG or larger, or copper',
    )
  checkPlace(job, segment, insulation, freeAir)
  const ambientC = ambientOf(job, segment)
  const adder = adderOf(job, segment, insulation)
  const temperatureC = ambientC + (adder?.adderC ?? 0)
  const correction = ambientFactor(temperatureC, 90)
  if (correction === undefined)
    throw new StageError(
      where,
      `${temperatureC} deg C round the conductors (${ambientC} deg C air and ${adder?.adderC ?? 0} deg C from the roof) is too hot for 90 deg C insulation`,
      'Raise the raceway above the roof, or take it out of the sun',
    )
  const counted = segment.circuits.reduce((sum, circuit) => sum + countedConductors(job, circuit, segment.neutral), 0)
  const currentCarrying = counted + (stated.other_conductors?.current_carrying ?? 0)
  const nipple = nippleOf(job, segment)
  return {
    insulation,
    material,
    freeAir,
    ambientC,
    adderC: adder?.adderC ?? 0,
    adderSection: adder?.section,
    temperatureC,
    correction,
    currentCarrying,
    nipple,
    adjustment: adjustmentFactor(currentCarrying, nipple),
  }
}

/** Whether the segment is stated to be a nipple; a short piece between fittings is none. */
function nippleOf(job: Job, { stated, where }: RacewaySegment): boolean {
  if (stated.nipple !== true) return false
  const rule = job.nec('nipple').place
  if (stated.raceway === 'none')
    throw new StageError(
      `${where}.nipple`,
      'conductors without raceway are no nipple',
      'Name the raceway, or delete nipple',
    )
  const lengthIn = inchesOf(stated.length_ft)
  if (lengthIn > NIPPLE_LENGTH_IN * (1 + 1e-9))
    throw new StageError(
      `${where}.nipple`,
      `a raceway of ${Number(lengthIn.toFixed(2))} in is no nipple; ${NIPPLE_LENGTH_IN} in is the most (${job.edition}, ${rule})`,
      `Delete nipple, or state a length_ft of at most ${feetOf(NIPPLE_LENGTH_IN)}`,
    )
  return true
}

function insulationOf(job: Job, segment: RacewaySegment, freeAir: boolean): Insulation {
  if (segment.stated.insulation !== undefined) return segment.stated.insulation
  return freeAir
    ? job.worksheet.assume({
        path: 'electrical.runs.insulation_in_array',
        value: 'PV wire' as const,
        unit: '',
        why: 'PV wire for exposed conductors within the array',
        source: job.nec('arrayWire'),
      })
    : job.worksheet.assume({
        path: 'electrical.runs.insulation_in_raceway',
        value: 'THWN-2' as const,
        unit: '',
        why: 'THWN-2 in raceways, rated 90 deg C wet and dry',
        source: job.nec('wetRaceway'),
      })
}

function checkPlace(
  job: Job,
  { stated, where, circuits }: RacewaySegment,
  insulation: Insulation,
  freeAir: boolean,
): void {
  const row = insulationTypes.find((candidate) => candidate.type === insulation)
  if (freeAir && stated.location !== 'array')
    throw new StageError(
      `${where}.raceway`,
      `conductors without raceway are covered only within the array, not at '${stated.location}'`,
      'Name a raceway; for cable wiring methods ask an electrician',
    )
  if (freeAir && circuits.some(isAc))
    throw new StageError(
      `${where}.raceway`,
      'AC circuits lie exposed in the array only as listed trunk cable, which belongs to the branch and not to a run',
      'Begin the run at the junction box with a raceway',
    )
  if (freeAir && row?.exposedInArray.includes(job.edition) !== true)
    throw new StageError(
      `${where}.insulation`,
      `${insulation} is not allowed as exposed conductor in the array`,
      'Use PV wire',
    )
  if (!freeAir && WET.has(stated.location) && (row?.wetC ?? 0) < 90)
    throw new StageError(
      `${where}.insulation`,
      `${insulation} is not rated for the wet inside of a raceway at '${stated.location}'`,
      'Use THWN-2 or XHHW-2',
    )
  if (insulation === 'USE-2')
    job.worksheet.find({
      severity: 'warning',
      id: 'wire.use-2-marking',
      message: `USE-2 at ${where}: ${row?.condition ?? ''}`,
      where: `${where}.insulation`,
      source: job.nec('arrayWire'),
      fix: 'Read the marking on the wire, or use PV wire in the array and THWN-2 in raceways',
    })
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

function adderOf(job: Job, { stated, where }: RacewaySegment, insulation: Insulation) {
  const onRoof = stated.location === 'roof' || stated.location === 'array'
  const sun = stated.sun ?? stated.location === 'roof'
  if (!onRoof || !sun) return undefined
  if (stated.height_above_roof_in === undefined)
    throw new StageError(
      `${where}.height_above_roof_in`,
      'the height of the raceway above the roof is not stated, and the sun heats a low raceway by up to 33 deg C',
      'Measure from the roof surface to the bottom of the raceway; its supports decide it',
    )
  return rooftopAdderRow(job.edition, finite(stated.height_above_roof_in, `${where}.height_above_roof_in`), insulation)
}
