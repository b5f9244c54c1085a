import { describe, expect, it } from 'vitest'
import { readTable } from '../structure/read-table.js'
import { beamExtremes, solveContinuousBeam } from '../../src/structure/index.js'

// Coefficients of equal spans under uniform load with equal free ends: handbook values (1/8, 5/384, 0.125, 0.0054, 0.100,
// 0.0069, 0.107, 0.0065) and a stiffness calculation for the overhangs, printed to three or four digits.
describe('continuous beam of equal spans', () => {
  it.each(readTable('beam_coefficients'))('$equal_spans spans, overhang $overhang_each_end_over_L L', (row) => {
    const [L, w] = [48, 2.5]
    const spans = Number(row['equal_spans'])
    const printedShare = Number(row['overhang_each_end_over_L'])
    // 0.333 stands for a third.
    const overhang = (printedShare === 0.333 ? 1 / 3 : printedShare) * L
    const beam = {
      startIn: -overhang,
      endIn: spans * L + overhang,
      supportsIn: Array.from({ length: spans + 1 }, (_, i) => i * L),
      loads: [{ fromIn: -overhang, toIn: spans * L + overhang, lbPerIn: w }],
    }
    const solution = solveContinuousBeam(beam)
    const shape = beamExtremes(beam, solution)
    const close = (value: number, column: string): void => {
      const printed = Number(row[column])
      expect(Math.abs(value - printed)).toBeLessThan(0.0006)
    }
    close((solution.reactionsLb[0] ?? 0) / (w * L), 'end_reaction/wL')
    if (row['first_interior_reaction/wL'] !== '')
      close((solution.reactionsLb[1] ?? 0) / (w * L), 'first_interior_reaction/wL')
    // Sagging was read at tenths of the span: the true peak is up to w (0.05 L)^2 / 2 higher.
    const sagging = shape.saggingLbIn / (w * L * L) - Number(row['max_sagging_M/wL2'])
    expect(sagging).toBeGreaterThan(-0.0006)
    expect(sagging).toBeLessThan(0.0006 + 0.05 ** 2 / 2)
    close(shape.hoggingLbIn / (w * L * L), 'max_hogging_M/wL2')
    const inSpans = shape.deflections.filter((d) => d.lengthIn === L || overhang === 0).map((d) => d.timesStiffness)
    const printed = Number(row['max_span_deflection*EI/wL4'])
    // The printed deflections were read at tenths of the span, so they may miss the true peak by up to 1.5 %.
    const ratio = Math.max(...inSpans) / (w * L ** 4) / printed
    expect(ratio).toBeGreaterThan(0.99)
    expect(ratio).toBeLessThan(1.015)
  })

  // Statics: free end of length c, M = w c^2 / 2.
  it('has the moment of a free end', () => {
    const beam = { startIn: 0, endIn: 70, supportsIn: [20, 60], loads: [{ fromIn: 0, toIn: 70, lbPerIn: 3 }] }
    expect(solveContinuousBeam(beam).supportMomentsLbIn).toEqual([-600, -150])
  })

  // Permit calculation in a city record: 5.42 x 3.25 ft modules, net -22.70 / -41.21 / -62.05 psf -> -399.54 / -725.44 /
  // -1092.25 lb a module, -61.47 / -111.61 / -168.04 plf a rail, -368.80 / -446.43 / -336.08 lb at 6 / 4 / 2 ft.
  it.each([
    [22.7, 399.54, 61.47, 6, 368.8],
    [41.21, 725.44, 111.61, 4, 446.43],
    [62.05, 1092.25, 168.04, 2, 336.08],
  ])('follows the rail statics for %s psf', (psf, moduleLb, plf, spanFt, reactionLb) => {
    expect(Math.abs((psf * (65 / 12) * 3.25) / moduleLb - 1)).toBeLessThan(0.0005)
    expect(Math.abs(moduleLb / 3.25 / 2 / plf - 1)).toBeLessThan(0.0005)
    // One full span with two half spans outside: each mount carries its plain tributary length, as printed.
    const half = (spanFt * 12) / 2
    const beam = {
      startIn: 0,
      endIn: 4 * half,
      supportsIn: [half, 3 * half],
      loads: [{ fromIn: 0, toIn: 4 * half, lbPerIn: plf / 12 }],
    }
    for (const reaction of solveContinuousBeam(beam).reactionsLb)
      expect(Math.abs(reaction / reactionLb - 1)).toBeLessThan(0.0005)
  })
})
