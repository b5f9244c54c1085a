import { describe, expect, test } from 'vitest'
import { arrangeModules } from '../../src/roof/index.js'
import { roofProject } from './roof-project.js'

/** Modules of 3 by 5 ft fitted without gaps into a plane; 1.5 in or the stated length of rail past the frame. */
function fitted(widthFt: number, rail: 'none' | number | undefined, vent = false) {
  const outline = { shape: 'rectangle' as const, width_ft: widthFt, depth_ft: 6 }
  const obstructions = vent ? { vent: { x_ft: 6, y_ft: 0, width_ft: 1, length_ft: 6, height_ft: 1 } } : {}
  const project = roofProject(
    { outline, obstructions },
    { arrangement: { fit: { orientation: 'portrait', gap_in: 0 } } },
    rail === 'none' ? {} : { structure: { rail: 'r' } },
  )
  project.equipment.rails = { r: rail === 'none' || rail === undefined ? {} : { end_allowance_in: rail } }
  return arrangeModules(project)
}

const lefts = (result: ReturnType<typeof fitted>) => result.values.modules.map((m) => m.xFt)

describe('the fit keeps room for the end of the rail', () => {
  test('beside the first and the last module', () => {
    expect(lefts(fitted(9, 'none'))).toEqual([0, 3, 6])
    expect(lefts(fitted(9, 2))).toHaveLength(2)
    const wide = fitted(9 + 4 / 12, 2)
    expect(lefts(wide)).toHaveLength(3)
    expect(lefts(wide)[0]).toBeCloseTo(2 / 12, 9)
    expect(wide.assumptions.some((each) => each.path.endsWith('end_allowance_in'))).toBe(false)
  })

  test('beside an obstruction', () => {
    expect(lefts(fitted(13, 'none', true))).toEqual([0, 3, 7, 10])
    expect(lefts(fitted(13, 2, true))).toHaveLength(2)
  })

  test('of 1.5 in when the sheet is not stated, as an assumption', () => {
    const result = fitted(9 + 3.1 / 12, undefined)
    expect(lefts(result)[0]).toBeCloseTo(1.5 / 12, 9)
    expect(result.assumptions).toContainEqual(
      expect.objectContaining({ path: 'equipment.rails.r.end_allowance_in', value: 1.5 }),
    )
  })
})
