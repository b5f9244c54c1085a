import { supplySideRules, type Edition, type SupplySideRule } from '../../tables/nec/index.js'

/** The supply-side rule of an edition. */
export function supplySideRule(edition: Edition): SupplySideRule {
  const rule = supplySideRules.find((candidate) => candidate.edition === edition)
  if (rule === undefined) throw new Error(`no supply-side rule for ${edition}`)
  return rule
}
