import { yearOfUse, yearSums, type StorageLife } from '../../storage/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import { partsOf } from '../calendar/index.js'
import { noBattery } from './read-battery.js'
import { runStorage, type StorageRun } from './behind-meter.js'
import type { HouseBattery } from './read-storage.js'
import { roundKwh, type StorageValues } from './storage-values.js'
import { tellStorage } from './tell-storage.js'

/** Energy of a house for a year, kWh by hour or quarter of one. */
export interface YearEnergy {
  readonly usageKwh: Float64Array
  readonly productionKwh: Float64Array
}

/** What the first year and the study of a battery come to; money, outages and optimum are added by others. */
export type StorageEnergyValues = Pick<
  StorageValues,
  'count' | 'usable_kwh' | 'reserve_kwh' | 'annual' | 'fade' | 'warranty_end'
> & { readonly without: Pick<StorageValues['without'], 'import_kwh' | 'export_kwh' | 'self_use_pct'> }

const pct = (part: number, whole: number): number => (whole > 0 ? Number(((100 * part) / whole).toFixed(2)) + 0 : 0)

/** Sums of the first year, with the battery new and without it. */
export function storageEnergy(
  house: HouseBattery,
  energy: YearEnergy,
  run: StorageRun,
  life: StorageLife,
  worksheet: Worksheet,
): StorageEnergyValues {
  const { battery } = house.system
  const stepH = 1 / partsOf(energy.usageKwh)
  const steps = stepH === 1 ? '8760 hours' : '35,040 quarters of an hour'
  const sums = yearSums(run.flows, battery, stepH)
  const none = noBattery(battery)
  const plain = yearSums(
    runStorage({ ...house.system, battery: none }, energy.usageKwh, energy.productionKwh).flows,
    none,
    stepH,
  )
  let madeKwh = 0
  for (const kwh of energy.productionKwh) madeKwh += Math.max(0, kwh)
  const { chargedKwh, dischargedKwh, leftKwh, standbyKwh } = sums
  const drawn = chargedKwh + standbyKwh
  const cycles = yearOfUse(run.flows, battery, stepH, battery.mostKwh).fullCycles
  const lostKwh = worksheet.step({
    id: 'storage.losses',
    says: 'Lost in the battery in the first year',
    formula: 'L = C + S - D - (e_end - e_start)',
    inputs: [
      { symbol: 'C', value: chargedKwh, unit: 'kWh', from: `charged, sum of ${steps}` },
      { symbol: 'S', value: standbyKwh, unit: 'kWh', from: `${house.part.path}.standby_w x units x 8760 h` },
      { symbol: 'D', value: dischargedKwh, unit: 'kWh', from: `discharged, sum of ${steps}` },
      { symbol: 'e_end - e_start', value: leftKwh, unit: 'kWh', from: 'left in the store, worth nothing here' },
    ],
    result: { symbol: 'L', value: drawn - dischargedKwh - leftKwh, unit: 'kWh' },
    source: { document: 'Balance of the battery', standing: 'common practice, no source' },
  })
  worksheet.step({
    id: 'storage.cycles',
    says: 'Full cycles of the first year',
    formula: 'n = D / eta_d / e_max',
    inputs: [
      { symbol: 'D', value: dischargedKwh, unit: 'kWh', from: `discharged, sum of ${steps}` },
      { symbol: 'eta_d', value: battery.givenOfStored, unit: '', from: house.part.path },
      { symbol: 'e_max', value: battery.mostKwh, unit: 'kWh', from: `${house.part.path}.usable_kwh x units` },
    ],
    result: { symbol: 'n', value: cycles, unit: '' },
    source: { document: 'Definition of a full cycle', standing: 'common practice, no source' },
  })
  tellStorage(house, life, stepH, worksheet)
  const { warrantyEnd: end } = life
  return {
    count: house.count,
    usable_kwh: Number(battery.mostKwh.toFixed(3)),
    reserve_kwh: Number(battery.leastKwh.toFixed(3)),
    annual: {
      charged_kwh: roundKwh(chargedKwh),
      discharged_kwh: roundKwh(dischargedKwh),
      losses_kwh: roundKwh(lostKwh),
      standby_kwh: roundKwh(standbyKwh),
      import_kwh: roundKwh(sums.importKwh),
      export_kwh: roundKwh(sums.exportKwh),
      curtailed_kwh: roundKwh(sums.curtailedKwh),
      self_use_pct: pct(Math.max(0, madeKwh - sums.exportKwh - sums.curtailedKwh), madeKwh),
      full_cycles: Number(cycles.toFixed(2)),
      round_trip_pct: chargedKwh > 0 ? pct(dischargedKwh, drawn) : null,
      left_kwh: roundKwh(leftKwh),
    },
    without: {
      import_kwh: roundKwh(plain.importKwh),
      export_kwh: roundKwh(plain.exportKwh),
      self_use_pct: pct(Math.max(0, madeKwh - plain.exportKwh - plain.curtailedKwh), madeKwh),
    },
    fade: fadeWords(house),
    warranty_end: end === undefined ? null : { after_years: Number(end.afterYears.toFixed(2)), by: end.by },
  }
}

function fadeWords({ fade }: HouseBattery): string {
  switch (fade.kind) {
    case 'warranty line':
      return `straight to ${String(fade.endPct)} % at the end of the warranty`
    case 'stated':
      return `${String(fade.calendarPctPerYear)} % a year and ${String(fade.cyclePctPerFullCycle)} % a full cycle`
    case 'cell':
      return `a published model of lfp cells at ${String(fade.temperatureC)} deg C, not of this product`
    case 'line':
      return `straight to ${String(fade.endPct)} % after ${String(fade.years)} years`
  }
}
