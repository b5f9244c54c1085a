/*
 * What is read of a file, whoever wrote it: the largest of each kind, and how much may stand in one of YAML. All are common
 * practice, no source, with what they are measured by beside them. What has a bound of its own besides: PDF files
 * (`foreign/limits.ts`, `packet/pages/unpack-budget.ts`, pages in `source-pages.ts`), and under --untrusted memory and time of
 * the whole run (`bin/run-untrusted.js`); JSON by its depth
 * (`values/parse-json.ts`).
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
/** Largest table of a fleet, bytes: a hundred thousand houses. */
export const LARGEST_TABLE_BYTES = 200_000_000
/** Largest result of an earlier run, bytes: a house with all its steps has under 1 MB. */
export const LARGEST_RESULT_BYTES = 20_000_000
/** Largest text of an installer's own terms, bytes. */
export const LARGEST_TERMS_BYTES = 100_000
/** Largest picture of an installer's own, bytes. */
export const LARGEST_LOGO_BYTES = 1_000_000
/** Largest document that a permit packet takes in, bytes. */
export const LARGEST_DOCUMENT_BYTES = 100_000_000
