import type { Tariff } from '../../project/index.js'
import { isDay } from '../../values/index.js'
import { StageError } from '../../worksheet/index.js'
import { priceReader } from './price-reader.js'
import type { RateSheet } from './rate-sheet.js'
import { readFixed, readMinimum, readRiders, readTaxes } from './read-charges.js'
import { readDemand } from './read-demand.js'
import { contractPrice, readContract, withExportPrice } from './read-contract.js'
import { readEnergy, readTierAdders } from './read-energy.js'
import { readSeasons } from './read-seasons.js'
import { readSolar } from './read-solar.js'
import { readTimeOfUse, usedPeriods } from './read-time-of-use.js'
import { tariffAssumptions } from './tariff-assumptions.js'
import { tariffError } from './tariff-error.js'

/**
 * Checks a tariff and turns its prices into exact decimals.
 *
 * @throws StageError for overlapping or missing seasons and hours, tiers that go down, prices below zero without
 * `negative_prices`, ids that do not exist, and alternatives stated twice.
 */
export function readTariff(tariff: Tariff): RateSheet {
  const sheet = readSheet(tariff)
  return { ...sheet, later: readLater(tariff).map(({ from, sheets }) => ({ from, sheet: sheets.without })) }
}

function readSheet(tariff: Tariff): RateSheet {
  const price = priceReader(tariff.negative_prices === true)
  const { seasons, seasonOfDay } = readSeasons(tariff.seasons)
  const use = tariff.time_of_use
  const periods = use?.periods ?? ['all']
  const twice = periods.find((period, i) => periods.indexOf(period) !== i)
  if (twice !== undefined) {
    throw tariffError('time_of_use.periods', `period ${twice} is listed twice`, 'List each period once.')
  }
  const holidays = tariff.holidays?.days ?? []
  const hours =
    use === undefined
      ? { partsPerHour: 1 as const, periodOfHour: new Uint8Array(seasons.length * 96) }
      : readTimeOfUse(use, seasons, holidays.length > 0)
  const used = usedPeriods(hours, seasons.length, periods.length, holidays.length > 0)
  const energy = readEnergy(tariff.energy, seasons, periods, used, price)
  const hasTiers = energy.some((prices) =>
    prices.kind === 'tiers' ? prices.tiers.length > 1 : prices.kind === 'period tiers',
  )
  const { fixed = {}, riders = {}, demand = {}, tier_adders: adders = {}, solar } = tariff
  const chargeIds = [fixed, riders, demand, adders, solar?.fixed ?? {}].flatMap((charges) => Object.keys(charges))
  const hasAdders = hasTiers || Object.keys(adders).length > 0
  const ofTariff = readSolar(solar, periods, hasAdders, price)
  const exportContract = readContract(solar, ofTariff, price)
  const promised = exportContract === undefined ? undefined : contractPrice(exportContract, 1)
  return {
    name: tariff.name,
    source: {
      document: tariff.source ?? tariff.name,
      ...(tariff.checked === undefined ? {} : { edition: `checked ${tariff.checked}` }),
      standing: 'project file',
    },
    assumptions: tariffAssumptions(tariff),
    seasons,
    seasonOfDay,
    periods,
    ...hours,
    holidays,
    observed: tariff.holidays?.observed ?? 'none',
    fixed: readFixed('fixed', fixed, price),
    minimum: readMinimum(tariff.minimum, price),
    energy,
    tierAdders: readTierAdders(adders, seasons, price),
    riders: readRiders(riders, price),
    demand: readDemand(demand, seasons, periods, price),
    demandIntervalMin: tariff.demand_interval_min,
    taxes: readTaxes(tariff.taxes ?? {}, chargeIds, price),
    rounding: tariff.rounding,
    readDay: tariff.read_day,
    solarFixed: solar?.fixed === undefined ? undefined : readFixed('solar.fixed', solar.fixed, price),
    solar: promised === undefined ? ofTariff : withExportPrice(ofTariff, promised),
    exportContract,
    later: [],
  }
}

/** The later sheets of a tariff, with those of a solar customer. @throws StageError with the place of the sheet. */
function readLater(tariff: Tariff): { readonly from: string; readonly sheets: RateSheets }[] {
  const list = tariff.later ?? []
  return list.map(({ from, tariff: other }, i) => {
    const place = `later.${String(i)}`
    if (!isDay(from)) throw tariffError(`${place}.from`, `there is no day ${from}`, 'State year-month-day.')
    if (i > 0 && from <= (list[i - 1]?.from ?? '')) {
      throw tariffError(`${place}.from`, `${from} is not after the sheet before it`, 'List the sheets oldest first.')
    }
    if (other.later !== undefined || other.solar?.tariff?.later !== undefined) {
      throw tariffError(
        `${place}.tariff.later`,
        'a later sheet has later sheets of its own',
        'List all in tariff.later.',
      )
    }
    try {
      const sheets = readTariffs(other)
      if (sheets.withSystem.exportContract !== undefined) {
        throw tariffError(
          'solar.export_contract',
          'a later sheet has an export contract',
          'State the contract with the sheet of today; it goes on under later ones.',
        )
      }
      return { from, sheets }
    } catch (error) {
      if (!(error instanceof StageError)) throw error
      throw new StageError(`tariff.${place}.${error.where}`, error.message, error.fix)
    }
  })
}

/** Tariffs without and with the system. */
export interface RateSheets {
  readonly without: RateSheet
  readonly withSystem: RateSheet
}

/**
 * Reads a tariff and, where a solar customer is moved to another one, that too.
 *
 * @throws StageError as `readTariff`, when there is no tariff, or when rules stand beside the other tariff.
 */
export function readTariffs(tariff: Tariff | undefined): RateSheets {
  if (tariff === undefined) {
    throw tariffError(
      '',
      'there is no tariff',
      'Copy the rate sheet of the utility into `tariff`; a bill names the rate.',
    )
  }
  const { tariff: other, ...rules } = tariff.solar ?? {}
  const later = readLater(tariff)
  const dated = (sheet: RateSheet, which: keyof RateSheets): RateSheet =>
    later.length === 0 ? sheet : { ...sheet, later: later.map((one) => ({ from: one.from, sheet: one.sheets[which] })) }
  const without = dated(readSheet(tariff), 'without')
  if (other === undefined) {
    // One sheet for both, where the later ones are too.
    const same = later.every(({ sheets }) => sheets.without === sheets.withSystem)
    return { without, withSystem: same ? without : dated(readSheet(tariff), 'withSystem') }
  }
  if (other.later !== undefined) {
    throw tariffError(
      'solar.tariff.later',
      'the other tariff has later sheets',
      'List them in tariff.later, each with its own solar.tariff.',
    )
  }
  if (Object.keys(rules).length > 0) {
    throw tariffError(
      'solar',
      'another tariff and rules of this one are both stated',
      'Move the rules into solar.tariff.solar.',
    )
  }
  try {
    return { without, withSystem: dated(readSheet(other), 'withSystem') }
  } catch (error) {
    if (!(error instanceof StageError)) throw error
    throw new StageError(`tariff.solar.${error.where}`, error.message, error.fix)
  }
}
