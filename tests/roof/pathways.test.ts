import { expect, test } from 'vitest'
import { roofSurface } from '../../src/roof/index.js'
import { pathwayOptions } from '../../src/roof/pathways.js'
import { Worksheet } from '../../src/worksheet/index.js'

const OUTLINE = { shape: 'rectangle', width_ft: 40, depth_ft: 16 } as const

function surface() {
  const result = roofSurface('south', { azimuth_deg: 180, tilt_deg: 25, outline: OUTLINE }, new Worksheet())
  if (result === undefined) throw new Error('no surface')
  return result
}

const within = (value: number, most: number) => Number(Math.min(Math.max(value, 0), most).toFixed(6))

/** Left end, right end and height of the ground of each way on the roof: strips reach over the edges. */
const grounds = (blockers: { xFt: number; yFt: number }[][]) =>
  pathwayOptions(surface(), blockers, 3).map(({ figures }) => {
    const xs = figures.flat().map(({ xFt }) => within(xFt, OUTLINE.width_ft))
    const ys = figures.flat().map(({ yFt }) => within(yFt, OUTLINE.depth_ft))
    return [Math.min(...xs), Math.max(...xs), Math.max(...ys) - Math.min(...ys)]
  })

// Plane geometry by hand: the strips of 3 ft that touch a side or an obstruction of a roof 40 ft wide and 16 ft deep.
test('an empty rectangle offers the ground along each side once', () => {
  expect(grounds([])).toEqual([
    [0, 3, 16],
    [37, 40, 16],
  ])
})

test('an obstruction offers the ground left and right of it beside the sides', () => {
  const box = [
    { xFt: 10, yFt: 5 },
    { xFt: 12, yFt: 5 },
    { xFt: 12, yFt: 8 },
    { xFt: 10, yFt: 8 },
  ]
  expect(grounds([box])).toEqual([
    [0, 3, 16],
    [37, 40, 16],
    [7, 10, 16],
    [12, 15, 16],
  ])
})
