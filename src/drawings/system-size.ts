import { moduleCountOf } from '../project/facts.js'
import { own } from '../values/index.js'
import type { PacketInput } from './inputs.js'
import { pvOutputA } from './pv-output.js'

/** How large the system is, as the cover tells it. */
export interface SystemSize {
  readonly modules: number
  readonly dcKw: number
  /** Undefined while the wiring cannot be sized. */
  readonly acKw: number | undefined
  /** Roof planes with modules. */
  readonly planes: readonly string[]
}

export function systemSize({ project, arrangement, wire: wiring }: PacketInput): SystemSize {
  const counts = Object.entries(project.arrays).map(([id, array]) => {
    const placed = arrangement.values.modules.filter((module) => module.array === id).length
    return {
      count: placed === 0 ? moduleCountOf(array) : placed,
      watts: own(project.equipment.modules, array.module)?.pmax_w ?? 0,
      plane: array.roof_plane,
    }
  })
  return {
    modules: counts.reduce((sum, each) => sum + each.count, 0),
    dcKw: counts.reduce((sum, each) => sum + each.count * each.watts, 0) / 1000,
    acKw:
      wiring === undefined
        ? undefined
        : (wiring.values.service?.apparent_power_va ?? pvOutputA(wiring.values) * 240) / 1000,
    planes: [...new Set(counts.map((each) => each.plane))],
  }
}
