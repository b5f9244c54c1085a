import { moduleCountOf, type Project } from '../../project/facts.js'
import { own } from '../../values/index.js'
import { StageError, type Finding, type Result } from '../../worksheet/index.js'
import type { PaybackValues } from '../../money/index.js'
import type { YieldContext, YieldRun } from '../../yield/index.js'
import { totalOf } from '../bill-total.js'
import type { HouseInput, HouseOptions } from '../house-input.js'
import { runHouse } from '../run-house.js'
import { equipped } from './make-combinations.js'
import type { PriceList } from '../../materials/index.js'
import type { Combination, DroppedValue, OptionValue } from './parts-values.js'
import { sized } from './size-arrays.js'

/** A combination that holds. */
export interface Held {
  readonly value: Omit<OptionValue, 'place'>
  readonly money: 'real' | 'nominal'
}

type Reasons = DroppedValue['reasons']

/** What a combination came to, as data: it may have been worked out in another thread. */
export type Tried = Held | Reasons

/** What all combinations start from, as data. */
export interface TrialPlan {
  /** With its arrays as the person states them, the price list in, and no price of its own. */
  readonly input: HouseInput
  /** Ids of arrays, the best first. */
  readonly order: readonly string[]
  readonly prices: PriceList
}

/** Draws of the chances, which no rank looks at. */
const FEW_DRAWS = 100

/** The roof of a comparison, and what all combinations share. */
export interface TrialHouse extends TrialPlan {
  readonly runYield: NonNullable<HouseOptions['runYield']>
}

/** A plan with the sky of its site: climate and sky are the same, whatever lies on the roof. */
export async function trialHouse(plan: TrialPlan): Promise<TrialHouse> {
  const { runYield } = await import('../../yield/index.js')
  let context: YieldContext | undefined
  return {
    ...plan,
    runYield: (project, files): YieldRun => {
      const run = runYield(project, files, context)
      context ??= { climate: run.climate, steps: run.steps }
      return run
    },
  }
}

/** Works a combination out: roof, wiring, mounts, bill, energy and payback, in this order; the first that fails ends it. */
export async function tryCombination(trial: TrialHouse, combination: Combination): Promise<Tried> {
  const swapped = equipped(trial.input.project, combination, trial.prices)
  if ('reasons' in swapped) {
    return swapped.reasons.map((message) => ({ id: 'parts.no-place', where: 'arrays', message }))
  }
  try {
    return await workOut(trial, swapped.project, combination)
  } catch (error) {
    if (!(error instanceof StageError)) throw error
    return [{ id: 'parts.cannot-run', where: error.where, message: error.message }]
  }
}

async function workOut(trial: TrialHouse, swapped: Project, combination: Combination): Promise<Tried> {
  const project = await onRoof(trial, swapped, combination)
  if (project === undefined) {
    return [
      {
        id: 'parts.no-room',
        where: 'roof_planes',
        message: `the roof takes fewer than ${String(combination.size)} of these modules`,
      },
    ]
  }
  const input = { ...trial.input, project }
  const house = runHouse(input, { runYield: trial.runYield, wishes: { payTheBom: true, briefPayback: true } })
  const findings: Finding[] = []
  const stages: (() => Promise<Result<unknown>>)[] = [
    house.roof,
    ...(project.electrical === undefined ? [] : [house.wire]),
    ...(project.structure === undefined ? [] : [house.ownMounts]),
  ]
  for (const stage of stages) findings.push(...(await stage()).findings)
  const failed = errorsOf(findings)
  if (failed.length > 0) return failed
  const bom = await house.bom()
  const price = totalOf(bom)
  if (price === null) return notPriced(bom.findings)
  const payback = await house.payback()
  const all = [...findings, ...bom.findings, ...payback.findings]
  const wrong = errorsOf(all)
  if (wrong.length > 0) return wrong
  const { values } = payback
  return {
    money: values.money,
    value: {
      ...combination,
      ...contentsOf(project),
      price_usd: price,
      first_year_kwh: values.first_year_kwh,
      first_year_savings_usd: values.first_year_savings_usd,
      payback_years: values.simple_payback.lasting_years,
      npv_usd: values.npv_usd,
      warnings: new Set(all.filter(({ severity }) => severity === 'warning').map(({ id, where }) => `${id} ${where}`))
        .size,
    },
  }
}

/** The project with its modules placed; undefined where the roof takes fewer. */
async function onRoof(trial: TrialHouse, swapped: Project, { size }: Combination): Promise<Project | undefined> {
  const { countFitted } = await import('../../roof/index.js')
  const sizedProject = size === null ? swapped : sized(swapped, size, trial.order)
  return sizedProject === undefined ? undefined : countFitted(sizedProject)
}

/** The payback of a combination that holds at other prices, USD. */
export async function paybackAtPrices(
  trial: TrialHouse,
  combination: Combination,
): Promise<(usd: number) => Promise<PaybackValues>> {
  const swapped = equipped(trial.input.project, combination, trial.prices)
  const project = 'reasons' in swapped ? undefined : await onRoof(trial, swapped.project, combination)
  if (project === undefined) throw new Error('a combination that held is there no more')
  const input = { ...trial.input, project }
  const run = await runHouse(input, { runYield: trial.runYield }).estimate()
  return async (usd) => {
    const wishes = { installedCostUsd: usd, briefPayback: true }
    return (await runHouse(input, { runYield: () => run, wishes }).payback()).values
  }
}

function errorsOf(findings: readonly Finding[]): Reasons {
  const errors = findings.filter(({ severity }) => severity === 'error')
  return errors.map(({ id, where, message }) => ({ id, where, message }))
}

function notPriced(findings: readonly Finding[]): Reasons {
  const why = findings.filter(({ id }) => ['materials.price-missing', 'materials.part-missing'].includes(id))
  if (why.length > 0) return why.map(({ id, where, message }) => ({ id, where, message }))
  return [{ id: 'parts.cannot-run', where: 'materials', message: 'the bill of materials has no total' }]
}

function contentsOf(project: Project): Pick<OptionValue, 'modules' | 'power_w'> {
  let modules = 0
  let power = 0
  for (const array of Object.values(project.arrays)) {
    const count = moduleCountOf(array)
    modules += count
    power += count * (own(project.equipment.modules, array.module)?.pmax_w ?? 0)
  }
  return { modules, power_w: power }
}

/** The project for trials: its own price gives way to that of the bill, and few draws are made. */
export function forTrials(project: Project, priceList: string): Project {
  const { installed_cost_usd: _, ...finance } = project.finance ?? {}
  return {
    ...project,
    materials: { ...project.materials, price_list: priceList },
    finance: { ...finance, uncertainty: { ...finance.uncertainty, samples: FEW_DRAWS } },
  }
}
