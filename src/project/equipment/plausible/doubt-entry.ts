import type { Finding, Source } from '../../../worksheet/index.js'
import type { Inverter, Optimiser, PvModule, StorageUnit, TrunkCable } from '../../project-types.generated.js'
import { entryPath, type EquipmentEntry } from '../entry.js'
import { Doubts } from './doubts.js'
import { doubtInverter } from './inverter.js'
import { doubtModule } from './module.js'
import { doubtMount, doubtOptimiser, doubtRail, doubtTrunkCable } from './others.js'
import { doubtStorageUnit } from './storage-unit.js'

const PRACTICE: Source = { document: '', standing: 'common practice, no source' }

/**
 * What of an entry cannot be true (errors) or is unlikely (warnings).
 *
 * @param entry Right by the schema, so that its values have the types of their keys.
 */
export function doubtEntry(entry: EquipmentEntry): Finding[] {
  const doubts = new Doubts(entry)
  const { values } = entry
  switch (entry.kind) {
    case 'module':
      doubtModule(values as unknown as PvModule, doubts)
      break
    case 'inverter':
      doubtInverter(values as unknown as Inverter, doubts)
      break
    case 'optimiser':
      doubtOptimiser(values as unknown as Optimiser, doubts)
      break
    case 'trunk-cable':
      doubtTrunkCable(values as unknown as TrunkCable, doubts)
      break
    case 'rail':
      doubtRail(values, doubts)
      break
    case 'mount':
      doubtMount(values, doubts)
      break
    case 'storage-unit':
      doubtStorageUnit(values as unknown as StorageUnit, doubts)
  }
  return [...doubts.findings, ...withoutSheet(entry)]
}

/** Figures that nobody can look up again. Trunk cables have no such key. */
function withoutSheet(entry: EquipmentEntry): Finding[] {
  if (entry.kind === 'trunk-cable' || entry.values['sheet'] !== undefined) return []
  return [
    {
      severity: 'note',
      id: 'equipment.no-sheet',
      message: `${entry.id}: nothing says which data sheet these values come from`,
      where: entryPath(entry, 'sheet'),
      source: PRACTICE,
      fix: "add --set sheet='...' with the name and revision of the data sheet",
    },
  ]
}
