import { describe, expect, it } from 'vitest'
import { sizeWire } from '../../src/electrical/index.js'
import { batterySideA } from '../../src/electrical/storage/index.js'
import { context } from './demo.js'
import { sizeStorage, storageHouse, type StorageChange } from './storage-house.js'

const first = <T>(list: readonly T[]): T => {
  const [one] = list
  if (one === undefined) throw new Error('nothing there')
  return one
}

const batteryRuns: NonNullable<StorageChange['runs']> = {
  battery: {
    carries: ['storage_dc'],
    segments: { garage: { location: 'indoors', length_ft: 6, raceway: 'EMT', ambient_c: 30 } },
  },
  storage: undefined,
}

// Worked figures of the restatement of 706.20 and 706.21 (2017 text, read): I, device, copper at 75 deg C.
describe('AC circuit of storage: published figures', () => {
  it.each([
    [24, 30, 30, '10'],
    [20, 25, 25, '10'],
    [48, 60, 60, '6'],
  ])('%d A: %d A needed, %d A device, %s AWG', (currentA, requiredA, deviceA, size) => {
    const { storage } = sizeStorage({ unit: { rated_output_a: currentA } })
    const circuit = first(storage.circuits)
    expect(circuit.required_a).toBeCloseTo(requiredA, 9)
    expect(circuit.breaker_a).toBe(deviceA)
    expect(first(circuit.segments).size_awg).toBe(size)
  })

  it('several units on one circuit: 125 percent of the sum', () => {
    const { storage } = sizeStorage({ storage: { count: 2 }, unit: { rated_output_a: 20 } })
    expect(storage.circuits.map(({ continuous_a, breaker_a }) => [continuous_a, breaker_a])).toEqual([[40, 50]])
  })

  it('a circuit for each unit: two devices, and the source counts both', () => {
    const { storage, result } = sizeStorage({
      storage: { count: 3 },
      installation: { units_per_circuit: 2, places: { wall: { location: 'exterior_wall', units: 3 } } },
    })
    expect(storage.circuits.map(({ id, continuous_a, breaker_a }) => [id, continuous_a, breaker_a])).toEqual([
      ['storage_1', 48, 60],
      ['storage_2', 24, 30],
    ])
    const node = result.values.distribution.find(({ id }) => id === 'storage')
    expect([node?.inverter_a, node?.main_a, node?.complies]).toEqual([72, 90, true])
  })

  it('charging and discharging use one circuit: the larger current counts, as a source the output', () => {
    const { storage, result } = sizeStorage({ unit: { rated_input_a: 32 } })
    expect(first(storage.circuits).breaker_a).toBe(40)
    expect(result.values.distribution.find(({ id }) => id === 'storage')?.inverter_a).toBe(24)
  })

  it('the conductor is not below the device: a 40 A breaker that is stated makes 8 AWG of 10 AWG', () => {
    const { storage } = sizeStorage({ installation: { breaker_a: 40 } })
    const circuit = first(storage.circuits)
    expect(circuit.breaker_a).toBe(40)
    // 10 AWG carries 35 A at 75 deg C, and is held to 30 A devices anyway; 8 AWG 50 A.
    expect(first(circuit.segments).size_awg).toBe('8')
  })

  it('70 A device: 6 AWG of 65 A would do by the next size up of 240.4(B), but 706 wants 4 AWG of 85 A', () => {
    const { storage } = sizeStorage({ unit: { rated_output_a: 51, max_ocpd_a: 70 } })
    const circuit = first(storage.circuits)
    expect(circuit.breaker_a).toBe(70)
    expect(first(circuit.segments).size_awg).toBe('4')
  })

  it('a breaker below 125 percent, or above what the maker allows, is an error at its place', () => {
    const small = sizeStorage({ installation: { breaker_a: 25 } }).result.findings
    expect(small.find(({ id }) => id === 'wire.breaker-too-small')).toMatchObject({
      severity: 'error',
      where: 'storage.installation',
    })
    const large = sizeStorage({ unit: { max_ocpd_a: 25 } }).result.findings
    expect(large.find(({ id }) => id === 'wire.ocpd-above-maximum')?.severity).toBe('error')
  })

  it('a missing run, rated current or voltage is refused with its place', () => {
    const refused = (change: Parameters<typeof storageHouse>[0], where: string): void => {
      expect(() => sizeWire(storageHouse(change), { ...context(), edition: 'NEC 2023' })).toThrow(
        expect.objectContaining({ where }) as Error,
      )
    }
    refused({ unit: { rated_output_a: undefined as never } }, 'equipment.storage_units.store13.rated_output_a')
    refused({ unit: { ac_voltage_v: 120 } }, 'equipment.storage_units.store13.ac_voltage_v')
    refused({ installation: { at: 'attic' } }, 'storage.installation.at')
    refused({ backup: { panel: 'attic' }, installation: { at: undefined as never } }, 'storage.backup.panel')
    refused({ runs: { storage: undefined } }, 'electrical.runs')
    refused({ storage: { unit: 'other' } }, 'storage.unit')
  })

  it('editions before article 706 are refused', () => {
    for (const edition of ['NEC 2011', 'NEC 2014'])
      expect(() => sizeWire(storageHouse(), { ...context(), edition })).toThrow(/706/u)
    for (const edition of ['NEC 2017', 'NEC 2020', 'NEC 2023', 'NEC 2026'])
      expect(sizeStorage({}, edition).storage.circuits).toHaveLength(1)
  })

  it('count 0 is a house without storage', () => {
    const project = storageHouse({ storage: { count: 0 } })
    const { storage: _, ...runs } = project.electrical?.runs ?? {}
    const bare = { ...project, electrical: { ...project.electrical, runs } } as typeof project
    const result = sizeWire(bare, { ...context(), edition: 'NEC 2023' })
    expect(result.values.storage).toBeUndefined()
    expect(result.values.distribution.map(({ id }) => id)).not.toContain('storage')
  })
})

// Figures of the same restatement: 5 kW, 94 percent, 44 V.
describe('DC circuit of a battery', () => {
  it('5 kW at 94 percent and 44 V: 120.9 A, 151 A, a 175 A device', () => {
    expect(batterySideA(5, 94, 44)).toBeCloseTo(120.89, 2)
    const { storage } = sizeStorage({
      unit: {
        coupling: 'dc',
        discharge_kw: 5,
        inverter_ac_kw: 5,
        inverter_efficiency_pct: 94,
        battery_side: { low_voltage_v: 44, highest_voltage_v: 58, device_dc_listed: true, current_limited: true },
      },
      runs: batteryRuns,
    })
    const circuit = first(storage.circuits)
    expect(circuit.continuous_a).toBeCloseTo(120.9, 1)
    expect(circuit.required_a).toBeCloseTo(151, 0)
    expect(circuit.breaker_a).toBe(175)
    // 2/0 copper carries 175 A at 75 deg C (Table 310.16).
    expect(first(circuit.segments).size_awg).toBe('2/0')
    expect(storage.rated_output_a).toBeNull()
  })
})

// 705.12: storage counts with its rated output, once, on every busbar on its way.
describe('storage as a source on the busbars', () => {
  it('main: 24 A with the 15 A of the modules; backup panel: 24 A', () => {
    const { result } = sizeStorage()
    const at = (id: string): number | undefined => result.values.distribution.find((node) => node.id === id)?.inverter_a
    expect([at('main'), at('backup'), at('to_backup')]).toEqual([39, 24, 24])
  })

  it('takes room from the modules: 200 A bus, 200 A main, 120 percent leaves 40 A of 1.25 x I', () => {
    const main = { bus_a: 200, main_a: 200, main_position: 'end', spaces_free: 6, terminal_temperature_c: 75 } as const
    const distribution = storageHouse().electrical?.distribution
    const { result } = sizeStorage({
      installation: { breaker_position: 'opposite_end' },
      electrical: {
        distribution: { ...distribution, panels: { ...distribution?.panels, main } },
      },
    })
    // 240 - 200 = 40 A; 1.25 x (15 + 24) = 48.75 A.
    expect(result.values.panel.complies).toBe(false)
    expect(result.values.panel.max_inverter_a).toBeCloseTo(40 / 1.25, 6)
  })

  it('a DC-coupled battery leaves through the inverter of the modules and is no second source', () => {
    const { result } = sizeStorage({
      unit: { coupling: 'dc', battery_side: { current_a: 100, low_voltage_v: 48 } },
      runs: batteryRuns,
    })
    expect(result.values.distribution.find(({ id }) => id === 'main')?.inverter_a).toBe(15)
  })
})
