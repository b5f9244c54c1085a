import type { Storage, StorageUnit } from '../../project/index.js'
import type { Battery } from '../../storage/index.js'
import { STORAGE_RANGES, type PlausibleRange } from '../../tables/equipment/index.js'
import { own } from '../../values/index.js'
import { StageError, type Source, type Worksheet } from '../../worksheet/index.js'

/** What a battery is worked out from; a project has all of it. */
export interface StoragePart {
  readonly storage: Storage
  readonly unit: StorageUnit
  /** Path of the unit in the project file. */
  readonly path: string
}

/** @throws StageError when the unit is not there. */
export function storagePart(storage: Storage, units: Readonly<Record<string, StorageUnit>> | undefined): StoragePart {
  const unit = own(units ?? {}, storage.unit)
  const path = `equipment.storage_units.${storage.unit}`
  if (unit === undefined)
    throw new StageError('storage.unit', `there is no ${path}`, 'Name a unit under equipment.storage_units.')
  return { storage, unit, path }
}

const CONVENTION: Source = { document: 'convention: equal losses both ways', standing: 'from memory' }

/** Stored and given shares of the unit by itself. */
function ways({ unit, path }: StoragePart, worksheet: Worksheet): readonly [into: number, out: number] {
  const { charge_efficiency_pct: into, discharge_efficiency_pct: out, round_trip_pct: both } = unit
  if (into !== undefined && out !== undefined) return [into / 100, out / 100]
  if (both === undefined)
    throw new StageError(
      `${path}.round_trip_pct`,
      'the efficiency of the battery is not known',
      'State round_trip_pct, or charge_efficiency_pct and discharge_efficiency_pct, from the data sheet.',
    )
  const each = Math.sqrt(both / 100)
  worksheet.assume({
    path: `${path}.charge_efficiency_pct`,
    value: Number((each * 100).toFixed(3)),
    unit: '%',
    why: 'the sheet states the round trip only; both ways get its square root',
    source: CONVENTION,
  })
  return [each, each]
}

/**
 * All units of a project together.
 *
 * @param count In place of the project's.
 * @throws StageError when efficiency, standby or values of the shared inverter are missing.
 */
export function readBattery(part: StoragePart, worksheet: Worksheet, count: number = part.storage.count): Battery {
  const { unit, path, storage } = part
  if (unit.standby_w === undefined)
    throw new StageError(
      `${path}.standby_w`,
      'the standby power of the battery is not known',
      'State the power that one unit draws all day from its data sheet, W; at few cycles it weighs more than the round trip.',
    )
  const [into, out] = ways(part, worksheet)
  tellUnlikely(part, into * out * 100, worksheet)
  const mostKwh = count * unit.usable_kwh
  const common = {
    mostKwh,
    leastKwh: (mostKwh * (storage.reserve_pct ?? 0)) / 100,
    standbyKw: (count * unit.standby_w) / 1000,
  }
  const [chargeKw, dischargeKw] = [count * unit.charge_kw, count * unit.discharge_kw]
  if (unit.coupling === 'ac')
    return {
      ...common,
      chargeSunKw: chargeKw,
      chargeGridKw: chargeKw,
      dischargeKw,
      storedOfSun: into,
      storedOfGrid: into,
      givenOfStored: out,
    }
  const { inverter_efficiency_pct: inverterPct, inverter_ac_kw: sharedAcKw } = unit
  if (inverterPct === undefined || sharedAcKw === undefined)
    throw new StageError(
      `${path}.${inverterPct === undefined ? 'inverter_efficiency_pct' : 'inverter_ac_kw'}`,
      'with coupling dc the shared inverter decides, and it is not known',
      'State inverter_efficiency_pct and inverter_ac_kw from its data sheet.',
    )
  const inverter = inverterPct / 100
  // A kWh that the inverter does not give to the house was 1 / inverter on the DC side.
  return {
    ...common,
    chargeSunKw: chargeKw * inverter,
    chargeGridKw: chargeKw / inverter,
    dischargeKw: dischargeKw * inverter,
    storedOfSun: into / inverter,
    storedOfGrid: into * inverter,
    givenOfStored: out * inverter,
    sharedAcKw,
  }
}

function tellUnlikely({ unit, path, storage }: StoragePart, roundTripPct: number, worksheet: Worksheet): void {
  const { standbyW, usablePct, powerPerEnergy, installedUsdPerKwh, warrantyYears } = STORAGE_RANGES
  const tell = (where: string, what: string, value: number | undefined, range: PlausibleRange): void => {
    if (value === undefined || (value >= range.low && value <= range.high)) return
    worksheet.find({
      severity: 'warning',
      id: 'storage.unlikely',
      message: `${what} is ${String(Number(value.toPrecision(4)))} ${range.unit}; batteries of the trade have ${String(range.low)} to ${String(range.high)} ${range.unit}`,
      where,
      source: range.source,
      fix: 'Read the data sheet or the offer again.',
    })
  }
  if (unit.coupling === 'ac') tell(path, 'the round trip', roundTripPct, STORAGE_RANGES.roundTripPct)
  tell(`${path}.standby_w`, 'standby', unit.standby_w, standbyW)
  const name = unit.nameplate_kwh
  tell(`${path}.nameplate_kwh`, 'usable of nameplate energy', name && (100 * unit.usable_kwh) / name, usablePct)
  tell(`${path}.charge_kw`, 'charging power over energy', unit.charge_kw / unit.usable_kwh, powerPerEnergy)
  tell(`${path}.discharge_kw`, 'output over energy', unit.discharge_kw / unit.usable_kwh, powerPerEnergy)
  tell(`${path}.warranty.years`, 'the warranty', unit.warranty?.years, warrantyYears)
  const each = storage.cost_usd_per_unit
  tell('storage.cost_usd_per_unit', 'the price', each && each / unit.usable_kwh, installedUsdPerKwh)
}

/** The same battery with another usable energy; the reserve stays its share. */
export function atCapacity(battery: Battery, capacityPct: number): Battery {
  const share = capacityPct / 100
  return { ...battery, mostKwh: battery.mostKwh * share, leastKwh: battery.leastKwh * share }
}

/** The house without it. */
export function noBattery(battery: Battery): Battery {
  return { ...battery, mostKwh: 0, leastKwh: 0, standbyKw: 0 }
}
