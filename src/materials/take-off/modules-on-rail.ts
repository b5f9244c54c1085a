import type { ModulePlacement } from '../../roof/index.js'
import type { RailValue } from '../../structure/index.js'
import { inchesOf } from '../../values/index.js'

/** Modules that lie on a rail, from left to right. */
export function modulesOnRail(rail: RailValue, modules: readonly ModulePlacement[]): ModulePlacement[] {
  const endIn = rail.x_in + rail.length_in
  return modules
    .filter((module) => {
      const [left, right] = [inchesOf(module.xFt), inchesOf(module.xFt + module.widthFt)]
      const [low, high] = [inchesOf(module.yFt), inchesOf(module.yFt + module.heightFt)]
      const crosses = rail.y_in > low && rail.y_in < high
      return module.roofPlane === rail.plane && crosses && left >= rail.x_in - 1e-6 && right <= endIn + 1e-6
    })
    .toSorted((a, b) => a.xFt - b.xFt)
}

/** Clear gaps between neighbours on a rail, in. */
export function gapsIn(modules: readonly ModulePlacement[]): number[] {
  return modules.slice(1).map((module, i) => {
    const before = modules[i]
    return before === undefined ? 0 : inchesOf(module.xFt - before.xFt - before.widthFt)
  })
}
