import type { Worksheet } from '../../worksheet/index.js'
import type { ProductionSeries } from '../production/index.js'
import type { ReviewValues } from './review-values.js'

/** What reading the table found, and what it took for granted. */
export function tellTable(series: ProductionSeries, worksheet: Worksheet): void {
  for (const finding of series.findings) worksheet.find(finding)
  for (const { path, value, why } of series.taken) {
    worksheet.assume({
      path,
      value,
      unit: '',
      why,
      source: { document: 'the table of measured production', standing: 'project file' },
    })
  }
}

/** How the table was read. */
export function tableValues(series: ProductionSeries): ReviewValues['file'] {
  return {
    resolution: series.resolution,
    interval_min: series.stepMin ?? null,
    unit: series.unit,
    meter: series.meter,
    clock: series.clock,
  }
}
