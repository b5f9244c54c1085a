import { describe, expect, it } from 'vitest'
import type { ShutdownEquipment } from '../../src/project/index.js'
import { microProject } from './demo.js'
import { idsOf, need, optimiserHouse, size, stringHouse, type StringChange } from './devices-demo.js'

const unit: ShutdownEquipment = {
  modules_per_unit: 1,
  input_max_v: 80,
  input_max_a: 20,
  max_system_voltage_v: 1000,
  output_shutdown_v: 0.6,
  listed: true,
  transmitters: 1,
  strings_per_transmitter: 4,
  units_per_transmitter: 100,
  transmitter_on_initiator_supply: true,
}

const withUnits = (change: Partial<ShutdownEquipment> = {}, string: StringChange = {}) =>
  stringHouse({
    ...string,
    electrical: {
      rapid_shutdown: {
        inside_boundary: 'module_level',
        initiator: 'switch',
        initiator_outdoors: true,
        equipment: { ...unit, ...change },
      },
      ...string.electrical,
    },
  })

const errors = (change: Partial<ShutdownEquipment>, string?: StringChange): string[] =>
  size(withUnits(change, string)).findings.flatMap(({ id, severity }) => (severity === 'error' ? [id] : []))

describe('shutdown units of strings', () => {
  it('pass with one module on a unit, and leave the string its full voltage', () => {
    const result = size(withUnits())
    expect(result.findings.filter(({ severity }) => severity !== 'note')).toEqual([])
    expect(result.values.strings).toEqual(size(stringHouse()).values.strings)
  })

  it('two modules in series on one unit pass 80 V in the cold', () => {
    // 2 x 40.3 V.
    expect(errors({ modules_per_unit: 2, input_max_v: 160 })).toEqual(['wire.rapid-shutdown-voltage'])
    const low = { module: { voc_v: 36 } }
    expect(errors({ modules_per_unit: 2, input_max_v: 160 }, low)).toEqual([])
    expect(errors({ modules_per_unit: 2, input_max_v: 70 }, low)).toEqual(['wire.shutdown-voltage'])
  })

  it('input current and system voltage are those of the modules and the string', () => {
    expect(errors({ input_max_a: 13.9 })).toEqual([])
    expect(errors({ input_max_a: 13.8 })).toEqual(['wire.shutdown-current'])
    expect(errors({ input_max_a: 13.9 }, { module: { isc_bnpi_a: 15 } })).toEqual(['wire.shutdown-current'])
    const coldV = need(size(stringHouse()).values.strings[0]).voc_cold_v
    expect(errors({ max_system_voltage_v: coldV - 1 })).toEqual(['wire.shutdown-system-voltage'])
  })

  it('30 V beyond the boundary: units in series times what each leaves', () => {
    expect(errors({ output_shutdown_v: 2.5 })).toEqual([])
    expect(errors({ output_shutdown_v: 2.6 })).toEqual(['wire.shutdown-outside-voltage'])
    expect(errors({ output_shutdown_v: undefined as never })).toEqual(['wire.shutdown-voltage-unknown'])
    expect(errors({ modules_per_unit: 2, output_shutdown_v: 5, input_max_v: 160 }, { module: { voc_v: 36 } })).toEqual(
      [],
    )
  })

  it('the transmitter serves them all and loses its supply with the initiator', () => {
    expect(errors({ units_per_transmitter: 12 })).toEqual([])
    expect(errors({ units_per_transmitter: 11 })).toEqual(['wire.shutdown-transmitter-count'])
    expect(errors({ units_per_transmitter: 6, transmitters: 2 })).toEqual([])
    const two = { strings: [1, 2].map((input) => ({ modules: 12, input })) }
    expect(errors({ strings_per_transmitter: 1 }, two)).toEqual(['wire.shutdown-transmitter-count'])
    expect(errors({ transmitter_on_initiator_supply: false })).toEqual(['wire.shutdown-transmitter-supply'])
    expect(errors({ transmitter_on_initiator_supply: undefined as never })).toEqual([
      'wire.shutdown-transmitter-supply',
    ])
  })

  it('what is not stated, not listed or not used is told', () => {
    const bare = withUnits({ input_max_v: undefined, units_per_transmitter: undefined, listed: undefined } as never)
    const ids = idsOf(bare)
    for (const id of ['wire.shutdown-limit-unknown', 'wire.shutdown-transmitter-unknown', 'wire.shutdown-listing'])
      expect(ids).toContain(id)
    const micro = microProject({ rapid_shutdown: { initiator: 'switch', initiator_outdoors: true, equipment: unit } })
    expect(idsOf(micro)).toContain('wire.shutdown-equipment-unused')
    expect(errors({ listed: false })).toEqual(['wire.shutdown-listing'])
    expect(idsOf(optimiserHouse({ optimiser: { rapid_shutdown: false } }))).toContain('wire.shutdown-listing')
  })

  it('an edition without the rule asks for nothing', () => {
    expect(idsOf(withUnits({ output_shutdown_v: 20 }), 'NEC 2011')).not.toContain('wire.shutdown-outside-voltage')
    expect(idsOf(withUnits({ output_shutdown_v: 20 }), 'NEC 2014')).toContain('wire.shutdown-outside-voltage')
  })
})
