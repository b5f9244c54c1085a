import type { WiringValues } from '../../electrical/index.js'
import { sharedClimateRun, type Figures } from '../../fleet/index.js'
import type { BomValues } from '../../materials/index.js'
import type { PaybackValues } from '../../money/index.js'
import type { LoadedProject, Project } from '../../project/index.js'
import type { MountValues } from '../../structure/index.js'
import type { Result } from '../../worksheet/index.js'
import type { YieldRun, YieldValues } from '../../yield/index.js'
import type { Report } from '../output/report.js'
import type { CommandContext, Subcommand } from '../subcommand.js'
import { bomFigures, mountFigures, paybackFigures, wireFigures, yieldFigures } from './fleet-figures.js'

/** Results of the stages before, by stage. */
export type EarlierStages = ReadonlyMap<string, Result<unknown>>

/** A figure of a stage that stands in the table of the fleet. */
export interface Headline {
  readonly key: string
  readonly heading: string
  readonly unit?: string
  readonly decimals?: number
  /** In CSV and JSON only, as a table on paper has little room. */
  readonly forMachines?: boolean
}

/** A stage of the job that a fleet can run. */
export interface FleetStage {
  readonly name: string
  /** Whether the project holds the parts that the stage works on; asked unless the stage was named with --stages. */
  readonly needs: (project: Project) => boolean
  /** The report that the stage's own subcommand gives. */
  readonly run: (loaded: LoadedProject, earlier: EarlierStages, tool: string) => Promise<Report>
  /** What is told of a project and compared with a baseline; not the long lists. */
  readonly figures: (values: unknown) => Figures
  readonly headlines: readonly Headline[]
}

type Load = () => Promise<Pick<Subcommand, 'run'>>
type Earlier = (loaded: LoadedProject, earlier: EarlierStages, stage: string) => Result<unknown> | undefined

const taken: Earlier = (_loaded, earlier, stage) => earlier.get(stage)

/** Runs a subcommand as if alone, with earlier results in place of `--use`. */
function byCommand(load: Load, options: object = {}, result: Earlier = taken): FleetStage['run'] {
  return async (loaded, earlier, tool) => {
    const context: CommandContext = {
      args: [loaded.path],
      tool,
      project: () => Promise.resolve(loaded),
      earlier: (stage) => Promise.resolve(result(loaded, earlier, stage)),
      estimate: () => estimateOf(loaded),
      progress: () => undefined,
    }
    const outcome = await (await load()).run(context, options as never)
    if (!('report' in outcome)) throw new Error('a stage without a report')
    return outcome.report
  }
}

const runOf = sharedClimateRun()
const runs = new WeakMap<LoadedProject, YieldRun>()

/** The energy estimate of a project, worked out once for all of its stages. */
function estimateOf(loaded: LoadedProject): YieldRun {
  const run = runs.get(loaded) ?? runOf(loaded.project, loaded.files)
  runs.set(loaded, run)
  return run
}

/** In the order of the job: each may take the results of those above it. A new one is an entry here. */
export const FLEET_STAGES: readonly FleetStage[] = [
  {
    name: 'yield',
    needs: () => true,
    run: byCommand(
      () => import('./estimate-yield.js'),
      {},
      (loaded, _earlier, stage) => (stage === 'yield' ? estimateOf(loaded).result : undefined),
    ),
    figures: (values) => yieldFigures(values as YieldValues),
    headlines: [
      { key: 'rated_kw', heading: 'Rated', unit: 'kW', decimals: 2 },
      { key: 'annual.ac_kwh', heading: 'Yield', unit: 'kWh' },
      { key: 'annual.kwh_per_kw', heading: 'Per kW', unit: 'kWh/kW', forMachines: true },
    ],
  },
  {
    name: 'wire',
    needs: ({ electrical }) => electrical !== undefined,
    run: byCommand(() => import('./size-wire.js')),
    figures: (values) => wireFigures(values as WiringValues),
    headlines: [],
  },
  {
    name: 'mounts',
    needs: ({ structure }) => structure !== undefined,
    run: byCommand(() => import('./space-mounts.js'), {}),
    figures: (values) => mountFigures(values as MountValues),
    headlines: [{ key: 'counts.mounts', heading: 'Mounts' }],
  },
  {
    name: 'bom',
    needs: ({ materials }) => materials !== undefined,
    run: byCommand(() => import('./price-bom.js')),
    figures: (values) => bomFigures(values as BomValues),
    headlines: [{ key: 'totals.gross_usd', heading: 'Cost', unit: 'USD' }],
  },
  {
    name: 'payback',
    needs: ({ tariff, usage }) => tariff !== undefined && usage !== undefined,
    run: byCommand(
      () => import('./payback.js'),
      { set: [], versus: [] },
      (_loaded, earlier, stage) => (stage === 'bom' ? pricedBill(earlier) : earlier.get(stage)),
    ),
    figures: (values) => paybackFigures(values as PaybackValues),
    headlines: [
      { key: 'simple_payback_years', heading: 'Payback', unit: 'years', decimals: 1 },
      { key: 'npv_usd', heading: 'NPV', unit: 'USD', forMachines: true },
    ],
  },
]

/** A bill with prices missing has no total that a payback could stand on. */
function pricedBill(earlier: EarlierStages): Result<unknown> | undefined {
  const bill = earlier.get('bom')
  const { totals } = (bill?.values ?? {}) as { readonly totals?: { readonly gross_usd?: unknown } }
  return typeof totals?.gross_usd === 'number' ? bill : undefined
}
