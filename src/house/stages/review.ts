import {
  productionLimits,
  readProduction,
  reviewProduction,
  weatherOfDays,
  type ReviewValues,
} from '../../fieldwork/index.js'
import { ProjectError, type Production } from '../../project/index.js'
import type { Result } from '../../worksheet/index.js'
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
}

/**
 * Whether measured energy is what those days should give.
 *
 * @throws ProjectError with every problem of the table.
 * @throws StageError when the weather is that of another year.
 */
export function reviewOf(
  { project }: HouseInput,
  run: YieldRun,
  { table, mapping, weather }: MeasuredProduction,
): Result<ReviewValues> {
  const { name, text } = table
  const read = readProduction(name, text, { ...project.production, ...mapping }, productionLimits(project, run))
  if (read.problems !== undefined) throw new ProjectError(read.problems, 2, new Map([[name, text]]))
  const { series } = read
  const measured = weather === undefined ? {} : { weather: weatherOfDays(project, weather.name, weather.text, series) }
  return reviewProduction({ project, run, series, ...measured })
}
