import { showValue } from '../words.js'
import type { Rule } from './rule.js'

/** Issues have marks of their own, in the order of their dates, and the revision is the last of them. */
export const checkIssues: Rule = ({ document }, report) => {
  const issues = document?.revisions ?? []
  for (const [index, { number, date }] of issues.entries()) {
    const before = issues[index - 1]
    if (issues.findIndex((other) => other.number === number) < index)
      report(
        ['document', 'revisions', index, 'number'],
        `${showValue(number)} is the mark of an earlier issue too; give each its own`,
      )
    if (before !== undefined && date < before.date)
      report(
        ['document', 'revisions', index, 'date'],
        `${date} is before ${before.date} of the issue above it; write the oldest first`,
      )
  }
  const last = issues.at(-1)
  if (last !== undefined && document?.revision !== undefined && document.revision !== last.number)
    report(
      ['document', 'revision'],
      `is ${showValue(document.revision)}, and the last of revisions is ${showValue(last.number)}; leave revision out`,
    )
}
