import type { Project, Storage } from '../../project/index.js'
import type { Fade, ReplaceWhen, Warranty } from '../../storage/index.js'
import { StageError, type Worksheet } from '../../worksheet/index.js'
import type { BillingCalendar } from '../calendar/index.js'
import type { RateSheet } from '../tariff/index.js'
import type { StorageSystem } from './behind-meter.js'
import { readControl } from './control-marks.js'
import { readBattery, storagePart, type StoragePart } from './read-battery.js'

/** The battery of a project, all that its years need. */
export interface HouseBattery {
  readonly part: StoragePart
  readonly count: number
  readonly system: StorageSystem
  /** How it fades; undefined where nothing that it could follow is stated. */
  readonly fade: FadeReading
  readonly warranty: Warranty | undefined
  readonly replace: ReplaceWhen | undefined
  /** Price of replacing all units, USD of the purchase year. */
  readonly replacementUsd: number
}

/** The straight line needs the end of the warranty, which depends on the use. */
export type FadeReading = { readonly kind: 'warranty line'; readonly endPct: number } | Fade

/**
 * Reads the battery of a project.
 *
 * @param count Number of units, in place of the project's.
 * @returns undefined without storage, and for no unit at all.
 * @throws StageError when data that the years need are missing.
 */
export function readStorage(
  project: Pick<Project, 'storage' | 'equipment'>,
  sheet: RateSheet,
  calendar: BillingCalendar,
  worksheet: Worksheet,
  count: number | undefined = project.storage?.count,
): HouseBattery | undefined {
  const { storage, equipment } = project
  if (storage === undefined || count === undefined || count === 0) return undefined
  const part = storagePart(storage, equipment.storage_units)
  refuseSellAll(sheet)
  const battery = readBattery(part, worksheet, count)
  const { reserve_pct: reservePct = 0 } = storage
  const system: StorageSystem = {
    battery,
    control: readControl(storage.control, sheet, calendar),
    startShare: (storage.start_pct ?? reservePct) / 100,
  }
  const { replacement } = storage
  return {
    part,
    count,
    system,
    fade: readFade(part),
    warranty: readWarranty(part, count),
    replace:
      replacement === undefined
        ? undefined
        : {
            atWarrantyEnd: replacement.at_warranty_end === true,
            ...(replacement.floor_pct === undefined ? {} : { floorPct: replacement.floor_pct }),
          },
    replacementUsd: replacementUsd(storage, count),
  }
}

/** Of the project's number of units, and in proportion for another number. */
function replacementUsd({ replacement, cost_usd_per_unit: each = 0, count: own }: Storage, count: number): number {
  const whole = replacement?.usd
  return whole === undefined || own === 0 ? each * count : (whole * count) / own
}

function refuseSellAll({ solar }: RateSheet): void {
  if (solar.rule !== 'buy all, sell all') return
  throw new StageError(
    'storage',
    'the tariff buys all output on a meter of its own, so that a battery in the house never meets it',
    'Take storage away, or choose another tariff.',
  )
}

function readFade({ storage, unit, path }: StoragePart): FadeReading {
  const { fade = 'warranty_line', cell_temperature_c: temperatureC } = storage
  if (fade === 'stated' && unit.fade !== undefined) {
    const { calendar_pct_per_year: calendarPctPerYear, cycle_pct_per_full_cycle: cyclePctPerFullCycle } = unit.fade
    return { kind: 'stated', calendarPctPerYear, cyclePctPerFullCycle }
  }
  if (fade === 'cell_model' && temperatureC !== undefined) return { kind: 'cell', temperatureC }
  if (fade === 'warranty_line' && unit.warranty !== undefined)
    return { kind: 'warranty line', endPct: unit.warranty.capacity_pct }
  throw new StageError(
    `${path}.${fade === 'stated' ? 'fade' : 'warranty'}`,
    'nothing says how the battery fades',
    'State its warranty (years and capacity_pct), or storage.fade: stated with its percents under fade.',
  )
}

function readWarranty({ unit }: StoragePart, count: number): Warranty | undefined {
  const stated = unit.warranty
  if (stated === undefined) return undefined
  return {
    years: stated.years,
    ...(stated.throughput_mwh === undefined ? {} : { throughputKwh: stated.throughput_mwh * 1000 * count }),
    ...(stated.counts === undefined ? {} : { counts: stated.counts }),
    ...(stated.full_cycles === undefined ? {} : { fullCycles: stated.full_cycles }),
  }
}
