import {
  changesSince,
  doesNotFit,
  drawPacket,
  isUnconfirmed,
  markChanges,
  recordPacket,
  type PacketRecord,
  type PaperName,
  type Sheet,
} from '../drawings/index.js'
import { sheetNumbers } from './sheet-numbers.js'
import { changeWords, checkRevision, issueTexts, revisionOf } from './revision-words.js'
import type { House, PacketWishes } from '../house/index.js'
import { checkCommentSheets, documentsOf, type LoadedProject, type ReadComments } from '../project/index.js'
import type { ForeignRunner } from '../project/foreign/index.js'
import type { Finding } from '../worksheet/index.js'
import { imprintOf, sealPdf } from './pdf-seal.js'
import { pdfInfoOf } from './pdf-info.js'

/** How a packet is drawn. */
export interface PacketOptions {
  /** Paper of the drawings; that of the authority's file when left out, else `11x17`. */
  readonly size?: PaperName | undefined
  /** Whether documents may lie outside the folder of the project. */
  readonly allowOutside?: boolean | undefined
  /** Whether there is a three-line diagram although `drawings.three_line` of the project does not ask for one. */
  readonly threeLine?: boolean | undefined
  /** An earlier issue, of `readRecord`: what changed since gets clouds. */
  readonly since?: PacketRecord | undefined
  /** A plan reviewer's comments with their answers, of `readComments`. */
  readonly comments?: ReadComments | undefined
  /** Name and version of the program, for the seal of the packet; without it there is neither seal nor imprint. */
  readonly tool?: string | undefined
  /**
   * Where the person's documents are opened, of `inWorker`; in this thread and without limits of memory and time when
   * left out.
   */
  readonly foreign?: ForeignRunner | undefined
}

/** The permit packet as a PDF, and its drawings. */
export interface DrawnPacket {
  /** Bytes of the PDF: the drawings, then the person's documents, each page with its sheet number. */
  readonly pdf: Uint8Array
  /** The drawings, for `renderSvg`. */
  readonly sheets: readonly Sheet[]
  /** What these sheets say, to be kept for the next issue. */
  readonly record: PacketRecord
  /** What changed since the earlier issue, in words; empty without one. */
  readonly changed: readonly string[]
}

/** A packet before it is drawn: what stops it, and its drawing. */
export interface PreparedPacket {
  /** Checks that fail and things that are missing. A packet that is to be handed in has none. */
  readonly errors: readonly Finding[]
  /** What of the person's documents could not be taken over as it was. */
  readonly notes: readonly string[]
  /** Paper and documents, for other stages that draw the packet. */
  readonly wishes: PacketWishes
  /** @param draft Whether each sheet is stamped DRAFT, with what fails on the first; they always are while values are made up. */
  readonly draw: (draft: boolean) => Promise<DrawnPacket>
  /** The preparer's report as a PDF: what stands behind the sheets and is not filed. */
  readonly report: () => Promise<Uint8Array>
}

/**
 * Reads the documents of a project and gets its permit packet ready.
 *
 * @param loaded What `loadProject` gives.
 * @param house Its stages, of `runHouse`; those that cannot run are among the errors.
 * @throws FileError when a document is missing, no PDF, locked, broken or outside the project's folder.
 */
export async function preparePacket(
  { project, folder, digest }: LoadedProject,
  house: House,
  { size, allowOutside = false, threeLine, since, comments, tool, foreign }: PacketOptions = {},
): Promise<PreparedPacket> {
  if (since !== undefined) checkRevision(project, since)
  const stated = documentsOf(project)
  const { readDocuments } = await import('./read-documents.js')
  const read = await readDocuments(
    folder,
    stated.map(({ file }) => file),
    allowOutside,
    foreign,
  )
  const documents = read.map((document, index) => ({ ...stated[index], ...document }))
  const wishes = { size, documents, threeLine }
  const input = { ...(await house.packet(wishes)), comments: comments?.data }
  if (comments !== undefined) checkCommentSheets(comments, sheetNumbers(input))
  // What is made up may be looked at, and is no packet to hand in.
  const unconfirmed = input.findings.some(isUnconfirmed)
  const failing = input.findings.filter((finding) => finding.severity === 'error')
  // What does not fit is found on the sheets themselves; a design that fails is not drawn for it.
  const issued = failing.length === 0 ? drawPacket({ ...input, draft: unconfirmed }) : undefined
  return {
    wishes,
    notes: documents.flatMap((document) => document.notes),
    errors: issued === undefined ? failing : doesNotFit(issued),
    draw: async (draft) => {
      const drawn = (draft ? undefined : issued) ?? drawPacket({ ...input, draft })
      const revision = revisionOf(project)
      const record = recordPacket(drawn, project.title, revision)
      const changes = since === undefined ? [] : changesSince(since, drawn, issueTexts(project))
      const sheets = markChanges(drawn, changes, revision)
      const origin =
        tool === undefined
          ? undefined
          : { tool, project: digest, values: valuesBehind(input), draft: draft || unconfirmed }
      const imprint = origin === undefined ? undefined : `${imprintOf(origin)}${othersIn(input.findings)}`
      const facts = {
        ...pdfInfoOf(project, 'Permit drawings of a photovoltaic system'),
        ...(imprint === undefined ? {} : { imprint }),
      }
      const { renderPacket } = await import('./render-packet.js')
      const pdf = await renderPacket(sheets, documents, facts, draft || unconfirmed, foreign)
      return {
        sheets,
        record,
        changed: since === undefined ? [] : changeWords(since, drawn, changes),
        pdf: origin === undefined ? pdf : sealPdf(pdf, origin),
      }
    },
    report: async () => {
      const { preparerReportPdf } = await import('./draw-preparer-report.js')
      return await preparerReportPdf({ ...input, draft: false })
    },
  }
}

/** Values of the stages that the sheets are drawn from. */
export function valuesBehind(input: Awaited<ReturnType<House['packet']>>): Record<string, unknown> {
  const { arrangement, mounts, wire } = input
  const results = { roof: arrangement, mounts, wire }
  return Object.fromEntries(
    Object.entries(results).flatMap(([stage, result]) => (result ? [[stage, result.values]] : [])),
  )
}

/** A warning that stays on the sheets where another build of the program worked a stage out. */
function othersIn(findings: readonly Finding[]): string {
  return findings.some(({ id }) => id === 'use.other-build') ? '; WITH RESULTS OF ANOTHER BUILD (--use-anyway)' : ''
}
