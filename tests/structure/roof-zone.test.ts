import * as fc from '../fast-check.js'
import { describe, expect, it } from 'vitest'
import {
  edgeStripWidthFt,
  exposedStrips,
  LARGEST_AREA_FT2,
  windPressurePsf,
  zoneAt,
  zoneNames,
  type ExposureInput,
} from '../../src/structure/index.js'
import type { LoadEdition } from '../../src/tables/asce7/index.js'
import { block, hipPlane, rectangle } from './demo-house.js'

describe('edge strip width', () => {
  // Smaller of 10 % of the least width and 0.4 h, at least 4 % of it and 3 ft.
  it.each([
    [28, 15, 3],
    [40, 15, 4],
    [60, 12, 4.8],
    [100, 8, 4],
    [20, 30, 3],
  ])('width %s ft, height %s ft: %s ft', (width, height, a) =>
    expect(edgeStripWidthFt(width, height)).toBeCloseTo(a, 9),
  )
})

describe('wind zones', () => {
  // Slope 60 degrees would halve depths in plan; 36.87 has a cosine of 0.8.
  const gable = rectangle('south', 40, 20, 36.87)
  const at = (edition: LoadEdition, xFt: number, yFt: number, roofKind: 'gable' | 'hip' = 'gable', plane = gable) =>
    zoneAt(plane, { xFt, yFt }, 4, { edition, roofKind })

  it('names the strips of a 7-16 gable', () => {
    expect(at('ASCE 7-16', 20, 10)).toBe('1')
    expect(at('ASCE 7-16', 20, 2)).toBe('2e')
    expect(at('ASCE 7-16', 2, 10)).toBe('2n')
    expect(at('ASCE 7-16', 20, 18)).toBe('2r')
    expect(at('ASCE 7-16', 2, 2)).toBe('3e')
    expect(at('ASCE 7-16', 38, 18)).toBe('3r')
  })

  it('measures the strips in plan', () => {
    // 4 ft in plan is 5 ft along a slope with cosine 0.8.
    expect(at('ASCE 7-16', 20, 4.99)).toBe('2e')
    expect(at('ASCE 7-16', 20, 5.01)).toBe('1')
    expect(at('ASCE 7-16', 4.01, 10)).toBe('1')
  })

  it('has three zones in 7-10 and 7-22', () => {
    for (const [x, y, ten, twentyTwo] of [
      [20, 10, '1', '1'],
      [20, 2, '2', '1'],
      [2, 10, '2', '2'],
      [20, 18, '2', '2'],
      [2, 2, '3', '3'],
      [2, 18, '3', '3'],
    ] as const) {
      expect(at('ASCE 7-10', x, y)).toBe(ten)
      expect(at('ASCE 7-22', x, y)).toBe(twentyTwo)
    }
    // Up to 27 degrees an eave corner of a 7-22 gable is only a rake strip.
    expect(at('ASCE 7-22', 2, 2, 'gable', rectangle('south', 40, 20, 20))).toBe('2')
  })

  it('follows hips', () => {
    const hip = hipPlane('south', 40, 20, 10, 20)
    const on = (edition: LoadEdition, x: number, y: number) => at(edition, x, y, 'hip', hip)
    expect(on('ASCE 7-16', 20, 10)).toBe('1')
    expect(on('ASCE 7-16', 20, 1)).toBe('2e')
    expect(on('ASCE 7-16', 8.5, 10)).toBe('2r')
    expect(on('ASCE 7-16', 1, 0.5)).toBe('3')
    expect(on('ASCE 7-16', 20, 19)).toBe('2r')
    expect(on('ASCE 7-22', 20, 1)).toBe('3')
    expect(on('ASCE 7-22', 8.5, 10)).toBe('2')
    expect(on('ASCE 7-10', 1, 0.5)).toBe('3')
  })

  it('mirrors, and every point has a zone of its edition', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 40, noNaN: true }),
        fc.double({ min: 0, max: 20, noNaN: true }),
        fc.constantFrom<LoadEdition>('ASCE 7-10', 'ASCE 7-16', 'ASCE 7-22'),
        (x, y, edition) => {
          const zone = at(edition, x, y)
          expect(zoneNames(edition, 'gable')).toContain(zone)
          expect(at(edition, 40 - x, y)).toBe(zone)
        },
      ),
      { numRuns: 200 },
    )
  })
})

describe('wind pressure', () => {
  const cases = (['ASCE 7-10', 'ASCE 7-16', 'ASCE 7-22'] as const).flatMap((edition) =>
    (['gable', 'hip'] as const).flatMap((roofKind) =>
      [10, 18, 24, 27, 33, 45].flatMap((tiltDeg) =>
        edition === 'ASCE 7-10' && roofKind === 'hip' && tiltDeg > 27
          ? []
          : zoneNames(edition, roofKind).map((zone) => ({
              shape: { edition, roofKind, tiltDeg, heightOverWidth: 0.6 },
              zone,
            })),
      ),
    ),
  )

  it.each(cases)(
    '$shape.edition $shape.roofKind $shape.tiltDeg deg zone $zone: a larger area is never worse by the foot, and never lighter in all',
    ({ shape, zone }) => {
      const wind = { shape, velocityPressurePsf: 60 }
      for (const direction of ['uplift', 'down'] as const) {
        let [pressure, force] = [Infinity, 0]
        for (let area = 0.5; area < 150; area *= 1.07) {
          const p = windPressurePsf(wind, zone, area, false, direction)
          expect(p).toBeLessThanOrEqual(pressure + 1e-9)
          expect(p * area).toBeGreaterThanOrEqual(force - 1e-6)
          expect(p).toBeGreaterThanOrEqual(16)
          ;[pressure, force] = [p, p * area]
        }
      }
      expect(LARGEST_AREA_FT2).toBeGreaterThan(20)
    },
  )

  it('is at least 16 psf', () => {
    const shape = { edition: 'ASCE 7-16', roofKind: 'gable', tiltDeg: 18, heightOverWidth: 0.5 } as const
    expect(windPressurePsf({ shape, velocityPressurePsf: 5 }, '1', 10, false, 'uplift')).toBe(16)
  })

  it('refuses roofs without a figure', () => {
    const shape = { edition: 'ASCE 7-10', roofKind: 'hip', tiltDeg: 33, heightOverWidth: 0.5 } as const
    expect(() => windPressurePsf({ shape, velocityPressurePsf: 20 }, '1', 10, false, 'uplift')).toThrow(
      /no pressure coefficients/,
    )
  })
})

describe('exposed array edges', () => {
  const input: ExposureInput = {
    edition: 'ASCE 7-16',
    meanRoofHeightFt: 20,
    topHeightFt: 0.45,
    moduleLengthFt: 5.65,
    ridgeIsRoofEdge: true,
  }
  const sides = (strips: ReturnType<typeof exposedStrips>): string[] => [...new Set(strips.map((s) => s.side))].sort()

  it('are those farther than half the height from the roof edge', () => {
    const plane = rectangle('south', 60, 18, 20)
    // Left edge 8 ft, right edge 60 - 8 - 22.5 = 29.5 ft, eave 2 ft, ridge 18 - 2 - 5.65 = 10.35 ft away; half of 20 ft is 10 ft.
    expect(sides(exposedStrips(plane, block(1, 6, 8, 2), input))).toEqual(['right', 'upper'])
    expect(sides(exposedStrips(plane, block(1, 6, 8, 2), { ...input, meanRoofHeightFt: 22 }))).toEqual(['right'])
    expect(sides(exposedStrips(plane, block(1, 6, 18, 3), { ...input, meanRoofHeightFt: 60 }))).toEqual([])
  })

  it('look beyond the ridge unless it is declared a roof edge', () => {
    const plane = rectangle('south', 60, 18, 20)
    const tall = { ...input, meanRoofHeightFt: 60 }
    expect(sides(exposedStrips(plane, block(1, 6, 18, 3), { ...tall, ridgeIsRoofEdge: false }))).toEqual(['upper'])
  })

  it('are not those with a neighbour near enough', () => {
    const plane = rectangle('south', 90, 18, 20)
    const row = block(1, 3, 30, 2)
    const beside = (gapFt: number) => block(1, 3, 30 + 3 * 3.76 + gapFt, 2).map((m) => ({ ...m, id: `${m.id}b` }))
    const rightOf = (gapFt: number) =>
      exposedStrips(plane, [...row, ...beside(gapFt)], input).filter((s) => s.side === 'right').length
    // One right edge at the far end is always exposed; the gap opens a second one beyond 4 ft.
    expect(rightOf(3.9)).toBe(1)
    expect(rightOf(4.2)).toBe(2)
  })

  it('reach 1.5 module lengths inwards in 7-16 and 2 h2 in 7-22', () => {
    const plane = rectangle('south', 60, 18, 20)
    const right = (edition: 'ASCE 7-16' | 'ASCE 7-22') =>
      exposedStrips(plane, block(1, 6, 8, 2), { ...input, edition }).find((s) => s.side === 'right')
    const depth = (edition: 'ASCE 7-16' | 'ASCE 7-22') => (right(edition)?.toXFt ?? 0) - (right(edition)?.fromXFt ?? 0)
    expect(depth('ASCE 7-16')).toBeCloseTo(1.5 * 5.65, 9)
    expect(depth('ASCE 7-22')).toBeCloseTo(2 * 0.45, 9)
  })
})
