import { describe, expect, it } from 'vitest'
import { StageError } from '../../src/worksheet/index.js'
import type { Electrical } from '../../src/project/index.js'
import { combinerHouse, idsOf, need, optimiserHouse, size, stringHouse } from './devices-demo.js'

type Box = Partial<NonNullable<Electrical['dc_combiners']>[string]>
const severities = (count: number, box: Box, id: string, edition = 'NEC 2020'): string[] =>
  size(combinerHouse(count, box), edition)
    .findings.filter((finding) => finding.id === id)
    .map(({ severity }) => severity)

describe('DC combiners', () => {
  it('bring strings together: sum of currents, one conductor, its drop added to theirs', () => {
    const { values } = size(combinerHouse(2))
    const [first, , output] = values.circuits
    expect(output?.kind).toBe('dc_output')
    expect(output?.continuous_a).toBeCloseTo(2 * 1.25 * 13.9, 9)
    expect(output?.required_a).toBeCloseTo(2 * 1.5625 * 13.9, 9)
    expect(output?.breaker_a).toBeNull()
    expect(first?.total_voltage_rise_pct).toBeCloseTo(need(first).voltage_rise_pct + need(output).voltage_rise_pct, 12)
    // 2 L I R / 1000 at the sum of the operating currents, 30 ft, over the voltage of a string.
    const ohm = { '8': 0.778, '6': 0.491 }[need(output?.segments[0]).size_awg] ?? 0
    expect(output?.voltage_rise_pct).toBeCloseTo((100 * 2 * 30 * 2 * 13.06 * ohm) / 1000 / (12 * 31.4), 6)
    // 4 AWG in 75 deg C holds 85 A.
    const five = need(size(combinerHouse(3)).values.circuits.find(({ id }) => id === 'box'))
    expect(need(five.segments[0]).terminal_limit_a).toBeGreaterThanOrEqual(3 * 1.5625 * 13.9)
  })

  it('the same strings without a box keep their circuits', () => {
    const strings = [1, 2].map(() => ({ modules: 12, input: 1 }))
    const plain = size(stringHouse({ strings })).values.circuits
    expect(plain.map(({ kind }) => kind)).toEqual(['dc_string', 'dc_string', 'ac_inverter_output'])
    expect(size(stringHouse({ strings })).values.dc_combiners).toBeUndefined()
  })

  it('fuses: at least 1.5625 Isc, at most the series fuse, and none too small', () => {
    expect(size(combinerHouse(3)).values.dc_combiners?.[0]).toMatchObject({ fuse_a: 25, complies: true })
    expect(severities(3, { fuse_a: 20 }, 'wire.breaker-too-small')).toHaveLength(3)
    // 1.5625 x 13.9 = 21.7 A: a PV fuse of 22 A, which no table of standard ratings has, is large enough.
    expect(severities(3, { fuse_a: 22 }, 'wire.breaker-too-small')).toEqual([])
    expect(size(combinerHouse(3, { fuse_a: 22 })).values.dc_combiners?.[0]).toMatchObject({
      fuse_a: 22,
      complies: true,
    })
    expect(severities(3, { fuse_a: 30 }, 'wire.ocpd-above-maximum')).toHaveLength(3)
    expect(size(combinerHouse(3, { fuse_a: 30 })).values.dc_combiners?.[0]?.complies).toBe(false)
    expect(severities(3, { poles_fused: 'none' }, 'wire.dc-combiner-unfused')).toEqual(['error'])
    // One other string gives 17.4 A, which the modules with 25 A bear.
    expect(severities(2, { poles_fused: 'none' }, 'wire.dc-combiner-unfused')).toEqual([])
    const weak = combinerHouse(2, { poles_fused: 'none' }, { module: { max_series_fuse_a: 15 } })
    expect(idsOf(weak)).toContain('wire.dc-combiner-unfused')
    expect(size(combinerHouse(2)).values.dc_combiners?.[0]?.fuse_a).toBe(25)
    // With fuses the other string is held off.
    expect(idsOf(combinerHouse(2, {}, { module: { max_series_fuse_a: 15 } }))).not.toContain('wire.string-backfeed')
  })

  it('three strings have fuses even where the modules bear the other two', () => {
    const module = { isc_a: 8, imp_a: 7.5 }
    const box = need(size(combinerHouse(3, { poles_fused: 'none' }, { module })).values.dc_combiners?.[0])
    expect(box).toMatchObject({ backfeed_a: 20, fuses_needed: true, complies: false })
  })

  it('string and output share the limit of the voltage drop', () => {
    const segments = (lengthFt: number) => ({
      wall: { location: 'outdoor_wall', length_ft: lengthFt, raceway: 'EMT' } as const,
    })
    const runs = {
      dc: { carries: ['strings'], segments: segments(60) },
      dc_out: { carries: ['box'], segments: segments(200) },
      ac: { carries: ['inverter_outputs'], segments: segments(10) },
    }
    const house = combinerHouse(2)
    const { values, findings } = size({
      ...house,
      electrical: { ...house.electrical, dc_voltage_drop_limit_pct: 1, runs },
    })
    const output = need(values.circuits.find(({ id }) => id === 'box'))
    expect(need(values.circuits[0]).total_voltage_rise_pct).toBeLessThanOrEqual(1)
    expect(output.voltage_rise_pct).toBeGreaterThan(0.3)
    expect(findings.map(({ id }) => id)).not.toContain('wire.voltage-rise')
  })

  it('more strings never feed back less, nor need less conductor', () => {
    const boxes = [2, 3, 4, 5].map((count) => need(size(combinerHouse(count)).values.dc_combiners?.[0]))
    boxes.slice(1).forEach((box, i) => {
      expect(box.backfeed_a).toBeGreaterThan(need(boxes[i]).backfeed_a)
      expect(box.output_a).toBeGreaterThan(need(boxes[i]).output_a)
    })
    expect(boxes.map(({ backfeed_a: amps }) => amps / 17.375)).toEqual([1, 2, 3, 4].map((n) => expect.closeTo(n, 9)))
  })

  it('fuses in one pole: which, the same everywhere, and not before 2017', () => {
    const id = 'wire.dc-combiner-polarity'
    expect(severities(3, { poles_fused: 'one' }, id)).toEqual(['error'])
    expect(severities(3, { poles_fused: 'one', fused_pole: 'positive' }, id)).toEqual([])
    expect(severities(3, { poles_fused: 'one', fused_pole: 'positive' }, id, 'NEC 2014')).toEqual(['error'])
    expect(severities(3, {}, id, 'NEC 2014')).toEqual([])
    const house = combinerHouse(2)
    const { box } = need(house.electrical?.dc_combiners)
    const two = (other: 'positive' | 'negative') => ({
      ...house,
      arrays: {
        south: {
          ...need(house.arrays['south']),
          strings: [1, 1, 2, 2].map((input) => ({ modules: 12, inverter_unit: 'garage', input })),
        },
      },
      electrical: {
        ...house.electrical,
        dc_combiners: {
          box: { ...need(box), poles_fused: 'one' as const, fused_pole: 'positive' as const },
          other: { ...need(box), inputs: ['south_s3', 'south_s4'], poles_fused: 'one' as const, fused_pole: other },
        },
        runs: {
          ...house.electrical?.runs,
          dc_out: { ...need(house.electrical?.runs?.['dc_out']), carries: ['dc_outputs'] },
        },
      },
    })
    expect(idsOf(two('positive'))).not.toContain(id)
    expect(idsOf(two('negative'))).toContain(id)
  })

  it('ratings, listing and the disconnect above 30 A since 2020', () => {
    expect(severities(3, { max_voltage_v: 480 }, 'wire.dc-combiner-voltage')).toEqual(['error'])
    expect(severities(3, { max_current_a: 52 }, 'wire.dc-combiner-current')).toEqual(['error'])
    expect(severities(3, { max_current_a: undefined as never }, 'wire.dc-combiner-current')).toEqual(['warning'])
    expect(severities(3, { listed_for_dc: false }, 'wire.dc-combiner-listing')).toEqual(['error'])
    expect(severities(3, { fuses_listed_for_pv: undefined as never }, 'wire.dc-combiner-listing')).toEqual(['warning'])
    const id = 'wire.dc-combiner-disconnect'
    expect(severities(3, { disconnect: false }, id)).toEqual(['error'])
    expect(severities(3, { disconnect: undefined as never }, id)).toEqual(['warning'])
    expect(severities(3, { disconnect: false }, id, 'NEC 2017')).toEqual([])
    const small = combinerHouse(2, { disconnect: false }, { module: { isc_a: 12, imp_a: 11 } })
    expect(size(small).values.dc_combiners?.[0]).toMatchObject({ output_a: 30, disconnect_needed: false })
  })

  it('refuses strings that do not belong together', () => {
    expect(() => size(combinerHouse(2, { inputs: ['south_s1', 'south_s9'] }))).toThrow("no string 'south_s9'")
    expect(() => size(combinerHouse(3, { inputs: ['south_s1', 'south_s2'] }))).toThrow('in parallel')
    expect(() => size(combinerHouse(2, { inputs: ['south_s1', 'south_s1'] }))).toThrow(StageError)
  })

  it('strings with converters come together with the sum of their outputs', () => {
    const box = combinerHouse(3)
    const house = optimiserHouse({ strings: [1, 2, 3].map(() => ({ modules: 12, input: 1 })) })
    const { values } = size({ ...house, electrical: { ...house.electrical, ...box.electrical } })
    expect(values.dc_combiners?.[0]).toMatchObject({ output_a: 45, backfeed_a: 30, fuse_a: 20 })
  })
})
