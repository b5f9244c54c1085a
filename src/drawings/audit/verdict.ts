import type { PacketInput } from '../inputs.js'
import { readable, type SheetWords } from './sheet-words.js'

/** What was found of a point. */
export type Verdict =
  | { readonly state: 'present'; readonly sheets: readonly string[]; readonly what: string }
  | { readonly state: 'missing'; readonly what: string }
  | { readonly state: 'not_applicable'; readonly what: string }

/** What points are looked up in: the composed sheets, and what they were drawn from. */
export interface AuditFacts {
  readonly input: PacketInput
  readonly sheets: readonly SheetWords[]
}

/** Looks a point up; undefined where the packet has no means to tell, which counts as missing. */
export type Judge = (facts: AuditFacts) => Verdict

/** Something that has to be read on a sheet: what it is, and its words; undefined words are not stated in the project. */
export type Needle = readonly [what: string, words: string | RegExp | undefined]

export const missing = (what: string): Verdict => ({ state: 'missing', what })
export const notApplicable = (what: string): Verdict => ({ state: 'not_applicable', what })
export const present = (sheets: readonly string[], what: string): Verdict => ({ state: 'present', sheets, what })

/** Whether words stand on a sheet, whatever their case and line breaks. */
export function hasWords({ words }: SheetWords, needle: string | RegExp): boolean {
  return typeof needle === 'string' ? words.includes(readable(needle)) : needle.test(words)
}

/** Sheets of some disciplines, by the first letter of their number: `GA`. */
export const sheetsOf = ({ sheets }: AuditFacts, disciplines: string): SheetWords[] =>
  sheets.filter(({ id }) => disciplines.includes(id.charAt(0)))

/**
 * Present when every needle is read on some sheet of the disciplines; otherwise missing, with what is not there.
 *
 * @param needles Patterns are matched against capitals.
 */
export function allOn(facts: AuditFacts, disciplines: string, needles: readonly Needle[]): Verdict {
  const searched = sheetsOf(facts, disciplines)
  const found = needles.map(([what, words]) => ({
    what,
    words,
    on: words === undefined ? [] : searched.filter((sheet) => hasWords(sheet, words)).map(({ id }) => id),
  }))
  const lacking = found.filter(({ on }) => on.length === 0)
  if (lacking.length > 0)
    return missing(
      lacking.map(({ what, words }) => `${what}: ${words === undefined ? 'not stated' : 'on no sheet'}`).join('; '),
    )
  return present(fewest(found.map(({ on }) => on)), needles.map(([what]) => what).join(', '))
}

/** The first sheet for each needle, but none where one that is taken has it already. */
function fewest(lists: readonly (readonly string[])[]): string[] {
  const taken: string[] = []
  for (const list of lists) {
    const [first] = list
    if (first !== undefined && !list.some((id) => taken.includes(id))) taken.push(first)
  }
  return taken.toSorted()
}
