import type { Finance, Project } from '../../project/index.js'
import { StageError, Worksheet, type Result } from '../../worksheet/index.js'
import { expectedHours, partOfSystem, runYield, statedDegradation, type YieldRun } from '../../yield/index.js'
import { inStepsOf } from '../calendar/index.js'
import { thirdPartyOf } from '../cash-flow/index.js'
import {
  chooseSize,
  storageSizes,
  type ChooseSizeValues,
  type SizeCandidate,
  type StorageSizesValues,
} from '../sizing/index.js'
import { storageChoices, tellStorageLeftOut } from './storage-choices.js'
import { own, type Dollars, type Percent } from '../../values/index.js'
import { fillRoof } from './fill-roof.js'
import { dayChoice, readHouse, type House } from './read-house.js'
import { findLimits, type SizeLimit } from './find-limits.js'
import { shareModules, type Share } from './share-modules.js'
import { tellSizeCost } from './tell-size-cost.js'
import { sizeLots, type SizeLot } from './size-lots.js'

export interface SizeOptions {
  /** Price of a further module in place, USD; wins over the project's. */
  readonly usdPerModule?: number
  /** Price that does not depend on the number of modules, USD; wins over the project's. */
  readonly fixedUsd?: Dollars
  /** What a bill of materials by the project's price list comes to; taken for what neither these options nor `finance` state. */
  readonly listPrice?: ListPrice
  /** Share of the year's use to cover, percent. */
  readonly wishedSharePct?: Percent
  /** Compare up to so many storage units too. */
  readonly storageUnits?: number
  /** The energy estimate of this very project, where it is known already. */
  readonly estimate?: () => YieldRun
}

export interface ProjectSizeValues extends ChooseSizeValues {
  /** Modules of the project as it stands. */
  readonly modules_in_project: number
  /** Every limit with the most modules that it lets through. */
  readonly limits: readonly SizeLimit[]
  /** For each size, how many modules lie on each array. */
  readonly modules_by_array: readonly { readonly modules: number; readonly arrays: Readonly<Record<string, number>> }[]
  readonly cost_usd_per_module: number
  readonly cost_fixed_usd: number
  /** Numbers of modules with numbers of storage units, where that was asked for. */
  readonly with_storage?: StorageSizesValues
}

/** What a module costs by a price list, from the bill of the project as it stands. */
export interface ListPrice {
  readonly usdPerModule: Dollars
  readonly fixedUsd: Dollars
  /** Modules of that bill. */
  readonly modules: number
  readonly supplier: string
}

/** Far more than a dwelling has room for; the work grows with the square. */
const MOST_SIZES = 250

/** Price as a function of the size. */
interface Price {
  readonly fixedUsd: Dollars
  readonly usdPerModule: number
  readonly usdPerBranch: number
}

/**
 * What each number of modules is worth that roof, inverters and panel take.
 *
 * Up to the project as it stands, a size keeps the project's best modules; above it, modules are added where the roof
 * has room, best first. Each size is run with the inverters at its own load.
 *
 * @throws StageError when prices, tariff, use or a part of the energy estimate are missing, or the sizes are too many.
 */
export function sizesOfProject(
  project: Project,
  files: ReadonlyMap<string, string> = new Map(),
  options: SizeOptions = {},
): Result<ProjectSizeValues> {
  const finance = project.finance ?? {}
  const contract = thirdPartyOf(finance)
  if (contract !== undefined) {
    throw new StageError(
      `finance.${contract.kind}`,
      'sizes are compared by their price, and a lease or a power purchase states payments for one size',
      'Compare offers of the owner with payback --versus, or state the price of buying.',
    )
  }
  const worksheet = new Worksheet()
  const price = priceOf(finance, options, worksheet)
  const house = readHouse(project, files, worksheet, options.estimate)
  const filled = fillRoof(project, worksheet)
  const run = runYield(filled.project, files, house.run)
  const lots = sizeLots(project, filled, run, worksheet)
  const shares = shareModules(lots)
  if (shares.size > MOST_SIZES) {
    throw new StageError(
      'arrays',
      `the roof holds up to ${shares.size} modules; at most ${MOST_SIZES} sizes are compared, as each runs all of its modules`,
      'Check rows and columns of the arrangement, or leave an array out.',
    )
  }
  const { limits, allowed, branchesOf } = findLimits(project, lots, shares, filled.unmeasured, worksheet)
  const sizes = [...shares].filter(([modules]) => allowed(modules))
  const candidates = sizes.map(([modules, share]) =>
    candidate({ project, house, run, lots, price }, modules, share, branchesOf(modules)),
  )
  const [tightest] = limits
  const degradationPct = statedDegradation(project)?.pctPerYear
  const input = {
    sheet: house.sheets.without,
    sheetWithSystem: house.sheets.withSystem,
    usageKwh: house.usage.usageKwh,
    ...(house.usageOf === undefined ? {} : { usageOf: house.usageOf }),
    calendar: house.usage.calendar,
    candidates,
    stoppedBy: tightest?.limit ?? 'the roof',
    finance,
    incentives: project.incentives ?? {},
    ...(degradationPct === undefined ? {} : { degradationPct }),
    ...(options.wishedSharePct === undefined ? {} : { wishedSharePct: options.wishedSharePct }),
  }
  const result = chooseSize(input)
  const withStorage =
    options.storageUnits === undefined
      ? undefined
      : storageSizes(input, storageChoices(project, house, options.storageUnits, worksheet))
  if (withStorage === undefined) tellStorageLeftOut(project, worksheet)
  worksheet.include(result)
  const inProject = lots.reduce((sum, lot) => sum + lot.own, 0)
  assumeBranchPrice(finance, candidates, worksheet)
  const kept = sizes.map(([modules]) => modules)
  tellLeftOut(kept, new Set(shares.keys()), worksheet)
  tellRefused(kept, new Set(shares.keys()), worksheet)
  tellSizeCost(project, candidates, inProject, worksheet)
  return worksheet.result({
    ...result.values,
    modules_in_project: inProject,
    limits,
    modules_by_array: sizes.map(([modules, share]) => ({
      modules,
      arrays: Object.fromEntries(lots.map((lot, i) => [lot.arrayId, share[i] ?? 0])),
    })),
    cost_usd_per_module: price.usdPerModule,
    cost_fixed_usd: price.fixedUsd,
    ...(withStorage === undefined ? {} : { with_storage: withStorage }),
  })
}

function priceOf(finance: Finance, options: SizeOptions, worksheet: Worksheet): Price {
  const { listPrice } = options
  const statedPerModule = options.usdPerModule ?? finance.cost_usd_per_module
  const statedFixed = options.fixedUsd ?? finance.cost_fixed_usd
  const usdPerModule = statedPerModule ?? listPrice?.usdPerModule
  const fixedUsd = statedFixed ?? listPrice?.fixedUsd
  if (listPrice !== undefined) {
    if (statedPerModule === undefined) assumeListed('cost_usd_per_module', listPrice.usdPerModule, listPrice, worksheet)
    if (statedFixed === undefined) assumeListed('cost_fixed_usd', listPrice.fixedUsd, listPrice, worksheet)
  }
  if (usdPerModule === undefined || fixedUsd === undefined) {
    throw new StageError(
      usdPerModule === undefined ? 'finance.cost_usd_per_module' : 'finance.cost_fixed_usd',
      'what a size costs is not known',
      'State finance.cost_fixed_usd and finance.cost_usd_per_module, or --cost-fixed and --cost-per-module; two quotes of different size give both',
    )
  }
  return { usdPerModule, fixedUsd, usdPerBranch: finance.cost_usd_per_branch ?? 0 }
}

function assumeListed(key: string, value: Dollars, { modules, supplier }: ListPrice, worksheet: Worksheet): void {
  worksheet.assume({
    path: `finance.${key}`,
    value,
    unit: 'USD',
    why: `not stated, so it is taken from the price list of ${supplier} for the ${String(modules)} modules of the project: what grows with the modules (modules, their inverters, racking, mounts, grounding, with their share of tax and margin) by module, all else as fixed`,
    source: { document: `Price list of ${supplier}`, standing: 'project file' },
  })
}

/** What all sizes are taken from. */
interface FullRoof {
  readonly project: Project
  readonly house: House
  /** The estimate of the roof as full as it gets. */
  readonly run: YieldRun
  readonly lots: readonly SizeLot[]
  readonly price: Price
}

function candidate(roof: FullRoof, modules: number, share: Share, branches: number | undefined): SizeCandidate {
  const { project, house, run, lots, price } = roof
  const kept = new Set(lots.flatMap((lot, i) => lot.moduleIds.slice(0, share[i] ?? 0)))
  const days = dayChoice(project, house.run, new Worksheet())
  return {
    modules,
    productionKwh: inStepsOf(house.usage.usageKwh, expectedHours(run, days, partOfSystem(run, kept)).kwh),
    grossCostUsd: price.fixedUsd + price.usdPerModule * modules + price.usdPerBranch * Math.max(0, (branches ?? 1) - 1),
    dcRatingW: lots.reduce((sum, lot, i) => {
      const moduleId = own(project.arrays, lot.arrayId)?.module ?? ''
      return sum + (share[i] ?? 0) * (own(project.equipment.modules, moduleId)?.pmax_w ?? 0)
    }, 0),
    ...(branches === undefined ? {} : { branches }),
  }
}

/** Sizes up to the last that no sharing over strings reaches. */
function tellLeftOut(sizes: readonly number[], reached: ReadonlySet<number>, worksheet: Worksheet): void {
  const first = sizes[0] ?? 0
  const missing = upTo(sizes.at(-1) ?? 0).filter((modules) => !reached.has(modules))
  if (missing.length === 0) return
  const below = missing.filter((modules) => modules < first)
  const inside = missing.filter((modules) => modules > first)
  const words = below.length === first - 1 && first > 1 ? [`1 to ${String(first - 1)}`] : below.map(String)
  worksheet.find({
    severity: 'note',
    id: 'size.left-out',
    message: `left out, because no string of an allowed length makes them: ${[...words, ...inside.map(String)].join(', ')} modules`,
    where: 'arrays',
  })
}

/** A further branch needs a breaker and a home run; without a price of its own it is counted as free. */
function assumeBranchPrice(finance: Finance, candidates: readonly SizeCandidate[], worksheet: Worksheet): void {
  if (finance.cost_usd_per_branch !== undefined || candidates.every(({ branches = 1 }) => branches <= 1)) return
  worksheet.assume({
    path: 'finance.cost_usd_per_branch',
    value: 0,
    unit: 'USD',
    why: 'a further branch circuit is counted as costing nothing beside its modules, which favours sizes that need one',
    source: { document: '', standing: 'common practice, no source' },
  })
}

/** Sizes below the last that could be made and that inverter or connection do not take. */
function tellRefused(sizes: readonly number[], reached: ReadonlySet<number>, worksheet: Worksheet): void {
  const refused = upTo(sizes.at(-1) ?? 0).filter((modules) => reached.has(modules) && !sizes.includes(modules))
  if (refused.length === 0) return
  worksheet.find({
    severity: 'note',
    id: 'size.refused',
    message: `left out, because inverter or connection do not take them with their branches: ${refused.join(', ')} modules`,
    where: 'electrical',
    fix: 'State electrical.branches for such a size when other branches would fit.',
  })
}

const upTo = (last: number): number[] => Array.from({ length: last }, (_, i) => i + 1)
