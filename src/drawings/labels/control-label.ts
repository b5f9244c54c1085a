import { labelWords } from '../../tables/nec/index.js'
import type { Source } from '../../worksheet/index.js'
import type { LabelFacts } from './label-facts.js'
import { wordsSource } from './label-look.js'
import { panelsControlled, type LabelPlace } from './label-places.js'

/** What is known of a label before it has words. */
export interface LabelOrigin {
  readonly rule: { readonly id: string; readonly where: string }
  readonly places: readonly LabelPlace[]
  readonly source: Source
}

/** The label of a power control system, on every panel that it lets in; none where another rule governs. */
export function controlLabel(facts: LabelFacts): LabelOrigin[] {
  const places = panelsControlled(facts)
  const words = labelWords('PCS', facts.edition)
  if (places.length === 0 || words === undefined) return []
  return [{ rule: { id: 'PCS', where: words.where }, places, source: wordsSource(words) }]
}
