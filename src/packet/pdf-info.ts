import type { PdfInfo } from '../drawings/index.js'
import type { Project } from '../project/index.js'

/** Date of a draft whose project states none; a packet without a date is not drawn. */
const NO_DATE = '2000-01-01'

/** Title, author and date that a PDF of a project bears. */
export function pdfInfoOf(project: Project, subject: string): PdfInfo {
  return {
    title: project.title,
    author: project.parties?.preparer?.name ?? project.parties?.owner?.name ?? '',
    subject,
    date: project.document?.date ?? NO_DATE,
    language: 'en-US',
  }
}
