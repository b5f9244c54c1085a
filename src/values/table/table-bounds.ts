/*
 * Bounds of every delimited table, common practice, no source. How many rows one may have is for whoever knows what it holds
 * (`project/budgets.ts`), but for weather, whose reader loads nothing of projects.
 */

/** More than any line of a table needs; a file without line ends must not be read as one. */
export const LONGEST_LINE = 150_000
/** More than any cell needs; an unclosed quote must not swallow a whole file. */
export const LONGEST_CELL = 100_000
/** More columns than any table has. */
export const MOST_CELLS = 2000
/** Lines among which a header is looked for where nobody says in which it stands; each is looked at for every delimiter. */
export const MOST_HEAD_LINES = 10_000
/** Nobody mends more by hand; a table with more bad rows is none, or read by the wrong rules. */
export const MOST_BAD_ROWS = 10_000
/** Rows of a weather file that is a table: five years of five minutes have 526,000. EPW files have a year of hours. */
export const MOST_WEATHER_ROWS = 600_000
