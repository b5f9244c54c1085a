import { describe, expect, it } from 'vitest'
import { rapidShutdownRules, OUTSIDE_BOUNDARY_V } from '../../src/tables/nec/index.js'
import {
  combinerHouse,
  need,
  optimiserHouse,
  size,
  stringHouse,
  wyeProject,
  wyeUnits,
} from '../electrical/devices-demo.js'
import { readFixture } from '../electrical/read-fixture.js'

describe('208Y/120 V, published figures', () => {
  // Technical reference page of an industrial maker: 12 kW in one phase between two lines of 208Y/120 V.
  it('12 kW between two lines are 57.7 A in each of them, not 33.2 A', () => {
    const project = wyeUnits(
      { garage: { inverter: 's5000', phases: 'AB' } },
      { ac_power_w: 12000, ac_current_a: undefined as never, max_branch_ocpd_a: 80 },
    )
    const output = need(size(project).values.circuits.find(({ id }) => id === 'garage'))
    expect(output.continuous_a).toBeCloseTo(57.69, 2)
    expect(output.line_currents_a).toEqual({ a: output.continuous_a, b: output.continuous_a, c: 0 })
    expect(output.breaker_a).toBe(80)
    expect(output.poles).toBe(2)
  })

  // Figure of a data sheet, quoted in an electricians' forum: 15 units of 1.83 A on a three-phase 20 A branch.
  it('a 20 A branch in three phases takes 15 units of 1.83 A, five between each pair', () => {
    expect(16 / (Math.sqrt(3) * 1.83)).toBeCloseTo(5.05, 2)
    const fits = (modules: number): number[] =>
      size(wyeProject({ branches: undefined as never }, modules)).values.circuits.flatMap(({ kind, inverters }) =>
        kind === 'ac_branch' ? [inverters] : [],
      )
    expect(fits(15)).toEqual([15])
    expect(fits(16)).toEqual([8, 8])
  })

  it('a three-phase inverter of 10 kW: 27.8 A, 34.7 A, a 35 A device of three poles', () => {
    const project = wyeUnits(
      { garage: { inverter: 's5000' } },
      { phases: 3, ac_power_w: 10000, ac_current_a: undefined as never, max_branch_ocpd_a: 40 },
    )
    const output = need(size(project).values.circuits.find(({ id }) => id === 'garage'))
    expect(output.continuous_a).toBeCloseTo(27.76, 2)
    expect(output.required_a).toBeCloseTo(34.7, 1)
    expect([output.breaker_a, output.poles, output.lines]).toEqual([35, 3, 'ABC'])
  })
})

describe('DC side, published rules', () => {
  it('three strings of 10 A after 125 percent feed 20 A and more backwards: fuses within 20 A', () => {
    // 1.25 Isc = 12.5 A: two others give 25 A against a series fuse of 20 A.
    const module = { isc_a: 10, imp_a: 9.5, max_series_fuse_a: 20 }
    const unfused = size(combinerHouse(3, { poles_fused: 'none' }, { module }))
    const box = need(unfused.values.dc_combiners?.[0])
    expect(box.backfeed_a).toBeCloseTo(25, 9)
    expect(box.fuses_needed).toBe(true)
    expect(unfused.findings.map(({ id }) => id)).toContain('wire.dc-combiner-unfused')
    const fused = need(size(combinerHouse(3, {}, { module })).values.dc_combiners?.[0])
    expect([fused.fuse_a, fused.complies]).toEqual([20, true])
  })

  it('bifacial: nameplate 135 and stress 300 W/m2 on the rear', () => {
    const currentOf = (mounting: 'near_roof' | 'free_rack'): number =>
      need(size(stringHouse({ module: { bifaciality_pct: 70 }, array: { mounting } })).values.circuits[0]).continuous_a
    expect(currentOf('near_roof')).toBeCloseTo(1.25 * 13.9 * (1 + 0.135 * 0.7), 9)
    expect(currentOf('free_rack')).toBeCloseTo(1.25 * 13.9 * (1 + 0.3 * 0.7), 9)
  })

  it('converters of 1 V after shutdown: 20 leave 20 V, 31 fail the 30 V beyond the boundary', () => {
    const run = (modules: number) =>
      size(
        optimiserHouse({
          strings: [{ modules, input: 1 }],
          optimiser: { max_per_string: 40, max_string_power_w: 20000 },
        }),
      )
    expect(run(20).values.strings[0]?.optimiser?.shutdown_v).toBe(20)
    const failing = (modules: number) =>
      run(modules).findings.filter(({ id }) => id === 'wire.shutdown-outside-voltage').length
    expect([failing(20), failing(30), failing(31)]).toEqual([0, 0, 1])
  })

  it('the limit beyond the boundary is that of each edition in the table', () => {
    const rows = readFixture('rapid_shutdown')
    for (const { edition } of rapidShutdownRules) {
      // The limits of 2026 are reported to be those of 2023.
      const written = edition === 'NEC 2026' ? 'NEC 2023' : edition
      const row = rows.find(({ nec_edition: year }) => written === `NEC ${year}`)
      expect(row?.['outside_limit']).toContain(`${OUTSIDE_BOUNDARY_V} V`)
    }
  })
})
