import { StageError } from '../../worksheet/index.js'

/** Where a weather series is named in the project. */
export const SERIES_PATH = 'site.climate.file'

/**
 * The error for a place in a weather series.
 *
 * @param line Counted from 1.
 * @param column Character of the line, counted from 1; undefined when the whole line is to blame.
 */
export function seriesError(line: number, column: number | undefined, message: string, fix: string): StageError {
  const place = column === undefined ? `line ${line}` : `line ${line}, column ${column}`
  return new StageError(SERIES_PATH, `weather file, ${place}: ${message}`, fix)
}
