import { describe, expect, it } from 'vitest'
import {
  conductorConstant,
  constantFromResistance,
  faultAtTransformer,
  NEUTRAL_VOLTAGE_V,
  pointToPointA,
} from '../../src/electrical/index.js'
import { dcResistance } from '../../src/tables/nec/index.js'

describe('published fault currents', () => {
  it('300 kVA, 240 V, 3 percent: 46,296 A, and 8,978 A behind 150 ft of C = 13,923 (point-to-point sheet)', () => {
    const at = faultAtTransformer(300, 3)
    expect(at.lineToLineA).toBeCloseTo(46_296, 0)
    expect(pointToPointA(at.lineToLineA, 150, 13_923, 240)).toBeCloseTo(8978.3, 1)
    // Audited by hand with 1.5 times the current and 120 V; f = 12.47.
    expect(Math.abs(pointToPointA(at.lineToNeutralA, 150, 13_923, NEUTRAL_VOLTAGE_V) - 5156)).toBeLessThan(1)
  })

  // Arithmetic of the equation of an unlimited grid, with the published ratio of 1.5 to the neutral.
  it.each([
    [25, 6.5, 9.8],
    [37.5, 9.8, 14.6],
    [50, 13.0, 19.5],
    [75, 19.5, undefined],
    [100, 26.0, undefined],
  ] as const)('%d kVA of 1.6 percent as on the nameplate: %d kA line to line', (kva, lineKa, neutralKa) => {
    const at = faultAtTransformer(kva, 1.6)
    // The tolerance of the nameplate makes them a ninth larger.
    expect(Math.abs((at.lineToLineA * 0.9) / 1000 - lineKa)).toBeLessThan(0.051)
    if (neutralKa !== undefined) expect(Math.abs((at.lineToNeutralA * 0.9) / 1000 - neutralKa)).toBeLessThan(0.051)
    expect(at.lineToLineA / ((kva * 1000) / 240 / 0.016)).toBeCloseTo(1 / 0.9, 9)
  })

  it.each([
    [25, 8.5, 10.2],
    [50, 7.6, 7.8],
    [100, 6.2, 5.3],
  ])('9.8 kA behind %d ft of C = 13,923: %d kA line to line, %d kA to the neutral', (feet, lineKa, neutralKa) => {
    const lineA = faultAtTransformer(37.5, 1.6).lineToLineA * 0.9
    expect(Math.abs(pointToPointA(lineA, feet, 13_923, 240) / 1000 - lineKa)).toBeLessThan(0.051)
    expect(Math.abs(pointToPointA(1.5 * lineA, feet, 13_923, 120) / 1000 - neutralKa)).toBeLessThan(0.051)
  })

  it('constants: 6 AWG 2429 (published 2430), 12 AWG 617 solid and 602 stranded (published 617)', () => {
    expect(conductorConstant({ size: '6', material: 'copper' })).toBeCloseTo(2429, 0)
    expect(conductorConstant({ size: '12', material: 'copper' })).toBeCloseTo(618, 0)
    expect(Math.abs(conductorConstant({ size: '12', material: 'copper' }) - 617)).toBeLessThan(1)
    expect(constantFromResistance(1.98, 'copper')).toBeCloseTo(602, 0)
    expect(conductorConstant({ size: '3/0', material: 'copper' })).toBeCloseTo(15_569, 0)
  })

  it('never below the published constant that counts reactance', () => {
    expect(conductorConstant({ size: '3/0', material: 'copper' })).toBeGreaterThan(13_923)
  })

  it('the coefficient for a cold conductor is 0.8385 for copper, 0.835 for aluminum, in every size', () => {
    for (const { size, copper, aluminum } of dcResistance.filter((row) => row.strands > 1)) {
      expect(constantFromResistance(copper, 'copper'), size).toBeCloseTo(1000 / (copper * 0.8385), 6)
      expect(constantFromResistance(aluminum, 'aluminum'), size).toBeCloseTo(1000 / (aluminum * 0.835), 6)
    }
  })
})
