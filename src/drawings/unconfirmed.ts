import type { Finding } from '../worksheet/index.js'

/** Whether a finding tells of values that are made up: sheets that rest on them are drafts. */
export function isUnconfirmed({ id }: Pick<Finding, 'id'>): boolean {
  return id.startsWith('project.made-up')
}
