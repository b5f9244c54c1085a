import { StageError } from '../../worksheet/index.js'
import type { Job } from '../system/index.js'
import type { StorageSystem } from './storage-unit.js'

/**
 * Panel that the breaker of an AC-coupled storage stands in: as stated, else the panel that it backs up, else the only one.
 *
 * @throws StageError when several could be meant, or when the named one is not there.
 */
export function storageLanding({ electrical }: Job, { stated }: StorageSystem): string {
  const { distribution } = electrical
  // The short form has one panel, which results call `panel`.
  const panels = distribution === undefined ? ['panel'] : Object.keys(distribution.panels)
  const [at, where] =
    stated.installation?.at !== undefined
      ? [stated.installation.at, 'storage.installation.at']
      : stated.backup?.panel !== undefined
        ? [stated.backup.panel, 'storage.backup.panel']
        : [panels.length === 1 ? panels[0] : undefined, 'storage.installation.at']
  if (at === undefined)
    throw new StageError(
      where,
      'the panel that takes the breaker of the storage is not stated',
      `State one of: ${panels.join(', ')}`,
    )
  if (!panels.includes(at))
    throw new StageError(
      where,
      `there is no panel '${at}' under electrical.distribution.panels`,
      distribution === undefined
        ? 'State the panels under electrical.distribution, or take the key out where there is one panel only'
        : `State one of: ${panels.join(', ')}`,
    )
  return at
}
