import { drawPreparerReport, renderPdf, type PacketInput } from '../drawings/index.js'
import { pdfInfoOf } from './pdf-info.js'
import { readFonts } from './read-fonts.js'

/**
 * The preparer's report as a PDF of its own, on letter paper.
 *
 * @param input What the sheets of the packet are drawn from.
 */
export async function preparerReportPdf(input: PacketInput): Promise<Uint8Array> {
  const sheets = drawPreparerReport(input)
  const subject = "Preparer's report on the permit drawings of a photovoltaic system"
  return await renderPdf(sheets, readFonts(), pdfInfoOf(input.project, subject))
}
