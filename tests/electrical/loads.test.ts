import * as fc from '../fast-check.js'
import { describe, expect, it } from 'vitest'
import { loadValues, serviceLoad } from '../../src/electrical/index.js'
import type { Electrical, LoadCalculation, MeasuredDemand, Project } from '../../src/project/index.js'
import { loadFactors, type Edition } from '../../src/tables/nec/index.js'
import { StageError } from '../../src/worksheet/index.js'
import { jobOf, recompute } from './job-of.js'

const WHERE = 'electrical.load_calculation'

const house: LoadCalculation = {
  method: 'optional_new',
  floor_area_ft2: 2000,
  small_appliance_circuits: 2,
  laundry_circuits: 1,
  appliances: { range: { kind: 'range', rating_w: 10_000 }, pump: { kind: 'motor', current_a: 8, voltage_v: 240 } },
  cooling: { ac: { current_a: 20, voltage_v: 240 } },
  heating: {},
}
const documents: NonNullable<Project['documents']> = [
  { id: 'record', file: 'record.pdf', title: 'Demand of a year (invented)', date: '2026-02-01' },
  { id: 'undated', file: 'undated.pdf', title: 'Demand' },
  { id: 'untitled', file: 'untitled.pdf', date: '2026-02-01' },
  'bare.pdf',
]
const measured: MeasuredDemand = { peak_a: 40, period: 'year', pv_on_service: false, document: 'record' }

function run(
  load_calculation: LoadCalculation | undefined,
  edition = 'NEC 2023',
  service: Electrical['service'] = { rating_a: 200 },
) {
  const change = { ...(service === undefined ? {} : { service }), ...(load_calculation && { load_calculation }) }
  const { job, result } = jobOf(change, 'NEC 2023', { documents })
  const load = serviceLoad({ ...job, edition: edition as Edition })
  const { worksheet, findings, assumptions } = result()
  const value = (id: string) => worksheet.find((step) => step.id === `wire.load.${id}`)?.result.value
  return { load, worksheet, findings, assumptions, value, ids: findings.map(({ id }) => id) }
}

/** What an `errors` case throws. */
function thrown(load_calculation: LoadCalculation, edition?: string): StageError {
  try {
    run(load_calculation, edition)
  } catch (error) {
    if (error instanceof StageError) return error
    throw error
  }
  throw new Error('nothing was thrown')
}

describe('load of the dwelling', () => {
  it('is not worked out when nothing is stated of it', () => {
    const { load, worksheet, findings } = run(undefined)
    expect(load).toBeUndefined()
    expect(worksheet).toEqual([])
    expect(findings).toEqual([])
  })

  it.each([
    ['optional_new', 'NEC 2023'],
    ['optional_new', 'NEC 2026'],
    ['optional_existing', 'NEC 2020'],
    ['standard', 'NEC 2017'],
    ['measured', 'NEC 2026'],
  ] as const)('%s of %s: every step by its formula', (method, edition) => {
    const { load, worksheet } = run(
      {
        ...house,
        method,
        existing_ac_or_heat_added: true,
        measured,
        new_loads: { car: { kind: 'ev_supply', rating_va: 9600 }, tub: { kind: 'fixed', rating_w: 6000 } },
        heating: {
          pump: { kind: 'heat_pump', rating_va: 4000, supplement_va: 5000 },
          bath: { kind: 'resistance', rating_w: 1500, separately_controlled_units: 1 },
          store: { kind: 'thermal_storage', rating_w: 3000 },
        },
      },
      edition,
    )
    expect(worksheet.length).toBeGreaterThanOrEqual(4)
    for (const step of worksheet) {
      expect(recompute(step), step.id).toBeCloseTo(Number(step.result.value), 6)
      expect(step.source.document, step.id).toBe('NEC')
    }
    expect(worksheet.find(({ id }) => id === 'wire.load.total')?.result.value).toBe(load?.va)
    expect(worksheet.find(({ id }) => id === 'wire.load.current')?.result.value).toBe(load?.a)
  })

  it('counts nameplates in VA, W and A x V', () => {
    expect(run(house).value('appliances')).toBe(10_000 + 1920)
    expect(run(house).value('cooling')).toBe(4800)
    // 3 x 2000 + 3 x 1500 + 11,920 = 22,420; 10,000 + 0.4 x 12,420 = 14,968; + 4800.
    expect(run(house).load?.va).toBeCloseTo(19_768, 9)
  })

  it('a list within its first part counts whole', () => {
    const { value } = run({ ...house, floor_area_ft2: 1000, appliances: {} })
    expect(value('list')).toBe(7500)
    expect(value('demand')).toBe(7500)
  })

  it('is read line to line', () => {
    const { load } = run(house)
    expect(load?.a).toBeCloseTo((load?.va ?? 0) / 240, 9)
  })
})

describe('what cools and heats, optional method of a whole dwelling', () => {
  const climate = (heating: LoadCalculation['heating'], cooling: LoadCalculation['cooling'] = {}) =>
    run({ ...house, ...(heating && { heating }), ...(cooling && { cooling }) })
  const resistance = (units: number | undefined) =>
    ({
      rooms: {
        kind: 'resistance',
        rating_w: 10_000,
        ...(units === undefined ? {} : { separately_controlled_units: units }),
      },
    }) as const

  it.each([
    [1, 6500],
    [3, 6500],
    [4, 4000],
    [9, 4000],
    [undefined, 6500],
  ])('10 kW of resistance heat in %s units counts %d VA', (units, va) => {
    const { value, assumptions } = climate(resistance(units))
    expect(value('climate')).toBe(va)
    expect(assumptions.map(({ path }) => path)).toEqual(
      units === undefined ? [`${WHERE}.heating.rooms.separately_controlled_units`] : [],
    )
  })

  it('units of all entries count together', () => {
    const half = { kind: 'resistance', rating_w: 5000, separately_controlled_units: 2 } as const
    expect(climate({ up: half, down: half }).value('climate')).toBe(4000)
  })

  it('a heat pump counts whole, its supplement by 65 percent, and resistance heat beside it as a supplement', () => {
    const pump = { kind: 'heat_pump', rating_va: 4000, supplement_va: 0 } as const
    expect(climate({ pump }).value('climate')).toBe(4000)
    expect(climate({ pump: { ...pump, supplement_va: 10_000 } }).value('climate')).toBe(10_500)
    expect(climate({ pump, ...resistance(5) }).value('climate')).toBe(10_500)
  })

  it('the larger of cooling and heating counts, not both', () => {
    const cooling = { ac: { rating_va: 7000 } }
    expect(climate(resistance(1), cooling).value('climate')).toBe(7000)
    expect(climate({ rooms: { kind: 'resistance', rating_w: 12_000 } }, cooling).value('climate')).toBe(7800)
  })

  it('thermal storage counts whole; other heat beside it is told', () => {
    const store = { kind: 'thermal_storage', rating_w: 9000 } as const
    expect(climate({ store }).value('climate')).toBe(9000)
    expect(climate({ store }).ids).toEqual([])
    const both = climate({ store, ...resistance(1) })
    expect(both.value('climate')).toBe(9000)
    expect(both.ids).toEqual(['wire.load-heat-beside'])
  })
})

describe('an outlet for vehicles', () => {
  const withCar = (rating_va: number | undefined, edition: string) =>
    run(
      {
        ...house,
        new_loads: { car: { kind: 'ev_supply', ...(rating_va === undefined ? {} : { rating_va }) } },
      },
      edition,
    )
  const without = (edition: string) => run(house, edition).load?.va ?? 0

  it.each([
    [3840, 'NEC 2020', 0.4 * 3840],
    [3840, 'NEC 2023', 0.4 * 7200],
    [9600, 'NEC 2023', 0.4 * 9600],
    [3840, 'NEC 2026', 3840],
    [9600, 'NEC 2026', 9600],
    [undefined, 'NEC 2026', 7200],
  ])('of %s VA by %s adds %d VA', (rating, edition, addsVa) => {
    const { load, findings } = withCar(rating, edition)
    expect((load?.va ?? 0) - without(edition)).toBeCloseTo(addsVa, 6)
    const note = findings.find(({ id }) => id === 'wire.load-vehicle')
    if (edition === 'NEC 2026') expect(note).toBeUndefined()
    // The whole load: the part that the list leaves out is 60 percent.
    else expect(note?.message).toContain(`${(without(edition) + addsVa / 0.4).toFixed(0)} VA instead of`)
  })

  it('without nameplate is refused before 2026', () => {
    expect(() => withCar(undefined, 'NEC 2023')).toThrow(/outlet for vehicles/)
  })
})

describe('existing dwelling', () => {
  const existing = (change: Partial<LoadCalculation>) =>
    ({ ...house, method: 'optional_existing', existing_ac_or_heat_added: false, ...change }) as const

  it('cooling counts whole whether it is new or not, and the section says which', () => {
    const old = run(existing({}))
    const added = run(existing({ existing_ac_or_heat_added: true }))
    // 22,420: 8000 + 0.4 x 14,420 = 13,768; + 4800.
    expect(old.load?.va).toBeCloseTo(18_568, 9)
    expect(added.load?.va).toBeCloseTo(18_568, 9)
    expect([old.load?.section, added.load?.section]).toEqual(['220.83(A)', '220.83(B)'])
    expect(old.load?.before?.va).toBeCloseTo(18_568, 9)
    expect(added.load?.before).toBeUndefined()
  })

  it('heating counts whole with supplement and without shares', () => {
    const { load } = run(existing({ heating: { pump: { kind: 'heat_pump', rating_va: 4000, supplement_va: 10_000 } } }))
    expect(load?.va).toBeCloseTo(13_768 + 14_000, 9)
  })

  it('wants to know whether cooling or heating is added, and what', () => {
    const { existing_ac_or_heat_added: _, ...rest } = existing({})
    expect(thrown(rest).where).toBe(`${WHERE}.existing_ac_or_heat_added`)
    expect(thrown(existing({ existing_ac_or_heat_added: true, cooling: {} })).message).toContain('neither')
  })

  it('is refused by 2026, whose numbers are not known', () => {
    const { load, findings } = run(existing({}), 'NEC 2026')
    expect(load).toBeUndefined()
    expect(findings).toMatchObject([{ severity: 'error', id: 'wire.load-method', where: `${WHERE}.method` }])
    expect(findings[0]?.message).toContain('120.83')
  })
})

describe('standard method', () => {
  const standard = (change: Partial<LoadCalculation>, edition = 'NEC 2023') =>
    run({ ...house, method: 'standard', appliances: {}, cooling: {}, ...change }, edition)
  const appliances = (one: LoadCalculation['appliances']) => standard({ ...(one && { appliances: one }) })
  const range = (rating_w: number) => ({ kind: 'range', rating_w }) as const

  it.each([
    [7000, 7000],
    [8500, 8000],
    [12_000, 8000],
    [12_001, 12_001],
    [16_000, 16_000],
  ])('one range of %d W counts %d VA', (w, va) => {
    expect(appliances({ range: range(w) }).value('appliances')).toBe(va)
  })

  it('two cooking appliances count at their nameplates', () => {
    expect(appliances({ range: range(12_000), oven: { kind: 'oven', rating_w: 4000 } }).value('appliances')).toBe(
      16_000,
    )
  })

  it('a dryer counts 5000 VA or more', () => {
    expect(appliances({ dryer: { kind: 'dryer', rating_w: 4500 } }).value('appliances')).toBe(5000)
    expect(appliances({ dryer: { kind: 'dryer', rating_w: 5600 } }).value('appliances')).toBe(5600)
  })

  it('the largest motor counts a quarter more, be it of the cooling', () => {
    const lighting = 3000 + 0.35 * 7500
    const pump = { kind: 'motor', rating_va: 2000 } as const
    const fan = { kind: 'motor', rating_va: 1000 } as const
    expect(appliances({ pump, fan }).load?.va).toBeCloseTo(lighting + 3500, 9)
    expect(standard({ cooling: { ac: { rating_va: 4000 } }, appliances: { pump } }).load?.va).toBeCloseTo(
      lighting + 2000 + 5000,
      9,
    )
    expect(
      standard({ heating: { hp: { kind: 'heat_pump', rating_va: 6000, supplement_va: 100 } } }).load?.va,
    ).toBeCloseTo(lighting + 6100 + 1500, 9)
  })

  it('is refused by 2026', () => {
    const { load, ids } = standard({}, 'NEC 2026')
    expect(load).toBeUndefined()
    expect(ids).toEqual(['wire.load-method'])
  })
})

describe('measured demand', () => {
  const of = (change: Partial<MeasuredDemand>, more: Partial<LoadCalculation> = {}) =>
    run({ method: 'measured', measured: { ...measured, ...change }, ...more })
  const kva = (peak_kva: number): MeasuredDemand => ({
    peak_kva,
    period: 'year',
    pv_on_service: false,
    document: 'record',
  })

  it('counts 1.25 times, and new loads whole', () => {
    expect(of({}).load?.a).toBeCloseTo(50, 9)
    expect(run({ method: 'measured', measured: kva(12) }).load?.va).toBe(15_000)
    const { load, ids } = of({}, { new_loads: { tub: { kind: 'fixed', rating_w: 4800 } } })
    expect(load?.a).toBeCloseTo(70, 9)
    expect(load?.before?.a).toBeCloseTo(50, 9)
    expect(load?.section).toBe('220.87')
    expect(ids).toEqual([])
  })

  it('names its document in the step', () => {
    const step = of({}).worksheet.find(({ id }) => id === 'wire.load.total')
    expect(step?.inputs[1]?.from).toContain('Demand of a year (invented), 2026-02-01')
  })

  it.each([
    ['a document that is not there', { document: 'nowhere' }, 'document'],
    ['a document that has the name of a part of objects', { document: 'constructor' }, 'document'],
    ['a document by its path', { document: 'bare.pdf' }, 'document'],
    ['a document without date', { document: 'undated' }, 'document'],
    ['a document without title', { document: 'untitled' }, 'document'],
    ['30 days with sources', { period: '30_days', pv_on_service: true, pv_added_back: true }, 'period'],
    ['a year of net demand', { pv_on_service: true }, 'pv_added_back'],
    ['a year said to be net', { pv_on_service: true, pv_added_back: false }, 'pv_added_back'],
  ] as const)('%s does not count', (_, change, key) => {
    const { load, findings, worksheet } = of(change)
    expect(load).toBeUndefined()
    expect(worksheet).toEqual([])
    expect(findings).toMatchObject([{ severity: 'error', id: 'wire.load-measured', where: `${WHERE}.measured.${key}` }])
  })

  it('without word about sources, or 30 days without the current of the leg, it does not count', () => {
    const { pv_on_service: _, ...silent } = measured
    expect(run({ method: 'measured', measured: silent }).findings[0]?.where).toBe(`${WHERE}.measured.pv_on_service`)
    const month = run({ method: 'measured', measured: { ...kva(9), period: '30_days' } })
    expect(month.findings[0]?.where).toBe(`${WHERE}.measured.peak_a`)
    expect(month.load).toBeUndefined()
  })

  it('30 days on the leg without sources, and gross demand of a year with them, count', () => {
    expect(of({ period: '30_days' }).load?.a).toBeCloseTo(50, 9)
    expect(of({ pv_on_service: true, pv_added_back: true }).load?.a).toBeCloseTo(50, 9)
  })

  it('wants the demand once', () => {
    const { peak_a: _, ...none } = measured
    expect(thrown({ method: 'measured', measured: none }).where).toBe(`${WHERE}.measured`)
    expect(thrown({ method: 'measured', measured: { ...measured, peak_kva: 9 } }).message).toContain('once')
    expect(thrown({ method: 'measured' }).where).toBe(`${WHERE}.measured`)
  })

  it('tells what it does not look at, and does not count it', () => {
    const { load, findings } = run({ ...house, method: 'measured', measured: { ...measured, pv_added_back: true } })
    expect(load?.a).toBeCloseTo(50, 9)
    expect(findings.map(({ id, where }) => [id, where.slice(WHERE.length + 1)])).toEqual(
      [
        'floor_area_ft2',
        'small_appliance_circuits',
        'laundry_circuits',
        'appliances',
        'cooling',
        'heating',
        'measured.pv_added_back',
      ].map((key) => ['wire.load-unused', key]),
    )
    expect(run({ ...house, measured, existing_ac_or_heat_added: false }).findings.map(({ where }) => where)).toEqual([
      `${WHERE}.measured`,
      `${WHERE}.existing_ac_or_heat_added`,
    ])
  })
})

describe('what is missing', () => {
  it.each(['floor_area_ft2', 'small_appliance_circuits'] as const)('%s: refused', (key) => {
    const { [key]: _, ...rest } = house
    expect(thrown(rest).where).toBe(`${WHERE}.${key}`)
  })

  it.each(['laundry_circuits', 'appliances', 'cooling', 'heating'] as const)('%s: a warning', (key) => {
    const { [key]: _, ...rest } = house
    for (const method of ['optional_new', 'standard'] as const) {
      const { findings, load } = run({ ...rest, method })
      expect(load).toBeDefined()
      expect(findings).toMatchObject([{ severity: 'warning', id: 'wire.load-not-stated', where: `${WHERE}.${key}` }])
    }
  })

  it('one laundry circuit counts all the same', () => {
    const { laundry_circuits: _, ...rest } = house
    expect(run(rest).load?.va).toBe(run(house).load?.va)
  })

  it.each([
    ['no rating', {}],
    ['two ratings', { rating_va: 5, rating_w: 5 }],
    ['amperes without volts', { current_a: 5 }],
    ['volts beside VA', { rating_va: 5, voltage_v: 120 }],
    ['a rating of 0', { rating_va: 0 }],
    ['a rating that is no number', { rating_va: Number.NaN }],
    ['a motor in W', { rating_w: 500 }],
  ] as const)('%s: refused', (_, plate) => {
    const error = thrown({ ...house, appliances: { pump: { kind: 'motor', ...plate } } })
    expect(error.where).toContain(`${WHERE}.appliances.pump`)
  })

  it('a heat pump without word about its supplement, or in W; supplement or units where there are none: refused', () => {
    const heating = (one: NonNullable<LoadCalculation['heating']>[string]) =>
      thrown({ ...house, heating: { one } }).where
    const at = `${WHERE}.heating.one`
    expect(heating({ kind: 'heat_pump', rating_va: 4000 })).toBe(`${at}.supplement_va`)
    expect(heating({ kind: 'heat_pump', rating_w: 4000, supplement_va: 0 })).toBe(`${at}.rating_w`)
    expect(heating({ kind: 'resistance', rating_w: 4000, supplement_va: 0 })).toBe(`${at}.supplement_va`)
    expect(heating({ kind: 'thermal_storage', rating_w: 4000, separately_controlled_units: 2 })).toBe(
      `${at}.separately_controlled_units`,
    )
  })
})

describe('against the service', () => {
  const ofService = (service: Electrical['service']) => run(house, 'NEC 2023', service)

  it('the load of 82.4 A: above 82 A of conductors an error, at 100 A none', () => {
    expect(ofService({ rating_a: 100, conductor_ampacity_a: 82 }).findings).toMatchObject([
      { severity: 'error', id: 'wire.load-above-service', where: 'electrical.service.conductor_ampacity_a' },
    ])
    expect(ofService({ rating_a: 100, conductor_ampacity_a: 83 }).ids).toEqual([])
  })

  it('a load above the rating is an error', () => {
    const { ids } = run({ ...house, floor_area_ft2: 12_000 }, 'NEC 2023', { rating_a: 100 })
    expect(ids).toEqual(['wire.load-above-service'])
  })

  it('a service whose rating is not stated is told', () => {
    expect(ofService({ conductor_ampacity_a: 200 }).ids).toEqual(['wire.load-not-compared'])
  })

  it('the optional method of a whole dwelling wants 100 A', () => {
    expect(ofService({ rating_a: 100 }).load).toBeDefined()
    const small = ofService({ rating_a: 99 })
    expect(small.load).toBeUndefined()
    expect(small.findings).toMatchObject([{ severity: 'error', id: 'wire.load-method' }])
  })

  it('100 A are needed however small the load is', () => {
    const { load } = run({ ...house, floor_area_ft2: 500, appliances: {}, cooling: {} })
    expect(load?.a).toBeLessThan(30)
    expect([load?.leastServiceA, load?.neededA]).toEqual([100, 100])
    expect(loadValues(load)).toEqual({
      method: 'optional_new',
      section: '220.82',
      load_va: load?.va,
      load_a: load?.a,
      needed_a: 100,
      least_service_a: 100,
      before_a: null,
    })
    expect(loadValues(undefined)).toBeNull()
    const large = run({ ...house, floor_area_ft2: 14_000 }).load
    expect(large?.neededA).toBe(large?.a)
  })
})

describe('more load never means less current', () => {
  const va = fc.double({ min: 1, max: 15_000, noNaN: true })
  const kinds = ['fixed', 'range', 'oven', 'dryer', 'water_heater', 'motor', 'ev_supply'] as const
  const heat = fc.oneof(
    fc.record({ kind: fc.constant('heat_pump' as const), rating_va: va, supplement_va: va }),
    fc.record({ kind: fc.constantFrom('resistance' as const, 'thermal_storage' as const), rating_va: va }),
  )
  const ids = fc.constantFrom('a', 'b', 'c', 'd')
  const appliance = fc.record({ kind: fc.constantFrom(...kinds), rating_va: va })
  const dwelling = fc.record({
    floor_area_ft2: fc.double({ min: 100, max: 8000, noNaN: true }),
    small_appliance_circuits: fc.integer({ min: 2, max: 6 }),
    laundry_circuits: fc.integer({ min: 1, max: 3 }),
    appliances: fc.dictionary(ids, appliance, { maxKeys: 4 }),
    new_loads: fc.dictionary(ids, appliance, { maxKeys: 2 }),
    cooling: fc.dictionary(ids, fc.record({ rating_va: va }), { maxKeys: 2 }),
    heating: fc.dictionary(ids, heat, { maxKeys: 3 }),
  })
  const way = fc.constantFrom(
    ...loadFactors.flatMap(({ edition }) => [
      { edition, method: 'optional_new' as const },
      ...(edition === 'NEC 2026'
        ? []
        : [
            { edition, method: 'optional_existing' as const },
            { edition, method: 'standard' as const },
          ]),
    ]),
  )

  it('whatever is added, in every method and edition', () => {
    fc.assert(
      fc.property(dwelling, way, appliance, heat, va, (base, { edition, method }, more, moreHeat, moreVa) => {
        const amperes = (change: Partial<LoadCalculation>) =>
          run({ ...base, method, existing_ac_or_heat_added: false, ...change }, edition).load?.a ?? Number.NaN
        const before = amperes({})
        expect(before).toBeGreaterThan(0)
        const changes: readonly Partial<LoadCalculation>[] = [
          { floor_area_ft2: base.floor_area_ft2 + moreVa },
          { small_appliance_circuits: base.small_appliance_circuits + 1 },
          { laundry_circuits: base.laundry_circuits + 1 },
          { appliances: { ...base.appliances, more } },
          { new_loads: { ...base.new_loads, more } },
          { cooling: { ...base.cooling, more: { rating_va: moreVa } } },
          { heating: { ...base.heating, more: moreHeat } },
        ]
        for (const change of changes) expect(amperes(change)).toBeGreaterThanOrEqual(before - 1e-9)
      }),
      { numRuns: 150 },
    )
  })

  it('nor does a larger measured demand', () => {
    fc.assert(
      fc.property(fc.double({ min: 1, max: 300, noNaN: true }), va, (peak_a, moreVa) => {
        const of = (peak: number, rating_va: number) =>
          run({
            method: 'measured',
            measured: { ...measured, peak_a: peak },
            new_loads: { one: { kind: 'fixed', rating_va } },
          }).load?.a ?? Number.NaN
        expect(of(peak_a * 1.1, moreVa)).toBeGreaterThan(of(peak_a, moreVa))
        expect(of(peak_a, moreVa + 1)).toBeGreaterThan(of(peak_a, moreVa))
        expect(of(peak_a, moreVa)).toBeGreaterThan(peak_a)
      }),
      { numRuns: 50 },
    )
  })
})
