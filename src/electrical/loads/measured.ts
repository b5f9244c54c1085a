import { documentName, documentsOf } from '../../project/facts.js'
import type { MeasuredDemand } from '../../project/index.js'
import { MEASURED_FACTOR } from '../../tables/nec/index.js'
import { StageError } from '../../worksheet/index.js'
import { applianceLoads } from './appliance-load.js'
import { recordSum } from './general-load.js'
import { recordLoad, refuse, WHERE, type LoadJob } from './load-job.js'
import type { MethodLoad } from './method-load.js'

const PLACE = `${WHERE}.measured`

/**
 * Measured demand with its factor, and new loads at their nameplates.
 *
 * @returns undefined when the record does not count.
 * @throws StageError when the demand is stated not at all or twice.
 * @source NEC 220.87 (120.87 of 2026)
 */
export function measuredLoad(load: LoadJob, volts: number): MethodLoad | undefined {
  const { measured } = load.stated
  if (measured === undefined)
    throw new StageError(PLACE, 'the measured demand is not stated', 'State measured, or choose another method')
  const trouble = troubleOf(load, measured)
  if (trouble !== undefined)
    return refuse(load, {
      severity: 'error',
      id: 'wire.load-measured',
      message: trouble.message,
      where: trouble.where,
      fix: trouble.fix,
      source: load.section('.87'),
    })
  const peakVa = peakOf(measured, volts)
  const added = applianceLoads(load).filter(({ isNew }) => isNew)
  const newVa = recordSum(load, 'appliances', 'New loads at their nameplates', added, '.87')
  const document = documentsOf(load.job.project).find(({ id }) => id === measured.document)
  const va = recordLoad(load, {
    id: 'total',
    says: `Load of the dwelling: ${measured.period === 'year' ? 'the largest demand of a year' : 'the largest demand of 30 days'}, measured, and new loads`,
    formula: 'm * Q + P',
    inputs: [
      ['m', MEASURED_FACTOR, '', 'factor of a measured demand'],
      ['Q', peakVa, 'VA', document === undefined ? PLACE : `${PLACE}: ${documentName(document)}`],
      ['P', newVa, 'VA', newVa === 0 ? 'no new loads' : 'wire.load.appliances'],
    ],
    symbol: 'S',
    va: MEASURED_FACTOR * peakVa + newVa,
    source: load.section('.87'),
  })
  return { va, beforeVa: MEASURED_FACTOR * peakVa, source: load.section('.87') }
}

function peakOf({ peak_kva: kva, peak_a: amperes }: MeasuredDemand, volts: number): number {
  const peak = kva === undefined ? (amperes ?? Number.NaN) * volts : amperes === undefined ? kva * 1000 : Number.NaN
  if (Number.isFinite(peak) && peak > 0) return peak
  throw new StageError(
    PLACE,
    'the measured demand is wanted once, as peak_kva or as peak_a, above 0',
    'State the one that the record gives',
  )
}

interface Trouble {
  readonly where: string
  readonly message: string
  readonly fix: string
}

/** Why the record does not count, in the order in which a reviewer asks. */
function troubleOf({ job, factors }: LoadJob, measured: MeasuredDemand): Trouble | undefined {
  const of = (key: string, message: string, fix: string): Trouble => ({ where: `${PLACE}.${key}`, message, fix })
  const { period, pv_on_service: hasPv, pv_added_back: isGross, document: named } = measured
  const document = documentsOf(job.project).find(({ id }) => id === named)
  if (document === undefined)
    return of(
      'document',
      `'${named}' is no id of a document under documents, so the measured demand does not count`,
      'Put the record of the demand under documents with id, file, title and date',
    )
  if (document.title === undefined || document.date === undefined)
    return of(
      'document',
      `the record of the demand '${named}' has no ${document.title === undefined ? 'title' : 'date'}, so it does not count`,
      'State title and date of it under documents',
    )
  if (hasPv === undefined)
    return of(
      'pv_on_service',
      'whether photovoltaics, wind power or storage worked on the service during the record is not stated',
      'State true or false; sources hide demand',
    )
  if (period === '30_days' && hasPv)
    return of(
      'period',
      'a record of 30 days is not allowed where photovoltaics, wind power or peak shaving work on the service',
      'Use a year of gross demand, or calculate from nameplates',
    )
  if (period === '30_days' && measured.peak_a === undefined)
    return of(
      'peak_a',
      'a record of 30 days is of the current on the leg with the most load, and that is not stated',
      'State peak_a of the record',
    )
  if (hasPv && isGross !== true)
    return of(
      'pv_added_back',
      `sources worked on the service during the year, and the record is not stated to be the gross demand; ${factors.article}.87 needs that of the house`,
      'Add back what the sources gave hour by hour and state pv_added_back, or calculate from nameplates',
    )
  return undefined
}
