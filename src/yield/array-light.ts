import type { ArrayPlan } from './array-plan.js'
import { moduleShade, type ModuleShade } from './module-shade.js'
import { planeLight, type PlaneLight } from './plane-light.js'
import type { ModelSettings } from './settings.js'
import type { SkyLight } from './sky-light.js'
import type { SkySteps } from './sky-steps.js'

/** Light on an array: on the free plane, and what shade leaves of it for each group of modules. */
export interface ArrayLight {
  readonly plan: ArrayPlan
  readonly light: PlaneLight
  /** All light on the unshaded plane, W/m2, by step. */
  readonly planeWM2: Float64Array
  readonly groups: readonly ShadeGroup[]
}

/** Modules that see the same light. */
export interface ShadeGroup {
  /** Indices into `plan.modules`. */
  readonly members: readonly number[]
  /** Undefined where nothing shades. */
  readonly shade: ModuleShade | undefined
}

/** Works out the light on an array, shade included. */
export function arrayLight(steps: SkySteps, sky: SkyLight, plan: ArrayPlan, settings: ModelSettings): ArrayLight {
  const light = planeLight(steps, sky, plan.tiltDeg, plan.azimuthDeg, settings)
  return { plan, light, planeWM2: light.all, groups: shadeGroups(steps, plan, settings) }
}

function shadeGroups(steps: SkySteps, plan: ArrayPlan, settings: ModelSettings): ShadeGroup[] {
  const { scene, modules } = plan
  const all = modules.map((_, index) => index)
  const isFree = scene.horizon.length === 0 && scene.obstacles.length === 0 && scene.boxes.length === 0
  if (isFree && modules.every((module) => module.shaded.neighbours.length === 0)) {
    return [{ members: all, shade: undefined }]
  }
  const first = modules[0]
  if (first !== undefined && modules.every((module) => module.shaded.rectangle === undefined)) {
    return [{ members: all, shade: moduleShade(steps, scene, first.shaded, settings.diffuseShading) }]
  }
  return modules.map((module, index) => ({
    members: [index],
    shade: moduleShade(steps, scene, module.shaded, settings.diffuseShading),
  }))
}
