import { StageError } from '../../worksheet/index.js'
import type { Tree } from '../distribution/index.js'
import { recordChecks, type StorageCheck, type StorageSystem } from '../storage/index.js'
import type { Job } from '../system/index.js'
import { controlRules } from './control-rules.js'
import { firstPanel, islandOf, type Island } from './island.js'
import { isolationRules } from './isolation-rules.js'
import { powerRules } from './power-rules.js'

/** What came out for the backup. */
export interface CheckedBackup {
  readonly island: Island | undefined
  readonly checks: readonly StorageCheck[]
}

/**
 * Backup and power control of the storage, on the worksheet.
 *
 * @throws StageError when the panel that it carries is not there.
 */
export function checkBackup(job: Job, system: StorageSystem, tree: Tree): CheckedBackup {
  const control = controlRules(job, tree)
  recordChecks(job, 'power-control', control)
  const { backup } = system.stated
  if (backup === undefined || backup.kind === 'none') return { island: undefined, checks: control }
  const island = islandOf(tree, panelOf(tree, backup))
  if (island === undefined)
    throw new StageError(
      'storage.backup.panel',
      `there is no panel '${backup.panel ?? ''}' under electrical.distribution.panels`,
      `State one of: ${tree.panels.map(({ id }) => id).join(', ')}`,
    )
  const checks = [...isolationRules(job, system, tree, island), ...powerRules(job, system, tree, island)]
  recordChecks(job, 'backup', checks)
  return { island, checks: [...control, ...checks] }
}

function panelOf(tree: Tree, { kind, panel }: NonNullable<StorageSystem['stated']['backup']>): string {
  if (panel !== undefined) return panel
  const first = firstPanel(tree)
  if (kind === 'whole_house' && first !== undefined) return first
  throw new StageError(
    'storage.backup.panel',
    'the panel of the critical loads is not stated',
    `State the panel under electrical.distribution.panels and name it; known are ${tree.panels.map(({ id }) => id).join(', ')}`,
  )
}
