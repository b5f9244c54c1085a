import type { Project } from '../../project/index.js'
import { StageError, Worksheet, type Result } from '../../worksheet/index.js'
import { statedDegradation, type YieldRun } from '../../yield/index.js'
import { thirdPartyOf } from '../cash-flow/index.js'
import { payback, type PaybackValues } from '../payback/index.js'
import { ratedAcKw } from '../../roof/index.js'
import { readStorage } from '../storage/index.js'
import { readHouse } from './read-house.js'
import { withSpread } from './with-spread.js'
import type { Dollars } from '../../values/index.js'

/** Where the cost of the system comes from; the first that is there counts, and after it `finance.installed_cost_usd`. */
export interface PaybackOptions {
  /** Price before incentives, USD; wins over the project's. */
  readonly installedCostUsd?: Dollars
  /** Total of the bill of materials before incentives, USD; taken when no price is stated. */
  readonly billOfMaterialsUsd?: Dollars
  /** The energy estimate of this very project, where it is known already. */
  readonly estimate?: () => YieldRun
  /** Whether the spread of the running sum of every year is told too. */
  readonly cashBand?: boolean
  /** Whether the sensitivity table is left out. */
  readonly brief?: boolean
  /** Whether the optimum of a battery by perfect foresight is told too. */
  readonly optimum?: boolean
}

/**
 * Payback of the system of a project.
 *
 * @throws StageError when cost, tariff, use or a part of the energy estimate is missing.
 */
export function paybackOfProject(
  project: Project,
  files: ReadonlyMap<string, string> = new Map(),
  options: PaybackOptions = {},
): Result<PaybackValues> {
  const { installedCostUsd = project.finance?.installed_cost_usd, billOfMaterialsUsd } = options
  const isOwned = thirdPartyOf(project.finance ?? {}) === undefined
  if (isOwned && installedCostUsd === undefined && billOfMaterialsUsd === undefined) throw costUnknown()
  const worksheet = new Worksheet()
  const { sheets, usage, usageOf, run, hours } = readHouse(project, files, worksheet, options.estimate)
  const finance = withSpread(project.finance ?? {}, run, worksheet)
  const degradationPct = statedDegradation(project)?.pctPerYear
  const battery = readStorage(project, sheets.withSystem, usage.calendar, worksheet)
  const result = payback({
    sheet: sheets.without,
    sheetWithSystem: sheets.withSystem,
    energy: { kind: 'hourly', usageKwh: usage.usageKwh, productionKwh: hours.kwh },
    calendar: usage.calendar,
    dcRatingW: run.result.values.rated_kw * 1000,
    finance: installedCostUsd === undefined ? finance : { ...finance, installed_cost_usd: installedCostUsd },
    incentives: project.incentives ?? {},
    cashBand: options.cashBand === true,
    brief: options.brief === true,
    ...(battery === undefined
      ? {}
      : { battery: { house: battery, acKw: ratedAcKw(project), optimum: options.optimum === true } }),
    ...(billOfMaterialsUsd === undefined ? {} : { billOfMaterialsUsd }),
    ...(usageOf === undefined ? {} : { usageOf }),
    ...(degradationPct === undefined ? {} : { degradationPct }),
  })
  worksheet.include(result)
  return worksheet.result(result.values)
}

function costUnknown(): StageError {
  return new StageError(
    'finance.installed_cost_usd',
    'the cost of the system is not known',
    'State the price of the quote as finance.installed_cost_usd or with --cost, or give the bill of materials with --use bom.json',
  )
}
