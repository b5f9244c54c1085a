import { baseAmpacityA } from '../conductors/index.js'
import type { Job } from '../system/index.js'
import type { CircuitInSegment, SizedSegment } from './size-segments.js'

/** The column that the wiring method holds every ampacity to. */
export function recordCableLimit(
  job: Job,
  base: string,
  { demand: { limit, material }, sized }: CircuitInSegment,
  { method }: SizedSegment['conditions'],
): void {
  if (limit === undefined) return
  const limitA = baseAmpacityA({ size: sized.size, material }, limit.columnC, false)
  if (limitA === undefined || sized.verdict.correctedA > limitA) return
  job.worksheet.note({
    id: `${base}.cable-limit`,
    says: `${method.name}: the ampacity is at most that of the ${limit.columnC} deg C column, after factors and at terminals${limit.toSize === undefined ? '' : ` (in insulation, up to ${limit.toSize} AWG)`}`,
    formula: 'I_z and I_terminal <= I_column',
    inputs: [{ symbol: 'size', value: sized.size, unit: '', from: `${base}.size` }],
    result: { symbol: 'I_column', value: limitA, unit: 'A' },
    source: job.nec('cablesInInsulation'),
  })
}
