import { lengthChangeIn, needsExpansionFitting } from './pvc-movement.js'
import { outdoorDesignC, type Job } from '../system/index.js'
import type { RacewaySegment } from './raceway-segment.js'
import { FAHRENHEIT_PER_KELVIN, inchesOf, type Celsius, type Inches } from '../../values/index.js'

/** What sunlight adds to the temperature of PVC, deg F. */
const SUN_F = 30

/** Change of length of a PVC raceway over the year, and whether it needs an expansion fitting. */
export interface Expansion {
  readonly changeIn: Inches | undefined
  readonly fitting: boolean
}

const OUTSIDE = new Set(['array', 'roof', 'outdoor_wall', 'attic'])

/**
 * Expansion of one segment; only PVC outside conditioned space moves enough to matter.
 *
 * @source NEC 352.44
 */
export function checkExpansion(job: Job, { id, stated, where, lengthWhere }: RacewaySegment): Expansion {
  if (stated.raceway !== 'PVC 40' && stated.raceway !== 'PVC 80') return { changeIn: undefined, fitting: false }
  if (!OUTSIDE.has(stated.location) && stated.expansion_range_f === undefined)
    return { changeIn: undefined, fitting: false }
  const rangeF =
    stated.expansion_range_f ?? rangeOf(job, id, stated.sun ?? stated.location !== 'attic', stated.ambient_c)
  if (rangeF === undefined) {
    job.worksheet.find({
      severity: 'warning',
      id: 'wire.expansion-unknown',
      message: `the expansion of PVC in ${id} was not checked because the lowest temperature of the site is not known`,
      where: `${where}.expansion_range_f`,
      source: job.nec('pvcExpansion'),
      fix: 'State the temperature range of the raceway',
    })
    return { changeIn: undefined, fitting: false }
  }
  const changeIn = lengthChangeIn('pvc', stated.length_ft, rangeF)
  const fitting = needsExpansionFitting(changeIn)
  job.worksheet.note({
    id: `wire.${id}.expansion`,
    says: fitting
      ? 'PVC between fixed points: an expansion fitting is needed, as from 0.25 in on'
      : 'PVC between fixed points: no expansion fitting is needed, as below 0.25 in',
    formula: 'change = L x 3.38e-5 x range',
    inputs: [
      { symbol: 'L', value: inchesOf(stated.length_ft), unit: 'in', from: lengthWhere },
      {
        symbol: 'range',
        value: rangeF,
        unit: 'deg F',
        from: stated.expansion_range_f === undefined ? `wire.${id}.expansion-range` : `${where}.expansion_range_f`,
      },
    ],
    result: { symbol: 'change', value: changeIn, unit: 'in' },
    source: job.nec('pvcExpansion'),
  })
  if (fitting)
    job.worksheet.find({
      severity: 'note',
      id: 'wire.expansion-fitting',
      message: `${id} changes its length by ${changeIn.toFixed(2)} in over the year and needs an expansion fitting`,
      where,
      source: job.nec('pvcExpansion'),
      fix: 'Fit one between the fixed ends and strap the moving side loosely',
    })
  return { changeIn, fitting }
}

function rangeOf(job: Job, id: string, sun: boolean, ambientC: Celsius | undefined): number | undefined {
  const low = job.context.designTemperatures.extremeLow?.valueC
  if (low === undefined) return undefined
  const highC = ambientC ?? outdoorDesignC(job)
  const sunF = sun ? addedBySunF(job) : 0
  const rangeF = (highC - low) * FAHRENHEIT_PER_KELVIN + sunF
  job.worksheet.note({
    id: `wire.${id}.expansion-range`,
    says: 'Range of temperature of the PVC over the year',
    formula: 'range = (T_high - T_low) x 1.8 + sun',
    inputs: [
      { symbol: 'T_high', value: highC, unit: 'deg C', from: 'hot design temperature, or ambient_c' },
      { symbol: 'T_low', value: low, unit: 'deg C', from: 'lowest design temperature' },
      { symbol: 'sun', value: sunF, unit: 'deg F', from: sun ? 'electrical.runs.expansion_sun_f' : 'in the shade' },
    ],
    result: { symbol: 'range', value: rangeF, unit: 'deg F' },
    source: job.nec('pvcExpansion'),
  })
  return rangeF
}

const addedBySunF = (job: Job): number =>
  job.worksheet.assume({
    path: 'electrical.runs.expansion_sun_f',
    value: SUN_F,
    unit: 'deg F',
    why: 'Sunlight warms PVC by about 30 deg F above the air',
    source: { document: 'instructions of conduit makers', standing: 'from memory' },
  })
