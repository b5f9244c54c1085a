import { own } from '../../values/index.js'
import { EXPLANATIONS } from './all.js'
import type { Explanation } from './explanation.js'

/** The explanation of a finding id, its own or that of its family (`*.cannot-run`); undefined when there is none. */
export function findExplanation(id: string): Explanation | undefined {
  const family = `*${id.slice(Math.max(0, id.indexOf('.')))}`
  return own(EXPLANATIONS, id) ?? (id.includes('.') ? own(EXPLANATIONS, family) : undefined)
}
