import { EXPLANATIONS } from './all.js'
import type { Explanation } from './explanation.js'

/** The explanation of a finding id, its own or that of its family (`*.cannot-run`); undefined when there is none. */
export function findExplanation(id: string): Explanation | undefined {
  const own = Object.hasOwn(EXPLANATIONS, id) ? EXPLANATIONS[id] : undefined
  const family = `*${id.slice(Math.max(0, id.indexOf('.')))}`
  return own ?? (id.includes('.') && Object.hasOwn(EXPLANATIONS, family) ? EXPLANATIONS[family] : undefined)
}
