import type { WiringValues } from '../../electrical/index.js'
import type { Cell, Section } from '../../report/index.js'

type Box = WiringValues['boxes'][number]

/** Boxes and conduit bodies with what they need and have. */
export function boxSection({ boxes }: Pick<WiringValues, 'boxes'>): Section {
  return {
    kind: 'table',
    heading: 'Boxes',
    columns: [
      { heading: 'Box' },
      { heading: 'Kind' },
      { heading: 'Conductors' },
      { heading: 'Counts', decimals: 2 },
      { heading: 'Needs', unit: 'in3', decimals: 2 },
      { heading: 'Has', unit: 'in3', decimals: 2 },
      { heading: 'Needs', unit: 'in', decimals: 1 },
      { heading: 'Long', unit: 'in', decimals: 1 },
      { heading: 'Section' },
      { heading: 'Verdict' },
    ],
    rows: boxes.map((box) => [
      box.id,
      box.standard_box ?? box.kind.replace('_', ' '),
      box.spliced ? 'spliced' : 'pass whole',
      box.count,
      box.required_in3,
      box.volume_in3,
      box.required_length_in,
      box.length_in,
      box.section,
      verdict(box),
    ]),
  }
}

function verdict({ complies }: Box): Cell {
  if (complies === null) return { value: 'not checked', tone: 'warn' }
  return complies ? { value: 'passes', tone: 'good' } : { value: 'FAILS', tone: 'bad' }
}
