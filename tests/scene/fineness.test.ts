// How far the ray caster itself can be trusted: a finer look moves its losses by little, whatever hides the light.
import { describe, expect, it } from 'vitest'
import { placeModules } from '../../src/roof/index.js'
import type { Project } from '../../src/project/index.js'
import { Worksheet } from '../../src/worksheet/index.js'
import { lightOf, skyOver } from './compare-losses.ts'
import { IN_SPACE, OWN_PLANES } from './houses.ts'
import { inventedHouse, THICKNESS_IN } from './invented-house.ts'
import { castHouse, lightLossPct, USUAL, type Fineness } from './ray-caster.ts'

const FINER: Fineness = { points: 30, directions: 16000, sunMinutes: 3 }

describe('many times the points, directions and positions of the sun', () => {
  it.each([
    ['chimney below it, 30 deg', OWN_PLANES['chimney below it, 30 deg']!],
    ['parapet on a flat roof', OWN_PLANES['parapet on a flat roof']!],
    ['low plane beside a high house', IN_SPACE['low plane beside a high house']!],
    ['round tree and a house to the south', IN_SPACE['round tree and a house to the south']!],
  ])('move no loss by more than 0.15 points: %s', (_, parts) => {
    const house = inventedHouse(parts)
    const { steps } = skyOver(house.site.latitude_deg)
    const modules = placeModules(house as unknown as Project, new Worksheet()).slice(0, 1)
    const light = lightOf(house, 'a', steps)
    const losses = (fineness: Fineness): number[] =>
      castHouse(house, modules, THICKNESS_IN, fineness).map((module) => lightLossPct(module, light))
    const finer = losses(FINER)
    losses(USUAL).forEach((loss, at) => expect(Math.abs(loss - finer[at]!)).toBeLessThan(0.15))
  })
})
