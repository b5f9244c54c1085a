import type { Fact, Section, TableData } from '../../report/index.js'
import { BUILD } from '../../seal/index.js'
import type { OutputFile } from '../subcommand.js'
import type { KnownFile } from './known-file.js'
import type { SignatureCheck } from './sign.js'
import { sayKind, type Comparison } from './work-out-anew.js'

/** All that was found out about a file. */
export interface Verified {
  readonly path: string
  /** Of the file, hexadecimal. */
  readonly sha256: string
  /** undefined: nothing of this program, of which only a signature is looked at. */
  readonly known: KnownFile | undefined
  readonly comparison: Comparison | undefined
  readonly signature: SignatureCheck | undefined
  /** The signature that is made. */
  readonly signed: { readonly file: OutputFile; readonly key: string } | undefined
}

/** A person reads these; JSON has all. */
const MOST_LINES = 60

const SEALS =
  'A seal shows damage and slips. It does not tell by whom the file was written: anybody can write a file with a new seal. Only a signature tells that, checked with a key that you got from its owner.'

export function verifySections(verified: Verified): Section[] {
  const { comparison } = verified
  return [
    { kind: 'facts', facts: facts(verified) },
    ...(verified.known === undefined ? [] : [{ kind: 'paragraph' as const, text: SEALS }]),
    ...(comparison === undefined ? [] : comparisonSections(comparison)),
  ]
}

function facts({ path, sha256, known, signature, signed }: Verified): Fact[] {
  return [
    { label: 'File', value: path },
    { label: 'SHA-256 of the file', value: sha256 },
    ...(known === undefined ? [{ label: 'Kind', value: 'no file of this program' }] : knownFacts(known)),
    ...(signature === undefined
      ? []
      : [
          { label: 'Signature', value: { value: signature.standing, tone: TONES[signature.standing] } },
          { label: 'Signature says', value: signature.says },
          { label: 'Key', value: signature.key },
        ]),
    ...(signed === undefined
      ? []
      : [
          { label: 'Signed into', value: signed.file.path },
          { label: 'Key', value: signed.key },
        ]),
  ]
}

const TONES = { good: 'good', bad: 'bad', 'not checked': 'warn' } as const

function knownFacts(known: KnownFile): Fact[] {
  const { kind, parts, broken, packet } = known
  const list = (values: readonly (string | null)[]): string => {
    const names = [...new Set(values.map((value) => value ?? 'not stated'))]
    return names.length > 3 ? `${names.slice(0, 3).join(', ')} and ${names.length - 3} more` : names.join(', ')
  }
  const isUnchanged = broken.length === 0 && parts.every(({ isWhole }) => isWhole)
  const builds = parts.map(({ build }) => (build === BUILD ? `${build} (this one)` : build))
  const projects = parts.map(({ project }) => project)
  return [
    { label: 'Kind', value: sayKind(kind) },
    ...(parts.length > 1 ? [{ label: 'Lines', value: parts.length + broken.length }] : []),
    ...(kind === 'packet record'
      ? []
      : [
          { label: 'Made by', value: list(parts.map(({ tool }) => tool)) },
          { label: 'Build', value: list(builds) },
        ]),
    ...(kind === 'baseline' || kind === 'packet record' ? [] : [{ label: 'Project (SHA-256)', value: list(projects) }]),
    ...(packet === undefined ? [] : [{ label: 'Draft', value: packet.draft ? 'yes' : 'no' }]),
    {
      label: 'Unchanged since written',
      value: isUnchanged ? { value: 'yes', tone: 'good' } : { value: 'no', tone: 'bad' },
    },
  ]
}

function comparisonSections(comparison: Comparison): Section[] {
  const { of, differences, isSameProject } = comparison
  const same = isSameProject
    ? 'The file bears the hash of this project.'
    : 'The file bears the hash of another project.'
  const count = differences.length
  const says = count === 0 ? 'No value differs.' : count === 1 ? 'One value differs.' : `${count} values differ.`
  const heading = 'Worked out anew'
  const text = `${same} Compared: ${of}; numbers are the same that agree to nine digits. ${says}`
  if (differences.length === 0) return [{ kind: 'paragraph', heading, text }]
  const more = differences.length - MOST_LINES
  return [
    { kind: 'paragraph', heading, text },
    { kind: 'table', ...differenceTable(differences.slice(0, MOST_LINES)) },
    ...(more > 0 ? [{ kind: 'paragraph' as const, text: `${more} more; --json and --csv have all.` }] : []),
  ]
}

function differenceTable(differences: Comparison['differences']): TableData {
  return {
    columns: [{ heading: 'Value' }, { heading: 'In the file', align: 'right' }, { heading: 'Anew', align: 'right' }],
    rows: differences.map(({ path, inFile, anew }) => [path, inFile ?? 'not there', anew ?? 'not there']),
  }
}

/** For `--csv`: what differs, or, where nothing was compared, the parts of the file. */
export function verifyTable({ known, comparison }: Verified): TableData {
  if (comparison !== undefined) return differenceTable(comparison.differences)
  return {
    columns: [
      { heading: 'Line' },
      { heading: 'Name' },
      { heading: 'Build' },
      { heading: 'Project' },
      { heading: 'Unchanged' },
    ],
    rows: (known?.parts ?? []).map(({ line, name, build, project, isWhole }) => [
      line ?? null,
      name,
      build,
      project,
      isWhole ? 'yes' : 'no',
    ]),
  }
}

export function verifyValues({ sha256, known, comparison, signature, signed }: Verified) {
  return {
    file_sha256: sha256,
    kind: known?.kind ?? null,
    this_build: BUILD,
    unchanged: known === undefined ? null : known.broken.length === 0 && known.parts.every(({ isWhole }) => isWhole),
    parts: (known?.parts ?? []).map(({ line, name, tool, build, project, isWhole }) => ({
      line: line ?? null,
      name,
      tool,
      build,
      project,
      unchanged: isWhole,
    })),
    broken_lines: known?.broken ?? [],
    comparison:
      comparison === undefined
        ? null
        : {
            of: comparison.of,
            same_project: comparison.isSameProject,
            differences: comparison.differences.map(({ path, inFile, anew }) => ({
              path,
              in_file: inFile ?? null,
              anew: anew ?? null,
            })),
            not_compared: comparison.notCompared,
          },
    signature:
      signature === undefined ? null : { standing: signature.standing, key: signature.key, says: signature.says },
    signed_with: signed?.key ?? null,
  }
}
