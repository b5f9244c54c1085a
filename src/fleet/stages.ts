import type { WiringValues } from '../electrical/index.js'
import type { BomValues } from '../materials/index.js'
import type { PaybackValues } from '../money/index.js'
import type { House } from '../house/index.js'
import type { Project } from '../project/index.js'
import type { MountValues } from '../structure/index.js'
import type { Result } from '../worksheet/index.js'
import type { YieldValues } from '../yield/index.js'
import { STAGE_CAUTIONS, type CautionSubject } from '../report/index.js'
import { bomFigures, mountFigures, paybackFigures, wireFigures, yieldFigures } from './stage-figures.js'
import type { Figures } from './types.js'

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
  readonly run: (house: House) => Promise<Result<unknown>>
  /** Those of the stage's own subcommand. */
  readonly cautions: readonly CautionSubject[]
  /** What is told of a project and compared with a baseline; not the long lists. */
  readonly figures: (values: unknown) => Figures
  readonly headlines: readonly Headline[]
}

/** In the order of the job. A new one is an entry here. */
export const FLEET_STAGES: readonly FleetStage[] = [
  {
    name: 'yield',
    needs: () => true,
    run: (house) => house.yield(),
    cautions: STAGE_CAUTIONS.yield,
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
    run: (house) => house.wire(),
    cautions: STAGE_CAUTIONS.wire,
    figures: (values) => wireFigures(values as WiringValues),
    headlines: [],
  },
  {
    name: 'mounts',
    needs: ({ structure }) => structure !== undefined,
    run: (house) => house.mounts(),
    cautions: STAGE_CAUTIONS.mounts,
    figures: (values) => mountFigures(values as MountValues),
    headlines: [{ key: 'counts.mounts', heading: 'Mounts' }],
  },
  {
    name: 'bom',
    needs: ({ materials }) => materials !== undefined,
    run: (house) => house.bom(),
    cautions: STAGE_CAUTIONS.bom,
    figures: (values) => bomFigures(values as BomValues),
    headlines: [{ key: 'totals.gross_usd', heading: 'Cost', unit: 'USD' }],
  },
  {
    name: 'payback',
    needs: ({ tariff, usage }) => tariff !== undefined && usage !== undefined,
    run: (house) => house.payback(),
    cautions: STAGE_CAUTIONS.payback,
    figures: (values) => paybackFigures(values as PaybackValues),
    headlines: [
      { key: 'simple_payback_years', heading: 'Payback', unit: 'years', decimals: 1 },
      { key: 'npv_usd', heading: 'NPV', unit: 'USD', forMachines: true },
    ],
  },
]
