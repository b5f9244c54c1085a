import type { Project } from '../../src/project/index.js'
import { storageHouse } from '../electrical/storage-house.js'
import { microHouse } from './demo-packet.js'

/** The demo house (INVENTED) with the storage, critical-loads panel and wiring of the storage house. */
export function storagePacketHouse(): Project {
  const [house, stored] = [microHouse(), storageHouse()]
  const units = stored.equipment.storage_units
  if (units === undefined || stored.storage === undefined || stored.electrical === undefined)
    throw new Error('the base has no storage')
  const { distribution, connection, service, runs } = stored.electrical
  const { panel: _, ...electrical } = house.electrical ?? {}
  const run = runs?.['storage']
  if (run === undefined) throw new Error('the base has no run of the storage')
  return {
    ...house,
    title: 'House with a battery and a critical-loads panel (invented)',
    equipment: { ...house.equipment, storage_units: units },
    electrical: {
      ...electrical,
      ...(service === undefined ? {} : { service }),
      ...(connection === undefined ? {} : { connection }),
      ...(distribution === undefined ? {} : { distribution }),
      runs: { ...electrical.runs, storage: run },
    },
    storage: stored.storage,
  }
}
