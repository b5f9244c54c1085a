import { describe, expect, it } from 'vitest'
import { ratedIsc } from '../../src/electrical/system/index.js'
import type { Project, PvModule } from '../../src/project/index.js'
import { inverterPath, withAcModules } from '../../src/project/facts.js'
import { StageError } from '../../src/worksheet/index.js'
import { assert, double, property, record } from '../fast-check.js'
import { microProject } from './demo.js'
import { idsOf, need, optimiserHouse, size, stringHouse, type StringChange } from './devices-demo.js'

const about = (project: Project, id: string) => size(project).findings.filter((finding) => finding.id === id)
const severities = (project: Project, id: string): string[] => about(project, id).map(({ severity }) => severity)

describe('strings with converters', () => {
  it('carry the rated output of a converter, without 125 percent of the short-circuit current', () => {
    const circuit = need(size(optimiserHouse()).values.circuits[0])
    expect(circuit.continuous_a).toBe(15)
    expect(circuit.required_a).toBe(18.75)
    expect(circuit.voltage_v).toBe(380)
    expect(size(optimiserHouse()).findings.filter(({ severity }) => severity !== 'note')).toEqual([])
  })

  it('have the regulated voltage, or that of all units at their largest output', () => {
    const regulated = need(size(optimiserHouse()).values.strings[0])
    expect(regulated.voc_cold_v).toBe(380)
    expect(regulated.optimiser?.units).toBe(12)
    const unregulated: StringChange = { optimiser: { regulated_string_v: undefined as never, output_max_v: 48 } }
    const loose = need(size(optimiserHouse(unregulated)).values.strings[0])
    expect(loose.voc_cold_v).toBe(12 * 48)
    expect(loose.max_modules).toBe(12)
    const over = optimiserHouse({ optimiser: { regulated_string_v: undefined as never, output_max_v: 51 } })
    expect(severities(over, 'wire.optimiser-string-voltage')).toEqual(['error'])
    expect(size(over).values.strings[0]?.complies).toBe(false)
    // The modules bear no more than their own system voltage.
    const weak = optimiserHouse({ module: { max_system_voltage_v: 379 } })
    expect(severities(weak, 'wire.optimiser-string-voltage')).toEqual(['error'])
    // Without a regulated voltage the drop is reckoned at the lowest one that carries the power: 4920 W / 15 A.
    expect(size(optimiserHouse(unregulated)).values.circuits[0]?.voltage_v).toBeCloseTo(328, 9)
    const unknown = { optimiser: { regulated_string_v: undefined as never, output_max_v: undefined as never } }
    expect(() => size(optimiserHouse(unknown))).toThrow(StageError)
  })

  it('are not held against the window of a plain string', () => {
    const ids = idsOf(optimiserHouse({ inverter: { mppt_min_v: 400, mppt_max_v: 420 } }))
    expect(ids).not.toContain('wire.voltage-hot')
    expect(ids).not.toContain('wire.voltage-cold')
    expect(idsOf(stringHouse({ inverter: { mppt_min_v: 400 } }))).toContain('wire.voltage-hot')
  })

  it('hold the input of each converter against its modules', () => {
    const cold = need(size(optimiserHouse()).values.strings[0]?.optimiser).input_cold_v
    const errors = (change: StringChange): string[] =>
      size(optimiserHouse(change)).findings.flatMap(({ id, severity }) => (severity === 'error' ? [id] : []))
    expect(errors({ optimiser: { input_max_v: cold } })).toEqual([])
    expect(errors({ optimiser: { input_max_v: cold - 0.1 } })).toEqual(['wire.optimiser-voltage'])
    // 1.25 x 13.9 = 17.375 A.
    expect(errors({ optimiser: { max_isc_a: 17.375 } })).toEqual([])
    expect(errors({ optimiser: { max_isc_a: 17.3 } })).toEqual(['wire.optimiser-current'])
    expect(errors({ optimiser: { max_isc_a: 13.9, isc_with_125_pct: false } })).toEqual([])
    expect(errors({ optimiser: { max_isc_a: 13.8, isc_with_125_pct: false } })).toEqual(['wire.optimiser-current'])
    expect(errors({ optimiser: { max_isc_a: 17.375 }, module: { isc_bsi_a: 14 } })).toEqual(['wire.optimiser-current'])
    expect(errors({ optimiser: { max_input_power_w: 409 } })).toEqual(['wire.optimiser-power'])
    expect(errors({ optimiser: { input_min_v: 30 } })).toEqual(['wire.optimiser-low'])
    expect(errors({ optimiser: { modules_per_unit: 2, input_max_v: 2 * cold - 1, max_input_power_w: 900 } })).toEqual([
      'wire.optimiser-voltage',
      'wire.optimiser-units',
      'wire.rapid-shutdown-voltage',
    ])
    const parallel = {
      modules_per_unit: 2,
      modules_wired: 'parallel',
      max_input_power_w: 900,
      min_per_string: 6,
    } as const
    expect(errors({ optimiser: { ...parallel, max_isc_a: 34.75 } })).toEqual([])
    expect(errors({ optimiser: { ...parallel, max_isc_a: 34.7 } })).toEqual(['wire.optimiser-current'])
  })

  it('have as many units and as much power as their maker allows', () => {
    const errors = (change: StringChange): string[] =>
      size(optimiserHouse(change)).findings.flatMap(({ id, severity }) => (severity === 'error' ? [id] : []))
    expect(errors({ optimiser: { min_per_string: 12, max_per_string: 12 } })).toEqual([])
    expect(errors({ optimiser: { min_per_string: 13 } })).toEqual(['wire.optimiser-units'])
    expect(errors({ optimiser: { max_per_string: 11 } })).toEqual(['wire.optimiser-units'])
    expect(errors({ optimiser: { max_string_power_w: 4920 } })).toEqual([])
    expect(errors({ optimiser: { max_string_power_w: 4919 } })).toEqual(['wire.optimiser-string-power'])
    const limits = need(size(optimiserHouse()).values.strings[0])
    expect([limits.min_modules, limits.max_modules]).toEqual([8, 14])
    const pairs = size(optimiserHouse({ optimiser: { modules_per_unit: 2, max_string_power_w: 40000 } })).values
      .strings[0]
    expect([pairs?.min_modules, pairs?.max_modules]).toEqual([16, 50])
    const odd = { strings: [{ modules: 11, input: 1 }], optimiser: { modules_per_unit: 2, min_per_string: 2 } }
    expect(severities(optimiserHouse(odd), 'wire.optimiser-odd-module')).toEqual(['warning'])
    // The last unit has one module, 26.7 V in the heat.
    const high = { ...odd, optimiser: { ...odd.optimiser, input_max_v: 120, input_min_v: 30 } }
    expect(severities(optimiserHouse(high), 'wire.optimiser-low')).toEqual(['error'])
    expect(size(optimiserHouse(odd)).values.strings[0]?.optimiser?.units).toBe(6)
  })

  it('belong to an inverter that is named for them, with converters everywhere', () => {
    expect(severities(optimiserHouse({ optimiser: { works_with: ['other'] } }), 'wire.optimiser-inverter')).toEqual([
      'error',
    ])
    const silent = optimiserHouse({ optimiser: { works_with: undefined as never } })
    expect(severities(silent, 'wire.optimiser-inverter-unknown')).toEqual(['warning'])
    const house = optimiserHouse({ strings: [{ modules: 12, input: 1 }] })
    const { optimiser: _optimiser, ...plain } = need(house.arrays['south'])
    const mixed = {
      ...house,
      arrays: { ...house.arrays, north: { ...plain, strings: [{ modules: 12, inverter_unit: 'garage', input: 2 }] } },
    }
    expect(severities(mixed, 'wire.optimiser-mixed')).toEqual(['error'])
  })

  it('may differ in parallel on one input, with a largest fuse that is stated', () => {
    const unequal = [
      { modules: 10, input: 1 },
      { modules: 12, input: 1 },
    ]
    expect(idsOf(optimiserHouse({ strings: unequal }))).not.toContain('wire.unlike-strings')
    expect(idsOf(stringHouse({ strings: unequal }))).toContain('wire.unlike-strings')
    const unknown = optimiserHouse({ strings: unequal, optimiser: { max_string_fuse_a: undefined as never } })
    expect(about(unknown, 'wire.series-fuse-unknown')[0]?.where).toBe('equipment.optimisers.o450.max_string_fuse_a')
    const weak = optimiserHouse({ strings: unequal, optimiser: { max_string_fuse_a: 14 } })
    expect(severities(weak, 'wire.string-backfeed')).toEqual(['error', 'error'])
  })

  it('tell what could not be checked', () => {
    const bare = {
      min_per_string: undefined,
      max_per_string: undefined,
      max_string_power_w: undefined,
      shutdown_v: undefined,
    }
    const ids = idsOf(optimiserHouse({ optimiser: { ...bare, rapid_shutdown: undefined } as never }))
    for (const id of ['wire.optimiser-limit-unknown', 'wire.shutdown-voltage-unknown', 'wire.shutdown-listing'])
      expect(ids).toContain(id)
    expect(() => size({ ...optimiserHouse(), equipment: stringHouse().equipment })).toThrow("no optimiser 'o450'")
  })

  it('more modules never give less voltage, power or shutdown voltage', () => {
    const at = (modules: number) => need(size(optimiserHouse({ strings: [{ modules, input: 1 }] })).values.strings[0])
    for (const modules of [8, 12, 19]) {
      const [one, next] = [at(modules), at(modules + 1)]
      expect(next.optimiser?.shutdown_v ?? 0).toBeGreaterThan(one.optimiser?.shutdown_v ?? 0)
      expect(next.optimiser?.string_power_w ?? 0).toBeGreaterThan(one.optimiser?.string_power_w ?? 0)
    }
  })
})

describe('bifacial modules', () => {
  const module = (change: Partial<PvModule>): PvModule => ({
    ...need(stringHouse().equipment.modules?.['m410']),
    ...change,
  })

  it('count with the largest printed current in circuit, fuse and input', () => {
    const printed = { isc_bnpi_a: 15.2, isc_bsi_a: 16.9, bifaciality_pct: 70 }
    const { values, findings } = size(stringHouse({ module: printed, inverter: { max_input_isc_a: 16.8 } }))
    expect(values.circuits[0]?.continuous_a).toBeCloseTo(1.25 * 16.9, 9)
    expect(findings.map(({ id }) => id)).toContain('wire.input-short-circuit')
    expect(ratedIsc(module(printed), { mounting: 'near_roof' })).toEqual({ iscA: 16.9, key: 'isc_bsi_a', rearShare: 0 })
    expect(ratedIsc(module({ isc_bnpi_a: 15.2, bifaciality_pct: 70 }), { mounting: 'near_roof' })?.iscA).toBe(15.2)
    // On a free rack the nameplate condition has too little light on the rear.
    expect(ratedIsc(module({ isc_bnpi_a: 15.2, bifaciality_pct: 70 }), { mounting: 'free_rack' })?.iscA).toBeCloseTo(
      13.9 * 1.21,
      9,
    )
    // Racks that lift modules off the roof are open as well, and what is not known counts as open.
    const phi = module({ bifaciality_pct: 70 })
    expect(ratedIsc(phi, { mounting: 'near_roof', module_tilt_deg: 30 })?.iscA).toBeCloseTo(13.9 * 1.21, 9)
    expect(ratedIsc(phi, undefined)?.iscA).toBeCloseTo(13.9 * 1.21, 9)
    expect(ratedIsc(module({}), { mounting: 'free_rack' })).toEqual({ iscA: 13.9, key: 'isc_a', rearShare: 0 })
  })

  it('behind module-level inverters count with it too', () => {
    const project = microProject()
    const house: Project = {
      ...project,
      equipment: {
        ...project.equipment,
        modules: { m410: module({ isc_bsi_a: 16.9 }) },
        inverters: { micro: { ...need(project.equipment.inverters?.['micro']), max_input_isc_a: 15 } },
      },
    }
    expect(idsOf(house)).toContain('wire.input-short-circuit')
    // 1.25 x 6.5 A is above 8 A, 1.25 x 6 A is not: ground-fault protection since 2020.
    const silent = (bsi: number) =>
      idsOf({
        ...house,
        equipment: {
          ...house.equipment,
          modules: { m410: module({ voc_v: 25, vmp_v: 21, isc_a: 6, imp_a: 5.5, isc_bsi_a: bsi }) },
          inverters: { micro: { ...need(project.equipment.inverters?.['micro']), ground_fault_protection: false } },
        },
      }).includes('wire.ground-fault')
    expect([silent(6), silent(6.5)]).toEqual([false, true])
  })

  it('light on the rear never lowers a current', () => {
    const rear = record({
      bnpi: double({ min: 0, max: 5, noNaN: true }),
      phi: double({ min: 1, max: 100, noNaN: true }),
    })
    assert(
      property(rear, ({ bnpi, phi }) => {
        for (const mounting of ['near_roof', 'free_rack', 'laid_on_roof'] as const) {
          const iscA = (change: Partial<PvModule>): number => need(ratedIsc(module(change), { mounting })).iscA
          expect(iscA({ bifaciality_pct: phi })).toBeGreaterThanOrEqual(iscA({ bifaciality_pct: phi / 2 }))
          expect(iscA({ isc_bnpi_a: 13.9 + bnpi })).toBeGreaterThanOrEqual(13.9)
          expect(iscA({ bifaciality_pct: phi, isc_bsi_a: 13.9 + bnpi })).toBe(13.9 + bnpi)
        }
      }),
      { numRuns: 100 },
    )
  })
})

describe('AC modules', () => {
  const house = (change: object = {}): Project => {
    const project = microProject()
    const { inverter: _inverter, ...array } = need(project.arrays['south'])
    const side = {
      ac_power_w: 300,
      ac_current_a: 1.25,
      ac_voltage_v: 240,
      frequency_hz: 60,
      max_branch_ocpd_a: 20,
    } as const
    const { voc_v: _voc, isc_a: _isc, ...bare } = need(project.equipment.modules?.['m410'])
    return {
      ...project,
      arrays: { south: array },
      equipment: {
        ...project.equipment,
        inverters: {},
        modules: {
          m410: { ...bare, ac_module: { ...side, weighted_efficiency_pct: 97, needs_egc: false, ...change } },
        },
      },
    }
  }

  it('are wired on the AC side as module-level inverters are', () => {
    const circuits = (project: Project) =>
      size(project).values.circuits.map(({ id, continuous_a: amps, breaker_a: device }) => [id, amps, device])
    expect(circuits(house())).toEqual(circuits(microProject()))
  })

  it('have no DC rules of their own, and need no DC figures', () => {
    const { values, findings } = size(house())
    expect(values.strings).toEqual([])
    const note = size(house()).worksheet.find(({ id }) => id === 'wire.ac-module.south')
    expect([note?.result.value, note?.source.place]).toEqual([1.25, '690.6'])
    const dc = ['wire.inverter-voltage-unknown', 'wire.input-limit-unknown', 'wire.ground-fault', 'wire.arc-fault']
    expect(findings.map(({ id }) => id).filter((id) => dc.includes(id))).toEqual([])
  })

  it('errors name the place where a person states it', () => {
    expect(() => size(house({ ac_voltage_v: 208 }))).toThrow(StageError)
    try {
      size(house({ ac_voltage_v: 208 }))
    } catch (error) {
      expect(error instanceof StageError && error.where).toBe('equipment.modules.m410.ac_module.ac_voltage_v')
    }
    expect(inverterPath('micro')).toBe('equipment.inverters.micro')
    const once = withAcModules(house())
    expect(withAcModules(once)).toBe(once)
    const plain = microProject()
    expect(withAcModules(plain)).toBe(plain)
  })
})
