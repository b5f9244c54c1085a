import { drawLoadSheet, isUnconfirmed, renderPdf, type PaperName } from '../drawings/index.js'
import type { House } from '../house/index.js'
import type { Project } from '../project/index.js'
import { pdfInfoOf } from './pdf-info.js'
import { readFonts } from './read-fonts.js'

/**
 * The load sheet for the engineer of the roof framing as a PDF of its own.
 *
 * @param house Stages of the project; roof and mounts have to run.
 * @throws StageError when a stage cannot run.
 */
export async function loadSheetPdf(
  project: Project,
  house: Pick<House, 'roof' | 'mounts'>,
  size: PaperName = 'letter',
): Promise<Uint8Array> {
  const mounts = await house.mounts()
  const sheets = drawLoadSheet({
    project,
    size,
    draft: mounts.findings.some(isUnconfirmed),
    arrangement: await house.roof(),
    mounts,
    documents: [],
    findings: mounts.findings,
  })
  return await renderPdf(sheets, readFonts(), pdfInfoOf(project, 'Loads on the roof framing for the engineer'))
}
