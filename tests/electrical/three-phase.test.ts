import { describe, expect, it } from 'vitest'
import { highestLineCurrentA } from '../../src/electrical/circuits/index.js'
import { branchesAtSize, connectionAtSize, sizeWire } from '../../src/electrical/index.js'
import type { Project } from '../../src/project/index.js'
import { StageError } from '../../src/worksheet/index.js'
import { context, microProject } from './demo.js'
import { idsOf, need, size, wyeProject, wyeUnits } from './devices-demo.js'

const refusal = (project: Project): string => {
  try {
    size(project)
  } catch (error) {
    if (error instanceof StageError) return error.where
    throw error
  }
  return 'nothing'
}

const unit = (lines: 'AB' | 'BC' | 'CA') => ({ inverter: 's5000', phases: lines })
const single = { ac_power_w: 4160, ac_current_a: 20, max_branch_ocpd_a: 30 }
const findings = (project: Project, id: string) => size(project).findings.filter((finding) => finding.id === id)

describe('208Y/120 V', () => {
  it('inverters on AB and CA: sqrt(3) I in A at the panel', () => {
    const { values } = size(wyeUnits({ one: unit('AB'), two: unit('CA') }, single))
    expect(values.panel.inverter_a).toBeCloseTo(20 * Math.sqrt(3), 9)
    expect(values.service?.line_currents_a.a).toBeCloseTo(20 * Math.sqrt(3), 9)
    expect(values.service?.line_currents_a.b).toBeCloseTo(20, 9)
    expect(values.service?.apparent_power_va).toBeCloseTo(2 * 4160, 6)
    expect(values.circuits.filter(({ kind }) => kind === 'ac_inverter_output').map(({ lines }) => lines)).toEqual([
      'AB',
      'CA',
    ])
  })

  it('the combined output is no source of its own', () => {
    expect(size(wyeProject()).values.service?.apparent_power_va).toBeCloseTo(15 * 1.83 * 208, 6)
  })

  it('three on three pairs are even, and a combined output carries sqrt(3) I', () => {
    const project = wyeUnits({ one: unit('AB'), two: unit('BC'), three: unit('CA') }, single)
    expect(findings(project, 'wire.phase-unbalance')).toEqual([])
    const combined = size({
      ...project,
      electrical: {
        ...project.electrical,
        combiner: { bus_a: 125, terminal_temperature_c: 75 },
        runs: {
          ...project.electrical?.runs,
          out: { carries: ['output'], segments: { inside: { location: 'indoors', length_ft: 40, raceway: 'EMT' } } },
        },
      },
    }).values
    const output = need(combined.circuits.find(({ id }) => id === 'output'))
    expect(output.continuous_a).toBeCloseTo(20 * Math.sqrt(3), 9)
    expect([output.breaker_a, output.poles]).toEqual([45, 3])
    // sqrt(3) L I Z / 1000 over 208 V.
    const segment = need(output.segments[0])
    const ohm = { '8': 0.78, '6': 0.49 }[segment.size_awg] ?? 0
    expect(output.voltage_rise_pct).toBeCloseTo((100 * Math.sqrt(3) * 40 * output.continuous_a * ohm) / 1000 / 208, 1)
  })

  it('unbalance: a note where the number of inverters allows no better, a warning where it does', () => {
    expect(findings(wyeUnits({ one: unit('AB'), two: unit('BC') }, single), 'wire.phase-unbalance')[0]?.severity).toBe(
      'note',
    )
    const crowded = wyeUnits({ one: unit('AB'), two: unit('AB') }, single)
    expect(findings(crowded, 'wire.phase-unbalance')[0]?.severity).toBe('warning')
  })

  it('three lines of a branch count as three conductors, with a neutral beside two as three too', () => {
    const counted = (project: Project): string[] => {
      const result = size(project)
      return result.worksheet
        .filter(({ id }) => id.endsWith('.adjustment'))
        .flatMap(({ inputs }) => inputs.flatMap(({ symbol, value }) => (symbol === 'n' ? [String(value)] : [])))
    }
    expect(counted(wyeProject())).toEqual(['3', '3', '3'])
    // Two lines and neutral of a wye in the run of the inverter output; DC runs hold two.
    expect(counted(wyeUnits({ garage: unit('AB') }, single))).toEqual(['2', '2', '3'])
    const conductors = size(wyeProject()).values.raceways[0]?.conductors
    expect(conductors?.find(({ use }) => use === 'current_carrying')?.count).toBe(3)
  })

  it('a branch on one pair carries the sum, on three lines 0.577 of it', () => {
    const on = (phases: 'AB' | 'BC' | 'ABC') =>
      need(size(wyeProject({ branches: { b1: { modules: { south: 6 }, phases } } }, 6)).values.circuits[0])
    expect(on('BC').continuous_a).toBeCloseTo(6 * 1.83, 9)
    expect(on('BC').line_currents_a).toEqual({ a: 0, b: 6 * 1.83, c: 6 * 1.83 })
    expect(on('ABC').continuous_a).toBeCloseTo((6 * 1.83) / Math.sqrt(3), 9)
    expect(on('ABC').voltage_rise_pct).toBeLessThan(on('AB').voltage_rise_pct)
  })

  it('the rise along a trunk on three lines is the sum over its pieces', () => {
    const project = wyeProject({ branches: { b1: { modules: { south: 4 }, phases: 'ABC', trunk_length_ft: 40 } } }, 4)
    const rise = need(size(project).values.circuits[0]?.segments[0]).voltage_rise_pct
    // Beyond each of four pieces of 10 ft stand 4, 3, 2, 1 inverters: worst pair 2 x i + (others) / 2.
    const pairs = [
      [2, 1, 1],
      [1, 1, 1],
      [1, 1, 0],
      [1, 0, 0],
    ]
    const volts = pairs.reduce(
      (sum, [most = 0, b = 0, c = 0]) => sum + 1.83 * (2 * most + (b + c) / 2) * 10 * 0.00198,
      0,
    )
    expect(rise).toBeCloseTo((100 * volts) / 208, 6)
  })

  it('refuses what it does not know or cover', () => {
    const service = (change: object) =>
      wyeProject({ service: { rating_a: 200, voltage_v: 208, phases: 3, system: 'wye', ...change } })
    expect(refusal(service({ system: 'high_leg_delta' }))).toBe('electrical.service.system')
    expect(refusal(service({ system: 'open_delta' }))).toBe('electrical.service.system')
    expect(refusal(service({ system: undefined }))).toBe('electrical.service.system')
    expect(refusal(service({ voltage_v: 240 }))).toBe('electrical.service.voltage_v')
    expect(refusal(wyeProject({ branches: { b1: { modules: { south: 15 } } } }))).toBe('electrical.branches.b1.phases')
    expect(refusal(wyeProject({}, 15, { ac_voltage_v: 240 }))).toBe('equipment.inverters.micro.ac_voltage_v')
    expect(refusal(wyeUnits({ garage: { inverter: 's5000' } }, single))).toBe('inverter_units.garage.phases')
    expect(refusal(wyeUnits({ garage: unit('AB') }, { ...single, phases: 3 }))).toBe('inverter_units.garage.phases')
    const plain = microProject({ branches: { b1: { modules: { south: 12 }, phases: 'AB' } } }, 12)
    expect(refusal(plain)).toBe('electrical.branches.b1.phases')
    expect(refusal(microProject({ service: { system: 'wye' } }))).toBe('electrical.service.system')
  })

  it('the conductors of a supply-side connection have three lines', () => {
    const project = wyeProject({
      service: { rating_a: 200, conductor_ampacity_a: 200, voltage_v: 208, phases: 3, system: 'wye' },
      connection: { kind: 'supply_side', overcurrent_device_distance_ft: 8 },
    })
    const { circuits, raceways } = size(project).values
    const tap = need(circuits.find(({ kind }) => kind === 'ac_supply_tap'))
    expect([tap.lines, tap.continuous_a.toFixed(2)]).toEqual(['ABC', '15.85'])
    expect(raceways.at(-1)?.conductors.map(({ use, count }) => `${use} ${count}`)).toEqual([
      'current_carrying 3',
      'neutral 1',
    ])
  })

  it('at other sizes stated branches fit by their own lines', () => {
    // 8 x 1.83 A on one pair fill a 20 A branch; 15 would fit only on all three lines.
    const on = (phases: 'AB' | 'ABC', modules: number) =>
      branchesAtSize(wyeProject({ branches: { b1: { modules: { south: modules }, phases } } }, modules), {
        south: modules,
      })
    expect([on('AB', 8), on('ABC', 15), on('AB', 9), on('ABC', 16)]).toEqual([1, 1, 1, 2])
    const fits = (phases: 'AB' | 'ABC', modules: number): boolean => {
      const project = wyeProject({ branches: { b1: { modules: { south: modules }, phases } } }, modules)
      return connectionAtSize(project, { south: modules }).panel.inverter_a > 1.83 * modules - 1e-9
    }
    // A branch that does not fit is planned anew on all three lines.
    expect([fits('AB', 8), fits('AB', 9)]).toEqual([true, false])
  })

  it('120/208 V in two lines: everything between A and B, the neutral counts', () => {
    const project = wyeProject(
      {
        service: { rating_a: 100, voltage_v: 208 },
        branches: { b1: { modules: { south: 8 } } },
      },
      8,
    )
    const { values } = size(project)
    expect(values.circuits[0]?.voltage_v).toBe(208)
    expect(values.circuits[0]?.continuous_a).toBeCloseTo(8 * 1.83, 9)
    expect(values.circuits[0]?.lines).toBeUndefined()
    expect([values.service?.phases, values.service?.unbalance_pct]).toEqual([1, null])
  })

  it('lost phase and trunks with two lines are told', () => {
    const three = { ...single, phases: 3, ac_current_a: 12 } as const
    const lost = (stops?: boolean) =>
      findings(
        wyeUnits(
          { garage: { inverter: 's5000' } },
          { ...three, ...(stops === undefined ? {} : { stops_on_lost_phase: stops }) },
        ),
        'wire.lost-phase',
      ).map(({ severity }) => severity)
    expect([lost(), lost(false), lost(true)]).toEqual([['warning'], ['error'], []])
    const trunk = (lines: 2 | 3) => {
      const project = wyeProject()
      const cable = need(project.equipment.trunk_cables?.['trunk12'])
      return idsOf({ ...project, equipment: { ...project.equipment, trunk_cables: { trunk12: { ...cable, lines } } } })
    }
    expect(trunk(2)).toContain('wire.trunk-lines')
    expect(trunk(3)).not.toContain('wire.trunk-lines')
  })

  it('on 240 V nothing of it is there', () => {
    const { values } = sizeWire(microProject(), context())
    expect(values.service).toBeUndefined()
    for (const circuit of values.circuits) expect(Object.keys(circuit)).not.toContain('lines')
    expect(values.panel.inverter_a).toBe(30)
    expect(highestLineCurrentA([])).toBe(0)
  })
})
