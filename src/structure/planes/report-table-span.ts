import type { Worksheet } from '../../worksheet/index.js'
import { formulaSpanIn, tableSpan, type RafterInput } from '../rafters/index.js'
import { mostSnowPsf } from '../snow/index.js'

/** What the code's span tables say of these rafters under even load: a second answer beside the check. */
export function reportTableSpan(id: string, { framing, snow }: RafterInput, worksheet: Worksheet): void {
  const snowPsf = Math.max(0, ...snow.map(mostSnowPsf))
  const isSnow = snowPsf > 20
  const load = {
    loadPsf: isSnow ? snowPsf : 20,
    isSnow,
    ceilingAttached: framing.ceiling.attached !== false,
    deadPsf: framing.existingDeadPsf,
  }
  const formulaIn = formulaSpanIn(framing, load)
  if (formulaIn === undefined || framing.spansFt.length === 0) return
  const table = tableSpan(framing, load)
  worksheet.note({
    id: `structure.${id}.rafter-table`,
    says:
      table === undefined
        ? 'Span that the basis of the code tables gives these rafters under even load; no table covers them'
        : `Span of these rafters in the code table ${table.table} for ${table.loadPsf} psf, ${table.deadPsf} psf dead, ${table.spacingIn} in`,
    formula: "smaller of sqrt(8 Fb' S / w) and the span that deflects to its limit",
    inputs: [
      { symbol: 'load', value: load.loadPsf, unit: 'psf', from: isSnow ? `structure.${id}.snow` : 'roof live load' },
      { symbol: 'D', value: load.deadPsf, unit: 'psf', from: `structure.framing.${id}.existing_dead_psf` },
      {
        symbol: 'longest span',
        value: Math.max(...framing.spansFt),
        unit: 'ft',
        from: `structure.framing.${id}.span_ft`,
      },
      { symbol: 'formula', value: formulaIn / 12, unit: 'ft', from: 'this load' },
    ],
    result: { symbol: 'L', value: (table?.spanFt ?? formulaIn / 12).toFixed(2), unit: 'ft' },
    source: { document: 'IRC 2021', place: table?.table ?? 'tables R802.4.1(1) to (8), basis', standing: 'secondary' },
    limits: 'for even loads without the array; not a strength for mounts as single forces',
  })
  if (table === undefined || Math.abs(12 * (table.spanFt - table.formulaFt)) <= 1 || table.spanFt === 26) return
  worksheet.note({
    id: `structure.${id}.rafter-table-differs`,
    says: `The printed span and the formula of ${table.table} differ by more than an inch; the smaller counts`,
    formula: 'printed; formula',
    inputs: [{ symbol: 'printed', value: table.spanFt, unit: 'ft', from: table.table }],
    result: { symbol: 'formula', value: table.formulaFt.toFixed(2), unit: 'ft' },
    source: { document: 'IRC 2021', place: table.table, standing: 'secondary' },
  })
}
