import { BUILD, envelopeOf, inEnvelope, isWhole, sealOf, sha256Of, type Envelope } from '../seal/index.js'
import { parseJson } from '../values/index.js'
import { plainValues } from '../report/index.js'

const PDF_SEAL_FORMAT = 'gablewatt-packet-seal/1'
/** A comment of the PDF, which readers pass over; it stands before the last `startxref`, so that no offset moves. */
const START = '%gablewatt-seal '
const END = 'startxref'
/** Brackets, commas and colons of a seal; one has about 40. */
const MOST_SEAL_MARKS = 10_000

/** Papers other than the permit packet that bear such a seal. */
export const SEALED_PAPERS = ['proposal', 'application', 'handover'] as const
export type SealedPaper = (typeof SEALED_PAPERS)[number]

/** What a packet says of where it comes from. */
export interface PacketOrigin {
  readonly tool: string
  /** SHA-256 of the project file, what it names, and `--set`. */
  readonly project: string
  /** Values of the stages behind the sheets. */
  readonly values: Readonly<Record<string, unknown>>
  readonly draft: boolean
  /** Which paper it is; the permit packet when left out. */
  readonly paper?: SealedPaper
}

/** The seal of a packet. */
export interface PdfSeal extends Envelope {
  readonly project: string
  readonly draft: boolean
  /** Which paper it is; the permit packet when left out. */
  readonly paper?: SealedPaper
  /** `sha256:` of the values of each stage behind the sheets, as canonical JSON of what its `--json` prints. */
  readonly values: Readonly<Record<string, string>>
  /** `sha256:` of the file without this comment. */
  readonly content: string
}

/** Hashes of values, by stage. */
export function valueSeals(values: PacketOrigin['values']): Record<string, string> {
  return Object.fromEntries(Object.entries(values).map(([stage, each]) => [stage, sealOf(plainValues(each))]))
}

/** What stands small in the margin of each sheet: build, and hash of the values behind it. */
export function imprintOf({ tool, project, values }: PacketOrigin): string {
  const hash = sealOf(valueSeals(values)).slice('sha256:'.length)
  return `${tool}, build ${BUILD}; project ${project.slice(0, 16)}; values ${hash.slice(0, 16)} (first 16 digits of SHA-256)`
}

/** The PDF with its seal. */
export function sealPdf(pdf: Uint8Array, origin: PacketOrigin): Uint8Array {
  const at = Buffer.from(pdf).lastIndexOf(END)
  if (at < 0) throw new Error('a PDF without its end')
  const seal = inEnvelope(envelopeOf(PDF_SEAL_FORMAT, origin.tool, 'packet'), {
    project: origin.project,
    draft: origin.draft,
    ...(origin.paper === undefined ? {} : { paper: origin.paper }),
    values: valueSeals(origin.values),
    content: `sha256:${sha256Of(pdf)}`,
  })
  const line = Buffer.from(`${START}${JSON.stringify(seal)}\n`)
  return new Uint8Array(Buffer.concat([pdf.subarray(0, at), line, pdf.subarray(at)]))
}

/**
 * The seal of a packet that was read.
 *
 * @returns undefined when the file bears none that can be read; `isWhole`: whether file and seal are what was written.
 */
export function readPdfSeal(pdf: Uint8Array): { readonly seal: PdfSeal; readonly isWhole: boolean } | undefined {
  const bytes = Buffer.from(pdf)
  const from = bytes.lastIndexOf(START)
  const to = bytes.indexOf('\n', from)
  if (from < 0 || to < 0) return undefined
  let data: unknown
  try {
    data = parseJson(bytes.toString('latin1', from + START.length, to), MOST_SEAL_MARKS)
  } catch {
    return undefined
  }
  if (!isSeal(data)) return undefined
  const rest = Buffer.concat([bytes.subarray(0, from), bytes.subarray(to + 1)])
  return { seal: data, isWhole: isWhole(data) && data.content === `sha256:${sha256Of(rest)}` }
}

function isSeal(data: unknown): data is PdfSeal & Record<string, unknown> {
  if (typeof data !== 'object' || data === null) return false
  const { format, tool, build, project, values, paper } = data as Record<string, unknown>
  return (
    format === PDF_SEAL_FORMAT &&
    (paper === undefined || SEALED_PAPERS.some((each) => each === paper)) &&
    [tool, build, project].every((each) => typeof each === 'string') &&
    typeof values === 'object' &&
    values !== null &&
    Object.values(values).every((each) => typeof each === 'string')
  )
}
