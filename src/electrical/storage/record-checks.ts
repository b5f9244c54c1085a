import type { Job } from '../system/index.js'
import type { StorageCheck } from './storage-check.js'

/** What a check is about; a failing one bears the id of it. */
export type StorageTopicOfChecks = 'unit' | 'place' | 'disconnect' | 'backup' | 'power-control'

/**
 * Puts checks on the worksheet: what fails is an error, a check for which a fact is missing a warning of its own, what the code in
 * force does not ask for a note.
 */
export function recordChecks(job: Job, topic: StorageTopicOfChecks, checks: readonly StorageCheck[]): void {
  checks.forEach((check, i) => {
    recordComparison(job, topic, check, i)
    findCheck(job, topic, check)
  })
}

function recordComparison(job: Job, topic: StorageTopicOfChecks, check: StorageCheck, index: number): void {
  const { id, where, value, limit, unit, relation, verdict, source, says } = check
  if (value === undefined || limit === undefined || relation === undefined) return
  job.worksheet.note({
    id: `wire.storage.${topic}-${index + 1}-${id}`,
    says: `Storage: ${says}`,
    formula: `x = stated`,
    inputs: [{ symbol: 'stated', value, unit: unit ?? '', from: where }],
    result: { symbol: 'x', value, unit: unit ?? '' },
    check: { relation, limit, pass: verdict === 'pass' },
    source,
  })
}

function findCheck(job: Job, topic: StorageTopicOfChecks, check: StorageCheck): void {
  const { verdict, says, where, source, fix, severity } = check
  if (verdict === 'pass') return
  if (verdict === 'not_stated')
    job.worksheet.find({
      severity: 'warning',
      id: 'wire.storage-not-stated',
      message: `${says}; this check was not made`,
      where,
      source,
      fix,
    })
  else if (verdict === 'not_ruled')
    job.worksheet.find({ severity: 'note', id: 'wire.storage-not-ruled', message: says, where, source, fix })
  else
    job.worksheet.find({
      severity: severity ?? 'error',
      id:
        topic === 'unit'
          ? 'wire.storage-unit'
          : topic === 'place'
            ? 'wire.storage-place'
            : topic === 'disconnect'
              ? 'wire.storage-disconnect'
              : topic === 'backup'
                ? 'wire.storage-backup'
                : 'wire.storage-power-control',
      message: says,
      where,
      source,
      fix,
    })
}
