import type { Assumption, Finding, Result, Source, SourceStanding, Step } from '../../worksheet/index.js'
import { formatSource } from '../../worksheet/index.js'
import { labelsToAsk, requiredLabels, type RequiredLabel } from '../labels/required-labels.js'
import type { PacketInput } from '../inputs.js'

/** A source with its standing, and what of the packet rests on it. */
export interface SourceUse {
  readonly source: Source
  /** The source with its standing in words, as lists print it. */
  readonly named: string
  /** What rests on it, each once: `S-601: withdrawal of a lag`. */
  readonly uses: readonly string[]
}

/** A limit of a method that the reader of the sheets cannot see. */
export interface Remark {
  readonly about: string
  readonly text: string
}

/** All that stands behind the sheets of a packet and not on them. */
export interface Provenance {
  readonly sources: readonly SourceUse[]
  readonly assumptions: readonly Assumption[]
  readonly findings: readonly Finding[]
  readonly remarks: readonly Remark[]
  readonly labels: readonly RequiredLabel[]
}

const ORDER: Readonly<Record<SourceStanding, number>> = {
  'from memory': 0,
  'common practice, no source': 1,
  secondary: 2,
  'project file': 3,
  read: 4,
}

/** Sources that nobody read in the original for this project. */
export const isUnread = ({ standing }: Source): boolean => ORDER[standing] <= ORDER.secondary

/** Every source, assumption, finding and limit of the stages that a packet is drawn from. */
export function provenanceOf(input: PacketInput): Provenance {
  const stages: readonly (readonly [sheet: string, result: Result<unknown> | undefined])[] = [
    ['A-101', input.arrangement],
    ['S-601', input.mounts],
    ['E-603', input.wire],
  ]
  const uses = new Map<string, { source: Source; uses: Set<string> }>()
  const use = (source: Source | undefined, what: string): void => {
    if (source === undefined) return
    const named = formatSource(source)
    const known = uses.get(named) ?? { source, uses: new Set<string>() }
    uses.set(named, known)
    known.uses.add(what)
  }
  const assumptions = new Map<string, Assumption>()
  for (const [sheet, result] of stages) {
    for (const step of result?.worksheet ?? []) use(step.source, `${sheet}: ${step.says}`)
    for (const each of result?.assumptions ?? []) {
      assumptions.set(each.path, each)
      use(each.source, `assumption ${each.path}`)
    }
  }
  for (const finding of input.findings) use(finding.source, `finding ${finding.id}`)
  for (const { keepOuts } of Object.values(input.arrangement.values.planes))
    for (const { name, source } of keepOuts) use(source, `A-101: free strip, ${name}`)
  const wiring = input.wire?.values
  const labels = wiring === undefined ? [] : requiredLabels(input.project, wiring)
  const asked = wiring === undefined ? [] : labelsToAsk(input.project, wiring)
  for (const { number, ruleSource } of labels) use(ruleSource, `E-604: label ${number}`)
  for (const { when, wordSources } of asked)
    for (const source of wordSources) use(source, `E-604: label to ask about, if ${when}`)
  return {
    sources: [...uses]
      .map(([named, each]) => ({ named, source: each.source, uses: [...each.uses] }))
      .toSorted((a, b) => ORDER[a.source.standing] - ORDER[b.source.standing] || (a.named < b.named ? -1 : 1)),
    assumptions: [...assumptions.values()],
    findings: input.findings,
    remarks: stages.flatMap(([, result]) => limitsOf(result?.worksheet ?? [])),
    labels,
  }
}

/** Limits of methods, each told once. */
function limitsOf(steps: readonly Step[]): Remark[] {
  const seen = new Set<string>()
  return steps.flatMap(({ says, limits }) => {
    if (limits === undefined || limits === '' || seen.has(limits)) return []
    seen.add(limits)
    return [{ about: says, text: limits }]
  })
}
