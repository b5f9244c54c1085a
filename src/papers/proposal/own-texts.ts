import type { Offer } from './offer.js'

/** The installer's own words by their keys under `proposal`. */
export function ownTexts(stated: Offer['stated']): (readonly [string, string])[] {
  const list = (key: string, texts: readonly (string | undefined)[]) =>
    texts.flatMap((text) => (text === undefined ? [] : [[key, text] as const]))
  return [
    ...list('not_included', stated.not_included ?? []),
    ...list('next_steps', stated.next_steps ?? []),
    ...list(
      'timeline',
      (stated.timeline ?? []).flatMap(({ step, when }) => [step, when]),
    ),
    ...list(
      'payments',
      (stated.payments ?? []).map(({ due }) => due),
    ),
    ...list(
      'warranties',
      Object.values(stated.warranties ?? {}).flatMap(({ covers, given_by: by }) => [covers, by]),
    ),
    ...list('export_rule', [stated.export_rule]),
    ...list('escalation_basis', [stated.escalation_basis]),
    ...list('complaints', [stated.complaints]),
    ...list('lien', [stated.lien]),
    ...list('roof', [stated.roof]),
    ...list('insurance_and_taxes', [stated.insurance_and_taxes]),
  ]
}

/** Keys of all texts that stand in an offer as somebody wrote them, each once; names of people and equipment are not among them. */
export function untranslated(project: Offer['project'], stated: Offer['stated'], terms: string | undefined): string[] {
  const { finance, incentives, tariff } = project
  const has = (key: string, is: boolean): string[] => (is ? [key] : [])
  return [
    ...new Set(ownTexts(stated).map(([key]) => `proposal.${key}`)),
    ...has(stated.terms === undefined ? 'proposal.terms_file' : 'proposal.terms', terms !== undefined),
    ...has('incentives', Object.keys(incentives ?? {}).length > 0),
    ...has('finance.replacements', (finance?.replacements ?? []).length > 0),
    ...has('tariff.source', tariff?.source !== undefined),
  ]
}
