/*
 * What is read of a file, whoever wrote it: the largest of each kind, and how much may stand in one. All are common practice,
 * no source, with what they are measured by beside them. What has a bound of its own besides: PDF files (`foreign/limits.ts`,
 * `packet/pages/unpack-budget.ts`, pages in `source-pages.ts`), lines, cells and columns of tables
 * (`values/table/table-bounds.ts`), the depth of JSON (`values/parse-json.ts`), shapes of a logo (`papers/logo/`), and under
 * --untrusted memory and time of the whole run (`bin/run-untrusted.js`).
 */

/** Largest project or equipment file, bytes. */
export const LARGEST_YAML_BYTES = 2_000_000
/**
 * Marks of YAML that are read: brackets, colons, breaks of lines. A whole job has about 5,000; each costs about 1.5 kB at worst,
 * and a file of 2 MB can be nothing else.
 */
export const MOST_YAML_MARKS = 200_000
/** Values in a project with all aliases written out; a file that means more is a trap, not a project. */
export const MOST_YAML_VALUES = 40_000
/** Levels of maps and lists in the text. No project needs more; a hostile file has thousands. */
export const DEEPEST_YAML = 40

/** Largest weather file, bytes: an EPW year of hours has about 1.6 MB. */
export const LARGEST_WEATHER_BYTES = 20_000_000

/** Largest export of a meter, bytes: a year of quarter hours in XML has about 15 MB. */
export const LARGEST_METER_BYTES = 60_000_000
/** Rows of readings of a meter or an inverter: ten years of five minutes have 1,052,000. */
export const MOST_READING_ROWS = 2_000_000
/** Elements of a meter's XML, five for a reading: six years of quarter hours have 1,052,000. */
export const MOST_METER_ELEMENTS = 1_200_000
/** Attributes of a meter's XML, two for a link: ten years of a block a day have under 50,000. */
export const MOST_METER_ATTRIBUTES = 100_000
/** Names of elements of a meter's XML; a feed has about 60. */
export const MOST_METER_NAMES = 1000
/** Levels of a meter's XML; a feed has eight. */
export const DEEPEST_METER = 40

/** Largest table of a fleet, bytes: a hundred thousand houses. */
export const LARGEST_TABLE_BYTES = 200_000_000
/** Houses of a fleet: rows of its table, lines of its parts, files that its patterns and folders give. */
export const MOST_HOUSES = 500_000
/** Files and folders that a pattern or a folder of projects may lead past. */
export const MOST_ENTRIES = 1_000_000
/** Longest line that a fleet writes for a house, bytes; one with all stages has about 12,000. */
export const LONGEST_HOUSE_LINE = 1_000_000
/** Largest journal, bytes: a hundred thousand houses with all stages have about 1,200 MB. It is never in memory as a whole. */
export const LARGEST_JOURNAL_BYTES = 2_000_000_000
/**
 * Largest baseline, bytes: 100,000 houses of the sample fleet, 2,200 each; one with all stages has 6,700. It is read as one text,
 * which the engine ends at 512 MB.
 */
export const LARGEST_BASELINE_BYTES = 250_000_000
/** Brackets, commas and colons of a baseline; a house of the sample fleet has 120, so a hundred thousand have 12 million; one with all stages has 376. */
export const MOST_BASELINE_MARKS = 15_000_000

/** Largest table of data sheets, bytes, and its rows: what an equipment file can take is far less. */
export const LARGEST_SHEETS_BYTES = 20_000_000
export const MOST_SHEET_ROWS = 20_000
/** Largest table that a person writes for a house, bytes, and its rows: bills, serial numbers, readings of strings, prices. */
export const LARGEST_LIST_BYTES = 5_000_000
export const MOST_LIST_ROWS = 20_000

/** Printed bills of a house, each of which is worked out many times: fifty years of months. */
export const MOST_BILLS = 600

/** Largest result of an earlier run, bytes: a house with all its steps has under 1 MB. */
export const LARGEST_RESULT_BYTES = 20_000_000
/** Brackets, commas and colons of such a result; one of 1 MB has about 60,000. */
export const MOST_RESULT_MARKS = 2_000_000
/** Largest text of an installer's own terms, bytes. */
export const LARGEST_TERMS_BYTES = 100_000
/** Largest picture of an installer's own, bytes. */
export const LARGEST_LOGO_BYTES = 1_000_000
/** Largest document that a permit packet takes in, bytes. */
export const LARGEST_DOCUMENT_BYTES = 100_000_000
