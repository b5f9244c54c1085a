import { describe, expect, it } from 'vitest'
import { serviceLoad } from '../../src/electrical/index.js'
import type { LoadCalculation } from '../../src/project/index.js'
import {
  CIRCUIT_VA,
  editions,
  factorsOf,
  HEAT_SHARES,
  LEAST_DWELLING_SERVICE_A,
  loadFactors,
  loadSource,
  MEASURED_FACTOR,
  ONE_RANGE,
  OPTIONAL_LEAST_SERVICE_A,
  REST_SHARE,
  STANDARD_LIGHTING,
} from '../../src/tables/nec/index.js'
import { jobOf } from '../electrical/job-of.js'
import { cell, readFixture } from '../electrical/read-fixture.js'

const house = {
  floor_area_ft2: 1500,
  small_appliance_circuits: 2,
  laundry_circuits: 1,
} as const

const heated: LoadCalculation = {
  ...house,
  method: 'optional_new',
  appliances: {
    range: { kind: 'range', rating_w: 12_000 },
    water: { kind: 'water_heater', rating_w: 2500 },
    dishes: { kind: 'fixed', rating_w: 1200 },
    dryer: { kind: 'dryer', rating_w: 5000 },
  },
  cooling: { room: { current_a: 6, voltage_v: 230 } },
  heating: { rooms: { kind: 'resistance', rating_w: 9000, separately_controlled_units: 5 } },
}

const loadOf = (load_calculation: LoadCalculation, edition: string, rating_a = 100) => {
  const { job, result } = jobOf({ service: { rating_a }, load_calculation })
  const load = serviceLoad({ ...job, edition: edition as (typeof editions)[number] })
  return { load, result: result() }
}

/** Editions with the numbers of article 220. */
const of220 = editions.filter((edition) => factorsOf(edition).article === '220')

describe('published load calculations', () => {
  it('standard method, 1500 ft2, 12 kW range, 5.5 kW dryer: 18,600 VA, service of 100 A (NEC Annex D example D1(a))', () => {
    const { load, result } = loadOf(
      {
        ...house,
        method: 'standard',
        appliances: {
          range: { kind: 'range', rating_w: 12_000 },
          dryer: { kind: 'dryer', rating_w: 5500 },
        },
        cooling: {},
        heating: {},
      },
      'NEC 2017',
    )
    const value = (id: string) => result.worksheet.find((step) => step.id === id)?.result.value
    expect(value('wire.load.lighting')).toBe(4500)
    expect(value('wire.load.circuits')).toBe(4500)
    expect(value('wire.load.demand')).toBe(5100)
    expect(value('wire.load.appliances')).toBe(13_500)
    expect(load?.va).toBe(18_600)
    expect(load?.a).toBeCloseTo(77.5, 9)
    expect(load?.neededA).toBe(100)
    expect(result.findings).toEqual([])
  })

  it.each(of220)(
    'optional method of a heated dwelling: 21,480 VA, 89.5 A (NEC Annex D example D2(a)), %s',
    (edition) => {
      const { load, result } = loadOf(heated, edition)
      const value = (id: string) => result.worksheet.find((step) => step.id === id)?.result.value
      expect(value('wire.load.list')).toBe(29_700)
      expect(value('wire.load.demand')).toBe(17_880)
      expect(value('wire.load.cooling')).toBe(1380)
      expect(value('wire.load.climate')).toBe(3600)
      expect(load?.va).toBe(21_480)
      expect(load?.a).toBeCloseTo(89.5, 9)
      expect(load).toMatchObject({ section: '220.82', leastServiceA: 100, neededA: 100, method: 'optional_new' })
      expect(result.findings).toEqual([])
    },
  )

  it('the same house with the numbers reported of 2026: 19,680 VA, 82.0 A (our arithmetic)', () => {
    const { load, result } = loadOf(heated, 'NEC 2026')
    const value = (id: string) => result.worksheet.find((step) => step.id === id)?.result.value
    expect(value('wire.load.list')).toBe(28_200)
    expect(value('wire.load.demand')).toBe(16_080)
    expect(load?.va).toBe(19_680)
    expect(load?.a).toBeCloseTo(82, 9)
    expect(load?.source).toMatchObject({ place: '120.82', edition: '2026', standing: 'secondary' })
  })

  it('existing dwelling, 100 A: 13,400 VA before and 17,880 VA after (homeowners’ forum by the method of 220.83(A))', () => {
    const { load } = loadOf(
      {
        method: 'optional_existing',
        floor_area_ft2: 1000,
        small_appliance_circuits: 2,
        laundry_circuits: 1,
        existing_ac_or_heat_added: false,
        appliances: {
          range: { kind: 'range', rating_va: 8000 },
          dryer: { kind: 'dryer', rating_va: 5000 },
          disposer: { kind: 'motor', rating_va: 1000 },
        },
        new_loads: {
          dishes: { kind: 'fixed', rating_va: 1200 },
          steam: { kind: 'fixed', rating_va: 8500 },
          // The post counts a further circuit with 1500 VA.
          circuit: { kind: 'fixed', rating_va: 1500 },
        },
        cooling: {},
        heating: {},
      },
      'NEC 2023',
    )
    expect(load?.before?.va).toBe(13_400)
    expect(Math.abs((load?.before?.a ?? 0) - 55.8)).toBeLessThan(0.05)
    expect(load?.va).toBe(17_880)
    expect(load?.a).toBeCloseTo(74.5, 9)
    expect(load?.section).toBe('220.83(A)')
  })
})

describe('load factors', () => {
  it('equal what is published of 2023 and 2026, cell by cell', () => {
    const rows = readFixture('load_factors')
    expect(rows.length).toBe(7)
    for (const year of ['2023', '2026'] as const) {
      const of = (rule: string) => rows.find((row) => row['rule'] === rule)?.[`value_${year}`] ?? ''
      const number = (rule: string) => cell(/^(?:larger of )?[\d.]+/u.exec(of(rule))?.[0].replace('larger of ', ''))
      const factors = factorsOf(`NEC ${year}`)
      expect(`${factors.article}.x`).toBe(of('load calculation article'))
      expect(factors.lightingVaPerFt2).toBe(number('dwelling lighting load'))
      expect(factors.newFirstVa).toBe((number('optional method first tier') ?? 0) * 1000)
      const existing = number('existing dwelling method')
      expect(factors.existingFirstVa).toBe(existing === undefined ? undefined : existing * 1000)
      expect(MEASURED_FACTOR).toBe(number('measured demand'))
      const vehicle = of('EV supply equipment load')
      expect(vehicle).toContain(
        year === '2023' ? `larger of ${factors.vehicleLeastVa}` : `${factors.vehicleUnknownVa} VA if unknown`,
      )
      expect(factors.vehicleInList).toBe(of('EV supply equipment optional method').includes('list'))
    }
    expect(rows.map((row) => row['section_2026'])).toEqual(
      expect.arrayContaining([loadSource('NEC 2026', '.83').place, loadSource('NEC 2026', '.87').place]),
    )
  })

  it('have a row of every edition, the older ones with the numbers of 2023 but for vehicles', () => {
    const newest = factorsOf('NEC 2023')
    for (const edition of of220) {
      const { edition: _, standing, vehicleLeastVa, ...rest } = factorsOf(edition)
      expect(newest).toMatchObject(rest)
      expect(vehicleLeastVa).toBe(edition === 'NEC 2023' ? 7200 : undefined)
      expect(standing).toBe(edition === 'NEC 2023' ? 'read' : 'secondary')
    }
    expect(new Set(loadFactors.map(({ edition }) => edition)).size).toBe(loadFactors.length)
    expect(() => factorsOf('NEC 1999')).toThrow(/no load factors/)
  })

  it('shares and least values are those of 220.42, Table 220.55, 220.82, 220.83 and 230.79(C)', () => {
    expect([CIRCUIT_VA, REST_SHARE, OPTIONAL_LEAST_SERVICE_A, LEAST_DWELLING_SERVICE_A]).toEqual([1500, 0.4, 100, 100])
    expect(HEAT_SHARES).toEqual({ supplement: 0.65, fewUnits: 0.65, manyUnits: 0.4, manyFrom: 4 })
    expect(STANDARD_LIGHTING).toEqual({ firstVa: 3000, restShare: 0.35 })
    expect(ONE_RANGE).toEqual({ upToVa: 12_000, demandVa: 8000 })
  })
})
