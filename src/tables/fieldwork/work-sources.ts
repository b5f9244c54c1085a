import type { Source } from '../../worksheet/index.js'

const memory = (document: string, place?: string): Source => ({
  document,
  ...(place === undefined ? {} : { place }),
  standing: 'from memory',
})

const secondary = (document: string, place: string): Source => ({ document, place, standing: 'secondary' })

/** Where the rules of the work on the roof come from; sections of the electrical code come from its own table. */
export const WORK_SOURCES = {
  practice: { document: '', standing: 'common practice, no source' },
  projectFile: { document: 'project file', standing: 'project file' },
  makersSheet: { document: "maker's instructions", standing: 'project file' },
  fallProtection: secondary(
    '29 CFR 1926.501',
    '(b)(1), (b)(11) and (b)(13); setting modules is no roofing work (9th Cir. 2019), so (b)(10) is not used',
  ),
  anchor: secondary('29 CFR 1926.502', '(d)(15)'),
  rescue: memory('29 CFR 1926.502', '(d)(20), prompt rescue'),
  ladder: secondary('29 CFR 1926.1053', '(b)(1) and (b)(5)(i)'),
  ladderClimb: secondary('29 CFR 1926.1053', '(b)(20)-(22)'),
  holes: secondary('29 CFR 1926.501 and .502', '501(b)(4), 502(i)(2)-(4)'),
  overheadLines: memory('29 CFR 1926 subparts K and CC, 1910.333(c)(3)', '10 ft up to 50 kV'),
  lockOut: memory('29 CFR 1926.416, .417 and 1910.333(b)', 'lock-out and tagging of circuits'),
  absenceOfVoltage: secondary('NFPA 70E', '2018, 120.5, live-dead-live on every conductor'),
  inverterManual: memory('inverter manuals', 'waiting time, order of switches; the manual governs'),
  weatherStop: memory('practice', 'wind, wet, frost'),
  torque: memory('NEC', '110.14(D), since 2017'),
  interactive: memory('IEEE 1547 and UL 1741', 'reconnection after the grid comes back'),
  voltageRange: memory('ANSI C84.1', 'range A, 5 % round the nominal voltage'),
  commissioning: memory('IEC 62446-1', 'tests of commissioning'),
  stringTests: secondary('IEC 62446-1', 'by an instrument maker’s poster and trainer notes: polarity, Voc, Isc, 5 %'),
} as const satisfies Readonly<Record<string, Source>>

/** Share of the nominal service voltage up and down. */
export const SERVICE_VOLTAGE_BAND = 0.05
/** Cell temperatures for which open-circuit voltages are printed when today's is not given, deg C. */
export const READING_CELL_C = [-10, 0, 10, 25, 40, 55] as const
