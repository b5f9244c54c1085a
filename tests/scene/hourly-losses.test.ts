// The comparison with the ray caster under the hours of a weather file, where every hour has a sun of its own.
import { readFileSync } from 'node:fs'
import { describe, expect, it } from 'vitest'
import type { Project } from '../../src/project/index.js'
import { runYield } from '../../src/yield/index.js'
import { compareLosses, worst } from './compare-losses.ts'
import { OWN_PLANES, IN_SPACE } from './houses.ts'
import { inventedHouse } from './invented-house.ts'
import { USUAL } from './ray-caster.ts'

const EPW = new URL('../../examples/weather/USA_WA_Seattle-Tacoma.Intl.AP.727930_TMY3.epw', import.meta.url)

describe('under the hours of a weather file', () => {
  const text = readFileSync(EPW, 'utf8')
  it.each([
    ['chimney below it, 30 deg', OWN_PLANES['chimney below it, 30 deg']!],
    ['far crown with leaves', OWN_PLANES['far crown with leaves']!],
    ['low plane below a higher one', IN_SPACE['low plane below a higher one']!],
  ])('the loss of light is that of the ray caster: %s', (_, { groups, ...parts }) => {
    const house = inventedHouse({ ...parts, groups: { a: { ...groups['a']!, rows: 1 } } })
    const site = { latitude_deg: 47.45, longitude_deg: -122.31, ...parts.site, climate: { epw: 'file' } }
    const project = { ...house, site: { ...house.site, ...site } }
    const { climate, steps } = runYield(project as unknown as Project, new Map([['file', text]]))
    const compared = compareLosses(project, { climate, steps }, { ...USUAL, sunMinutes: 15 })
    expect(Math.abs(worst(compared))).toBeLessThan(0.3)
  })
})
