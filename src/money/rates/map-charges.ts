import type { FixedCharge, MinimumCharge, Rider } from '../../project/index.js'
import { decimal } from '../../values/decimal/index.js'
import type { Carried } from './carried.js'
import type { RateRecord } from './rate-record.js'

const UNITS = '$/day, $/month, $/year'

/** An amount per month or per day from one of the units of a record. */
function perMonthOrDay(
  field: string,
  usd: number,
  unit: string | undefined,
  carried: Carried,
): { usd_per_month: number } | { usd_per_day: number } | undefined {
  switch (unit ?? '') {
    case '$/day':
      return { usd_per_day: usd }
    case '$/month':
      return { usd_per_month: usd }
    case '$/year': {
      const month = decimal(usd).div(12).roundedTo(6).toNumber()
      carried.warn('rates.check', field, `${usd} USD/year is written as ${month} USD/month`, 'Compare with a bill.')
      return { usd_per_month: month }
    }
    default:
      carried.refuse(
        field,
        `${usd} in ${unit === undefined || unit === '' ? 'no unit' : `'${unit}'`}; known are ${UNITS}`,
        'Take the charge from the rate sheet.',
      )
      return undefined
  }
}

/** The customer charge of the first meter. */
export function mapFixed(record: RateRecord, carried: Carried): Record<string, FixedCharge> {
  const { fixedchargefirstmeter: first, fixedmonthlycharge: monthly, fixedchargeeaaddl: another = 0 } = record
  if (first !== undefined && monthly !== undefined && (first !== monthly || record.fixedchargeunits !== '$/month')) {
    carried.impossible(
      'fixedmonthlycharge',
      `${monthly} USD/month beside fixedchargefirstmeter ${first} ${record.fixedchargeunits ?? ''}: two customer charges`,
      'Keep the one of the rate sheet in the file.',
    )
    return {}
  }
  if (another !== 0)
    carried.warn(
      'rates.ignored',
      'fixedchargeeaaddl',
      `${another} for each further meter is left out: one meter is billed`,
      'Add it under tariff.fixed when the house has more.',
    )
  const charge =
    first === undefined
      ? monthly === undefined
        ? undefined
        : { usd_per_month: monthly }
      : first === 0
        ? undefined
        : perMonthOrDay('fixedchargefirstmeter', first, record.fixedchargeunits, carried)
  return charge === undefined ? {} : { customer: charge }
}

/** The least bill. The record does not say what it is compared with. */
export function mapMinimum(record: RateRecord, carried: Carried): MinimumCharge | undefined {
  const { mincharge: stated = 0, minmonthlycharge: monthly = 0, annualmincharge: annual = 0 } = record
  if (annual !== 0)
    carried.refuse(
      'annualmincharge',
      `a minimum of ${annual} USD a year, which is settled once a year`,
      'Ask the utility how it is settled, and allow for it by hand.',
    )
  if (stated !== 0 && monthly !== 0 && (stated !== monthly || record.minchargeunits !== '$/month'))
    carried.impossible(
      'minmonthlycharge',
      `${monthly} USD/month beside mincharge ${stated} ${record.minchargeunits ?? ''}: two minimums`,
      'Keep the one of the rate sheet in the file.',
    )
  if (stated === 0 && monthly === 0) return undefined
  const amount =
    stated === 0 ? { usd_per_month: monthly } : perMonthOrDay('mincharge', stated, record.minchargeunits, carried)
  if (amount === undefined) return undefined
  carried.assume(
    'tariff.minimum.of',
    'the record does not say what the minimum is compared with; here it is the whole bill before taxes, and no export credit goes below it',
    'Compare with the rate sheet; `energy` is the other choice.',
  )
  return { ...amount, of: 'bill' }
}

/** Riders that change monthly. */
export function mapRiders(record: RateRecord): Record<string, Rider> {
  const months = record.fueladjustmentsmonthly
  if (months === undefined || months.every((usd) => usd === 0)) return {}
  const [first = 0] = months
  const price = months.every((usd) => usd === first) ? first : [...months]
  return { fuel_adjustment: { usd_per_kwh: price } }
}
