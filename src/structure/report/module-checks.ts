import type { RoofProject } from '../../project/index.js'
import type { ModulePlacement } from '../../roof/index.js'
import { own, type PoundsPerSquareFoot, type SquareFeet } from '../../values/index.js'
import type { CombinedLoad } from '../loads/index.js'
import type { PlaneModel } from '../planes/index.js'
import type { WindKey } from '../rails/index.js'
import { windPressurePsf } from '../wind/index.js'

export interface ModuleCheck {
  readonly name: string
  readonly demand: number
  readonly capacity: number
  readonly unit: string
  readonly ratio: number
  readonly module: string
}

/** Points along each side of a module at which the wind zone is read; even, so that quarters share none. */
const NET = 6

/** Wind keys of the four quarters of a module. */
function quartersOf(plane: PlaneModel, module: ModulePlacement): WindKey[][] {
  const quarters: WindKey[][] = [[], [], [], []]
  for (let i = 0; i < NET; i++) {
    for (let j = 0; j < NET; j++) {
      const x = module.xFt + (module.widthFt * (i + 0.5)) / NET
      const y = module.yFt + (module.heightFt * (j + 0.5)) / NET
      quarters[(i < NET / 2 ? 0 : 1) + (j < NET / 2 ? 0 : 2)]?.push(plane.keyAt(x, y))
    }
  }
  return quarters
}

/** Net ASD load at right angles to the roof on a part, psf: wind of each zone by its share of the part. */
function netPsf(
  plane: PlaneModel,
  keys: readonly WindKey[],
  areaFt2: SquareFeet,
  loads: readonly CombinedLoad[],
): { upliftPsf: PoundsPerSquareFoot; downPsf: PoundsPerSquareFoot } {
  const windOf = (direction: 'uplift' | 'down'): number => {
    // Equal keys are one object, and most places of a module have the same.
    const known = new Map<WindKey, number>()
    let sum = 0
    for (const key of keys) {
      const psf = known.get(key) ?? windPressurePsf(plane.wind, key.zone, areaFt2, key.exposed, direction)
      known.set(key, psf)
      sum += psf
    }
    return sum / keys.length
  }
  const wind = { uplift: windOf('uplift'), down: windOf('down') }
  let [upliftPsf, downPsf] = [0, 0]
  for (const load of loads) {
    const pressure = load.windFactor * wind[load.direction]
    if (load.direction === 'uplift') upliftPsf = Math.max(upliftPsf, pressure - load.normalPsf)
    else downPsf = Math.max(downPsf, pressure + load.normalPsf)
  }
  return { upliftPsf, downPsf }
}

/**
 * Modules against their maker's design loads, and clamps against theirs.
 *
 * A clamp holds a quarter of each module it touches: an end clamp one, a middle clamp two; the worst quarter counts.
 */
export function moduleChecks(
  project: RoofProject,
  plane: PlaneModel,
  loads: readonly CombinedLoad[],
  modules: readonly ModulePlacement[],
): ModuleCheck[] {
  const clamp = own(project.equipment.rails, project.structure?.rail)?.clamp
  const checks: ModuleCheck[] = []
  for (const module of modules) {
    const array = own(project.arrays, module.array)
    const sheet = array === undefined ? undefined : own(project.equipment.modules, array.module)
    const quarters = quartersOf(plane, module)
    const area = module.widthFt * module.heightFt
    const add = (name: string, demand: number, capacity: number | undefined, unit: string): void => {
      if (capacity !== undefined) {
        checks.push({ name, demand, capacity, unit, ratio: demand / capacity, module: module.id })
      }
    }
    const worstQuarter = (areaFt2: SquareFeet): number =>
      Math.max(...quarters.map((keys) => netPsf(plane, keys, areaFt2, loads).upliftPsf))
    const whole = netPsf(plane, quarters.flat(), area, loads)
    add('module uplift', whole.upliftPsf, sheet?.design_load_up_psf, 'psf')
    add('module down', whole.downPsf, sheet?.design_load_down_psf, 'psf')
    add('middle clamp uplift', (worstQuarter(area / 2) * area) / 2, clamp?.mid_uplift_lb, 'lb')
    add('end clamp uplift', (worstQuarter(area / 4) * area) / 4, clamp?.end_uplift_lb, 'lb')
  }
  return checks
}
