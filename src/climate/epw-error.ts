import { StageError } from '../worksheet/index.js'

/** Where an EPW file is named in the project. */
export const EPW_PATH = 'site.climate.epw'

/**
 * The error for a place in an EPW file.
 *
 * @param line Counted from 1.
 * @param column Field of the line, counted from 1; 0 when the whole line is to blame.
 */
export function epwError(line: number, column: number, message: string, fix: string): StageError {
  const place = column === 0 ? `line ${line}` : `line ${line}, column ${column}`
  return new StageError(EPW_PATH, `EPW file ${place}: ${message}`, fix)
}

/** What to do about a file that is broken rather than unsuitable. */
export const FETCH_AGAIN = 'fetch the file again from its publisher; do not edit it with a spreadsheet'
