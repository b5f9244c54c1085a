import type { ArrayLight } from './array-light.js'
import type { ArrayPlan } from './array-plan.js'
import type { ArrayModels } from './array-models.js'
import { cellRiseKPerWM2 } from './cell-temperature.js'
import { emptyLadder, type Ladder, SUMMED } from './ladder.js'
import { engine } from './kernel/index.js'
import { fixedLosses, moduleYear, storeArray } from './module-year.js'
import { seriesFactors } from './series-factors.js'
import type { SkySteps } from './sky-steps.js'
import type { KilowattHours } from '../values/index.js'

/** Modules of an array that see the same light. */
export interface ModuleGroup {
  /** Indices into `plan.modules`. */
  readonly members: readonly number[]
  /** DC power of one of them at the inverter's input, W, by step. */
  readonly dcW: Float64Array
  /** Light that reaches it (before the glass), kWh/m2 a year. */
  readonly receivedKwhM2: number
  /** Share of what its light is worth that shadows on some of its sections, or on its string, take beside the light. */
  readonly mismatchLost: number
}

/** DC side of an array, all modules. */
export interface ArrayDc {
  readonly plan: ArrayPlan
  readonly groups: readonly ModuleGroup[]
  /** Light on the unshaded plane, W/m2, by step. */
  readonly planeWM2: Float64Array
  /** Steps of the ladder up to `dc_cables`, kWh a year, all modules together. */
  readonly ladder: Ladder
  /** Energy after cell temperature by the other temperature model, kWh a year. */
  readonly comparedKwh: KilowattHours
}

/** DC power of every module of an array through the year. */
export function arrayDc(steps: SkySteps, lit: ArrayLight, models: ArrayModels): ArrayDc {
  const { losses } = models
  const rise = new Float64Array(steps.length)
  for (let step = 0; step < rise.length; step += 1) {
    rise[step] = cellRiseKPerWM2(models.temperature, steps.windMs[step]!)
  }
  const ladder = emptyLadder()
  let comparedKwh = 0
  const machine = engine()
  const mark = machine.mark()
  const job = storeArray(machine, { steps, lit, rise, models })
  const strings = seriesFactors(
    steps,
    lit,
    (group, watch) => {
      moduleYear(machine, job, group, watch)
    },
    models.curve,
  )
  const groups = lit.groups.map((group): ModuleGroup => {
    const factor = strings.get(group)
    const { dcW, sums } = moduleYear(machine, job, group, factor === undefined ? undefined : { factor })
    const count = group.members.length
    for (const name of SUMMED) ladder[name] += sums[name] * count
    comparedKwh += sums.compared * count
    return {
      members: group.members,
      dcW,
      receivedKwhM2: sums.shade / (models.module.pmaxW / 1000),
      mismatchLost: sums.snow > 0 ? 1 - sums.bypass / sums.snow : 0,
    }
  })
  machine.release(mark)
  let left = ladder.temperature
  for (const [name, loss] of fixedLosses(losses)) {
    left *= 1 - loss
    ladder[name] = left
  }
  return { plan: lit.plan, groups, planeWM2: lit.planeWM2, ladder, comparedKwh }
}
