import { describe, expect, it } from 'vitest'
import { readGreenButton, readUsage } from '../../src/money/index.js'
import type { Usage } from '../../src/project/index.js'
import { StageError } from '../../src/worksheet/index.js'

/** What a channel of the file says of itself; '' leaves the element out. */
interface Kind {
  readonly accumulation?: string
  readonly kind?: string
  readonly qualifier?: string
  readonly commodity?: string
  readonly flow?: string
  readonly power?: string
  readonly uom?: string
}
type Reading = readonly [hour: number, value: number | string]

const START = Date.parse('2025-01-01T00:00:00-05:00') / 1000
const HOURS = 8760
const use = (h: number): number => 1000 + 100 * (h % 7)
const intervals: Reading[] = Array.from({ length: HOURS }, (_, h) => [h, use(h)])
const sumKwh = intervals.reduce((sum, [, wh]) => sum + Number(wh), 0) / 1000
/** Dial of the meter at the beginning of every hour, one more at the end. */
const dial = (from: number): Reading[] => {
  let wh = from
  return Array.from({ length: HOURS + 1 }, (_, h) => {
    const reading: Reading = [h, wh]
    wh += use(h)
    return reading
  })
}

function channel(id: string, readings: readonly Reading[], kind: Kind): string {
  const {
    accumulation = '4',
    kind: measured = '12',
    qualifier = '12',
    commodity = '1',
    flow = '1',
    power = '0',
    uom = '72',
  } = kind
  const element = (name: string, value: string): string => (value === '' ? '' : `<${name}>${value}</${name}>`)
  const type =
    element('accumulationBehaviour', accumulation) +
    element('commodity', commodity) +
    element('dataQualifier', qualifier) +
    element('flowDirection', flow) +
    '<intervalLength>3600</intervalLength>' +
    element('kind', measured) +
    element('powerOfTenMultiplier', power) +
    element('uom', uom)
  const values = readings
    .map(
      ([hour, value]) =>
        `<IntervalReading><timePeriod><duration>3600</duration><start>${String(START + hour * 3600)}</start></timePeriod><value>${String(value)}</value></IntervalReading>`,
    )
    .join('')
  return `<entry><link rel="self" href="/U/1/M/${id}"/><link rel="related" href="/U/1/M/${id}/B"/><link rel="related" href="/R/${id}"/><content><MeterReading/></content></entry>
<entry><link rel="self" href="/U/1/M/${id}/B/1"/><link rel="up" href="/U/1/M/${id}/B"/><content><IntervalBlock>${values}</IntervalBlock></content></entry>
<entry><link rel="self" href="/R/${id}"/><content><ReadingType>${type}</ReadingType></content></entry>`
}
const feed = (...channels: string[]): string =>
  `<feed><entry><link rel="self" href="/U/1"/><content><UsagePoint><ServiceCategory><kind>0</kind></ServiceCategory></UsagePoint></content></entry>${channels.join('')}</feed>`
const read = (xml: string, usage: Usage = {}) =>
  readUsage({ green_button: 'm.xml', daylight_saving: true, ...usage }, { fileText: xml, utcOffsetH: -5 })
const one = (readings: readonly Reading[], kind: Kind = {}, usage: Usage = {}) =>
  read(feed(channel('1', readings, kind)), usage)
const refusal = (run: () => unknown): StageError => {
  try {
    run()
  } catch (error) {
    if (error instanceof StageError) return error
  }
  throw new Error('accepted')
}
/** Three days are enough where no year is asked for. */
const few = intervals.slice(0, 72)
const fewKwh = few.reduce((sum, [, wh]) => sum + Number(wh), 0) / 1000
const series = (readings: readonly Reading[], kind: Kind = {}) => readGreenButton(feed(channel('1', readings, kind)))
const kwh = ({ readings }: ReturnType<typeof readGreenButton>): number =>
  readings.reduce((sum, { importWh }) => sum + importWh, 0) / 1000
const annual = (result: ReturnType<typeof read>): number => result.values.values.annual_kwh

describe('kinds of accumulation', () => {
  it('intervals are added up', () => {
    expect(annual(one(intervals))).toBeCloseTo(sumKwh, 6)
  })

  it.each(['1', '9'])('a counting register (kind %s) is differenced, not added up', (accumulation) => {
    const result = one(dial(41_200_000), { accumulation })
    expect(annual(result)).toBeCloseTo(sumKwh, 6)
    expect(result.values.usageKwh[100]).toBe(use(100) / 1000)
  })

  it.each([
    ['2', 'continuous cumulative'],
    ['3', 'cumulative'],
    ['6', 'indicating'],
    ['12', 'instantaneous'],
    ['13', 'latching'],
    ['14', 'bounded'],
    ['77', 'unknown'],
  ])('kind %s (%s) is refused by name', (accumulation, name) => {
    const error = refusal(() => series(dial(0).slice(0, 73), { accumulation }))
    expect(error.message).toContain(`accumulationBehaviour ${accumulation}`)
    expect(error.message).toContain(name)
    expect(error.fix).toContain('per interval')
  })

  it.each(['', '0'])('a kind that is not stated (%j) is taken as intervals, and that is told', (accumulation) => {
    const result = one(intervals, { accumulation })
    expect(annual(result)).toBeCloseTo(sumKwh, 6)
    expect(result.findings.find(({ id }) => id === 'usage.accumulation-unstated')).toMatchObject({
      severity: 'warning',
    })
    expect(one(intervals).findings.map(({ id }) => id)).not.toContain('usage.accumulation-unstated')
  })

  it.each(['', '4'])(
    'readings that never fall are refused even when they are called intervals (%j)',
    (accumulation) => {
      expect(refusal(() => series(dial(41_200_000).slice(0, 73), { accumulation })).message).toMatch(
        /never fall, from 41200 to/u,
      )
    },
  )

  it('a register that runs over or backwards is refused', () => {
    const over = dial(99_990_000).map(([h, wh]): Reading => [h, Number(wh) % 100_000_000])
    const error = refusal(() => series(over.slice(0, 73), { accumulation: '1' }))
    expect(error.message).toMatch(/^the register falls from 99\d{3}(\.\d+)? to [\d.]+ kWh at 2025-01-01/u)
    expect(error.message).toContain('ran over or was exchanged')
  })

  it('hours that a register skips are a gap, not one long use', () => {
    const skipping = dial(0).filter(([h]) => h < 3000 || h > 3005)
    const result = one(skipping, { accumulation: '1' })
    expect(result.values.values.meter).toMatchObject({ filled_hours: 7, longest_gap_hours: 7 })
    expect(result.findings.map(({ id }) => id)).toContain('usage.gaps-filled')
    const long = dial(0).filter(([h]) => h < 3000 || h > 3072)
    expect(refusal(() => one(long, { accumulation: '1' })).message).toMatch(/^74 hours are missing/u)
  })

  it('a register reading that stands twice counts once', () => {
    const days = dial(0).slice(0, 73)
    expect(kwh(series([...days, days[50]!], { accumulation: '1' }))).toBeCloseTo(fewKwh, 6)
    expect(refusal(() => series([...days, [50, 1]], { accumulation: '1' })).message).toMatch(/two different readings/u)
  })

  it('the register of a meter that counts both ways may fall', () => {
    let wh = 50_000_000
    const both = Array.from({ length: HOURS + 1 }, (_, h): Reading => {
      const reading: Reading = [h, wh]
      wh += h % 2 === 0 ? 2000 : -500
      return reading
    })
    const result = one(both, { accumulation: '1', flow: '4' })
    expect(annual(result)).toBeCloseTo(8760, 6)
    expect(result.values.values.meter?.export_kwh).toBeCloseTo(2190, 6)
  })
})

describe('units and kinds of measurement', () => {
  it('every power of ten gives the same energy', () => {
    for (const [power, factor] of [
      ['3', 1e-3],
      ['0', 1],
      ['-3', 1e3],
      ['', 1],
    ] as const) {
      const scaled = few.map(([h, wh]): Reading => [h, Math.round(Number(wh) * factor)])
      // A multiplier of 3 leaves whole kWh.
      expect(kwh(series(scaled, { power }))).toBeCloseTo(
        scaled.reduce((sum, [, value]) => sum + Number(value), 0) / factor / 1000,
        4,
      )
    }
  })

  it('a power of ten that is no whole number is refused, not taken as none', () => {
    expect(refusal(() => series(few, { power: '3.0' })).message).toBe("powerOfTenMultiplier '3.0' is no whole number")
    expect(refusal(() => series(few, { power: '12' })).message).toContain('powerOfTenMultiplier 12')
  })

  it.each<[string, Kind]>([
    ['power in W', { uom: '38' }],
    ['reactive energy', { uom: '73' }],
    ['no unit', { uom: '' }],
    ['demand', { kind: '8' }],
    ['power', { kind: '37' }],
    ['a maximum', { qualifier: '8' }],
    ['a mean', { qualifier: '2' }],
    ['natural gas', { commodity: '7' }],
    ['sent energy alone', { flow: '19' }],
    ['delivered and sent together', { flow: '20' }],
  ])('%s is no use of the house', (_, kind) => {
    expect(refusal(() => series(few, kind)).message).toMatch(/^the file holds no electric energy delivered/u)
  })

  it('a demand channel beside the energy is left out and told', () => {
    const peaks = few.map(([h]): Reading => [h, 9000])
    const found = readGreenButton(feed(channel('1', peaks, { kind: '8' }), channel('2', few, {})))
    expect(kwh(found)).toBeCloseTo(fewKwh, 6)
    expect(found.leftOut).toEqual([
      '1 further channel of the file was left out (coarser, demand, other units or other flows)',
    ])
  })

  it('two channels of delivered energy by the hour are refused, as nobody knows which is the house', () => {
    const other = few.map(([h]): Reading => [h, 300])
    const error = refusal(() => readGreenButton(feed(channel('1', few, {}), channel('2', other, {}))))
    expect(error.message).toBe(
      'the file holds 2 different channels of delivered energy per 3600 s; which is the house is not told',
    )
    expect(kwh(readGreenButton(feed(channel('1', few, {}), channel('2', few, {}))))).toBeCloseTo(fewKwh, 6)
  })

  it('intervals are taken before a register or cumulative values of the same hours', () => {
    // A dial that would give twice the use, so that the one that is taken shows.
    const days = dial(41_200_000)
      .slice(0, 73)
      .map(([h, wh]): Reading => [h, 2 * Number(wh)])
    for (const accumulation of ['1', '3']) {
      const found = readGreenButton(feed(channel('1', days, { accumulation }), channel('2', few, {})))
      expect(kwh(found)).toBeCloseTo(fewKwh, 6)
      expect(found.leftOut).toHaveLength(1)
    }
  })

  it('sent energy is not taken off the use, and is told', () => {
    const sent = intervals.map(([h]): Reading => [h, h % 24 === 12 ? 400 : 0])
    const result = read(feed(channel('1', intervals, {}), channel('2', sent, { flow: '19' })))
    expect(annual(result)).toBeCloseTo(sumKwh, 6)
    expect(result.values.values.meter?.export_kwh).toBeCloseTo(146, 6)
    expect(result.findings.map(({ id }) => id)).toContain('usage.export-present')
  })

  it('what is not stated of flow and accumulation is taken as delivered intervals, and told', () => {
    const result = one(intervals, { flow: '', accumulation: '' })
    expect(annual(result)).toBeCloseTo(sumKwh, 6)
    for (const id of ['usage.flow-unstated', 'usage.accumulation-unstated'])
      expect(result.findings.find((finding) => finding.id === id)).toMatchObject({ severity: 'warning' })
  })

  it('a value that is no whole number is refused, not left out', () => {
    const broken = few.map(([h, wh]): Reading => [h, h === 40 ? '1.2e3' : wh])
    expect(refusal(() => series(broken)).message).toBe("the reading '1.2e3' is no whole number")
  })
})
