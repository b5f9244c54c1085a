import { describe, expect, it } from 'vitest'
import { checkRafters, highestRatio, type FramingSpec } from '../../src/structure/index.js'
import { randomFrom } from './random.js'
import { even, framingOf, inputOf, point } from './rafter-kit.js'

const SIZES = [
  ['2x12', 11.25],
  ['2x10', 9.25],
  ['2x8', 7.25],
  ['2x6', 5.5],
  ['2x4', 3.5],
] as const
/** Each weaker than the one before in every value. */
const WOODS = [
  ['Douglas Fir-Larch', 'Select Structural'],
  ['Douglas Fir-Larch', 'No. 1'],
  ['Douglas Fir-Larch', 'No. 2'],
  ['Hem-Fir', 'No. 2'],
  ['Spruce-Pine-Fir (South)', 'No. 2'],
  ['Eastern Softwoods', 'No. 2'],
  ['Eastern Softwoods', 'No. 3'],
] as const
const HEATS = [
  ['up_to_100_f', 1, 1],
  ['up_to_125_f', 0.8, 0.7],
  ['up_to_150_f', 0.7, 0.5],
] as const

interface Roof {
  readonly spanFt: number
  readonly spacingIn: number
  readonly snowPsf: number
  readonly windPsf: number
  readonly wood: number
  readonly size: number
  readonly wet: boolean
  readonly heat: number
  readonly deadPsf: number
  readonly tiltDeg: number
  readonly ceiling: boolean
  /** Share of the span at which the lower mount stands; mounts take every k-th rafter. */
  readonly at: number
  readonly k: number
}

/** Highest ratio of any check of a rafter with two mounts, and which it is. */
function used(roof: Roof): number {
  const [nominalSize, depthIn] = SIZES[roof.size] ?? SIZES[0]
  const [species, grade] = WOODS[roof.wood] ?? WOODS[0]
  const [temperature, dry, wet] = HEATS[roof.heat] ?? HEATS[0]
  const framing: FramingSpec = framingOf({
    nominalSize,
    depthIn,
    species,
    grade,
    spacingIn: roof.spacingIn,
    spansFt: [roof.spanFt],
    wet: roof.wet,
    temperature,
    temperatureFactor: roof.wet ? wet : dry,
    existingDeadPsf: roof.deadPsf,
    ceiling: { attached: roof.ceiling, finish: undefined },
    seatIn: 3,
    notchIn: 0.8,
  })
  const cos = Math.cos((roof.tiltDeg * Math.PI) / 180)
  const areaFt2 = (roof.k * roof.spacingIn * 34) / 144
  const mount = {
    deadLb: 3 * areaFt2,
    leastDeadLb: 2.4 * areaFt2,
    areaFt2,
    windDownLb: 0.7 * roof.windPsf * areaFt2,
    windUpLb: roof.windPsf * areaFt2,
  }
  const lower = 12 * roof.spanFt * roof.at
  return highestRatio(
    checkRafters(
      inputOf(framing, {
        tiltDeg: roof.tiltDeg,
        livePsf: 18,
        snow: [even('balanced', 0.7 * roof.snowPsf), even('unbalanced', roof.snowPsf)],
        points: [lower, lower + 34 * cos].map((inches) => point(inches / cos, mount)),
        coveredIn: () => [{ fromIn: lower / cos - 17, toIn: lower / cos + 51 }],
        bareWindPsf: (_, __, direction) => (direction === 'uplift' ? 1 : 0.6) * roof.windPsf,
      }),
    ).rafters,
  )
}

const HARDER: readonly (readonly [string, (roof: Roof, random: () => number) => Roof])[] = [
  ['a longer span', (r, random) => ({ ...r, spanFt: r.spanFt * (1.01 + 0.3 * random()) })],
  ['rafters farther apart', (r, random) => ({ ...r, spacingIn: r.spacingIn + 0.5 + 8 * random() })],
  ['more snow', (r, random) => ({ ...r, snowPsf: r.snowPsf + 1 + 20 * random() })],
  ['more wind', (r, random) => ({ ...r, windPsf: r.windPsf + 1 + 20 * random() })],
  ['weaker wood', (r) => ({ ...r, wood: Math.min(WOODS.length - 1, r.wood + 1) })],
  ['shallower rafters', (r) => ({ ...r, size: Math.min(SIZES.length - 1, r.size + 1) })],
  ['wet wood', (r) => ({ ...r, wet: true })],
  ['hot wood', (r) => ({ ...r, heat: Math.min(2, r.heat + 1) })],
]

/** 10,000 roofs in all. */
const ROOFS_EACH = 1250

describe('a rafter in a harder case is never used less', () => {
  it.each(HARDER)('with %s', { timeout: 120_000 }, (what, harden) => {
    const random = randomFrom(20_261_128 + what.length)
    const whole = (least: number, most: number): number => least + Math.floor(random() * (most - least + 1))
    const less: string[] = []
    let passes = 0
    for (let i = 0; i < ROOFS_EACH; i++) {
      const roof: Roof = {
        spanFt: 6 + 14 * random(),
        spacingIn: [12, 16, 19.2, 24][whole(0, 3)] ?? 16,
        snowPsf: 5 * whole(0, 12),
        windPsf: whole(10, 50),
        wood: whole(0, WOODS.length - 1),
        size: whole(0, SIZES.length - 1),
        wet: random() < 0.3,
        heat: whole(0, 2),
        deadPsf: whole(7, 20),
        tiltDeg: whole(8, 45),
        ceiling: random() < 0.5,
        at: 0.1 + 0.4 * random(),
        k: whole(1, 3),
      }
      const harder = harden(roof, random)
      // The place of the mounts stays where it was.
      const [easy, hard] = [used(roof), used({ ...harder, at: (roof.at * roof.spanFt) / harder.spanFt })]
      if (hard < easy - 1e-9) less.push(`${easy} -> ${hard}: ${JSON.stringify(roof)}`)
      if (easy <= 1) passes += 1
      expect(Number.isFinite(easy) && easy > 0).toBe(true)
    }
    expect(less).toEqual([])
    expect(passes).toBeGreaterThan(ROOFS_EACH / 20)
  })
})
