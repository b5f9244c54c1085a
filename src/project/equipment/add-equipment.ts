import { sortFindings, type Finding } from '../../worksheet/index.js'
import { MOST_PROBLEMS, type Problem } from '../problem.js'
import { ProjectError } from '../project-error.js'
import { checkEntry } from './check-entry.js'
import { compareEntries, type ComparedEntry } from './compare-entries.js'
import type { EquipmentEntry } from './entry.js'
import { doubtEntry } from './plausible/doubt-entry.js'
import { readEquipmentText, writeEntries } from './write-entries.js'

/** An equipment file with entries written into it, or why they are not. */
export interface AddedEquipment {
  readonly compared: readonly ComparedEntry[]
  /** Errors among them mean that nothing is to be written. */
  readonly findings: readonly Finding[]
  /** The file as it is to stand; undefined when a finding is an error or nothing changes. */
  readonly text: string | undefined
}

/** What is written into which file. */
export interface EquipmentToAdd {
  /** Name of the equipment file, or of a project file, for the messages. */
  readonly file: string
  /** Its text; '' when it does not exist yet. */
  readonly text: string
  readonly entries: readonly EquipmentEntry[]
  /** What could not be read of the entries. */
  readonly problems: readonly Problem[]
  /** Texts that the places of problems point into. */
  readonly sources?: ReadonlyMap<string, string>
  /** Whether an entry may take the place of another of its id. */
  readonly replace?: boolean
}

/**
 * Writes equipment into the text of an equipment file, when it is right, plausible and not there under the same id.
 *
 * @throws ProjectError when an entry does not fit the schema, or the file cannot be read.
 */
export function addEquipment(order: EquipmentToAdd): AddedEquipment {
  const { file, text, entries, sources = new Map<string, string>(), replace = false } = order
  const read = readEquipmentText(file, text)
  const wrong = order.problems.length > 0 ? order.problems : entries.flatMap(checkEntry)
  if (wrong.length > 0) throw new ProjectError(wrong.slice(0, MOST_PROBLEMS), 2, sources)
  const compared = compareEntries(entries, read.equipment, replace)
  const doubts = compared.flatMap(({ entry, does }) => (does === 'keeps' ? [] : doubtEntry(entry)))
  const findings = sortFindings([...compared.flatMap((one) => one.findings), ...doubts])
  const written = compared.filter(({ does }) => does !== 'keeps').map(({ entry }) => entry)
  const isRefused = written.length === 0 || findings.some(({ severity }) => severity === 'error')
  return { compared, findings, text: isRefused ? undefined : writeEntries(read, written) }
}
