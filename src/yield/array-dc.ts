import type { ArrayPlan } from './array-plan.js'
import { cellRiseKPerWM2, type CellTemperatureModel } from './cell-temperature.js'
import { lowLightFactor, modulePowerW, type ModuleModel } from './module-model.js'
import { moduleShade, type ModuleShade } from './module-shade.js'
import { emptyLadder, type Ladder } from './ladder.js'
import { planeLight } from './plane-light.js'
import type { LossSettings, ModelSettings } from './settings.js'
import type { SkySteps } from './sky-steps.js'

/** Modules of an array that see the same light. */
export interface ModuleGroup {
  /** Indices into `plan.modules`. */
  readonly members: readonly number[]
  /** DC power of one of them at the inverter's input, W, by step. */
  readonly dcW: Float64Array
  /** Light that reaches it (before the glass), kWh/m2 a year. */
  readonly receivedKwhM2: number
}

/** DC side of an array, all modules. */
export interface ArrayDc {
  readonly plan: ArrayPlan
  readonly groups: readonly ModuleGroup[]
  /** Light on the unshaded plane, W/m2, by step. */
  readonly planeWM2: Float64Array
  /** Steps of the ladder up to `dc_wiring`, kWh a year, all modules together. */
  readonly ladder: Ladder
}

/** How one array is computed. */
export interface ArrayModels {
  readonly settings: ModelSettings
  readonly losses: LossSettings
  readonly module: ModuleModel
  readonly temperature: CellTemperatureModel
  /** Share of light that snow takes, by step; undefined without snow. */
  readonly snow: Float64Array | undefined
}

/**
 * DC power of every module of an array through the year.
 *
 * Where a box on the roof shades a module, the module gives the larger of two: its lit bypass sections at full current,
 * or all sections at the current that diffuse light alone drives.
 */
export function arrayDc(steps: SkySteps, plan: ArrayPlan, models: ArrayModels): ArrayDc {
  const { settings, losses, module, temperature } = models
  const light = planeLight(steps, plan.tiltDeg, plan.azimuthDeg, settings)
  const length = steps.length
  const planeWM2 = new Float64Array(length)
  const rise = new Float64Array(length)
  for (let step = 0; step < length; step += 1) {
    planeWM2[step] = (light.direct[step] as number) + (light.sky[step] as number) + (light.ground[step] as number)
    rise[step] = cellRiseKPerWM2(temperature, steps.windMs[step] as number)
  }
  const fixed = [losses.nameplate, losses.lightInduced, losses.age, losses.mismatch, losses.connections]
  const kept = fixed.reduce((product, loss) => product * (1 - loss), 1)
  const ladder = emptyLadder()
  const groups = shadeGroups(steps, plan, settings).map(({ members, shade }): ModuleGroup => {
    const count = members.length
    const dcW = new Float64Array(length)
    let received = 0
    for (let step = 0; step < length; step += 1) {
      const month = steps.month[step] as number
      const sun = steps.sunIndex[step] as number
      const far = shade === undefined ? 1 : (shade.far[sun] as number)
      const lit = shade === undefined ? 1 : (shade.nearLit[sun] as number)
      const sky = shade === undefined ? 1 : (shade.sky[month] as number)
      const sections = shade === undefined ? 1 : (shade.sectionsLit[sun] as number)
      const diffuse = (light.sky[step] as number) * sky + (light.ground[step] as number)
      const arrives = (light.direct[step] as number) * far * lit + diffuse
      const diffuseIn = (light.skyIn[step] as number) * sky + (light.groundIn[step] as number)
      const directIn = (light.directIn[step] as number) * far
      const clean = 1 - (losses.soiling[month] as number)
      const free = models.snow === undefined ? 1 : 1 - (models.snow[step] as number)
      const works = (directIn * lit + diffuseIn) * clean * free
      const cellC = (steps.dryBulbC[step] as number) + arrives * (rise[step] as number)
      let power = modulePowerW(module, works, cellC)
      if (sections < 1) {
        const sunny = modulePowerW(module, (directIn + diffuseIn) * clean * free, cellC) * sections
        const dull = modulePowerW(module, diffuseIn * clean * free, cellC)
        power = Math.min(power, Math.max(sunny, dull))
      }
      const rated = module.pmaxW
      const beforeWiring = power * kept
      const wiring = settings.wiringLoss === 'resistive' ? losses.dcWiring * (beforeWiring / rated) : losses.dcWiring
      const out = beforeWiring * (1 - wiring)
      dcW[step] = out
      const hours = steps.hours[step] as number
      received += arrives * hours
      const kwh = (rated * hours * count) / 1e6
      ladder.horizontal += (steps.ghiWM2[step] as number) * kwh
      ladder.plane += (planeWM2[step] as number) * kwh
      ladder.shade += arrives * kwh
      const through = directIn * lit + diffuseIn
      ladder.reflection += through * kwh
      ladder.soiling += through * clean * kwh
      ladder.snow += works * kwh
      const heat = 1 + module.powerCoefficientPerK * (cellC - 25)
      const dim = works > 0 ? lowLightFactor(module, works) : 1
      const ideal = heat > 0 && dim > 0 ? power / rated / (heat * dim) : 0
      ladder.bypass += ideal * 1000 * kwh
      ladder.low_light += ideal * 1000 * dim * kwh
      ladder.temperature += (power / rated) * 1000 * kwh
      ladder.dc_wiring += (out * hours * count) / 1000
    }
    return { members, dcW, receivedKwhM2: received / 1000 }
  })
  let left = ladder.temperature
  const names = ['nameplate', 'light_induced', 'age', 'mismatch', 'connections'] as const
  names.forEach((name, index) => {
    left *= 1 - (fixed[index] as number)
    ladder[name] = left
  })
  return { plan, groups, planeWM2, ladder }
}

/** Groups the modules that see the same light; without anything that shades there is one group. */
function shadeGroups(
  steps: SkySteps,
  plan: ArrayPlan,
  settings: ModelSettings,
): { readonly members: readonly number[]; readonly shade: ModuleShade | undefined }[] {
  const { scene } = plan
  const all = plan.modules.map((_, index) => index)
  if (scene.horizon.length === 0 && scene.obstacles.length === 0 && scene.boxes.length === 0) {
    return [{ members: all, shade: undefined }]
  }
  if (plan.modules.every((module) => module.shaded.rectangle === undefined)) {
    const first = plan.modules[0]
    if (first === undefined) return []
    return [{ members: all, shade: moduleShade(steps, scene, first.shaded, settings.diffuseShading) }]
  }
  return plan.modules.map((module, index) => ({
    members: [index],
    shade: moduleShade(steps, scene, module.shaded, settings.diffuseShading),
  }))
}
