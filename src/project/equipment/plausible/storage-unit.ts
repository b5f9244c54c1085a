import { STORAGE_RANGES } from '../../../tables/equipment/index.js'
import type { StorageUnit } from '../../project-types.generated.js'
import type { Doubts } from './doubts.js'

/** What is unlikely on the sheet of a storage unit. */
export function doubtStorageUnit(unit: StorageUnit, doubts: Doubts): void {
  const id = 'equipment.storage'
  const { charge_efficiency_pct: into, discharge_efficiency_pct: out, usable_kwh: usable, nameplate_kwh: name } = unit
  const product = into === undefined || out === undefined ? undefined : (into * out) / 100
  const roundTrip = unit.round_trip_pct ?? product
  const key = unit.round_trip_pct === undefined ? 'discharge_efficiency_pct' : 'round_trip_pct'
  const { roundTripPct, standbyW, usablePct, powerPerEnergy, warrantyYears } = STORAGE_RANGES
  if (unit.coupling === 'ac') doubts.outside(id, key, 'the round trip', roundTrip, roundTripPct)
  doubts.outside(id, 'standby_w', 'standby_w', unit.standby_w, standbyW)
  const share = name === undefined ? undefined : (100 * usable) / name
  doubts.outside(id, 'nameplate_kwh', 'usable_kwh of nameplate_kwh', share, usablePct)
  doubts.outside(id, 'charge_kw', 'charge_kw over usable_kwh', unit.charge_kw / usable, powerPerEnergy)
  doubts.outside(id, 'discharge_kw', 'discharge_kw over usable_kwh', unit.discharge_kw / usable, powerPerEnergy)
  doubts.outside(id, 'warranty.years', 'warranty.years', unit.warranty?.years, warrantyYears)
}
