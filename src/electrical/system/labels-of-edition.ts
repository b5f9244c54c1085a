import { labelRules, necSource, type Edition, type LabelRule } from '../../tables/nec/index.js'
import type { Source } from '../../worksheet/index.js'

/** A label that an edition knows, with the section that asks for it. */
export interface EditionLabel {
  readonly rule: LabelRule
  readonly source: Source
}

/** Labels and placards of an edition; which of them a project needs is decided where the labels are made. */
export function labelsOfEdition(edition: Edition): EditionLabel[] {
  return labelRules.flatMap((rule) => {
    const place = rule.sections[edition]
    return place === undefined ? [] : [{ rule, source: necSource(edition, place.section, place.standing) }]
  })
}
