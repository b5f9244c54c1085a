import type { OverheadValues } from '../../electrical/index.js'
import type { Section } from '../../report/index.js'

/** Overhead lines with the heights and distances that they keep and need. */
export function overheadSection(overhead: readonly OverheadValues[]): Section {
  return {
    kind: 'table',
    heading: 'Overhead lines',
    columns: [
      { heading: 'Line' },
      { heading: 'Over or near' },
      { heading: 'Is', unit: 'ft', decimals: 2 },
      { heading: 'Error', unit: 'ft', decimals: 2 },
      { heading: 'Needed', unit: 'ft', decimals: 1 },
      { heading: 'Section' },
      { heading: 'Verdict' },
    ],
    rows: overhead.map((each) => [
      each.id,
      each.to,
      each.clearance_ft,
      each.error_ft,
      each.required_ft,
      each.section,
      each.complies
        ? { value: each.ruled ? 'passes' : 'passes; the utility decides', tone: 'good' }
        : each.kind === 'work'
          ? { value: 'KEEP AWAY', tone: 'bad' }
          : { value: 'FAILS', tone: 'bad' },
    ]),
  }
}
