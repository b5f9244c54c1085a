import type { ArrayLight, ShadeGroup } from './array-light.js'
import type { ArrayModels } from './array-models.js'
import { LAYOUT, type Engine } from './kernel/index.js'
import type { Ladder, SUMMED } from './ladder.js'
import type { SeriesWatch } from './series-factors.js'
import type { LossSettings } from './settings.js'
import type { SkySteps } from './sky-steps.js'
import type { Watts } from '../values/index.js'

/** Losses that are the same at all times, in the order of the ladder. */
export function fixedLosses(losses: LossSettings): readonly (readonly [keyof Ladder, number])[] {
  return [
    ['rating_shortfall', losses.nameplate],
    ['first_weeks_of_light', losses.lightInduced],
    ['years_in_use', losses.age],
    ['unequal_modules', losses.mismatch],
    ['contacts', losses.connections],
  ]
}

/** Energy after each loss, of one module, kWh a year. */
export type Sums = Record<(typeof SUMMED)[number] | 'compared', number>

/** An array that stands where the kernel finds it. */
interface StoredArray {
  readonly job: number
  readonly length: number
  readonly pmaxW: Watts
}

/** Puts what all modules of an array share where the kernel finds it. */
export function storeArray(
  machine: Engine,
  {
    steps,
    lit: { light, planeWM2 },
    rise,
    models,
  }: {
    readonly steps: SkySteps
    readonly lit: ArrayLight
    /** Cell above air, K per W/m2, by step. */
    readonly rise: Float64Array
    readonly models: ArrayModels
  },
): StoredArray {
  const { settings, losses, module, snow, curve } = models
  const job = machine.take(LAYOUT.DC_SIZE)
  machine.bytes.fill(0, job, job + LAYOUT.DC_SIZE)
  const address = (offset: number, value: number): void => {
    machine.ints[(job + offset) >> 2] = value
  }
  const number = (offset: number, value: number): void => {
    machine.reals[(job + offset) >> 3] = value
  }
  address(LAYOUT.DC_LENGTH, steps.length)
  address(LAYOUT.DC_MONTH, machine.storeInts(steps.month))
  address(LAYOUT.DC_SUN, machine.storeInts(steps.sunIndex))
  for (const [offset, column] of [
    [LAYOUT.DC_HOURS, steps.hours],
    [LAYOUT.DC_DRY_BULB, steps.dryBulbC],
    [LAYOUT.DC_GHI, steps.ghiWM2],
    [LAYOUT.DC_PLANE, planeWM2],
    [LAYOUT.DC_DIRECT, light.direct],
    [LAYOUT.DC_SKY, light.sky],
    [LAYOUT.DC_GROUND, light.ground],
    [LAYOUT.DC_DIRECT_IN, light.directIn],
    [LAYOUT.DC_RISE, rise],
  ] as const) {
    address(offset, machine.storeReals(column))
  }
  if (snow !== undefined) address(LAYOUT.DC_SNOW, machine.storeReals(snow))
  address(LAYOUT.DC_OUT, machine.take(8 * steps.length))
  if (curve !== undefined) {
    address(LAYOUT.DC_CURVE_DULL, machine.storeReals(curve.dull))
    address(LAYOUT.DC_CURVE_PAST, machine.storeReals(curve.past))
    address(LAYOUT.DC_CURVE_ALONG, machine.storeReals(curve.along))
  }
  address(LAYOUT.DC_RESISTIVE, settings.wiringLoss === 'resistive' ? 1 : 0)
  number(LAYOUT.DC_SKY_MODIFIER, light.skyModifier)
  number(LAYOUT.DC_GROUND_MODIFIER, light.groundModifier)
  number(LAYOUT.DC_PMAX, module.pmaxW)
  number(LAYOUT.DC_PER_K, module.powerCoefficientPerK)
  number(LAYOUT.DC_SLOPE, module.lowLightSlope)
  number(
    LAYOUT.DC_KEPT,
    fixedLosses(losses).reduce((product, [, loss]) => product * (1 - loss), 1),
  )
  number(LAYOUT.DC_WIRING, losses.dcWiring)
  number(LAYOUT.DC_COMPARED_RISE, models.comparedRiseKPerWM2)
  losses.soiling.forEach((loss, month) => {
    number(LAYOUT.DC_CLEAN + 8 * month, 1 - loss)
  })
  return { job, length: steps.length, pmaxW: module.pmaxW }
}

/** One module of a group through the year. */
export function moduleYear(
  machine: Engine,
  { job, length, pmaxW }: StoredArray,
  { shade }: ShadeGroup,
  watch: SeriesWatch | undefined,
): { readonly dcW: Float64Array; readonly sums: Sums } {
  const mark = machine.mark()
  const address = (offset: number, value: number): void => {
    machine.ints[(job + offset) >> 2] = value
  }
  address(LAYOUT.DC_SECTIONS, shade?.sections ?? 0)
  if (shade !== undefined) {
    address(LAYOUT.DC_THROUGH, machine.storeReals(shade.through))
    address(LAYOUT.DC_LIT, machine.storeReals(shade.lit))
    address(LAYOUT.DC_TIME, machine.storeReals(shade.time))
    machine.reals.set(shade.sky, (job + LAYOUT.DC_SKY_SEEN) >> 3)
    machine.reals.set(shade.ground, (job + LAYOUT.DC_GROUND_SEEN) >> 3)
  }
  const watched = watch?.aloneW === undefined ? 0 : machine.take(3 * 8 * length)
  address(LAYOUT.DC_ALONE, watched)
  address(LAYOUT.DC_FULL, watched + 8 * length)
  address(LAYOUT.DC_DULL, watched + 16 * length)
  address(LAYOUT.DC_FACTOR, watch?.factor === undefined ? 0 : machine.storeReals(watch.factor))
  machine.kernels.moduleDc(job)
  if (watch?.aloneW !== undefined) {
    watch.aloneW.set(machine.copyReals(watched, length))
    watch.fullW.set(machine.copyReals(watched + 8 * length, length))
    watch.dullW.set(machine.copyReals(watched + 16 * length, length))
  }
  const out = machine.ints[(job + LAYOUT.DC_OUT) >> 2]!
  const sums = sumsOf(machine.copyReals(job + LAYOUT.DC_SUMS, LAYOUT.DC_SUM_COUNT), pmaxW)
  const dcW = machine.copyReals(out, length)
  machine.release(mark)
  return { dcW, sums }
}

/**
 * Light counts as the energy of loss-free modules under it; W over 1000 is kW, and so is rated power per kW/m2.
 *
 * @param filled Sums of light after each loss, Wh/m2, and of power, Wh, as the kernel fills them.
 */
function sumsOf(filled: Float64Array, pmaxW: Watts): Sums {
  const light = (index: number): number => filled[index]! * (pmaxW / 1e6)
  const power = (index: number): number => filled[index]! / 1000
  return {
    horizontal: light(0),
    plane: light(1),
    shade: light(2),
    reflection: light(3),
    dirt: light(4),
    snow: light(5),
    bypass: power(6),
    low_light: power(7),
    temperature: power(8),
    dc_cables: power(9),
    compared: power(10),
  }
}
