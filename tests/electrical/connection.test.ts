import * as fc from '../fast-check.js'
import { describe, expect, it } from 'vitest'
import { judgeBusbar, sizeWire, type Busbar } from '../../src/electrical/index.js'
import type { Electrical } from '../../src/project/index.js'
import { editions } from '../../src/tables/nec/index.js'
import { context, microProject } from './demo.js'

const errors = (result: ReturnType<typeof sizeWire>): string[] =>
  result.findings.filter((finding) => finding.severity === 'error').map((finding) => finding.id)

describe('panel', () => {
  const panel = (change: Partial<Electrical>, edition = 'NEC 2020', modules = 24) =>
    sizeWire(microProject(change, modules), { ...context(), edition })
  const with200 = { bus_a: 200, main_a: 200, spaces_free: 4, terminal_temperature_c: 75 } as const

  it('120 percent, opposite end, section by edition; 32 A is the most for 200 A bus and main', () => {
    const sections = editions.map((edition) => panel({}, edition).values.panel.section)
    expect(sections).toEqual([
      '705.12(D)(2) and (D)(7)',
      '705.12(D)(2)(3)(b)',
      '705.12(B)(2)(3)(b)',
      '705.12(B)(3)(2)',
      '705.12(B)(2)',
      '705.12(B)(2)',
    ])
    for (const edition of editions) {
      const { values } = panel({}, edition)
      expect(values.panel.complies).toBe(true)
      expect(values.panel.max_inverter_a).toBeCloseTo(32, 9)
    }
  })

  it('not at the opposite end: refused, and the largest current is said', () => {
    const result = panel({ connection: { kind: 'load_side_breaker', breaker_position: 'other' } })
    expect(errors(result)).toContain('wire.panel-busbar')
    expect(result.values.panel).toMatchObject({ complies: false, max_inverter_a: 0 })
  })

  it('NEC 2011 counts breakers, and the first ones after the inverters; NEC 2014 counts current', () => {
    const change = {
      branches: { a: { modules: { south: 8 } }, b: { modules: { south: 8 } }, c: { modules: { south: 8 } } },
    }
    // 3 x 15 A breakers = 45 A > 40 A, but 1.25 x 30 A = 37.5 A.
    expect(panel(change, 'NEC 2011').values.panel.complies).toBe(false)
    expect(panel(change, 'NEC 2014').values.panel.complies).toBe(true)
  })

  it('sum of breakers is tried when the load breakers are known', () => {
    const connection = { kind: 'load_side_breaker', breaker_position: 'other' } as const
    const held = panel({ connection, panel: { ...with200, breakers_a: [20, 20, 30, 50] } })
    expect(held.values.panel).toMatchObject({ rule: 'sum of breakers', section: '705.12(B)(3)(3)', complies: true })
    expect(held.values.panel.label).toContain('MULTIPLE SOURCES')
    expect(panel({ connection, panel: { ...with200, breaker_sum_a: 170 } }).values.panel.complies).toBe(false)
    expect(panel({ connection, panel: { ...with200, breaker_sum_a: 50 } }, 'NEC 2011').values.panel.complies).toBe(
      false,
    )
  })

  it('centre-fed panels since 2017', () => {
    const change = { panel: { ...with200, main_position: 'centre' as const } }
    expect(panel(change, 'NEC 2014').values.panel.complies).toBe(false)
    expect(panel(change, 'NEC 2017').values.panel).toMatchObject({ rule: 'centre-fed dwelling panel', complies: true })
  })

  it('feed-through conductors since 2020, on a busbar without loads', () => {
    const connection = { kind: 'load_side_breaker', breaker_position: 'other' } as const
    const feed_through = { conductor_ampacity_a: 200, overcurrent_device_a: 150, panel_bus_a: 200 }
    const change = { connection, panel: { ...with200, breakers_a: [], feed_through } }
    expect(panel(change, 'NEC 2017').values.panel.complies).toBe(false)
    for (const edition of ['NEC 2020', 'NEC 2023'])
      expect(panel(change, edition).values.panel).toMatchObject({ rule: 'feed-through', complies: true })
    expect(panel({ ...change, panel: { ...change.panel, breakers_a: [20] } }).values.panel.complies).toBe(false)
  })

  it('100 percent comes first when it holds', () => {
    expect(panel({ panel: { ...with200, main_a: 150 } }).values.panel.rule).toBe('100 percent')
  })

  it('supply side: sum, distance, conductor and disconnect', () => {
    const connection = { kind: 'supply_side', overcurrent_device_distance_ft: 8, conductor_size: '6' } as const
    const disconnects = {
      main: { kind: 'pv_system', rating_a: 60, lockable: true, service_rated: true, fused: true },
    } as const
    const service = {
      rating_a: 200,
      conductor_ampacity_a: 180,
      conductor_size: '4/0',
      conductor_material: 'aluminum',
    } as const
    const good = panel({ connection, disconnects, service })
    expect(errors(good)).toEqual([])
    expect(good.values.panel).toMatchObject({
      rule: 'supply side',
      section: '705.11',
      complies: true,
      max_inverter_a: 180,
    })
    // By the 6 AWG of the set ahead of the PV disconnect, Table 250.102(C)(1).
    expect(good.values.grounding.supply_side_bonding_awg).toBe('8')
    const bad = panel({
      connection: { ...connection, overcurrent_device_distance_ft: 12, conductor_size: '8' },
      service,
      disconnects: { main: { kind: 'pv_system', rating_a: 30 } },
    })
    expect(errors(bad)).toEqual(
      expect.arrayContaining([
        'wire.supply-side-distance',
        'wire.supply-side-conductor',
        'wire.supply-side-disconnect-small',
        'wire.supply-side-unfused',
        'wire.disconnect-rating',
        'wire.disconnect-service-rated',
      ]),
    )
    // NEC 2023 dropped the distance.
    expect(
      errors(
        panel({ connection: { ...connection, overcurrent_device_distance_ft: 50 }, disconnects, service }, 'NEC 2023'),
      ),
    ).toEqual([])
  })

  it('breaker spaces, needed and present', () => {
    const result = panel({ panel: { ...with200, spaces_free: 1 } })
    expect(result.values.panel).toMatchObject({ spaces_needed: 2, spaces_free: 1 })
    expect(errors(result)).toContain('wire.panel-spaces')
    expect(result.values.combiner?.spaces_needed).toBe(4)
  })

  it('a combiner busbar that is too small', () => {
    const result = panel({ combiner: { bus_a: 30, spaces_total: 8, terminal_temperature_c: 75 } })
    expect(errors(result)).toContain('wire.combiner-busbar')
  })

  it('interrupting rating and line/load marks', () => {
    const result = panel({
      service: { rating_a: 200, available_fault_current_a: 22000 },
      panel: { ...with200, interrupting_rating_a: 10000 },
      connection: { kind: 'load_side_breaker', breaker_position: 'opposite_end', breaker_marked_line_load: true },
    })
    expect(errors(result)).toEqual(expect.arrayContaining(['wire.interrupting-rating', 'wire.breaker-line-load']))
  })
})

describe('the printed limit', () => {
  const amps = (max: number) => fc.double({ min: 0.5, max, noNaN: true })
  const breakers = fc.array(fc.constantFrom(15, 20, 25, 30, 35, 40), { minLength: 1, maxLength: 5 })
  const buses: fc.Arbitrary<Busbar> = fc
    .record({
      busA: fc.constantFrom(100, 125, 150, 200, 225),
      mainA: fc.constantFrom(60, 100, 125, 150, 200),
      breakers,
      fill: fc.double({ min: 0.4, max: 1, noNaN: true }),
      loadBreakersA: fc.option(amps(250), { nil: undefined }),
      oppositeEnd: fc.boolean(),
      mainPosition: fc.constantFrom('end' as const, 'centre' as const),
    })
    .map(({ breakers: each, fill, ...bus }) => {
      const sumA = each.reduce((sum, one) => sum + one, 0)
      return {
        ...bus,
        inverterA: (fill * sumA) / 1.25,
        sourceBreakersA: sumA,
        firstBreakersA: sumA,
        feedThrough: undefined,
      }
    })

  it('is never below the inverters of a rule that holds, nor above those of a rule that does not', () => {
    fc.assert(
      fc.property(buses, fc.constantFrom(...editions), (bus, edition) => {
        for (const verdict of judgeBusbar(edition, bus)) {
          if (verdict.rule.expression === 'engineering') continue
          const { holds, maxInverterA, rule } = verdict
          if (holds) expect(maxInverterA, rule.rule).toBeGreaterThanOrEqual(bus.inverterA - 1e-9)
          else expect(maxInverterA, rule.rule).toBeLessThan(bus.inverterA)
        }
      }),
      { numRuns: 500 },
    )
  })
})
