import { addDays, dateText, dayNumber } from '../../values/index.js'
import type { Carried } from './carried.js'
import type { RateHours } from './map-hours.js'
import { saysSomething } from './map-demand.js'
import type { RateAnswers } from './rate-answers.js'
import { COMMENTS, ELIGIBILITY, FIELDS, HARMLESS, type RateRecord } from './rate-record.js'

/** First and last day of a record, UTC; either may be off by the zone of the utility. */
export interface RateDates {
  readonly from: string | undefined
  readonly to: string | undefined
}

export function datesOf({ startdate, enddate }: RateRecord): RateDates {
  const day = (seconds: number | undefined): string | undefined =>
    seconds === undefined || Math.abs(seconds) > 1e11 ? undefined : dateText(dayNumber(seconds * 1000))
  return { from: day(startdate), to: day(enddate) }
}

/** What a person has to know of a record before it is believed: whom it is for, how good it is, and what it leaves out. */
export function tellLimits(record: RateRecord, hours: RateHours, answers: RateAnswers, carried: Carried): void {
  const { sector, servicetype, country, demandwindow } = record
  if (sector !== undefined && sector !== 'Residential')
    carried.refuse('sector', `the rate is for '${sector}', not for homes`, 'Look for the Residential rate.')
  if (servicetype !== undefined && servicetype !== 'Bundled')
    carried.warn(
      'rates.check',
      'servicetype',
      `'${servicetype}' is only a part of the bill`,
      'Add the other part under energy, fixed and riders.',
    )
  if (country !== undefined && country !== 'USA')
    carried.refuse('country', `'${country}': amounts may be in another currency than dollars`, 'Write it by hand.')
  tellDates(record, answers, carried)
  tellWords(record, carried)
  if (hours.timeOfUse !== undefined)
    carried.warn(
      'rates.check',
      'energyweekendschedule',
      'a record has no holidays, and most rate sheets bill them like weekends: none is counted',
      'Add tariff.holidays.days from the rate sheet.',
    )
  if (demandwindow !== undefined && ![15, 30, 60].includes(demandwindow))
    carried.warn('rates.ignored', 'demandwindow', `${demandwindow} minutes is left out`, 'Demand is that of hours.')
  carried.assume(
    'tariff.rounding',
    'the record does not say how the bill is rounded: only the sum is, here',
    'Compare a printed bill; `line` rounds each line.',
  )
  carried.assume(
    'tariff.taxes',
    'a record holds no taxes, franchise fees, percent riders or day of the reading',
    'Add them from a bill; `gablewatt check-bill` tells what is missing.',
  )
}

/** A day of slack: stamps of records are midnights of some zone. */
function tellDates(record: RateRecord, { on }: RateAnswers, carried: Carried): void {
  const { from, to } = datesOf(record)
  if (from === undefined)
    carried.warn('rates.dates', 'startdate', 'the record does not say from when it holds', 'Look at the rate sheet.')
  if (on === undefined) return
  if (to !== undefined && addDays(to, 1) < on)
    carried.warn(
      'rates.dates',
      'enddate',
      `the rate ended on ${to}, before ${on}`,
      'Look for the one that followed it.',
    )
  if (from !== undefined && addDays(from, -1) > on)
    carried.warn('rates.dates', 'startdate', `the rate holds from ${from}, after ${on}`, 'Look for the one before it.')
}

function tellWords(record: RateRecord, carried: Carried): void {
  for (const field of COMMENTS) {
    if (!saysSomething(record[field])) continue
    const words = sayWords(record[field])
    carried.warn(
      'rates.comments',
      field,
      `rules that no key holds may stand here: ${words}`,
      'Read it, and add them by hand.',
    )
  }
  const limits = ELIGIBILITY.filter((field) => saysSomething(record[field]) && record[field] !== 'Single Phase')
  if (limits.length > 0)
    carried.warn(
      'rates.eligibility',
      limits[0] ?? '',
      `the rate is only for some customers: ${limits.map((field) => `${field} ${sayWords(record[field])}`).join(', ')}`,
      'Compare with the use and the service of the house.',
    )
  const known = [...Object.keys(FIELDS), ...HARMLESS, ...ELIGIBILITY, ...COMMENTS]
  const unknown = Object.keys(record).filter(
    (field) => !known.includes(field) && !field.startsWith('lookback') && saysSomething(record[field]),
  )
  if (unknown.length > 0)
    carried.warn(
      'rates.ignored',
      unknown[0] ?? '',
      `fields that are not known here are left out: ${unknown.join(', ')}`,
      'Look whether one of them changes the bill.',
    )
}

function sayWords(value: unknown): string {
  const text = typeof value === 'string' ? value : JSON.stringify(value)
  const line = text.replaceAll(/\s+/gu, ' ').trim()
  return line.length > 400 ? `${line.slice(0, 397)}...` : line
}
