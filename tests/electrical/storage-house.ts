import type { Project } from '../../src/project/index.js'
import { sizeWire, type StorageValues, type WiringValues } from '../../src/electrical/index.js'
import type { Result } from '../../src/worksheet/index.js'
import { context, microProject } from './demo.js'

type Storage = NonNullable<Project['storage']>
type Unit = NonNullable<Project['equipment']['storage_units']>[string]
type Run = NonNullable<NonNullable<Project['electrical']>['runs']>[string]
type Place = NonNullable<NonNullable<Storage['installation']>['places']>[string]

/** An invented AC-coupled unit: 13.5 kWh, 24 A at 240 V. */
export const storageUnit: Unit = {
  name: 'Invented Store 13',
  coupling: 'ac',
  chemistry: 'lfp',
  usable_kwh: 13.5,
  nameplate_kwh: 14,
  charge_kw: 5,
  discharge_kw: 5.76,
  surge_a: 90,
  round_trip_pct: 90,
  rated_output_a: 24,
  ac_voltage_v: 240,
  max_ocpd_a: 60,
  max_pv_ac_kw: 7.6,
  neutral_forming: true,
  listed: { ul_9540: true, ul_1741: true, ul_9540a_spacing_in: 6 },
}

/** A garage wall where everything is as the rules want it. */
export const garagePlace: Place = {
  location: 'attached_garage',
  units: 1,
  in_vehicle_path: true,
  vehicle_protection: 'height',
  bottom_above_floor_in: 48,
  alarm: 'heat',
  alarm_interconnected: true,
  gypsum_type_x_in: 0.625,
  clear_depth_in: 40,
  clear_width_in: 36,
  clear_height_in: 90,
}

export const storageStated: Storage = {
  unit: 'store13',
  count: 1,
  reserve_pct: 20,
  backup: {
    kind: 'critical_loads_panel',
    panel: 'backup',
    transfer: 'automatic',
    isolating_device_listed: true,
    isolating_device_a: 60,
    shutdown_works_islanded: true,
    switched_neutral: false,
    largest_load_w: 1500,
  },
  installation: {
    at: 'backup',
    place_code: 'IRC 2021',
    disconnect_at: 'within_10_ft',
    disconnect: {
      rating_a: 60,
      distance_ft: 4,
      visible: true,
      readily_accessible: true,
      through_wall: false,
      outside: true,
    },
    outside_initiator: true,
    places: { garage: garagePlace },
  },
}

/** Way of the storage circuit. */
export const storageRun: Run = {
  carries: ['storage'],
  segments: { garage: { location: 'indoors', length_ft: 15, raceway: 'EMT', ambient_c: 35 } },
}

/** What a test changes of the invented house with storage. */
export interface StorageChange {
  readonly unit?: Partial<Unit>
  readonly storage?: Partial<Storage>
  readonly installation?: Partial<NonNullable<Storage['installation']>>
  readonly backup?: Partial<NonNullable<Storage['backup']>>
  readonly place?: Partial<Place>
  readonly modules?: number
  readonly electrical?: Partial<NonNullable<Project['electrical']>>
  /** Runs beside those of the house; undefined takes one away. */
  readonly runs?: Readonly<Record<string, Run | undefined>>
}

/**
 * An invented house of 12 module-level inverters (15 A), an AC-coupled storage and a critical-loads panel on a 60 A feeder,
 * which takes the storage; the modules land on the main panel.
 */
export function storageHouse(change: StorageChange = {}): Project {
  const base = microProject(
    {
      service: { rating_a: 200, conductor_ampacity_a: 200 },
      connection: { kind: 'load_side_breaker', at: 'main', breaker_position: 'opposite_end' },
      distribution: {
        panels: {
          main: {
            bus_a: 200,
            main_a: 175,
            main_position: 'end',
            spaces_free: 6,
            terminal_temperature_c: 75,
          },
          backup: {
            bus_a: 125,
            main_position: 'end',
            spaces_free: 6,
            terminal_temperature_c: 75,
            load_a: 20,
          },
        },
        feeders: {
          to_backup: {
            from: 'main',
            to: 'backup',
            breaker_a: 60,
            breaker_position: 'opposite_end',
            material: 'copper',
            size_awg: '6',
            insulation: 'THWN-2',
            length_ft: 12,
            method: 'EMT',
          },
        },
      },
      terminal_temperature_c: 75,
      ...change.electrical,
    },
    change.modules ?? 12,
  )
  const { panel: _, ...electrical } = base.electrical ?? {}
  const { installation, backup } = storageStated
  return {
    ...base,
    documents: [{ id: 'certificate', file: 'certificate.pdf', title: 'Invented certificate', date: '2026-01-12' }],
    equipment: { ...base.equipment, storage_units: { store13: { ...storageUnit, ...change.unit } } },
    electrical: {
      ...electrical,
      runs: Object.fromEntries(
        Object.entries({
          ...electrical.runs,
          ...base.electrical?.runs,
          storage: storageRun,
          ...change.runs,
        }).flatMap(([id, run]) => (run === undefined ? [] : [[id, run] as const])),
      ),
    },
    storage: {
      ...storageStated,
      ...change.storage,
      backup: { ...(backup as NonNullable<typeof backup>), ...change.backup },
      installation: {
        ...installation,
        places: { garage: { ...garagePlace, ...change.place } },
        ...change.installation,
      },
    },
  }
}

export interface SizedStorage {
  readonly result: Result<WiringValues>
  readonly storage: StorageValues
  /** Findings of the storage: id, and where. */
  readonly found: readonly string[]
  /** Verdict of a check of this name. */
  readonly verdict: (id: string) => string | undefined
}

export function sizeStorage(change: StorageChange = {}, edition = 'NEC 2023'): SizedStorage {
  const result = sizeWire(storageHouse(change), { ...context(), edition })
  const { storage } = result.values
  if (storage === undefined) throw new Error('no storage in the result')
  return {
    result,
    storage,
    found: result.findings.filter(({ id }) => id.startsWith('wire.storage')).map(({ id, where }) => `${id} ${where}`),
    verdict: (id) => {
      const all = storage.checks.filter((check) => check.id === id).map(({ verdict }) => verdict)
      return ['fail', 'not_stated', 'not_ruled', 'pass'].find((one) => all.includes(one as never))
    },
  }
}
