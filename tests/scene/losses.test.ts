// The light that shade takes from each module in a year, by the program and by a ray caster that shares no geometry with it.
import { describe, expect, it } from 'vitest'
import { compareLosses, worst } from './compare-losses.ts'
import { IN_SPACE, OWN_PLANES } from './houses.ts'
import { inventedHouse, type HouseParts } from './invented-house.ts'

/** Points of per cent of a module's light in a year. */
const WITHIN = 0.3

const largest = (parts: HouseParts): number => Math.abs(worst(compareLosses(inventedHouse(parts))))

describe.each([
  ['on planes of their own', OWN_PLANES],
  ['in space', IN_SPACE],
])('the loss of light, %s, is that of the ray caster', (_, houses) => {
  it.each(Object.entries(houses))('%s', (__, parts) => {
    expect(largest(parts)).toBeLessThan(WITHIN)
  })
})

/** Shadows of rows are told by their depth: points of per cent, where half as many points up the face are 0.27 off. */
const ROWS_WITHIN = 0.15

describe('rows of racks whose modules lie', () => {
  it.each(['rows of racks close together', 'rows of racks close together, 60 N', 'rows of racks close together, 64 N'])(
    '%s',
    (name) => {
      expect(largest(OWN_PLANES[name]!)).toBeLessThan(ROWS_WITHIN)
    },
  )

  it('with nothing in front lose nothing, however low the sun: the roof below is no horizon above the horizon', () => {
    const { groups, ...parts } = OWN_PLANES['rows of racks close together']!
    const house = inventedHouse({ ...parts, latitude: 64, groups: { a: { ...groups['a']!, rows: 1, moduleTilt: 15 } } })
    for (const { program, cast } of compareLosses(house)) {
      expect(cast).toBeLessThan(0.01)
      expect(program).toBeLessThan(0.01)
    }
  })
})
