import type { EnergyPrice, EnergyTier } from '../../project/index.js'
import type { Carried } from './carried.js'
import type { RateHours, RateSeason } from './map-hours.js'
import { readTiers, type PricedTier } from './map-tiers.js'
import type { RateAnswers } from './rate-answers.js'
import type { RateRecord } from './rate-record.js'

/** What energy costs, by season. */
export interface MappedEnergy {
  readonly energy: Readonly<Record<string, EnergyPrice>>
  /** By period of the record. */
  readonly ladders: readonly (readonly PricedTier[])[]
  /** Seasons whose tiers count the whole bill although the record does not say so. */
  readonly sharedSeasons: readonly RateSeason[]
}

const BY_HAND = 'Write this part of the tariff from the rate sheet by hand.'

/** Energy prices of a record: rate and rider of each tier. */
export function mapEnergy(record: RateRecord, hours: RateHours, answers: RateAnswers, carried: Carried): MappedEnergy {
  const structure = record.energyratestructure ?? []
  if (structure.length === 0)
    carried.impossible('energyratestructure', 'the record has no energy prices', 'Save another record of this rate.')
  const unit = tierUnit(record, carried)
  const ladders = structure.map((tiers, p) => readTiers(`energyratestructure[${p}]`, tiers, unit, carried))
  tellImplausible(ladders, hours, carried)
  const sharedSeasons: RateSeason[] = []
  const price = (season: RateSeason): EnergyPrice => {
    const own = hours.periods.filter(({ id }) => season.periods.includes(id))
    const ladderOf = (energy: number): readonly PricedTier[] => ladders[energy] ?? []
    const written = (energy: number): EnergyTier[] => writtenTiers(ladderOf(energy), unit)
    const used = [...new Set(own.map(({ energy }) => energy))]
    const [only = 0] = used
    if (used.length === 1) {
      const [first] = written(only)
      return ladderOf(only).length > 1 ? { tiers: written(only) } : { usd_per_kwh: first?.usd_per_kwh ?? 0 }
    }
    if (used.every((energy) => ladderOf(energy).length === 1))
      return {
        periods_usd_per_kwh: Object.fromEntries(own.map(({ id, energy }) => [id, ladderOf(energy)[0]?.usd ?? 0])),
      }
    const tiers = Object.fromEntries<EnergyTier[]>(own.map(({ id, energy }) => [id, written(energy)]))
    const ends = new Set(used.map((energy) => JSON.stringify(ladderOf(energy).map(({ upTo }) => upTo ?? null))))
    if (answers.tiersCount === 'each_period') {
      if (own.length > used.length)
        carried.impossible(
          'demandweekdayschedule',
          `in ${season.id} demand has other hours than energy, and tiers that count each period by itself cannot be split`,
          BY_HAND,
        )
      return { periods_tiers: tiers, tiers_count: 'each_period' }
    }
    if (ends.size > 1)
      carried.impossible(
        'energyratestructure',
        `the periods of ${season.id} have tiers with different ends, so they cannot count the whole bill`,
        'State --tiers-count each_period when the rate sheet counts the kWh of each period by themselves.',
      )
    else if (answers.tiersCount === undefined) sharedSeasons.push(season)
    return { periods_tiers: tiers, tiers_count: 'whole_bill' }
  }
  return {
    energy: Object.fromEntries(hours.seasons.map((season) => [season.id, price(season)])),
    ladders,
    sharedSeasons,
  }
}

function writtenTiers(ladder: readonly PricedTier[], unit: string): EnergyTier[] {
  return ladder.map(({ upTo, usd }) => ({
    ...(upTo === undefined ? {} : unit === 'kWh daily' ? { up_to_kwh_per_day: upTo } : { up_to_kwh_per_month: upTo }),
    usd_per_kwh: usd,
  }))
}

/** Unit of the ends of all tiers. */
function tierUnit(record: RateRecord, carried: Carried): string {
  const units = new Map<string, string>()
  for (const [p, tiers] of (record.energyratestructure ?? []).entries())
    for (const [t, tier] of tiers.entries()) {
      const unit = tier.unit === undefined || tier.unit === '' ? 'kWh' : tier.unit
      if (!units.has(unit)) units.set(unit, `energyratestructure[${p}][${t}].unit`)
    }
  for (const [unit, field] of units) {
    if (unit === 'kWh' || unit === 'kWh daily') continue
    carried.impossible(
      field,
      `tiers in '${unit}' grow with the billing demand or are of an unknown unit; known here: kWh, kWh daily`,
      BY_HAND,
    )
  }
  const [first = 'kWh', other] = units.keys()
  if (other !== undefined)
    carried.impossible(
      units.get(other) ?? 'energyratestructure',
      `tiers are partly in '${first}' and partly in '${other}'; all have to have one unit`,
      BY_HAND,
    )
  return first
}

function tellImplausible(ladders: readonly (readonly PricedTier[])[], hours: RateHours, carried: Carried): void {
  const used = new Set(hours.periods.map(({ energy }) => energy))
  for (const [p, ladder] of ladders.entries()) {
    if (!used.has(p)) continue
    for (const [t, { usd }] of ladder.entries()) {
      if (usd <= 2 && usd >= 0.01) continue
      const why = usd > 2 ? 'perhaps cents typed as dollars' : 'perhaps the price of delivery alone, or a slip'
      carried.warn(
        'rates.implausible',
        `energyratestructure[${p}][${t}]`,
        `${usd} USD/kWh with its rider: ${why}`,
        'Compare with the rate sheet and a bill.',
      )
    }
  }
}
