import { editions, sectionOf, type SectionTopic } from '../../tables/nec/index.js'
import type { Source } from '../../worksheet/index.js'

/** What a finding is about, for somebody who meets it for the first time. */
export interface Explanation {
  /** What the finding says about the design or the input. */
  readonly means: string
  /** The rule behind it and why it exists. */
  readonly rule: string
  readonly sources: readonly Source[]
  readonly fix: string
}

/** Explanations keyed by finding id; `*.name` stands for every id that ends so. */
export type Explanations = Readonly<Record<string, Explanation>>

/** Where a topic stands in each edition of the electrical code that has the rule. */
export function nec(topic: SectionTopic): Source[] {
  return editions.map((edition) => sectionOf(edition, topic)).filter((source) => source.place !== 'no such rule')
}

/** A habit of the trade or a choice of this program that no document was found for. */
export const PRACTICE: Source = { document: '', standing: 'common practice, no source' }

export const secondary = (document: string, place: string): Source => ({ document, place, standing: 'secondary' })
