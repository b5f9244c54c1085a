import type { ArrayPlan } from './array-plan.js'
import { planeLight, type PlaneLight } from './plane-light.js'
import type { ModelSettings } from './settings.js'
import { moduleShade, type ModuleShade, type ModuleView } from './shade/index.js'
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
  const { views, modules } = plan
  const all = modules.map((_, index) => index)
  if (views.every(isFree)) return [{ members: all, shade: undefined }]
  const [only] = views
  if (only !== undefined && views.length < modules.length) {
    return [{ members: all, shade: moduleShade(steps, only, settings.diffuseShading) }]
  }
  const free = all.filter((index) => isFree(views[index]!))
  const shaded = all.filter((index) => !isFree(views[index]!))
  return [
    ...(free.length === 0 ? [] : [{ members: free, shade: undefined }]),
    ...shaded.map((index) => ({
      members: [index],
      shade: moduleShade(steps, views[index]!, settings.diffuseShading),
    })),
  ]
}

function isFree({ opaque, porous, horizon }: ModuleView): boolean {
  return opaque.length === 0 && porous.length === 0 && horizon.length === 0
}
