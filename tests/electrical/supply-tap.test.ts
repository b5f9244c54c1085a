import { describe, expect, it } from 'vitest'
import { bondingJumperSize, judgeConductor, sizeWire } from '../../src/electrical/index.js'
import type { Disconnect, Electrical, Project } from '../../src/project/index.js'
import { StageError } from '../../src/worksheet/index.js'
import { editions } from '../../src/tables/nec/index.js'
import { context, microProject, stringProject } from './demo.js'

type Connection = NonNullable<Electrical['connection']>

/** An invented house with one string inverter of any current on the supply side. */
function house(currentA: number, connection: Partial<Connection> = {}, disconnect: Partial<Disconnect> = {}): Project {
  const project = stringProject({
    connection: { kind: 'supply_side', overcurrent_device_distance_ft: 8, ...connection },
    service: { rating_a: 400, conductor_ampacity_a: 400, conductor_size: '500 kcmil' },
    disconnects: {
      pv: { kind: 'pv_system', rating_a: 200, lockable: true, service_rated: true, fused: true, ...disconnect },
    },
  })
  const inverter = project.equipment.inverters?.['s5000']
  if (inverter === undefined) throw new Error('no inverter')
  const larger = { ...inverter, ac_power_w: 240 * currentA, ac_current_a: currentA, max_branch_ocpd_a: 600 }
  return { ...project, equipment: { ...project.equipment, inverters: { s5000: larger } } }
}

const sized = (project: Project, edition = 'NEC 2020', highC = 38) => sizeWire(project, { ...context(highC), edition })
const errors = (result: ReturnType<typeof sizeWire>): string[] =>
  result.findings.filter(({ severity }) => severity === 'error').map(({ id }) => id)
const tapOf = (result: ReturnType<typeof sizeWire>) => {
  const tap = result.values.circuits.find(({ kind }) => kind === 'ac_supply_tap')
  const [segment] = tap?.segments ?? []
  if (tap === undefined || segment === undefined) throw new Error('no tap')
  return { tap, segment }
}

describe('conductors between a supply-side connection and its overcurrent device', () => {
  it.each(editions)('14 AWG behind a 40 A device is refused by %s', (edition) => {
    const result = sized(house(32, { conductor_size: '14', breaker_a: 40 }), edition)
    expect(errors(result)).toContain('wire.supply-side-conductor')
    expect(result.values.panel.complies).toBe(false)
    // 6 AWG copper, 65 A in the 75 deg C column: the smallest with the 60 A of a service, 230.79(D) with 230.42(B).
    expect(tapOf(result).segment).toMatchObject({ size_awg: '6', named: { size_awg: '14', complies: false } })
  })

  // Terminal column 75 deg C of Table 310.16 (2020): the size is the smallest whose ampacity is not below the device.
  it.each([
    [32, 40, 'copper', '6', 65],
    [48, 60, 'copper', '6', 65],
    [50, 70, 'copper', '4', 85],
    [80, 100, 'copper', '3', 100],
    [100, 125, 'copper', '1', 130],
    [120, 150, 'copper', '1/0', 150],
    [48, 60, 'aluminum', '4', 65],
    [80, 100, 'aluminum', '1', 100],
  ] as const)('%d A of inverters, device %d A: %s %s', (currentA, deviceA, material, size, terminalA) => {
    const { values, findings } = sized(house(currentA, { conductor_material: material }))
    const { tap, segment } = tapOf({ values, findings } as ReturnType<typeof sizeWire>)
    expect(values.circuits.find(({ kind }) => kind === 'ac_inverter_output')?.breaker_a).toBe(deviceA)
    expect(segment).toMatchObject({ size_awg: size, material, terminal_limit_a: terminalA, egc_awg: null })
    expect(tap).toMatchObject({ continuous_a: currentA, required_a: 1.25 * currentA, breaker_a: null })
  })

  it('6 AWG ahead of a 125 A device is refused, 1 AWG passes, and the next standard size up is not used', () => {
    const of = (conductorSize: '6' | '2' | '1') => sized(house(100, { conductor_size: conductorSize }))
    expect(errors(of('6'))).toContain('wire.supply-side-conductor')
    // 2 AWG: 115 A at 75 deg C; 125 A is the next standard size above it.
    expect(errors(of('2'))).toContain('wire.supply-side-conductor')
    expect(errors(of('1'))).toEqual([])
    expect(of('1').values.panel).toMatchObject({ complies: true })
    expect(of('6').values.panel.rules.map(({ rule, holds }) => [rule, holds])).toEqual([
      ['supply side', true],
      ['supply-side conductor', false],
    ])
  })

  it('a larger stated device asks for a larger conductor', () => {
    const result = sized(house(32, { conductor_size: '6', breaker_a: 100 }))
    expect(errors(result)).toContain('wire.supply-side-conductor')
    expect(tapOf(result).segment.size_awg).toBe('3')
  })

  it('the temperature round it counts', () => {
    // 66 to 70 deg C: 0.58 of the 90 deg C column (Table 310.15(B)(1)); 4 AWG 95 x 0.58 = 55.1 A, 3 AWG 115 x 0.58 = 66.7 A.
    const result = sized(house(32, { tap: { location: 'attic', ambient_c: 70 } }))
    expect(tapOf(result).segment).toMatchObject({ size_awg: '3', governs: 'least_service', correction: 0.58 })
    expect(errors(sized(house(32, { conductor_size: '4', tap: { location: 'attic', ambient_c: 70 } })))).toContain(
      'wire.supply-side-conductor',
    )
    expect(() => sized(house(32, { tap: { location: 'attic' } }))).toThrow(StageError)
  })

  it('the smallest size that an edition names is a test of its own', () => {
    const fails = (size: '8' | '6', leastSize: '6' | undefined) =>
      judgeConductor(size, {
        continuousA: 10,
        requiredA: 12.5,
        deviceA: null,
        material: 'copper',
        terminalC: 75,
        freeAir: false,
        correction: 1,
        adjustment: 1,
        voltageFloor: undefined,
        service: { endDeviceA: 15, leastA: 15, leastSize },
      })?.fails
    expect(fails('8', '6')).toEqual(['least_size'])
    expect(fails('6', '6')).toEqual([])
    expect(fails('8', undefined)).toEqual([])
  })

  it('terminals that are not marked 75 deg C count as 60', () => {
    const project = house(48, { conductor_size: '6' })
    const { terminal_temperature_c: _, ...electrical } = project.electrical ?? {}
    const result = sized({ ...project, electrical })
    // 6 AWG: 55 A in the 60 deg C column.
    expect(errors(result)).toContain('wire.supply-side-conductor')
    expect(tapOf(result).segment).toMatchObject({ size_awg: '4', terminal_limit_a: 70 })
  })

  it('assumes nothing in silence', () => {
    const { assumptions } = sized(house(32))
    expect(assumptions.map(({ path }) => path)).toEqual(
      expect.arrayContaining([
        'electrical.connection.conductor_material',
        'electrical.connection.tap.insulation',
        'electrical.connection.tap.location',
        'electrical.connection.tap.raceway',
      ]),
    )
    const stated = sized(
      house(32, {
        conductor_material: 'copper',
        tap: { location: 'outdoor_wall', raceway: 'PVC 80', insulation: 'XHHW-2' },
      }),
    )
    expect(stated.assumptions.filter(({ path }) => path.startsWith('electrical.connection'))).toEqual([])
    expect(tapOf(stated).segment).toMatchObject({ insulation: 'XHHW-2', raceway: { type: 'PVC 80' } })
  })

  it('stands in the raceways with two lines and a neutral, and no grounding conductor by the device', () => {
    const { values } = sized(house(100))
    const raceway = values.raceways.find(({ run }) => run === 'supply_tap')
    expect(raceway).toMatchObject({ length_ft: 8, type: 'EMT', circuits: ['supply_tap'] })
    expect(raceway?.conductors.map(({ use, count, size_awg: size }) => [use, count, size])).toEqual([
      ['current_carrying', 2, '1'],
      ['neutral', 1, '1'],
    ])
    expect(values.grounding.equipment.map(({ raceway: id }) => id)).toEqual(['dc.array', 'dc.roof', 'ac.wall'])
  })

  it('its voltage rise counts to the point of connection', () => {
    const of = (lengthFt: number) => sized(house(32, { overcurrent_device_distance_ft: lengthFt }), 'NEC 2023')
    const [near, far] = [of(1), of(50)].map(({ values }) => {
      const [, output, tap] = values.circuits
      if (output === undefined || tap === undefined) throw new Error('no circuits')
      expect(output.total_voltage_rise_pct).toBeCloseTo(output.voltage_rise_pct + tap.voltage_rise_pct, 12)
      return tap.voltage_rise_pct
    })
    // 2 x 49 ft more x 32 A x 0.491 ohm / 1000 ft of 6 AWG copper (Chapter 9 Table 8, above the 0.49 of Table 9) over 240 V.
    expect((far ?? 0) - (near ?? 0)).toBeCloseTo((100 * 2 * 49 * 32 * 0.491) / 1000 / 240, 6)
  })

  it('the jumper and least neutral follow the conductors of that set, not those of the service', () => {
    expect(sized(house(32)).values.grounding.supply_side_bonding_awg).toBe('8')
    expect(sized(house(100)).values.grounding.supply_side_bonding_awg).toBe('6')
    expect(bondingJumperSize({ size: '2/0', material: 'aluminum' })).toBe('6')
    const note = sized(house(32)).findings.find(({ id }) => id === 'wire.supply-side-not-judged')
    expect(note).toMatchObject({ severity: 'note' })
  })
})

describe('disconnect on the supply side', () => {
  it('of less than 60 A is refused, and so is one smaller than its fuse', () => {
    expect(errors(sized(house(20, {}, { rating_a: 30 })))).toEqual(['wire.supply-side-disconnect-small'])
    expect(errors(sized(house(32, {}, { rating_a: 60 })))).toEqual([])
    expect(errors(sized(house(40, { breaker_a: 100 }, { rating_a: 60 })))).toEqual([
      'wire.supply-side-disconnect-small',
    ])
  })

  it('holds fuses or is a breaker', () => {
    for (const without of [{ fused: false }, { fused: undefined } as unknown as Disconnect])
      expect(errors(sized(house(32, {}, without)))).toEqual(['wire.supply-side-unfused'])
    expect(errors(sized(house(32, {}, { fused: false, breaker: true })))).toEqual([])
  })
})

it('what is stated for a supply-side connection is not passed over on the load side', () => {
  const project = stringProject({
    connection: {
      kind: 'load_side_breaker',
      breaker_position: 'opposite_end',
      conductor_size: '6',
      tap: { raceway: 'EMT' },
    },
  })
  const found = sized(project).findings.find(({ id }) => id === 'wire.supply-side-unused')
  expect(found).toMatchObject({ severity: 'warning', where: 'electrical.connection.conductor_size' })
})

describe('service conductors that are described by size, metal and insulation', () => {
  it('have the ampacity that a supply-side connection is compared with', () => {
    const { values } = sizeWire(
      microProject({
        service: {
          rating_a: 200,
          conductor_size: '4/0',
          conductor_material: 'aluminum',
          conductor_insulation: 'XHHW-2',
        },
        connection: { kind: 'supply_side', overcurrent_device_distance_ft: 8 },
      }),
      context(),
    )
    // NEC Table 310.16, 4/0 aluminum at 75 deg C.
    expect(values.panel.rules[0]?.limit_a).toBe(180)
  })
})
