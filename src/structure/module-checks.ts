import type { Project } from '../project/index.js'
import type { ModulePlacement } from '../roof/index.js'
import type { CombinedLoad } from './combine-loads.js'
import type { PlaneModel } from './plane-model.js'
import type { WindKey } from './rail-patches.js'
import { windPressurePsf } from './wind-pressure.js'

export interface ModuleCheck {
  readonly name: string
  readonly demand: number
  readonly capacity: number
  readonly unit: string
  readonly ratio: number
  readonly module: string
}

/** Wind keys under a module, from a net of points. */
function keysUnder(plane: PlaneModel, module: ModulePlacement): WindKey[] {
  const keys = new Map<string, WindKey>()
  for (let i = 0; i < 6; i++) {
    for (let j = 0; j < 6; j++) {
      const key = plane.keyAt(
        module.xFt + (module.widthFt * (i + 0.5)) / 6,
        module.yFt + (module.heightFt * (j + 0.5)) / 6,
      )
      keys.set(`${key.zone}${key.exposed}`, key)
    }
  }
  return [...keys.values()]
}

/** Net ASD load at right angles to the roof at the worst point of a module, psf. */
function netPsf(
  plane: PlaneModel,
  keys: readonly WindKey[],
  areaFt2: number,
  loads: readonly CombinedLoad[],
): { upliftPsf: number; downPsf: number } {
  let [upliftPsf, downPsf] = [0, 0]
  for (const load of loads) {
    for (const key of keys) {
      const wind = load.windFactor * windPressurePsf(plane.wind, key.zone, areaFt2, key.exposed, load.direction)
      if (load.direction === 'uplift') upliftPsf = Math.max(upliftPsf, wind - load.normalPsf)
      else downPsf = Math.max(downPsf, wind + load.normalPsf)
    }
  }
  return { upliftPsf, downPsf }
}

/**
 * Modules against their maker's design loads, and clamps against theirs, with the whole part in its worst zone.
 *
 * A clamp holds a quarter of each module it touches: an end clamp one, a middle clamp two.
 */
export function moduleChecks(
  project: Project,
  plane: PlaneModel,
  loads: readonly CombinedLoad[],
  modules: readonly ModulePlacement[],
): ModuleCheck[] {
  const clamp = project.equipment.rails?.[project.structure?.rail ?? '']?.clamp
  const checks: ModuleCheck[] = []
  for (const module of modules) {
    const array = project.arrays[module.array]
    const sheet = array === undefined ? undefined : project.equipment.modules?.[array.module]
    const keys = keysUnder(plane, module)
    const area = module.widthFt * module.heightFt
    const add = (name: string, demand: number, capacity: number | undefined, unit: string): void => {
      if (capacity !== undefined)
        checks.push({ name, demand, capacity, unit, ratio: demand / capacity, module: module.id })
    }
    const whole = netPsf(plane, keys, area, loads)
    add('module uplift', whole.upliftPsf, sheet?.design_load_up_psf, 'psf')
    add('module down', whole.downPsf, sheet?.design_load_down_psf, 'psf')
    add('middle clamp uplift', (netPsf(plane, keys, area / 2, loads).upliftPsf * area) / 2, clamp?.mid_uplift_lb, 'lb')
    add('end clamp uplift', (netPsf(plane, keys, area / 4, loads).upliftPsf * area) / 4, clamp?.end_uplift_lb, 'lb')
  }
  return checks
}
