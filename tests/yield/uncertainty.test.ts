import { describe, expect, it } from 'vitest'
import { nearbyClimate, type MonthlyClimate } from '../../src/climate/index.js'
import { normalQuantiles, quantile } from '../../src/values/index.js'
import { Worksheet } from '../../src/worksheet/index.js'
import { drawEnergies } from '../../src/yield/uncertainty/draws.js'
import { courses, DRAWS, normals } from '../../src/yield/uncertainty/lattice.js'
import {
  AGE_TERM,
  yieldUncertainty,
  type UncertainArray,
  type UncertaintyBasis,
} from '../../src/yield/uncertainty/index.js'
import { methodError, termsOf, YEARLY_TERM, type Term } from '../../src/yield/uncertainty/terms.js'

const climate: MonthlyClimate = nearbyClimate({ latitudeDeg: 40, longitudeDeg: -90, elevationM: 200 }, new Worksheet())
const array = (kwh: number, more: Partial<UncertainArray> = {}): UncertainArray => ({
  id: 'a',
  kwh,
  tiltDeg: 30,
  azimuthDeg: 180,
  shadeLoss: 0,
  dirtLoss: 0,
  snowLoss: 0,
  ...more,
})
const basis = (more: Partial<UncertaintyBasis> = {}): UncertaintyBasis => ({
  climate,
  arrays: [array(5000)],
  temperatureSpread: 0.01,
  rowShade: 0,
  availabilityLoss: 0.01,
  ageing: { pctPerYear: 0.5, path: '' },
  life: { years: 25, path: '' },
  ...more,
})
const SOURCE = { document: '', standing: 'from memory' } as const
const term = (name: string, relative: readonly number[], more: Partial<Term> = {}): Term => ({
  name,
  relative,
  isShared: true,
  why: '',
  source: SOURCE,
  ...more,
})
const p90 = (column: Float64Array): number => quantile(column, 0.1)
const Z90 = 1.2815515655

describe('the draws', () => {
  it('are evenly spread over a normal distribution', () => {
    const places = normalQuantiles(1001)
    const mean = places.reduce((sum, z) => sum + z, 0) / places.length
    const variance = places.reduce((sum, z) => sum + z * z, 0) / places.length
    expect(mean).toBeCloseTo(0, 12)
    expect(variance).toBeCloseTo(1, 2)
    // Tables of the normal distribution: 1.2816 at 90 %, 1.9600 at 97.5 %.
    expect(quantile(places, 0.9)).toBeCloseTo(1.2816, 2)
    expect(quantile(places, 0.975)).toBeCloseTo(1.96, 1)
  })

  it('give the closed form where every cause is normal', () => {
    const terms = [term('a', [0.05]), term('b', [0.03]), term(YEARLY_TERM, [0.04])]
    const draws = drawEnergies(basis(), terms, 0)
    const sigma = Math.hypot(0.05, 0.03, 0.04)
    expect(Math.abs(p90(draws.firstYear) / 5000 - (1 - Z90 * sigma))).toBeLessThan(0.003)
    const mean = (1 - 0.995 ** 10) / 0.005 / 10
    expect(
      Math.abs(p90(draws.tenYearMean) / (5000 * mean) - (1 - Z90 * Math.hypot(0.05, 0.03, 0.04 / Math.sqrt(10)))),
    ).toBeLessThan(0.003)
    const life = (1 - 0.995 ** 25) / 0.005
    expect(Math.abs(quantile(draws.life, 0.5) / (5000 * life) - 1)).toBeLessThan(0.002)
    expect(Math.abs(p90(draws.life) / (5000 * life) - (1 - Z90 * Math.hypot(0.05, 0.03, 0.04 / 5)))).toBeLessThan(0.003)
  })

  it('of any year are those of all ages alike, and weather evens out over the years', () => {
    const aged = drawEnergies(basis(), [], 0).anyYear
    expect(aged.at(-1)).toBe(5000)
    expect(aged[0]! / 5000).toBeCloseTo(0.995 ** 24, 9)
    const mean = aged.reduce((sum, kwh) => sum + kwh, 0) / aged.length
    expect(mean / 5000).toBeCloseTo((1 - 0.995 ** 25) / 0.005 / 25, 4)
    const weather = drawEnergies(basis({ ageing: { pctPerYear: 0, path: '' } }), [term(YEARLY_TERM, [0.04])], 0)
    expect(p90(weather.firstYear) / 5000).toBeCloseTo(1 - Z90 * 0.04, 4)
    expect(p90(weather.tenYearMean) / 5000).toBeCloseTo(1 - (Z90 * 0.04) / Math.sqrt(10), 4)
    expect(p90(weather.life) / 5000 / 25).toBeCloseTo(1 - (Z90 * 0.04) / 5, 4)
  })

  it('add arrays up with one draw for all, or with one each', () => {
    const arrays = [array(3000), array(2000, { id: 'b' })]
    const shared = drawEnergies(basis({ arrays }), [term('a', [0.06, 0.06])], 0)
    const apart = drawEnergies(basis({ arrays }), [term('a', [0.06, 0.06], { isShared: false })], 0)
    expect(Math.abs(p90(shared.firstYear) / 5000 - (1 - Z90 * 0.06))).toBeLessThan(0.002)
    const sigma = Math.hypot(0.6 * 0.06, 0.4 * 0.06)
    expect(Math.abs(p90(apart.firstYear) / 5000 - (1 - Z90 * sigma))).toBeLessThan(0.002)
  })

  it('never turn a loss into a gain', () => {
    const draws = drawEnergies(basis(), [term('a', [0.02 / 0.99], { most: [1 / 0.99] })], 0)
    expect(draws.firstYear.at(-1)! / 5000).toBeCloseTo(1 / 0.99, 9)
    expect(quantile(draws.firstYear, 0.5) / 5000).toBeCloseTo(1, 3)
    expect(Math.abs(p90(draws.firstYear) / 5000 - (1 - 0.01 - Z90 * 0.02) / 0.99)).toBeLessThan(0.001)
  })

  it('are the same each time, and hardly move with the seed', () => {
    const terms = termsOf(basis())
    const first = drawEnergies(basis(), terms, 0.003)
    expect(drawEnergies(basis(), terms, 0.003)).toEqual(first)
    for (const column of ['firstYear', 'anyYear', 'tenYearMean', 'life'] as const) {
      const figures = Array.from({ length: 12 }, (_, seed) =>
        p90(drawEnergies(basis(), terms, 0.003, seed + 1)[column]),
      )
      const mean = figures.reduce((sum, kwh) => sum + kwh, 0) / figures.length
      const variance = figures.reduce((sum, kwh) => sum + (kwh / mean - 1) ** 2, 0) / (figures.length - 1)
      expect(Math.sqrt(variance)).toBeLessThan(0.0018)
      expect(Math.abs(p90(first[column]) / mean - 1)).toBeLessThan(0.003)
    }
  })

  it('take every part of every cause once, and causes are as good as independent', () => {
    const course = courses(20_260_101)
    const causes = Array.from({ length: 24 }, () => normals(course()))
    const parts = normalQuantiles(DRAWS)
    for (const deviates of causes) expect(deviates.toSorted()).toEqual(parts)
    for (const [index, one] of causes.entries()) {
      for (const other of causes.slice(0, index)) {
        const product = one.reduce((sum, z, draw) => sum + z * other[draw]!, 0) / DRAWS
        // Shuffled orders of as many would reach 0.05 among 276 pairs.
        expect(Math.abs(product)).toBeLessThan(0.04)
      }
    }
  })

  it('of one cause do not change when another has next to no effect', () => {
    const none = drawEnergies(basis(), termsOf(basis()), 0.003)
    const shaded = basis({ arrays: [array(5000, { shadeLoss: 1e-9, dirtLoss: 1e-9, snowLoss: 1e-9 })] })
    const little = drawEnergies(shaded, termsOf(shaded), 0.003)
    for (const column of ['firstYear', 'anyYear', 'tenYearMean', 'life'] as const) {
      expect(p90(little[column]) / p90(none[column])).toBeCloseTo(1, 7)
    }
  })
})

describe('how sure the energy is', () => {
  const of = (more: Partial<UncertaintyBasis> = {}) => yieldUncertainty(basis(more), new Worksheet())

  it('is less sure the more is exceeded, and surer over many years', () => {
    const { exceedance, lifetime } = of()
    for (const { p50_kwh, p90_kwh, p99_kwh } of [...Object.values(exceedance), lifetime]) {
      expect(p90_kwh).toBeLessThan(p50_kwh)
      expect(p99_kwh).toBeLessThan(p90_kwh)
    }
    const { first_year: first, any_year: any, ten_year_mean: ten } = exceedance
    expect(ten.p90_kwh / ten.p50_kwh).toBeGreaterThan(first.p90_kwh / first.p50_kwh)
    expect(any.p50_kwh).toBeLessThan(0.96 * first.p50_kwh)
    expect(lifetime.years).toBe(25)
    expect(lifetime.p50_kwh).toBeGreaterThan(23 * first.p50_kwh)
    expect(lifetime.p50_kwh).toBeLessThan(24 * first.p50_kwh)
  })

  it('falls with every further doubt', () => {
    const plain = of().exceedance.first_year.p90_kwh
    const doubts: Partial<UncertaintyBasis>[] = [
      { arrays: [array(5000, { shadeLoss: 0.1 })] },
      { arrays: [array(5000, { dirtLoss: 0.05 })] },
      { arrays: [array(5000, { snowLoss: 0.06 })] },
      { arrays: [array(5000, { azimuthDeg: 90, tiltDeg: 60 })] },
      { temperatureSpread: 0.04 },
      { rowShade: 1 },
      { climate: { ...climate, sitingErrorRel: 0.12 } },
    ]
    for (const doubt of doubts) expect(of(doubt).exceedance.first_year.p90_kwh).toBeLessThan(plain)
  })

  it('names each cause with its size and its source, and no cause that is not there', () => {
    const { uncertainty } = of({ arrays: [array(5000, { shadeLoss: 0.08 })] })
    const percent = Object.fromEntries(uncertainty.map(({ term: name, percent: size }) => [name, size]))
    // A quarter of 8 % of the light, for the 92 % that are left.
    expect(percent['shade']).toBeCloseTo((100 * 0.25 * 0.08) / 0.92, 9)
    expect(percent['monthly method']).toBeCloseTo(0.7, 9)
    expect(percent['year to year']).toBe(4)
    expect(percent['sky model']).toBeCloseTo((2 * 30) / 34, 9)
    expect(percent['snow']).toBeUndefined()
    expect(uncertainty.filter(({ shared }) => shared === 'array').map(({ term: name }) => name)).toEqual([
      'monthly method',
      'shade',
    ])
    expect(uncertainty.filter(({ lasts }) => !lasts).map(({ term: name }) => name)).toEqual(['year to year'])
    for (const { source, why } of uncertainty) {
      expect(source).not.toBe('')
      expect(why).not.toBe('')
    }
  })
})

describe('doubt about a loss', () => {
  const of = (more: Partial<UncertaintyBasis>) => yieldUncertainty(basis(more), new Worksheet())

  it.each([
    ['all is out of order', { arrays: [array(0)], availabilityLoss: 1 }],
    ['snow lies all year', { arrays: [array(0, { snowLoss: 1 })] }],
    ['no light comes through the dirt', { arrays: [array(0, { dirtLoss: 1 })] }],
    ['nothing but shade', { arrays: [array(0, { shadeLoss: 1 })] }],
  ])('leaves nothing when %s, and that is sure', (_, more) => {
    const { exceedance, lifetime, uncertainty } = of(more)
    for (const { p50_kwh, p90_kwh, p99_kwh } of [...Object.values(exceedance), lifetime]) {
      expect([p50_kwh, p90_kwh, p99_kwh]).toEqual([0, 0, 0])
    }
    for (const { percent } of uncertainty) expect(Number.isFinite(percent)).toBe(true)
  })

  it('of an array without energy leaves the other as it is', () => {
    const alone = of({ arrays: [array(3000)] })
    const beside = of({ arrays: [array(3000), array(0, { id: 'b', snowLoss: 1 })] })
    expect(beside.exceedance.first_year.p90_kwh).toBeCloseTo(alone.exceedance.first_year.p90_kwh, 6)
    for (const { percent } of beside.uncertainty) expect(Number.isFinite(percent)).toBe(true)
  })

  it.each([
    ['snow', { arrays: [array(5000, { snowLoss: 0.1 })] }],
    ['dirt', { arrays: [array(5000, { dirtLoss: 0.1 })] }],
    ['shade', { arrays: [array(5000, { shadeLoss: 0.3 })] }],
    ['time out of order', { availabilityLoss: 0.01 }],
  ])('of %s gives back no more than the loss took', (name, more) => {
    const given = basis(more)
    const only = termsOf(given).filter((each) => each.name === name)
    const { shadeLoss, dirtLoss, snowLoss } = given.arrays[0]!
    const loss = { shade: shadeLoss, dirt: dirtLoss, snow: snowLoss }[name] ?? 0.01
    const most = drawEnergies(given, only, 0).firstYear.at(-1)! / 5000
    // Doubt of a quarter of a loss reaches no more than 3.7 standard deviations, which is less than all of it.
    if (name === 'shade') expect(most).toBeLessThan(1 / (1 - loss))
    else expect(most).toBeCloseTo(1 / (1 - loss), 9)
  })

  it.each([0.1, 0.2, 0.3])('of %d is told for the energy that is left, as it is drawn', (snowLoss) => {
    const { exceedance, uncertainty } = of({ arrays: [array(5000, { snowLoss })] })
    const ofYear = uncertainty.filter(({ term: name }) => name !== AGE_TERM).map(({ percent }) => percent / 100)
    const byHand = 5000 * (1 - Z90 * Math.hypot(...ofYear))
    expect(Math.abs(exceedance.first_year.p90_kwh / byHand - 1)).toBeLessThan(0.01)
  })
})

describe('the monthly method on a plane', () => {
  // Yearly AC energy of 60 stations that were not used to choose it, rms: the figures of the groups.
  it.each([
    [40, 0, 180, 0.0048],
    [40, 18, 180, 0.007],
    [40, 34, 135, 0.007],
    [40, 60, 225, 0.0087],
    [40, 18, 90, 0.007],
    [40, 34, 270, 0.0087],
    [40, 60, 90, 0.0122],
    [40, 30, 0, 0.0244],
    [40, 75, 180, 0.0244],
    [-35, 34, 0, 0.007],
    [-35, 34, 350, 0.007],
    [-35, 34, 180, 0.0244],
  ])('at latitude %d, tilt %d, azimuth %d is off by %d', (latitude, tilt, azimuth, relative) => {
    expect(methodError(latitude, tilt, azimuth)).toBe(relative)
  })
})
