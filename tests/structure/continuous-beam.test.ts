import * as fc from '../fast-check.js'
import { describe, expect, it } from 'vitest'
import { beamExtremes, solveContinuousBeam, type BeamModel } from '../../src/structure/index.js'
import { finiteElementBeam } from './beam-independent.js'

const length = fc.integer({ min: 8, max: 96 })
/** Uneven spans, uneven free ends, and patches of load in any place and of any sign. */
const beams: fc.Arbitrary<BeamModel> = fc
  .record({
    left: fc.integer({ min: 0, max: 30 }),
    right: fc.integer({ min: 0, max: 30 }),
    spans: fc.array(length, { minLength: 1, maxLength: 6 }),
    patches: fc.array(
      fc.tuple(fc.integer({ min: 0, max: 90 }), fc.integer({ min: 1, max: 90 }), fc.integer({ min: -20, max: 60 })),
      {
        minLength: 1,
        maxLength: 5,
      },
    ),
  })
  .map(({ left, right, spans, patches }) => {
    const supports = spans.reduce<number[]>((xs, L) => [...xs, (xs.at(-1) ?? 0) + L], [0])
    const [startIn, endIn] = [-left, (supports.at(-1) ?? 0) + right]
    const loads = patches.map(([from, size, lbPerIn]) => {
      const fromIn = startIn + ((endIn - startIn) * from) / 100
      return { fromIn, toIn: Math.min(endIn, fromIn + ((endIn - startIn) * size) / 100), lbPerIn: lbPerIn / 10 }
    })
    return { startIn, endIn, supportsIn: supports, loads }
  })

const total = (beam: BeamModel): number => beam.loads.reduce((sum, l) => sum + l.lbPerIn * (l.toIn - l.fromIn), 0)
const size = (beam: BeamModel): number =>
  beam.loads.reduce((sum, l) => sum + Math.abs(l.lbPerIn) * (l.toIn - l.fromIn), 1)

describe('continuous beam', () => {
  it('agrees with a finite element solution over uneven spans', () => {
    fc.assert(
      fc.property(beams, (beam) => {
        const ours = solveContinuousBeam(beam)
        const theirs = finiteElementBeam(beam)
        for (const [i, reaction] of ours.reactionsLb.entries()) {
          expect(Math.abs(reaction - (theirs.reactionsLb[i] ?? Number.NaN))).toBeLessThan(1e-6 * size(beam))
        }
      }),
      { numRuns: 150 },
    )
  })

  it('deflects like the finite element solution at the free ends', () => {
    fc.assert(
      fc.property(beams, (beam) => {
        // The free end bends most at its tip unless the load changes sign along it.
        fc.pre(beam.startIn < 0 && beam.loads.every((l) => l.lbPerIn >= 0))
        const shape = beamExtremes(beam, solveContinuousBeam(beam))
        const end = Math.abs(finiteElementBeam(beam).deflectionAt(beam.startIn))
        expect(shape.deflections[0]?.timesStiffness).toBeGreaterThanOrEqual(end * (1 - 1e-6) - 1e-3)
        expect(shape.deflections[0]?.lengthIn).toBe(-2 * beam.startIn)
      }),
      { numRuns: 80 },
    )
  })

  it('deflects in its spans like the finite element solution', () => {
    fc.assert(
      fc.property(beams, (beam) => {
        const shape = beamExtremes(beam, solveContinuousBeam(beam))
        const bounds = beam.supportsIn.slice(1).map((to, i) => [beam.supportsIn[i] ?? 0, to] as const)
        // Loads of nothing put nodes of the finite element mesh at twelfths of the spans.
        const places = bounds.map(([a, b]) => Array.from({ length: 11 }, (_, k) => a + ((b - a) * (k + 1)) / 12))
        const nodes = places.flat().map((x) => ({ fromIn: x, toIn: beam.endIn, lbPerIn: 0 }))
        const theirs = finiteElementBeam({ ...beam, loads: [...beam.loads, ...nodes] })
        const ours = shape.deflections.slice(beam.startIn < 0 ? 1 : 0)
        for (const [i, xs] of places.entries()) {
          const peak = Math.max(...xs.map((x) => Math.abs(theirs.deflectionAt(x))))
          const L = (bounds[i]?.[1] ?? 0) - (bounds[i]?.[0] ?? 0)
          // Ours is read at 24ths of the span, up to half a step off the peak: well under 1 %.
          const slack = 1e-2 * peak + 1e-7 * size(beam) * L ** 3
          expect(ours[i]?.timesStiffness ?? 0).toBeGreaterThanOrEqual(peak - slack)
          // Between two nodes the true peak is at most a little higher.
          expect(ours[i]?.timesStiffness ?? 0).toBeLessThanOrEqual(
            1.08 * peak + slack + (1e-3 * size(beam) * L ** 3) / 48,
          )
        }
      }),
      { numRuns: 15 },
    )
  })

  it('holds the load and balances moments', () => {
    fc.assert(
      fc.property(beams, (beam) => {
        const { reactionsLb } = solveContinuousBeam(beam)
        const sum = reactionsLb.reduce((a, b) => a + b, 0)
        expect(Math.abs(sum - total(beam))).toBeLessThan(1e-9 * size(beam))
        const moment = beam.supportsIn.reduce((m, x, i) => m + x * (reactionsLb[i] ?? 0), 0)
        const load = beam.loads.reduce((m, l) => m + (l.lbPerIn * (l.toIn ** 2 - l.fromIn ** 2)) / 2, 0)
        expect(Math.abs(moment - load)).toBeLessThan(1e-7 * size(beam) * beam.endIn)
      }),
      { numRuns: 200 },
    )
  })

  it('mirrors', () => {
    fc.assert(
      fc.property(beams, (beam) => {
        const mirrored: BeamModel = {
          startIn: -beam.endIn,
          endIn: -beam.startIn,
          supportsIn: beam.supportsIn.map((x) => -x).toReversed(),
          loads: beam.loads.map((l) => ({ fromIn: -l.toIn, toIn: -l.fromIn, lbPerIn: l.lbPerIn })),
        }
        const [a, b] = [solveContinuousBeam(beam).reactionsLb, solveContinuousBeam(mirrored).reactionsLb.toReversed()]
        for (const [i, reaction] of a.entries())
          expect(Math.abs(reaction - (b[i] ?? 0))).toBeLessThan(1e-8 * size(beam))
        const [p, q] = [beam, mirrored].map((m) => beamExtremes(m, solveContinuousBeam(m)))
        expect(p?.momentLbIn).toBeCloseTo(q?.momentLbIn ?? 0, 4)
        expect(p?.shearLb).toBeCloseTo(q?.shearLb ?? 0, 6)
      }),
      { numRuns: 60 },
    )
  })

  it('scales with the load', () => {
    fc.assert(
      fc.property(beams, fc.integer({ min: 2, max: 9 }), (beam, factor) => {
        const more = { ...beam, loads: beam.loads.map((l) => ({ ...l, lbPerIn: l.lbPerIn * factor })) }
        const [a, b] = [beam, more].map((m) => beamExtremes(m, solveContinuousBeam(m)))
        expect((b?.momentLbIn ?? 0) / factor).toBeCloseTo(a?.momentLbIn ?? 0, 5)
      }),
      { numRuns: 40 },
    )
  })

  it('refuses a beam that cannot stand', () => {
    const loads = [{ fromIn: 0, toIn: 10, lbPerIn: 1 }]
    expect(() => solveContinuousBeam({ startIn: 0, endIn: 10, supportsIn: [5], loads })).toThrow(/two supports/)
    expect(() => solveContinuousBeam({ startIn: 0, endIn: 10, supportsIn: [5, 5], loads })).toThrow(/ascend/)
    expect(() => solveContinuousBeam({ startIn: 0, endIn: 10, supportsIn: [-1, 5], loads })).toThrow(/off the beam/)
  })
})
