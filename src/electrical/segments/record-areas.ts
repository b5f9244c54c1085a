import type { StepInput } from '../../worksheet/index.js'
import type { Job } from '../system/index.js'
import { lineAreaIn2 } from '../raceways/index.js'
import type { SizedSegment } from './size-segments.js'

/** The areas behind the fill: each line of the raceway as count times area of one conductor, and their sum. */
export function recordAreas(job: Job, { segment, conditions, contents }: SizedSegment): void {
  const lines = new Map<string, { name: string; count: number; areaIn2: number }>()
  for (const row of contents.conductors) {
    const areaIn2 = lineAreaIn2(segment, conditions, row)
    const name = `${row.size_awg} ${row.insulation}${row.use === 'grounding' ? ', grounding' : ''}`
    const line = lines.get(name) ?? { name, count: 0, areaIn2 }
    lines.set(name, { ...line, count: line.count + row.count })
  }
  const terms = [...lines.values()].map(({ name, count, areaIn2 }, index): readonly [string, StepInput[]] => [
    `n_${index + 1} x a_${index + 1}`,
    [
      { symbol: `n_${index + 1}`, value: count, unit: '', from: name },
      {
        symbol: `a_${index + 1}`,
        value: areaIn2,
        unit: 'in2',
        from:
          segment.stated.conductor_diameter_in === undefined ? 'Chapter 9 Table 5' : 'diameter, where no table has it',
      },
    ],
  ])
  const others = segment.stated.other_conductors?.area_in2
  const stated: typeof terms =
    others === undefined
      ? []
      : [['a_others', [{ symbol: 'a_others', value: others, unit: 'in2', from: `${segment.where}.other_conductors` }]]]
  const all = [...terms, ...stated]
  job.worksheet.note({
    id: `wire.${segment.id}.areas`,
    says: 'Areas of all conductors in the raceway, over their insulation',
    formula: `areas = ${all.map(([term]) => term).join(' + ')}`,
    inputs: all.flatMap(([, inputs]) => inputs),
    result: { symbol: 'areas', value: contents.areaIn2, unit: 'in2' },
    source: job.nec('conductorArea'),
  })
}
