import { showValue } from '../words.js'
import type { Rule } from './rule.js'

/** Terms are stated once, and dates of an offer are days of the calendar in their order. */
export const checkProposal: Rule = ({ proposal, document }, report) => {
  if (proposal === undefined) return
  if (proposal.terms !== undefined && proposal.terms_file !== undefined)
    report(['proposal', 'terms_file'], 'the terms stand under terms already; state one of the two')
  for (const key of ['signing_date', 'valid_until'] as const) {
    const date = proposal[key]
    if (date === undefined) continue
    const read = new Date(`${date}T00:00:00Z`)
    if (Number.isNaN(read.getTime()) || read.toISOString().slice(0, 10) !== date)
      report(['proposal', key], `${showValue(date)} is no day of the calendar`)
    else if (document?.date !== undefined && date < document.date)
      report(['proposal', key], `${date} is before ${document.date}, the date of issue under document`)
  }
}
