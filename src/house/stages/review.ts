import {
  productionLimits,
  readProduction,
  reviewProduction,
  weatherOfDays,
  type ReviewValues,
} from '../../fieldwork/index.js'
import { ProjectError, type Production, type Project } from '../../project/index.js'
import { marginalWorth } from '../../money/index.js'
import { sortFindings, StageError, type Finding, type Result } from '../../worksheet/index.js'
import type { YieldRun } from '../../yield/index.js'
import type { HouseInput } from '../house-input.js'

/** A file with its name for messages. */
export interface NamedText {
  readonly name: string
  readonly text: string
}

/** What was measured, and what is known about it. */
export interface MeasuredProduction {
  /** A table of days, months, or intervals of 1 to 60 minutes. */
  readonly table: NamedText
  /** How the table is to be read; wins over `production` of the project. What neither says is found from the table. */
  readonly mapping?: Production | undefined
  /** Hourly weather (EPW) of the measured year, in place of the long-term kinds of day. */
  readonly weather?: NamedText | undefined
  /** Whether to say what these days tell of the estimate (`values.calibration`). */
  readonly calibrate?: boolean | undefined
}

/**
 * Whether measured energy is what those days should give.
 *
 * @throws ProjectError with every problem of the table.
 * @throws StageError when the weather is that of another year.
 */
export function reviewOf(
  { project, files }: HouseInput,
  run: YieldRun,
  { table, mapping, weather, calibrate }: MeasuredProduction,
): Result<ReviewValues> {
  const { name, text } = table
  const read = readProduction(name, text, { ...project.production, ...mapping }, productionLimits(project, run))
  if (read.problems !== undefined) throw new ProjectError(read.problems, 2, new Map([[name, text]]))
  const { series } = read
  const measured =
    weather === undefined
      ? {}
      : { weather: weatherOfDays(project, weather.name, weather.text, series, project.production?.weather_table) }
  const worth = worthOf(project, files, run)
  const result = reviewProduction({
    project,
    run,
    series,
    calibrate,
    ...measured,
    ...(typeof worth === 'number' ? { usdPerKwh: worth } : {}),
  })
  if (typeof worth === 'number') return { ...result, worksheet: [...result.worksheet, worthStep(worth)] }
  if (result.values.signs.length === 0) return result
  return { ...result, findings: sortFindings([...result.findings, worthUnknown(worth)]) }
}

/** What a kWh more is worth, or why nobody can say. */
function worthOf(project: Project, files: HouseInput['files'], run: YieldRun): number | StageError {
  try {
    return marginalWorth(project, files, () => run)
  } catch (error) {
    if (error instanceof StageError) return error
    throw error
  }
}

function worthStep(usdPerKwh: number): Result<unknown>['worksheet'][number] {
  return {
    id: 'output.worth',
    says: 'What a kWh more is worth: bills of a year with the whole output and with a tenth less, over the energy of that tenth',
    formula: 'w = (B_less - B_whole) / (0.1 E)',
    inputs: [],
    result: { symbol: 'w', value: usdPerKwh, unit: 'USD/kWh' },
    source: { document: 'tariff and use of the project file', standing: 'project file' },
    limits: 'the tenth is taken from all hours alike',
  }
}

function worthUnknown({ message, where, fix }: StageError): Finding {
  return {
    severity: 'note',
    id: 'output.worth-unknown',
    message: `what a kWh is worth is not known, so that losses are told in kWh only: ${message}`,
    where,
    ...(fix === undefined ? {} : { fix }),
  }
}
