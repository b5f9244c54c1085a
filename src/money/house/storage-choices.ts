import type { Project } from '../../project/index.js'
import { StageError, type Worksheet } from '../../worksheet/index.js'
import { storageUsd, type StorageChoice } from '../sizing/index.js'
import { readStorage } from '../storage/index.js'
import type { House } from './read-house.js'

/**
 * Storage of the project by its number of units, from none.
 *
 * @throws StageError when the project has no storage, or its price or data are missing.
 */
export function storageChoices(project: Project, house: House, most: number, worksheet: Worksheet): StorageChoice[] {
  const { storage } = project
  if (storage === undefined)
    throw new StageError('storage', 'the project has no storage', 'State storage, with a unit and its price.')
  const { sheets, usage } = house
  return Array.from({ length: most + 1 }, (_, units) => ({
    units,
    usd: storageUsd(units, storage.cost_usd_per_unit, storage.cost_fixed_usd),
    battery: readStorage(project, sheets.withSystem, usage.calendar, worksheet, units),
  }))
}

/** The table of sizes is that of modules alone, also for a project with a battery. */
export function tellStorageLeftOut({ storage }: Project, worksheet: Worksheet): void {
  if ((storage?.count ?? 0) === 0) return
  worksheet.find({
    severity: 'note',
    id: 'size.without-storage',
    message: 'the sizes are those of modules alone, without the battery of the project and its price',
    where: 'storage',
    fix: 'Compare modules and storage units together with choose-size --storage 2.',
  })
}
