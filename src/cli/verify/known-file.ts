import { BUILD, isWhole } from '../../seal/index.js'
import { readPdfSeal, type PdfSeal, type SealedPaper } from '../../packet/index.js'
import { LONGEST_HOUSE_LINE, MOST_BASELINE_MARKS, MOST_HOUSES } from '../../project/index.js'
import { DoubtfulJson, parseJson, TooMuchJson } from '../../values/index.js'

/** Something sealed that a file holds: the whole of it, or a line. */
export interface SealedPart {
  /** Name of the house for a line of a fleet, else the stage or the kind. */
  readonly name: string
  /** Line in the file, from 1; undefined when it is the file. */
  readonly line: number | undefined
  readonly tool: string | null
  readonly build: string | null
  /** SHA-256 of the project, what it names and `--set`; null where it bears none. */
  readonly project: string | null
  readonly isWhole: boolean
  readonly content: Readonly<Record<string, unknown>>
}

export type FileKind = 'packet' | SealedPaper | 'result' | 'fleet' | 'baseline' | 'journal' | 'packet record'

/** A file that this program wrote. */
export interface KnownFile {
  readonly kind: FileKind
  readonly parts: readonly SealedPart[]
  /** Lines that are not even JSON. */
  readonly broken: readonly number[]
  readonly packet?: PdfSeal
}

const KINDS: readonly (readonly [start: string, kind: FileKind])[] = [
  ['gablewatt-result/', 'result'],
  ['gablewatt-fleet/', 'fleet'],
  ['gablewatt-fleet-journal/', 'journal'],
  ['gablewatt-fleet-baseline/', 'baseline'],
  ['gablewatt-packet/', 'packet record'],
]

/**
 * @returns undefined when there is nothing sealed by this program in it.
 * @throws TooMuchJson when it is more than this program writes.
 */
export function knownFile(bytes: Uint8Array): KnownFile | undefined {
  if (Buffer.from(bytes.subarray(0, 1024)).includes('%PDF-')) return packetFile(bytes)
  // Editors put a mark of byte order there; --use takes it too.
  const text = Buffer.from(bytes)
    .toString('utf8')
    .replace(/^\uFEFF/u, '')
  const whole = parsed(text)
  if (whole !== undefined) {
    const kind = kindOf(whole.content)
    return kind === undefined ? undefined : { kind, parts: [partOf(whole, kind, lineOf(kind, 1))], broken: [] }
  }
  return linesFile(text)
}

/** Whether the build of a part is this one. */
export function isOurBuild({ build }: SealedPart): boolean {
  return build === BUILD
}

function packetFile(bytes: Uint8Array): KnownFile | undefined {
  const found = readPdfSeal(bytes)
  if (found === undefined) return undefined
  const { seal } = found
  const { tool, build, project, paper: kind = 'packet' } = seal
  const part = { name: kind, line: undefined, tool, build, project, isWhole: found.isWhole, content: { ...seal } }
  return { kind, parts: [part], broken: [], packet: seal }
}

function linesFile(text: string): KnownFile | undefined {
  const broken: number[] = []
  const parts: SealedPart[] = []
  let kind: FileKind | undefined
  let index = -1
  for (const line of linesOf(text)) {
    index += 1
    if (index >= MOST_HOUSES) throw new TooMuchJson(`more than ${MOST_HOUSES} lines`)
    if (line.trim() === '') continue
    const data = line.length > LONGEST_HOUSE_LINE ? undefined : parsedLine(line)
    const found = data === undefined ? undefined : kindOf(data.content)
    kind ??= found
    if (data === undefined || found === undefined || found !== kind) broken.push(index + 1)
    else parts.push(partOf(data, found, index + 1))
  }
  return kind === undefined ? undefined : { kind, parts, broken }
}

/** Not all at once, as there may be millions. */
function* linesOf(text: string): Generator<string> {
  let at = 0
  for (let end = text.indexOf('\n'); end >= 0; end = text.indexOf('\n', at)) {
    yield text.slice(at, end)
    at = end + 1
  }
  yield text.slice(at)
}

function lineOf(kind: FileKind, line: number): number | undefined {
  return kind === 'fleet' || kind === 'journal' ? line : undefined
}

function partOf({ content, isDoubtful }: ParsedJson, kind: FileKind, line: number | undefined): SealedPart {
  const text = (value: unknown): string | null => (typeof value === 'string' ? value : null)
  const { project, digest, name, stage, outcome } = content
  const inner = kind === 'journal' && isMap(outcome) ? outcome : undefined
  return {
    name: text(name ?? inner?.['name'] ?? stage) ?? kind,
    line,
    tool: text(content['tool']),
    build: text(content['build']),
    project: text(isMap(project) ? project['digest'] : (digest ?? inner?.['digest'])),
    isWhole: !isDoubtful && isWhole(content),
    content,
  }
}

function kindOf({ format, seal }: Readonly<Record<string, unknown>>): FileKind | undefined {
  if (typeof format !== 'string' || typeof seal !== 'string') return undefined
  return KINDS.find(([start]) => format.startsWith(start))?.[1]
}

interface ParsedJson {
  readonly content: Readonly<Record<string, unknown>>
  /** Whether another reader may find other values in it, which no seal can tell. */
  readonly isDoubtful: boolean
}

function parsed(text: string): ParsedJson | undefined {
  try {
    return parsedMap(parseJson(text, MOST_BASELINE_MARKS), false)
  } catch (error) {
    if (error instanceof TooMuchJson) throw error
    return error instanceof DoubtfulJson ? parsedMap(error.data, true) : undefined
  }
}

function parsedMap(data: unknown, isDoubtful: boolean): ParsedJson | undefined {
  return isMap(data) ? { content: data, isDoubtful } : undefined
}

/** A line that is too much is one more that is broken. */
function parsedLine(text: string): ParsedJson | undefined {
  try {
    return parsed(text)
  } catch (error) {
    if (error instanceof TooMuchJson) return undefined
    throw error
  }
}

function isMap(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
