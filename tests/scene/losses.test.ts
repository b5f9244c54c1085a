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
