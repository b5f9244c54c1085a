import type { PriceList } from '../../materials/index.js'
import { StageError, Worksheet, type Result } from '../../worksheet/index.js'
import type { HouseInput } from '../house-input.js'
import { madeUpFindings } from '../made-up.js'
import { runHouse } from '../run-house.js'
import { breakEvens, scoreOf } from './break-even.js'
import { checkWishes, combinationsOf, type PartsWishes } from './make-combinations.js'
import type { Combination, DroppedValue, OptionValue, PartsRank, PartsValues } from './parts-values.js'
import { checkSizes } from './size-arrays.js'
import {
  forTrials,
  trialHouse,
  tryCombination,
  type Held,
  type TrialHouse,
  type TrialPlan,
  type Tried,
} from './try-combination.js'

/** What is compared, by which yardstick, and the files of the project. */
export interface ComparePartsOptions extends PartsWishes {
  readonly by: PartsRank
  /** The price list that was read, under its name, with its text. */
  readonly prices: { readonly name: string; readonly text: string; readonly list: PriceList }
  /** Told before each combination. */
  readonly progress?: (done: number, of: number) => void
  /** Tries all combinations, in their order, where there is a better way than one after the other. */
  readonly tryAll?: TryAll
}

export type TryAll = (
  plan: TrialPlan,
  combinations: readonly Combination[],
  progress: (done: number) => void,
) => Promise<readonly Tried[]>

/** Far more than a person looks at. */
export const MOST_COMBINATIONS = 1000

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
  const { documents = new Set<string>(), documentTroubles = new Map<string, string>(), madeUp = [] } = input
  const trialInput = { documents, documentTroubles, madeUp, files, project: forTrials(input.project, prices.name) }
  const unsorted = await trialHouse({ input: trialInput, order: [], prices: prices.list })
  const order = options.sizes.length === 0 ? [] : await bestFirst(unsorted, worksheet)
  const trial: TrialHouse = { ...unsorted, order }
  const combinations = combinationsOf(options)
  const { tryAll = inTurn(trial) } = options
  const outcomes = await tryAll({ input: trialInput, order, prices: prices.list }, combinations, (done) => {
    options.progress?.(done, combinations.length)
  })
  const held: Held[] = []
  const dropped: DroppedValue[] = []
  for (const [i, combination] of combinations.entries()) {
    const outcome = outcomes[i]
    if (outcome === undefined) throw new Error('a combination was not tried')
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
    break_even: await breakEvens(by, trial, values),
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

function inTurn(trial: TrialHouse): TryAll {
  return async (_, combinations, progress) => {
    const outcomes: Tried[] = []
    for (const [i, combination] of combinations.entries()) {
      progress(i)
      outcomes.push(await tryCombination(trial, combination))
    }
    return outcomes
  }
}

/** Arrays by the energy of a module of the project as it stands. */
async function bestFirst({ input, runYield }: TrialHouse, worksheet: Worksheet): Promise<string[]> {
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

function recordBest(values: readonly OptionValue[], worksheet: Worksheet): void {
  for (const value of values) {
    worksheet.note({
      id: `parts.place-${String(value.place)}`,
      says: `Net present value of ${value.module}${value.inverter === null ? '' : ` with ${value.inverter}`}, ${String(value.modules)} modules${value.storage === null ? '' : `, ${String(value.storage_units)} x ${value.storage}`}`,
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
