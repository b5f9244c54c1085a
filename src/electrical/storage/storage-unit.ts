import type { StorageUnit } from '../../project/index.js'
import { storageDisconnectRules, type StorageDisconnectRule } from '../../tables/nec/index.js'
import { StageError } from '../../worksheet/index.js'
import { own } from '../../values/index.js'
import type { Job } from '../system/index.js'

type Storage = NonNullable<Job['project']['storage']>

/** The storage of a project with its data sheet. */
export interface StorageSystem {
  readonly stated: Storage
  readonly unitId: string
  readonly unit: StorageUnit
  /** Path of its data sheet. */
  readonly unitWhere: string
  readonly count: number
  readonly name: string
}

/**
 * The storage of the project that is installed somewhere; undefined where it has none, and where nothing is stated of its
 * installation, which `checkStorage` tells.
 *
 * @throws StageError when the unit is not among the equipment.
 */
export function storageOf({ project }: Pick<Job, 'project'>): StorageSystem | undefined {
  const { storage } = project
  if (storage?.installation === undefined || storage.count === 0) return undefined
  const unit = own(project.equipment.storage_units, storage.unit)
  if (unit === undefined)
    throw new StageError(
      'storage.unit',
      `there is no storage unit '${storage.unit}' under equipment.storage_units`,
      `Use one of: ${Object.keys(project.equipment.storage_units ?? {}).join(', ') || '(none is stated)'}`,
    )
  return {
    stated: storage,
    unitId: storage.unit,
    unit,
    unitWhere: `equipment.storage_units.${storage.unit}`,
    count: storage.count,
    name: unit.name ?? storage.unit.replaceAll('_', ' '),
  }
}

/**
 * The rules of the edition for storage.
 *
 * @throws StageError for editions before article 706.
 */
export function storageRulesOf(job: Job): StorageDisconnectRule {
  const rule = storageDisconnectRules[job.edition]
  if (rule !== undefined) return rule
  throw new StageError(
    'codes.electrical',
    `storage is not covered by ${job.edition} here: article 706 began in 2017, and what stood in 690.71 and article 480 before was not looked up; ${Object.keys(storageDisconnectRules).join(', ')} are covered`,
    'Ask the authority whether it takes a storage system by a later edition, or state count: 0 to plan without it',
  )
}
