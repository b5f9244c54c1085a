import { describe, expect, it } from 'vitest'
import { compareLosses, worst } from './compare-losses.ts'
import { IN_SPACE, OWN_PLANES } from './houses.ts'
import { inventedHouse } from './invented-house.ts'

/** Points of per cent of a module's light in a year. */
const WITHIN = 0.3

describe.each([
  ['on planes of their own', OWN_PLANES],
  ['in space', IN_SPACE],
])('loss of light by the program and by the ray caster, %s', (_, houses) => {
  it.each(Object.entries(houses))('%s', (name, parts) => {
    const compared = compareLosses(inventedHouse(parts))
    process.stderr.write(
      `${name.padEnd(40)} worst ${worst(compared).toFixed(3)}  ${compared.map((c) => `${c.program.toFixed(2)}/${c.cast.toFixed(2)}`).join(' ')}\n`,
    )
    expect(Math.abs(worst(compared))).toBeLessThan(WITHIN)
  })
})
