import { describe, expect, it } from 'vitest'
import { sizeStorage, storageHouse, type StorageChange } from './storage-house.js'

type Disconnect = NonNullable<NonNullable<StorageChange['installation']>['disconnect']>

const base = {
  rating_a: 60,
  distance_ft: 4,
  visible: true,
  readily_accessible: true,
  through_wall: false,
  outside: true,
}
const disconnect = (
  change: Partial<Disconnect>,
  edition?: string,
  at: 'in_unit' | 'within_10_ft' | 'lockable_elsewhere' = 'within_10_ft',
  more: NonNullable<StorageChange['installation']> = {},
) => sizeStorage({ installation: { disconnect_at: at, disconnect: { ...base, ...change }, ...more } }, edition)

// 706.7 of 2017 read; 706.15 since 2020 from course summaries (secondary).
describe('disconnect of the storage', () => {
  it('within 10 ft since 2020; 2017 names no such distance', () => {
    expect(disconnect({ distance_ft: 10 }).verdict('disconnect')).toBe('pass')
    expect(disconnect({ distance_ft: 10.5 }).verdict('disconnect')).toBe('fail')
    expect(disconnect({ distance_ft: 10.5 }, 'NEC 2017').verdict('disconnect')).toBe('pass')
    expect(disconnect({ distance_ft: undefined as never }).verdict('disconnect')).toBe('not_stated')
    expect(disconnect({ visible: false }).verdict('disconnect')).toBe('fail')
    expect(disconnect({ visible: undefined as never }, 'NEC 2017').verdict('disconnect')).toBe('not_stated')
  })

  it('elsewhere only when it can be locked open', () => {
    const elsewhere = (lockable?: boolean) =>
      disconnect(
        { lockable: lockable as never, distance_ft: 60, second_at_equipment: true },
        undefined,
        'lockable_elsewhere',
      )
    expect(elsewhere(true).verdict('disconnect')).toBe('pass')
    expect(elsewhere(false).verdict('disconnect')).toBe('fail')
    expect(elsewhere().verdict('disconnect')).toBe('not_stated')
  })

  it('in the unit: nothing to see; nothing stated: said', () => {
    expect(disconnect({}, undefined, 'in_unit').verdict('disconnect')).toBe('pass')
    const none = sizeStorage({ installation: { disconnect_at: undefined as never } })
    expect(none.verdict('disconnect')).toBe('not_stated')
    expect(none.found).toContain('wire.storage-not-stated storage.installation.disconnect_at')
  })

  it('carries 125 percent of the rated current', () => {
    expect(disconnect({ rating_a: 30 }).verdict('disconnect-rating')).toBe('pass')
    expect(disconnect({ rating_a: 25 }).verdict('disconnect-rating')).toBe('fail')
    expect(disconnect({ rating_a: undefined as never }).verdict('disconnect-rating')).toBe('not_stated')
  })

  it('readily accessible', () => {
    expect(disconnect({ readily_accessible: false }).verdict('disconnect-accessible')).toBe('fail')
    expect(disconnect({ readily_accessible: undefined as never }).verdict('disconnect-accessible')).toBe('not_stated')
  })

  it('a second one behind a wall, or beyond 5 ft out of sight', () => {
    expect(disconnect({ through_wall: true }).verdict('disconnect-partition')).toBe('not_stated')
    expect(disconnect({ through_wall: true, second_at_equipment: false }).verdict('disconnect-partition')).toBe('fail')
    expect(disconnect({ through_wall: true, second_at_equipment: true }).verdict('disconnect-partition')).toBe('pass')
    expect(
      disconnect({ distance_ft: 8, visible: false, second_at_equipment: false }).verdict('disconnect-partition'),
    ).toBe('fail')
    expect(disconnect({ distance_ft: 8 }).verdict('disconnect-partition')).toBeUndefined()
    expect(disconnect({ through_wall: undefined as never }).verdict('disconnect-partition')).toBe('not_stated')
    // Neither near nor seen as far as anybody knows.
    const unknown = { visible: undefined as never, distance_ft: undefined as never }
    expect(disconnect(unknown, 'NEC 2017').verdict('disconnect-partition')).toBe('not_stated')
    expect(disconnect({ ...unknown, distance_ft: 4 }, 'NEC 2017').verdict('disconnect-partition')).toBeUndefined()
  })

  it('outside: nothing in 2017, a disconnect in 2020, a shutdown function since 2023', () => {
    const by = (edition: string, outside: boolean | undefined, initiator: boolean | undefined) =>
      disconnect({ outside: outside as never }, edition, 'within_10_ft', {
        outside_initiator: initiator as never,
      }).verdict('outside-shutdown')
    expect(by('NEC 2017', false, false)).toBeUndefined()
    expect([by('NEC 2020', true, false), by('NEC 2020', false, true), by('NEC 2020', undefined, true)]).toEqual([
      'pass',
      'fail',
      'not_stated',
    ])
    for (const edition of ['NEC 2023', 'NEC 2026'])
      expect([by(edition, false, true), by(edition, true, false), by(edition, true, undefined)]).toEqual([
        'pass',
        'fail',
        'not_stated',
      ])
  })

  it('one switch for several units opens them all', () => {
    const two = (opens?: boolean) =>
      sizeStorage({
        storage: { count: 2 },
        installation: { disconnect: { ...base, rating_a: 100, opens_all_units: opens as never } },
      }).verdict('disconnect-all-units')
    expect([two(true), two(false), two()]).toEqual(['pass', 'fail', 'not_stated'])
  })
})

// 702.4(B), 702.5, 710.15, 705.170 of 2017 read.
describe('backup', () => {
  const backup = (change: NonNullable<StorageChange['backup']>, more: StorageChange = {}) =>
    sizeStorage({ ...more, backup: change })

  it('an automatic transfer carries the whole load of the panel: 20 A are 4800 W, 5760 W are there', () => {
    expect(backup({}).verdict('full-load')).toBe('pass')
    expect(sizeStorage({ unit: { discharge_kw: 4.7 } }).verdict('full-load')).toBe('fail')
    expect(sizeStorage({ unit: { discharge_kw: 4.7 }, backup: { load_managed: true } }).verdict('full-load')).toBe(
      'pass',
    )
    expect(
      sizeStorage({ unit: { discharge_kw: 4.7 }, backup: { transfer: 'manual' } }).verdict('full-load'),
    ).toBeUndefined()
    expect(backup({ transfer: undefined as never }).verdict('transfer')).toBe('not_stated')
  })

  it('a panel whose load nobody calculated: said', () => {
    const { distribution } = storageHouse().electrical ?? {}
    const { main, backup: { load_a: loadA, ...unknown } = { bus_a: 125 } } = distribution?.panels ?? {}
    expect(loadA).toBe(20)
    const panels = { ...(main === undefined ? {} : { main }), backup: unknown }
    const sized = sizeStorage({ electrical: { distribution: { ...distribution, panels } } })
    expect(sized.verdict('full-load')).toBe('not_stated')
    expect(sized.found).toContain('wire.storage-not-stated electrical.distribution.panels.backup.load_a')
  })

  // 710.15(C) as a summary of the code has it (secondary): no 240 V, no multiwire circuits, less output than the neutral bus.
  it('710.15(C): one supply of 120 V', () => {
    const battery = { current_a: 100, low_voltage_v: 48 }
    const dc = {
      coupling: 'dc',
      ac_voltage_v: 120,
      inverter_ac_kw: 5,
      inverter_efficiency_pct: 96,
      battery_side: battery,
    } as const
    const way = { location: 'indoors', length_ft: 6, raceway: 'EMT', ambient_c: 30 } as const
    const runs = { storage: { carries: ['storage_dc'], segments: { battery: way } } }
    const on120 = (change: NonNullable<StorageChange['backup']>, count = 2) =>
      sizeStorage({ unit: dc, runs, backup: change, storage: { count }, place: { units: count } })
    const good = { outlets_240_v: false, multiwire_circuits: false, neutral_bus_a: 125 }
    const ids = ['single-supply-240', 'single-supply-multiwire', 'single-supply-neutral']
    expect(ids.map((id) => on120(good).verdict(id))).toEqual(['pass', 'pass', 'pass'])
    expect(ids.map((id) => on120({}).verdict(id))).toEqual(['not_stated', 'not_stated', 'not_stated'])
    expect(on120({ ...good, outlets_240_v: true }).verdict('single-supply-240')).toBe('fail')
    expect(on120({ ...good, multiwire_circuits: true }).verdict('single-supply-multiwire')).toBe('fail')
    // Two units of 24 A: less than the bus, not as much.
    expect(on120({ ...good, neutral_bus_a: 48 }).verdict('single-supply-neutral')).toBe('fail')
    expect(on120({ ...good, neutral_bus_a: 49 }).verdict('single-supply-neutral')).toBe('pass')
    const sheetless = sizeStorage({
      unit: { ...dc, rated_output_a: undefined as never },
      runs,
      backup: { ...good, neutral_bus_a: 48 },
    })
    // 5.76 kW at 120 V are 48 A.
    expect(sheetless.verdict('single-supply-neutral')).toBe('fail')
    expect(on120(good).verdict('neutral-forming')).toBeUndefined()
    expect(sizeStorage().verdict('single-supply-240')).toBeUndefined()
    expect(sizeStorage().verdict('neutral-forming')).toBe('pass')
  })

  it('710.15(A): not below the largest single appliance, also by hand', () => {
    expect(backup({ transfer: 'manual', largest_load_w: 5760 }).verdict('largest-load')).toBe('pass')
    expect(backup({ transfer: 'manual', largest_load_w: 5800 }).verdict('largest-load')).toBe('fail')
    const loads = { pump: { w: 6000 }, lamps: { w: 100 } }
    expect(backup({ largest_load_w: undefined as never, loads }).verdict('largest-load')).toBe('fail')
    expect(backup({ largest_load_w: undefined as never }).verdict('largest-load')).toBe('not_stated')
  })

  it('isolating device: listed, and not below the device ahead of it', () => {
    expect(backup({ isolating_device_listed: false }).verdict('isolating-device')).toBe('fail')
    expect(backup({ isolating_device_listed: undefined as never }).verdict('isolating-device')).toBe('not_stated')
    expect(backup({ isolating_device_a: 50 }).verdict('isolating-device-rating')).toBe('fail')
    expect(backup({ isolating_device_a: undefined as never }).verdict('isolating-device-rating')).toBe('not_stated')
  })

  it('whole house: behind the first panel, against the main of 175 A; service rated where it stands ahead', () => {
    const whole = (change: NonNullable<StorageChange['backup']>) =>
      backup({ kind: 'whole_house', panel: undefined as never, ...change })
    expect(whole({}).storage.backup).toMatchObject({
      kind: 'whole_house',
      panel: 'main',
      main_a: 175,
      island_devices_a: 50,
    })
    expect(whole({}).verdict('isolating-device-rating')).toBe('fail')
    expect(whole({ isolating_device_a: 200 }).verdict('isolating-device-rating')).toBe('pass')
    expect(whole({ isolating_device_service_rated: false }).verdict('isolating-device-service')).toBe('fail')
    expect(whole({ isolating_device_service_rated: true }).verdict('isolating-device-service')).toBe('pass')
  })

  it('without the grid: all devices of sources on the busbar, on the grid: 705.12', () => {
    // 30 A storage and 20 A of the modules, both on the backup panel: 50 A on 125 A, and on 40 A.
    const landed = (busA: number) => {
      const { distribution } = storageHouse().electrical ?? {}
      const backupPanel = { ...distribution?.panels['backup'], bus_a: busA }
      return sizeStorage({
        electrical: {
          connection: { kind: 'load_side_breaker', at: 'backup', breaker_position: 'opposite_end' },
          distribution: { ...distribution, panels: { ...distribution?.panels, backup: backupPanel } },
        },
      })
    }
    expect(landed(125).storage.backup?.island_devices_a).toBe(50)
    expect(landed(125).verdict('island-busbar')).toBe('pass')
    expect(landed(49).verdict('island-busbar')).toBe('fail')
    // The modules are on the island then: ratio and shutdown are asked.
    expect(landed(125).verdict('pv-ratio')).toBe('pass')
    expect(landed(125).verdict('shutdown-in-island')).toBe('pass')
    expect(sizeStorage().verdict('pv-ratio')).toBeUndefined()
  })

  it('PV on the island: 15 A are 3.6 kW', () => {
    const landed = (unit: StorageChange['unit'], backupChange: StorageChange['backup'] = {}) =>
      sizeStorage({
        unit: unit ?? {},
        backup: backupChange,
        electrical: { connection: { kind: 'load_side_breaker', at: 'backup', breaker_position: 'opposite_end' } },
      })
    expect(landed({ max_pv_ac_kw: 3.6 }).verdict('pv-ratio')).toBe('pass')
    expect(landed({ max_pv_ac_kw: 3.5 }).verdict('pv-ratio')).toBe('fail')
    expect(landed({ max_pv_ac_kw: undefined as never }).verdict('pv-ratio')).toBe('not_stated')
    expect(landed({}, { shutdown_works_islanded: false }).verdict('shutdown-in-island')).toBe('fail')
    expect(landed({}, { shutdown_works_islanded: undefined as never }).verdict('shutdown-in-island')).toBe('not_stated')
  })

  it('neutral: formed by the unit unless no load needs one; switched is warned of', () => {
    expect(sizeStorage({ unit: { neutral_forming: false } }).verdict('neutral-forming')).toBe('fail')
    expect(sizeStorage({ unit: { neutral_forming: undefined as never } }).verdict('neutral-forming')).toBe('not_stated')
    expect(
      sizeStorage({ unit: { neutral_forming: false }, backup: { needs_neutral: false } }).verdict('neutral-forming'),
    ).toBeUndefined()
    const switched = backup({ switched_neutral: true })
    expect(switched.verdict('neutral-bonding')).toBe('fail')
    expect(switched.result.findings.find(({ id }) => id === 'wire.storage-backup')?.severity).toBe('warning')
  })

  it('motors: locked-rotor current against what the units start', () => {
    const essential = (a: number) => ({ essential: { avg_w: 300, peak_w: 900, locked_rotor_a: a } })
    expect(backup(essential(90)).verdict('motor-start')).toBe('pass')
    expect(backup(essential(91)).verdict('motor-start')).toBe('fail')
    expect(sizeStorage({ unit: { surge_a: undefined as never }, backup: essential(20) }).verdict('motor-start')).toBe(
      'not_stated',
    )
  })

  it('storage that does not land behind the isolating device cannot carry the panel', () => {
    expect(sizeStorage({ installation: { at: 'main' } }).verdict('storage-in-island')).toBe('fail')
  })

  it('without backup none of it is asked', () => {
    const none = backup({ kind: 'none' })
    expect(none.storage.backup).toBeNull()
    expect(none.verdict('isolating-device')).toBeUndefined()
  })
})

// Electricians' forum, quoting 705.13 (A), (B) of 2020: 100 A bus, 80 percent, an old PV breaker of 20 A that is not
// controlled: setting 60 A at most (secondary).
describe('power control system of the storage', () => {
  const control = {
    listed: true,
    setting_a: 60,
    sensors_at: ['main'],
    mode: 'busbar',
    qualified_only: true,
    document: 'certificate',
    controls: ['pv'],
  } as const
  const house = (change: object, edition = 'NEC 2023') => {
    const { distribution } = storageHouse().electrical ?? {}
    const main = { ...distribution?.panels['main'], bus_a: 100, main_a: 100 }
    return sizeStorage(
      {
        unit: { rated_output_a: 24 },
        installation: { power_control: { ...control, sensors_at: ['main', 'backup'], ...change } as never },
        electrical: {
          distribution: {
            ...distribution,
            panels: { ...distribution?.panels, main },
            sources: { old_pv: { kind: 'pv', on: 'main', current_a: 16, breaker_a: 20 } },
          } as never,
        },
      },
      edition,
    )
  }
  const rule = (sized: ReturnType<typeof house>, node = 'main') =>
    sized.result.values.distribution
      .find(({ id }) => id === node)
      ?.rules.find((each) => each.rule === 'power control system')

  it('60 + 20 <= 80 A holds, 61 does not', () => {
    expect(rule(house({}))).toMatchObject({ holds: true, sum_a: 80, limit_a: 80 })
    expect(rule(house({ setting_a: 61 }))?.holds).toBe(false)
  })

  it('what it is not said to control is subtracted: with the 20 A of the modules only 40 A remain', () => {
    expect(rule(house({ controls: [] }))?.holds).toBe(false)
    expect(rule(house({ controls: [], setting_a: 40 }))?.holds).toBe(true)
  })

  it.each([
    ['listed', false, 'fail'],
    ['document', undefined, 'not_stated'],
    // A name that no document under documents bears shows nothing.
    ['document', 'verified by the installer', 'fail'],
    ['mode', undefined, 'not_stated'],
    ['sensors_at', undefined, 'not_stated'],
    ['qualified_only', false, 'fail'],
    ['qualified_only', undefined, 'not_stated'],
    ['mode', 'grid_import', 'fail'],
  ] as const)('%s %s: it counts for nothing', (key, value, verdict) => {
    const sized = house({ [key]: value })
    expect(sized.verdict('power-control')).toBe(verdict)
    expect(rule(sized)?.holds ?? false).toBe(false)
  })

  it('a busbar that it does not watch: setting within the device that protects it', () => {
    expect(house({ sensors_at: ['main'] }).verdict('power-control-unseen')).toBe('pass')
    expect(house({ sensors_at: ['main'], setting_a: 70 }).verdict('power-control-unseen')).toBe('fail')
  })

  it('2017 knows none', () => {
    expect(house({}, 'NEC 2017').verdict('power-control')).toBe('fail')
    expect(rule(house({}, 'NEC 2017'))?.holds).toBe(false)
  })

  it('never makes the circuit of the source smaller', () => {
    expect(house({ setting_a: 10 }).storage.circuits[0]?.breaker_a).toBe(30)
  })
})
