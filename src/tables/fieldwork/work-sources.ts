import type { Source } from '../../worksheet/index.js'

const memory = (document: string, place?: string): Source => ({
  document,
  ...(place === undefined ? {} : { place }),
  standing: 'from memory',
})

/** Where the rules of the work on the roof come from; sections of the electrical code come from its own table. */
export const WORK_SOURCES = {
  practice: { document: '', standing: 'common practice, no source' },
  projectFile: { document: 'project file', standing: 'project file' },
  makersSheet: { document: "maker's instructions", standing: 'project file' },
  fallProtection: memory('29 CFR 1926.501(b)(13)', 'residential work 6 ft or more above a lower level'),
  lockOut: memory('29 CFR 1910.333(b)', 'lock-out and tagging of circuits'),
  torque: memory('NEC', '110.14(D), since 2017'),
  interactive: memory('IEEE 1547 and UL 1741', 'reconnection after the grid comes back'),
  voltageRange: memory('ANSI C84.1', 'range A, 5 % round the nominal voltage'),
  commissioning: memory('IEC 62446-1', 'tests of commissioning'),
} as const satisfies Readonly<Record<string, Source>>

/** Share of the nominal service voltage up and down. */
export const SERVICE_VOLTAGE_BAND = 0.05
/** Cell temperatures for which open-circuit voltages are printed when today's is not given, deg C. */
export const READING_CELL_C = [-10, 0, 10, 25, 40, 55] as const
