import { describe, expect, it } from 'vitest'
import type { PvModule } from '../../src/project/index.js'
import { Worksheet } from '../../src/worksheet/index.js'
import { seriesCurve, shareOfParallel, shareOfString } from '../../src/yield/series/index.js'
import { fitted, sectionCurve, voltageAt } from '../../src/yield/series/section-curve.js'

const MODULE: PvModule = {
  pmax_w: 400,
  pmax_temp_coeff_pct_per_c: -0.35,
  voc_v: 37.1,
  isc_a: 13.8,
  vmp_v: 31.1,
  imp_a: 12.9,
}
const SHEETS = [
  MODULE,
  { ...MODULE, voc_v: 49.5, isc_a: 11.5, vmp_v: 41.6, imp_a: 10.8 },
  { ...MODULE, voc_v: 45, isc_a: 6.1, vmp_v: 36, imp_a: 5.6 },
]

describe('the curve of a section', () => {
  it.each(SHEETS)('goes through the points of the data sheet, with its top at the rated one (%o)', (module) => {
    const curve = sectionCurve(module, '', new Worksheet())
    const voltage = module.vmp_v! / module.voc_v!
    const current = module.imp_a! / module.isc_a!
    expect(voltageAt(curve, 0, 1)).toBeCloseTo(1 / voltage, 9)
    expect(voltageAt(curve, 1, 1)).toBeCloseTo(1, 9)
    expect(voltageAt(curve, 1 / current, 1)).toBe(-curve.diode)
    const power = (at: number): number => at * voltageAt(curve, at, 1)
    expect(power(1)).toBeCloseTo(1, 9)
    for (const step of [0.003, 0.01, 0.05]) {
      expect(power(1 + step)).toBeLessThan(1)
      expect(power(1 - step)).toBeLessThan(1)
    }
    expect((power(1 + 1e-5) - power(1 - 1e-5)) / 2e-5).toBeCloseTo(0, 5)
    // 0.5 V over a third of the module's voltage.
    expect(curve.diode).toBeCloseTo(1.5 / module.vmp_v!, 9)
  })

  it('is the usual one, said, where the sheet lacks a point or its points do not fit', () => {
    for (const change of [{ voc_v: undefined }, { imp_a: 14 }, { vmp_v: 10 }] as const) {
      const worksheet = new Worksheet()
      const { diode, ...curve } = sectionCurve({ ...MODULE, ...change } as PvModule, 'equipment.modules.m', worksheet)
      expect({ ...curve, diode: 0 }).toEqual(fitted(0.83, 0.94, 0))
      expect(diode).toBeGreaterThan(0)
      expect(worksheet.result({}).assumptions.map(({ path }) => path)).toEqual(['equipment.modules.m.vmp_v'])
    }
  })
})

/**
 * Share of power of a string by plain search: the current of each section from the implicit diode equation by bisection, voltages
 * summed section by section at a common current.
 */
function searched(module: PvModule, lit: readonly number[], light: number): number {
  const { short, a, r, dark, diode } = sectionCurve(module, '', new Worksheet())
  const currentAt = (v: number, s: number): number => {
    let [low, high] = [-5, short + 1]
    for (let round = 0; round < 60; round += 1) {
      const middle = (low + high) / 2
      // i = s short - dark exp((v + i r) / a) falls with i: the root lies where both sides meet.
      if (s * short - dark * Math.exp((v + middle * r) / a) > middle) low = middle
      else high = middle
    }
    return (low + high) / 2
  }
  const sectionV = (current: number, s: number): number => {
    let [low, high] = [-diode, 2]
    if (currentAt(-diode, s) <= current) return -diode
    for (let round = 0; round < 50; round += 1) {
      const middle = (low + high) / 2
      if (currentAt(middle, s) > current) low = middle
      else high = middle
    }
    return (low + high) / 2
  }
  const best = (string: readonly number[], dull: number): number => {
    const bright = string.filter((each) => each === 1).length
    let most = 0
    for (let step = 1; step < 240; step += 1) {
      const current = (step / 240) * short
      const volts = bright * sectionV(current, 1) + (string.length - bright) * sectionV(current, dull)
      most = Math.max(most, current * volts)
    }
    return most / string.length
  }
  return best(lit, light) / best([1], 1)
}

describe('a string with some of its sections dull', () => {
  it('gives what a plain search over its current gives', () => {
    const curve = seriesCurve(MODULE, '', new Worksheet())
    for (const [count, bright] of [
      [3, 1],
      [3, 2],
      [36, 35],
      [36, 20],
      [36, 5],
    ] as const) {
      for (const light of [0.1, 0.3, 0.7]) {
        const string = Array.from({ length: count }, (_, index) => (index < bright ? 1 : 0))
        const dull = searched(
          MODULE,
          Array.from({ length: count }, () => 0),
          light,
        )
        const expected = searched(MODULE, string, light)
        const share = shareOfString(curve, bright / count, dull)
        expect(Math.abs(share - expected)).toBeLessThan(0.004)
      }
    }
  })

  it('gives all in full light, the dull power where all are dull, and never less with more light', () => {
    const curve = seriesCurve(MODULE, '', new Worksheet())
    for (let dull = 0; dull <= 1; dull += 0.03) {
      expect(shareOfString(curve, 1, dull)).toBe(1)
      expect(shareOfString(curve, 0, dull)).toBeCloseTo(dull, 9)
      for (let lit = 0; lit < 1; lit += 0.037) {
        const share = shareOfString(curve, lit, dull)
        expect(share).toBeGreaterThanOrEqual(dull - 1e-9)
        expect(share).toBeLessThanOrEqual(1)
        expect(shareOfString(curve, lit + 0.02, dull)).toBeGreaterThanOrEqual(share - 1e-7)
        expect(shareOfString(curve, lit, Math.min(1, dull + 0.02))).toBeGreaterThanOrEqual(share - 1e-7)
      }
    }
  })

  it('loses the diodes of the sections that are passed by', () => {
    const curve = seriesCurve(MODULE, '', new Worksheet())
    // Two thirds lit, no light on the rest: 2/3 less a third of the drop of a diode, 1.5 V of 31.1 V.
    expect(shareOfString(curve, 2 / 3, 0)).toBeGreaterThan(2 / 3 - (1 / 3) * (1.5 / 31.1) * 1.05)
    expect(shareOfString(curve, 2 / 3, 0)).toBeLessThan(2 / 3 - (1 / 3) * (1.5 / 31.1) * 0.9)
  })

  it('stays at the dull current where its lit sections are below the least voltage of the tracker', () => {
    const curve = seriesCurve(MODULE, '', new Worksheet())
    expect(shareOfString(curve, 0.4, 0.1)).toBeGreaterThan(0.37)
    expect(shareOfString(curve, 0.4, 0.1, 0.5)).toBeLessThan(0.13)
    expect(shareOfString(curve, 0.6, 0.1, 0.5)).toBe(shareOfString(curve, 0.6, 0.1))
    // Lit sections can run above their best voltage: at 0.7 of the string's 0.66 of them give most of what they could.
    expect(shareOfString(curve, 0.66, 0.1, 0.7)).toBeGreaterThan(0.5)
    expect(shareOfString(curve, 0.66, 0.1, 0.7)).toBeLessThan(0.66)
  })
})

/** Mean share of strings in parallel by plain search over their common voltage and the current of each. */
function searchedParallel(lits: readonly number[], light: number): number {
  const curve = sectionCurve(MODULE, '', new Worksheet())
  const currentOf = (lit: number, voltage: number): number => {
    for (let current = curve.short; current > 0; current -= 0.002) {
      const volts = lit * voltageAt(curve, current, 1) + (1 - lit) * voltageAt(curve, current, light)
      if (volts >= voltage) return current
    }
    return 0
  }
  let best = 0
  for (let voltage = 0.1; voltage < 1.1; voltage += 0.01)
    best = Math.max(best, voltage * lits.reduce((sum, lit) => sum + currentOf(lit, voltage), 0))
  return best / lits.length
}

describe('strings in parallel', () => {
  it.each([
    [[1, 1, 0.8], 0.3],
    [[1, 0], 0.05],
    [[0.5, 0.9], 0.2],
    [[1, 35 / 36], 0.2],
  ] as const)('%o give what a search over their voltage gives under light %d', (lits, light) => {
    const curve = seriesCurve(MODULE, '', new Worksheet())
    const dull = searched(MODULE, [0, 0, 0], light)
    expect(Math.abs(shareOfParallel(curve, lits, dull) - searchedParallel(lits, light))).toBeLessThan(0.012)
  })

  const curve = seriesCurve(MODULE, '', new Worksheet())
  it('are as one where they are alike', () => {
    for (const lit of [0, 0.3, 0.8, 1]) {
      expect(shareOfParallel(curve, [lit, lit], 0.2)).toBeCloseTo(shareOfString(curve, lit, 0.2), 1)
    }
  })

  it('give no more than each alone would, and no less than the whole ones', () => {
    for (const lit of [0, 0.2, 0.5, 0.9]) {
      const share = shareOfParallel(curve, [1, lit], 0.2)
      expect(share).toBeLessThanOrEqual((1 + shareOfString(curve, lit, 0.2)) / 2 + 1e-9)
      expect(share).toBeGreaterThanOrEqual(0.5)
      expect(share).toBeGreaterThanOrEqual(shareOfParallel(curve, [1, lit], 0.1) - 1e-9)
    }
  })

  it('hold a string with one dull section at the voltage of the others', () => {
    // Alone it gives 35/36 at a lower voltage; beside a whole string it must carry the dull current or pull both down.
    const share = shareOfParallel(curve, [1, 35 / 36], 0.2)
    expect(share).toBeGreaterThan(0.95)
    expect(share).toBeLessThan(0.99)
  })
})
