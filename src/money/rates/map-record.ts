import type { Tariff } from '../../project/index.js'
import type { Carried } from './carried.js'
import { mapFixed, mapMinimum, mapRiders } from './map-charges.js'
import { mapDemand } from './map-demand.js'
import { mapEnergy } from './map-energy.js'
import { mapHours } from './map-hours.js'
import { mapSolar } from './map-solar.js'
import { hasPrice } from './map-tiers.js'
import type { RateAnswers } from './rate-answers.js'
import type { RateRecord } from './rate-record.js'
import { datesOf, tellLimits } from './tell-limits.js'
import { tellTierCount } from './tier-count-difference.js'

/** The tariff of a record, as far as it can be carried over; `carried` takes what cannot. */
export function mapRecord(record: RateRecord, answers: RateAnswers, carried: Carried): Tariff {
  const byDemand = hasPrice(record.demandratestructure)
  const hours = mapHours(record, byDemand, carried)
  const { energy, ladders, sharedSeasons } = mapEnergy(record, hours, answers, carried)
  const fixed = mapFixed(record, carried)
  const minimum = mapMinimum(record, carried)
  const riders = mapRiders(record)
  const demand = mapDemand(record, hours, carried)
  const solar = mapSolar(record, hours, ladders, answers, carried)
  tellLimits(record, hours, answers, carried)
  const interval = [15, 30, 60].includes(record.demandwindow ?? 0) ? (record.demandwindow as 15 | 30 | 60) : undefined
  const has = (map: object): boolean => Object.keys(map).length > 0
  if (interval !== undefined && interval < 60 && has(demand))
    carried.warn(
      'rates.check',
      'demandwindow',
      `demand is averaged over ${interval} minutes; hourly use understates it`,
      'Take the demand of a printed bill as the better figure.',
    )
  const isNegative = (value: unknown): boolean =>
    typeof value === 'number'
      ? value < 0
      : typeof value === 'object' && value !== null && Object.values(value).some(isNegative)
  const negative = isNegative([energy, fixed, riders, demand, solar])
  if (negative)
    carried.warn('rates.check', 'adj', 'a price below zero is taken as meant', 'Compare with the rate sheet.')
  const tariff: Tariff = {
    name: nameOf(record),
    source: sourceOf(record, answers),
    ...(negative ? { negative_prices: true } : {}),
    ...(hours.stated === undefined ? {} : { seasons: hours.stated }),
    ...(hours.timeOfUse === undefined ? {} : { time_of_use: hours.timeOfUse }),
    ...(has(fixed) ? { fixed } : {}),
    ...(minimum === undefined ? {} : { minimum }),
    energy,
    ...(has(riders) ? { riders } : {}),
    ...(has(demand) ? { demand } : {}),
    ...(interval === undefined ? {} : { demand_interval_min: interval }),
    rounding: 'total',
    ...(solar === undefined ? {} : { solar }),
  }
  if (carried.refused.every(({ canBeLeftOut }) => canBeLeftOut)) tellTierCount(tariff, sharedSeasons, carried)
  return tariff
}

const nameOf = ({ utility, name, label }: RateRecord): string =>
  [utility, name].filter((part) => part !== undefined && part.trim() !== '').join(', ') ||
  (label ?? 'rate without a name')

/** The line of the source: which record, of which version, from when. */
export function sourceOf(record: RateRecord, { version, downloaded }: RateAnswers): string {
  const { from, to } = datesOf(record)
  return [
    `public utility rate database, record ${record.label ?? 'without a label'}`,
    version === undefined ? 'version of the service not stated' : `version ${version} of the service`,
    downloaded === undefined ? 'day of the download not stated' : `downloaded ${downloaded}`,
    `effective ${from ?? 'from an unknown day'}${to === undefined ? '' : ` to ${to}`}`,
    record.approved === true ? 'approved by the database' : 'not approved by the database',
  ].join('; ')
}
