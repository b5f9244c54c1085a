import * as fc from '../fast-check.js'
import { describe, expect, it } from 'vitest'
import { judgeBusbar, sizeWire, type Busbar } from '../../src/electrical/index.js'
import type { Electrical } from '../../src/project/index.js'
import { editions, type Edition } from '../../src/tables/nec/index.js'
import { context, microProject } from './demo.js'

type Lugs = NonNullable<Busbar['feedThrough']>

const lugs = (change: Partial<Lugs> = {}): Lugs => ({
  ampacityA: 200,
  deviceA: undefined,
  deviceAt: 'end',
  panelBusA: 200,
  ...change,
})

const bus = (change: Partial<Busbar> = {}): Busbar => ({
  busA: 200,
  mainA: 200,
  mainPosition: 'end',
  oppositeEnd: false,
  inverterA: 32,
  sourceBreakersA: 40,
  firstBreakersA: 40,
  loadBreakersA: undefined,
  feedThrough: lugs(),
  ...change,
})

const holding = (edition: Edition, change: Partial<Busbar>): string[] =>
  judgeBusbar(edition, bus(change)).flatMap(({ rule, holds }) => (holds ? [rule.rule] : []))

const since2020 = ['NEC 2020', 'NEC 2023'] as const

describe('busbar with feed-through lugs', () => {
  it.each(editions)(
    '%s: a device behind the lugs does not free a busbar of 100 A from 150 A of inverters',
    (edition) => {
      const change = {
        busA: 100,
        mainA: 100,
        inverterA: 150,
        sourceBreakersA: 200,
        firstBreakersA: 200,
        feedThrough: lugs({ ampacityA: 200, deviceA: 200 }),
      }
      expect(holding(edition, change)).toEqual([])
      expect(holding(edition, { ...change, loadBreakersA: 0 })).toEqual([])
      expect(holding(edition, { ...change, feedThrough: lugs({ ampacityA: 400, panelBusA: 400 }) })).toEqual([])
    },
  )

  // Electrician forum thread 2565990: the wording alone passes it, and the busbar can carry 400 A.
  it.each(since2020)('%s: 200 A busbar, 400 A of load breakers and 200 A of PV breakers', (edition) => {
    const change = { inverterA: 160, sourceBreakersA: 200, firstBreakersA: 200, loadBreakersA: 400 }
    expect(holding(edition, { ...change, feedThrough: lugs({ deviceA: 200 }) })).toEqual([])
  })

  // Published worked picture on 705.12(B)(3)(6) of 2020: 200 A main and a 40 A PV breaker (32 A) ask for 240 A behind the
  // lugs, or for a device of 200 A in the conductors.
  it.each(editions)(
    '%s: conductors and busbar behind the lugs carry 240 A, or a 200 A device protects them',
    (edition) => {
      const wide = { busA: 400 }
      const of = (feedThrough: Lugs) => holding(edition, { ...wide, feedThrough }).length > 0
      expect(of(lugs({ ampacityA: 240, panelBusA: 240 }))).toBe(true)
      expect(of(lugs({ ampacityA: 239, panelBusA: 240 }))).toBe(false)
      expect(of(lugs({ ampacityA: 240, panelBusA: 225 }))).toBe(false)
      expect(of(lugs({ ampacityA: 200, panelBusA: 200, deviceA: 200 }))).toBe(true)
      expect(of(lugs({ ampacityA: 175, panelBusA: 200, deviceA: 200 }))).toBe(false)
      expect(of(lugs({ ampacityA: 200, panelBusA: 125, deviceA: 200 }))).toBe(false)
      expect(of(lugs({ ampacityA: 240, panelBusA: undefined }))).toBe(false)
    },
  )

  it.each(['NEC 2014', 'NEC 2017', ...since2020] as const)(
    '%s: 120 percent and sum of breakers count only with a device at the start',
    (edition) => {
      const at = (deviceAt: Lugs['deviceAt'], change: Partial<Busbar>) =>
        holding(edition, { ...change, feedThrough: lugs({ deviceA: 100, deviceAt }) })
      expect(at('end', { oppositeEnd: true })).toEqual([])
      expect(at('start', { oppositeEnd: true })).toContain('120 percent')
      expect(at('end', { loadBreakersA: 60 })).toEqual([])
      expect(at('start', { loadBreakersA: 60 })).toContain('sum of breakers')
      // 61 + 100 + 40 A are above 200 A: the device of the lugs counts.
      expect(at('start', { loadBreakersA: 61 })).toEqual([])
    },
  )

  it.each(since2020)('%s: without loads, a device that keeps within the busbar is enough', (edition) => {
    const feedThrough = lugs({ deviceA: 200 })
    expect(holding(edition, { loadBreakersA: 0, feedThrough })).toEqual(['feed-through'])
    expect(holding(edition, { loadBreakersA: 15, feedThrough })).toEqual([])
    expect(holding(edition, { loadBreakersA: undefined, feedThrough })).toEqual([])
    const wide = lugs({ deviceA: 225, ampacityA: 225, panelBusA: 225 })
    expect(holding(edition, { loadBreakersA: 0, feedThrough: wide })).toEqual([])
    // 1.25 x 161 A is above the 200 A of the busbar.
    expect(holding(edition, { loadBreakersA: 0, inverterA: 161, feedThrough })).toEqual([])
  })

  it('says up to how much it takes: no more inverter current holds, and that much does', () => {
    const cases = fc.record({
      edition: fc.constantFrom<Edition>('NEC 2014', 'NEC 2017', 'NEC 2020', 'NEC 2023'),
      busA: fc.constantFrom(100, 200, 225, 400),
      mainA: fc.constantFrom(100, 150, 200),
      oppositeEnd: fc.boolean(),
      loadBreakersA: fc.constantFrom(undefined, 0, 60),
      ampacityA: fc.constantFrom(100, 200, 255, 400),
      panelBusA: fc.constantFrom(undefined, 100, 225, 400),
      deviceA: fc.constantFrom(undefined, 60, 100, 200),
      deviceAt: fc.constantFrom<Lugs['deviceAt']>('start', 'end'),
    })
    fc.assert(
      fc.property(cases, ({ edition, ampacityA, panelBusA, deviceA, deviceAt, ...change }) => {
        const feedThrough = { ampacityA, panelBusA, deviceA, deviceAt }
        const at = (inverterA: number) =>
          judgeBusbar(
            edition,
            bus({
              ...change,
              feedThrough,
              inverterA,
              sourceBreakersA: 1.25 * inverterA,
              firstBreakersA: 1.25 * inverterA,
            }),
          )
        const most = Math.max(...at(1).map(({ maxInverterA }) => maxInverterA))
        if (most > 0) expect(at(most).some(({ holds }) => holds)).toBe(true)
        // The sum rule names breakers in standard sizes, so a little more may still hold; a fifth more does not.
        expect(at(most * 1.25 + 20).some(({ holds }) => holds)).toBe(false)
      }),
      { numRuns: 200, seed: 705 },
    )
  })

  it('in a project: the panel behind the lugs is asked for', () => {
    const of = (feed_through: NonNullable<Electrical['panel']>['feed_through']) =>
      sizeWire(
        microProject({
          panel: {
            bus_a: 400,
            main_a: 200,
            spaces_free: 4,
            terminal_temperature_c: 75,
            ...(feed_through === undefined ? {} : { feed_through }),
          },
        }),
        context(),
      )
    const open = of({ conductor_ampacity_a: 250 })
    expect(open.findings.find(({ id }) => id === 'wire.feed-through-panel')).toMatchObject({
      severity: 'error',
      where: 'electrical.panel.feed_through.panel_bus_a',
    })
    expect(open.values.panel.complies).toBe(false)
    expect(of({ conductor_ampacity_a: 250, panel_bus_a: 250 }).values.panel.complies).toBe(true)
    expect(of({ conductor_ampacity_a: 250, panel_bus_a: 200 }).values.panel.complies).toBe(false)
    const assumed = of({ conductor_ampacity_a: 200, panel_bus_a: 200, overcurrent_device_a: 200 })
    expect(assumed.assumptions.map(({ path }) => path)).toContain('electrical.panel.feed_through.overcurrent_device_at')
    expect(assumed.values.panel.complies).toBe(true)
  })
})
