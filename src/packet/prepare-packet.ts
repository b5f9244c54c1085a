import { doesNotFit, drawPacket, type PaperName, type Sheet } from '../drawings/index.js'
import type { House } from '../house/index.js'
import { documentsOf, type LoadedProject } from '../project/index.js'
import type { Finding } from '../worksheet/index.js'
import { pdfInfoOf } from './pdf-info.js'

/** How a packet is drawn. */
export interface PacketOptions {
  /** Paper of the drawings; `11x17` when left out. */
  readonly size?: PaperName
  /** Whether documents may lie outside the folder of the project. */
  readonly allowOutside?: boolean | undefined
}

/** The permit packet as a PDF, and its drawings. */
export interface DrawnPacket {
  /** Bytes of the PDF: the drawings, then the person's documents, each page with its sheet number. */
  readonly pdf: Uint8Array
  /** The drawings, for `renderSvg`. */
  readonly sheets: readonly Sheet[]
}

/** A packet before it is drawn: what stops it, and its drawing. */
export interface PreparedPacket {
  /** Checks that fail and things that are missing. A packet that is to be handed in has none. */
  readonly errors: readonly Finding[]
  /** What of the person's documents could not be taken over as it was. */
  readonly notes: readonly string[]
  /** @param draft Whether each sheet is stamped DRAFT, with what fails on the first. */
  readonly draw: (draft: boolean) => Promise<DrawnPacket>
}

/**
 * Reads the documents of a project and gets its permit packet ready.
 *
 * @param loaded What `loadProject` gives.
 * @param house Its stages, of `runHouse`; those that cannot run are among the errors.
 * @throws FileError when a document is missing, no PDF, locked, broken or outside the project's folder.
 */
export async function preparePacket(
  { project, folder }: LoadedProject,
  house: House,
  { size = '11x17', allowOutside = false }: PacketOptions = {},
): Promise<PreparedPacket> {
  const stated = documentsOf(project)
  const { readDocuments } = await import('./read-documents.js')
  const read = await readDocuments(
    folder,
    stated.map(({ file }) => file),
    allowOutside,
  )
  const documents = read.map((document, index) => ({ ...stated[index], ...document }))
  const input = await house.packet({ size, documents })
  const issued = drawPacket({ ...input, draft: false })
  return {
    notes: documents.flatMap((document) => document.notes),
    errors: [...input.findings.filter((finding) => finding.severity === 'error'), ...doesNotFit(issued)],
    draw: async (draft) => {
      const sheets = draft ? drawPacket({ ...input, draft }) : issued
      const facts = pdfInfoOf(project, 'Permit drawings of a photovoltaic system')
      const { renderPacket } = await import('./render-packet.js')
      return { sheets, pdf: await renderPacket(sheets, documents, facts, draft) }
    },
  }
}
