import type { PriceList } from '../../materials/index.js'
import { StageError, Worksheet, type Result } from '../../worksheet/index.js'
import type { YieldContext, YieldRun } from '../../yield/index.js'
import type { HouseInput, HouseOptions } from '../house-input.js'
import { madeUpFindings } from '../made-up.js'
import { runHouse } from '../run-house.js'
import { breakEvenUsd, scoreOf } from './break-even.js'
import { checkWishes, combinationsOf, type PartsWishes } from './make-combinations.js'
import type { BreakEvenValue, DroppedValue, OptionValue, PartsRank, PartsValues } from './parts-values.js'
import { checkSizes } from './size-arrays.js'
import { forTrials, tryCombination, type Held, type TrialHouse } from './try-combination.js'

/** What is compared, by which yardstick, and the files of the project. */
export interface ComparePartsOptions extends PartsWishes {
  readonly by: PartsRank
  /** The price list that was read, under its name, with its text. */
  readonly prices: { readonly name: string; readonly text: string; readonly list: PriceList }
  /** Told before each combination. */
  readonly progress?: (done: number, of: number) => void
}

/** Far more than a person looks at. */
export const MOST_COMBINATIONS = 1000
/** Places of which it is told what the next one would have to cost. */
const BEST = 3

/**
 * Every combination of listed modules, inverters and sizes, worked out from the roof to the payback; those that fail are dropped with
 * their reasons, the others ranked.
 *
 * @param input With its arrays as the person states them.
 * @throws StageError for an id that is not there, sizes of arrays that were placed by hand, too many combinations, or a lease.
 */
export async function compareParts(input: HouseInput, options: ComparePartsOptions): Promise<Result<PartsValues>> {
  const { by, prices } = options
  const worksheet = new Worksheet()
  refuse(input, options)
  const files = new Map([...(input.files ?? []), [prices.name, prices.text]])
  const trialInput = { ...input, files, project: forTrials(input.project, prices.name) }
  const runYield = await sharedSky()
  const order = options.sizes.length === 0 ? [] : await bestFirst(trialInput, runYield, worksheet)
  const trial: TrialHouse = { input: trialInput, order, runYield }
  const combinations = combinationsOf(options)
  const held: Held[] = []
  const dropped: DroppedValue[] = []
  for (const [i, combination] of combinations.entries()) {
    options.progress?.(i, combinations.length)
    const outcome = await tryCombination(trial, combination)
    if ('value' in outcome) held.push(outcome)
    else dropped.push({ ...combination, reasons: outcome })
  }
  const ranked = held.toSorted(
    (a, b) => scoreOf(by, b.value) - scoreOf(by, a.value) || b.value.npv_usd - a.value.npv_usd,
  )
  const values = ranked.map(({ value }, i): OptionValue => ({ place: i + 1, ...value }))
  tell(input, values, dropped, worksheet)
  recordBest(values, worksheet)
  return worksheet.result({
    by,
    supplier: prices.list.supplier,
    combinations: combinations.length,
    money: ranked[0]?.money ?? null,
    options: values,
    break_even: await breakEvens(by, ranked, values),
    dropped,
  })
}

function refuse({ project }: HouseInput, options: ComparePartsOptions): void {
  checkWishes(project, options)
  if (options.sizes.length > 0) checkSizes(project)
  const { lease, power_purchase: purchase } = project.finance ?? {}
  if (lease !== undefined || purchase !== undefined) {
    throw new StageError(
      lease === undefined ? 'finance.power_purchase' : 'finance.lease',
      'parts are compared by their price, and under a lease or a power purchase the customer buys none',
      'Take the contract out of the project for this comparison.',
    )
  }
  const count = combinationsOf(options).length
  if (count > MOST_COMBINATIONS) {
    throw new StageError(
      '',
      `${String(count)} combinations are asked for; at most ${String(MOST_COMBINATIONS)} are compared`,
      'Name fewer.',
    )
  }
}

/** Climate and sky are those of the site, whatever lies on the roof. */
async function sharedSky(): Promise<NonNullable<HouseOptions['runYield']>> {
  const { runYield } = await import('../../yield/index.js')
  let context: YieldContext | undefined
  return (project, files): YieldRun => {
    const run = runYield(project, files, context)
    context ??= { climate: run.climate, steps: run.steps }
    return run
  }
}

/** Arrays by the energy of a module of the project as it stands. */
async function bestFirst(input: HouseInput, runYield: TrialHouse['runYield'], worksheet: Worksheet): Promise<string[]> {
  const { countFitted } = await import('../../roof/index.js')
  const { arrays } = (await runHouse({ ...input, project: countFitted(input.project) }, { runYield }).yield()).values
  const perModule = Object.entries(arrays).map(([id, { annual, modules }]) => ({
    id,
    whole: annual.ac_kwh,
    modules,
    kwh: annual.ac_kwh / modules,
  }))
  const order = perModule.toSorted((a, b) => b.kwh - a.kwh)
  for (const { id, kwh, whole, modules } of order) {
    worksheet.step({
      id: `parts.array.${id}`,
      says: `Energy of a module of ${id}; a size fills the arrays with the most first`,
      formula: 'E_module = E_array / n',
      inputs: [
        { symbol: 'E_array', value: whole, unit: 'kWh', from: 'energy estimate' },
        { symbol: 'n', value: modules, unit: 'modules', from: `arrays.${id}` },
      ],
      result: { symbol: 'E_module', value: kwh, unit: 'kWh a year' },
      source: { document: 'Energy estimate of this project', standing: 'project file' },
    })
  }
  return order.map(({ id }) => id)
}

async function breakEvens(
  by: PartsRank,
  ranked: readonly Held[],
  values: readonly OptionValue[],
): Promise<BreakEvenValue[]> {
  const found: BreakEvenValue[] = []
  for (const winner of values.slice(0, BEST)) {
    const next = values[winner.place]
    const held = ranked[winner.place]
    if (next === undefined || held === undefined) break
    const usd = await breakEvenUsd(by, held.at, next.price_usd, winner)
    const change = usd === undefined || next.price_usd === 0 ? null : (100 * (usd - next.price_usd)) / next.price_usd
    found.push({
      place: winner.place,
      next_price_usd: usd ?? null,
      change_pct: change === null ? null : Number(change.toFixed(2)),
      says:
        usd === undefined
          ? `no price would bring place ${String(next.place)} to place ${String(winner.place)}`
          : `place ${String(next.place)} would be as good as place ${String(winner.place)} at ${usd.toFixed(2)} USD instead of ${next.price_usd.toFixed(2)} USD`,
    })
  }
  return found
}

function recordBest(values: readonly OptionValue[], worksheet: Worksheet): void {
  for (const value of values) {
    worksheet.note({
      id: `parts.place-${String(value.place)}`,
      says: `Net present value of ${value.module}${value.inverter === null ? '' : ` with ${value.inverter}`}, ${String(value.modules)} modules`,
      formula: 'NPV = sum_{t=0..n} CF_t / (1 + d)^t',
      inputs: [
        { symbol: 'price', value: value.price_usd, unit: 'USD', from: 'bill of materials with the price list' },
        {
          symbol: 'savings of year 1',
          value: value.first_year_savings_usd,
          unit: 'USD',
          from: 'bills without minus with',
        },
      ],
      result: { symbol: 'NPV', value: value.npv_usd, unit: 'USD' },
      source: { document: '10 CFR 436', place: '436.20', standing: 'read' },
    })
  }
}

function tell(
  input: HouseInput,
  held: readonly OptionValue[],
  dropped: readonly DroppedValue[],
  worksheet: Worksheet,
): void {
  for (const finding of madeUpFindings(input, 'parts')) worksheet.find(finding)
  if (input.project.finance?.installed_cost_usd !== undefined) {
    worksheet.find({
      severity: 'note',
      id: 'parts.own-price-not-used',
      message: `the price of ${input.project.finance.installed_cost_usd.toFixed(0)} USD in the project is that of one offer; each combination has the price of its own bill of materials`,
      where: 'finance.installed_cost_usd',
    })
  }
  if (held.length > 0) return
  worksheet.find({
    severity: 'error',
    id: 'parts.none-holds',
    message: `none of ${String(dropped.length)} combinations holds; the first: ${dropped[0]?.reasons[0]?.message ?? ''}`,
    where: '',
    fix: 'Look at the reasons of each; `gablewatt check-project` tells what the project as it stands fails.',
  })
}
