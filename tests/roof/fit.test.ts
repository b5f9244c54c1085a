import * as fc from '../fast-check.js'
import { describe, expect, test } from 'vitest'
import { arrangeModules, boxCorners, containsPoint, distanceBetweenFt, type Box } from '../../src/roof/index.js'
import type { FitRequest, Outline, Project } from '../../src/project/index.js'
import { roofProject } from './roof-project.js'

type Fixed = Partial<FitRequest>

function fitted(
  outline: Outline,
  boxes: readonly Box[] = [],
  request: Fixed = {},
  more: Partial<Project> = {},
  edgeIn = 0,
) {
  const obstructions = Object.fromEntries(
    boxes.map((box, index) => [
      `o${index}`,
      { x_ft: box.xFt, y_ft: box.yFt, width_ft: box.widthFt, length_ft: box.heightFt, height_ft: 1 },
    ]),
  )
  const fit: FitRequest = { orientation: 'portrait', gap_in: 0, ...request }
  const project = roofProject({ outline, obstructions, edge_clearance_in: edgeIn }, { arrangement: { fit } }, more)
  return arrangeModules(project)
}

const count = (...args: Parameters<typeof fitted>) => fitted(...args).values.modules.length
const rectangle = (width_ft: number, depth_ft: number): Outline => ({ shape: 'rectangle', width_ft, depth_ft })

/** Largest gain from things of a size that do not overlap on a line, by trying every whole place. */
function most(from: number, stop: number, size: number, gain: (at: number) => number): number {
  const best: number[] = Array.from({ length: stop + 1 }, () => 0)
  for (let at = stop - size; at >= from; at--) {
    best[at] = Math.max(best[at + 1] ?? 0, gain(at) === 0 ? 0 : gain(at) + (best[at + size] ?? 0))
  }
  return best[from] ?? 0
}

/** Tries every whole-foot height for every row, and every whole-foot x in a row. */
function bruteForce(width: number, depth: number, boxes: readonly Box[], w: number, h: number): number {
  const free = (x: number, y: number) =>
    boxes.every((b) => x + w <= b.xFt || x >= b.xFt + b.widthFt || y + h <= b.yFt || y >= b.yFt + b.heightFt)
  return most(0, depth, h, (y) => most(0, width, w, (x) => (free(x, y) ? 1 : 0)))
}

const wholeBox = fc.record({
  xFt: fc.integer({ min: 0, max: 16 }),
  yFt: fc.integer({ min: 0, max: 12 }),
  widthFt: fc.integer({ min: 1, max: 5 }),
  heightFt: fc.integer({ min: 1, max: 5 }),
})

const outlines: fc.Arbitrary<Outline> = fc.oneof(
  fc.record({
    shape: fc.constant('rectangle' as const),
    width_ft: fc.integer({ min: 4, max: 30 }),
    depth_ft: fc.integer({ min: 4, max: 18 }),
  }),
  fc.record({
    shape: fc.constant('hip' as const),
    width_ft: fc.integer({ min: 12, max: 30 }),
    depth_ft: fc.integer({ min: 6, max: 18 }),
    ridge_ft: fc.integer({ min: 0, max: 12 }),
  }),
  fc.record({
    shape: fc.constant('triangle' as const),
    width_ft: fc.integer({ min: 8, max: 30 }),
    depth_ft: fc.integer({ min: 6, max: 18 }),
  }),
  fc.record({
    shape: fc.constant('l_shape' as const),
    width_ft: fc.integer({ min: 14, max: 30 }),
    depth_ft: fc.integer({ min: 10, max: 18 }),
    notch_width_ft: fc.integer({ min: 2, max: 10 }),
    notch_depth_ft: fc.integer({ min: 2, max: 8 }),
    notch_at: fc.constantFrom(
      'lower_left' as const,
      'lower_right' as const,
      'upper_left' as const,
      'upper_right' as const,
    ),
  }),
)

function rowCounts(outline: Outline): number[] {
  const perRow = new Map<number, number>()
  for (const module of fitted(outline).values.modules) perRow.set(module.row, (perRow.get(module.row) ?? 0) + 1)
  return [...perRow.values()]
}

function polygon(points: readonly { xFt: number; yFt: number }[]): Outline {
  return { shape: 'polygon', corners: points.map(({ xFt, yFt }) => ({ x_ft: xFt, y_ft: yFt })) }
}

function asked(modules: number, request: Fixed = {}) {
  return arrangeModules(
    roofProject(
      { outline: rectangle(30, 16) },
      { modules, arrangement: { fit: { orientation: 'portrait', gap_in: 0, ...request } } },
    ),
  )
}

describe('largest number', () => {
  test('a plain rectangle takes whole columns times whole rows', () => {
    expect(count(rectangle(30, 16))).toBe(30)
    expect(count(rectangle(30, 16), [], { orientation: 'landscape' })).toBe(30)
    expect(count(rectangle(11, 6))).toBe(3)
    expect(count(rectangle(11, 6), [], { orientation: 'landscape' })).toBe(4)
    expect(count(rectangle(11, 6), [], { orientation: 'either' })).toBe(4)
    expect(count(rectangle(9.2, 5), [], { gap_in: 1.2 })).toBe(3)
    expect(count(rectangle(9.19, 5), [], { gap_in: 1.2 })).toBe(2)
    expect(count(rectangle(3, 10.49), [], { row_gap_in: 6 })).toBe(1)
  })

  test('rows of a trapezoid and of a triangle have counts of their own', () => {
    // Widths at the top of rows of 5 ft: 40 - 2 * 10 * 5 / 15 = 33.3, 26.7 and 20 ft, in modules of 3 ft.
    expect(rowCounts({ shape: 'hip', width_ft: 40, depth_ft: 15, ridge_ft: 20 })).toEqual([11, 8, 6])
    // 30 * (1 - 5 / 15) = 20, 10 and 0 ft.
    expect(rowCounts({ shape: 'triangle', width_ft: 30, depth_ft: 15 })).toEqual([6, 3])
  })

  test('a plane that widens upwards is filled from where rows take one more', () => {
    // Widths at heights y: 10 + 2 y. Rows from 10 down: at y 5 the width is 20 (6 modules), at 0 it is 10 (3).
    const corners = [
      [0, 0],
      [10, 0],
      [20, 10],
      [-10, 10],
    ].map(([x_ft = 0, y_ft = 0]) => ({ x_ft, y_ft }))
    expect(count({ shape: 'polygon', corners })).toBe(9)
    // With 1 ft more: the rows may lie at 0.5 and 5.5 (width 21: 7 modules) or 1 and 6 (12: 4 and 22: 7).
    const longer = [
      [0, 0],
      [10, 0],
      [21, 11],
      [-11, 11],
    ].map(([x_ft = 0, y_ft = 0]) => ({ x_ft, y_ft }))
    expect(count({ shape: 'polygon', corners: longer })).toBe(11)
  })

  test('agrees with brute force on whole-foot rectangles with obstructions', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 3, max: 20 }),
        fc.integer({ min: 3, max: 16 }),
        fc.array(wholeBox, { maxLength: 3 }),
        fc.constantFrom('portrait' as const, 'landscape' as const),
        (width, depth, boxes, orientation) => {
          const [w, h] = orientation === 'portrait' ? [3, 5] : [5, 3]
          expect(count(rectangle(width, depth), boxes, { orientation })).toBe(bruteForce(width, depth, boxes, w, h))
        },
      ),
      { numRuns: 150 },
    )
  })
})

describe('properties on all shapes', () => {
  test('every fitted module lies in the usable area and none overlap', () => {
    fc.assert(
      fc.property(
        outlines,
        fc.array(wholeBox, { maxLength: 3 }),
        fc.boolean(),
        fc.integer({ min: 0, max: 24 }),
        fc.constantFrom(undefined, 'IFC 2012' as const, 'IRC 2021' as const),
        (outline, boxes, centered, edgeIn, edition) => {
          const roof_access = { required_fire_class: 'none' as const }
          const codes = edition === undefined ? {} : { codes: { residential: edition }, roof_access }
          const { values, findings } = fitted(outline, boxes, { orientation: 'either', centered }, codes, edgeIn)
          const wrong = findings.filter(({ severity }) => severity === 'error').map(({ id }) => id)
          expect(wrong.filter((id) => id !== 'roof.fit-too-few' && id !== 'roof.pathway-missing')).toEqual([])
          const plane = values.planes['south']
          for (const module of values.modules) {
            const middle = { xFt: module.xFt + module.widthFt / 2, yFt: module.yFt + module.heightFt / 2 }
            expect(containsPoint(plane?.corners ?? [], middle)).toBe(true)
            for (const edge of plane?.edges ?? []) {
              const gapFt = distanceBetweenFt(boxCorners(module), [edge.from, edge.to])
              expect(gapFt).toBeGreaterThanOrEqual(edgeIn / 12 - 1e-6)
            }
          }
        },
      ),
      { numRuns: 120 },
    )
  })

  test('a mirrored roof takes as many', () => {
    fc.assert(
      fc.property(outlines, fc.array(wholeBox, { maxLength: 2 }), (outline, boxes) => {
        const corners = fitted(outline).values.planes['south']?.corners ?? []
        const mirrored = polygon(corners.map(({ xFt, yFt }) => ({ xFt: -xFt, yFt })).toReversed())
        const boxesMirrored = boxes.map((box) => ({ ...box, xFt: -box.xFt - box.widthFt }))
        const codes = { codes: { residential: 'IRC 2018' as const } }
        expect(count(mirrored, boxesMirrored, {}, codes)).toBe(count(polygon(corners), boxes, {}, codes))
      }),
      { numRuns: 80 },
    )
  })

  test('another obstruction never makes room', () => {
    fc.assert(
      fc.property(outlines, fc.array(wholeBox, { maxLength: 2 }), wholeBox, (outline, boxes, another) => {
        expect(count(outline, [...boxes, another])).toBeLessThanOrEqual(count(outline, boxes))
      }),
      { numRuns: 120 },
    )
  })
})

describe('what was asked', () => {
  test('the fewest rows, shared out evenly, the lower the fuller', () => {
    const rows = asked(15).values.modules.map((module) => module.row)
    expect([rows.filter((row) => row === 1).length, rows.filter((row) => row === 2).length]).toEqual([8, 7])
    expect(asked(10).values.modules.every((module) => module.row === 1)).toBe(true)
  })

  test('centred: as much room on the left as on the right', () => {
    const xs = asked(8, { centered: true }).values.modules.map((module) => module.xFt)
    expect(Math.min(...xs)).toBeCloseTo(30 - Math.max(...xs) - 3, 9)
    expect(Math.min(...asked(8).values.modules.map((module) => module.xFt))).toBe(0)
  })

  test('more than there is room for: an error with both numbers', () => {
    expect(asked(31).findings[0]).toMatchObject({
      severity: 'error',
      id: 'roof.fit-too-few',
      message: 'south asks for 31 modules, and the usable part of plane south takes 30',
      where: 'arrays.south.modules',
    })
  })

  test('arrays share a plane without lying on each other', () => {
    const base = roofProject({ outline: rectangle(30, 10) }, { modules: 4, arrangement: 'fit' })
    const south = base.arrays['south']
    if (south === undefined) throw new Error('no array')
    const { modules: _, ...rest } = south
    const block = { orientation: 'landscape' as const, rows: 1, columns: 1, x_ft: 10, y_ft: 4, gap_in: 0 }
    const placed = { ...rest, arrangement: { blocks: { main: block } } }
    const result = arrangeModules({ ...base, arrays: { south, rest, placed } })
    expect(result.findings.filter(({ severity }) => severity === 'error')).toEqual([])
    expect(result.values.modules.filter((module) => module.array === 'south')).toHaveLength(4)
    expect(result.values.modules.filter((module) => module.array === 'rest').length).toBeGreaterThan(0)
  })

  test('the same project gives the same bytes', () => {
    expect(JSON.stringify(asked(13))).toBe(JSON.stringify(asked(13)))
  })
})
