import { designTemperatures } from '../climate/index.js'
import { trunkGapsFt, type WiringContext } from '../electrical/index.js'
import type { Project } from '../project/index.js'
import { placeModules } from '../roof/index.js'
import { Worksheet } from '../worksheet/index.js'

/** What the wiring stage needs besides the project, with the proof of where the design temperatures come from. */
export function wiringContext(project: Project): { readonly wiring: WiringContext; readonly climate: Worksheet } {
  const climate = new Worksheet()
  const placed = placeModules(project)
  const modules: Record<string, number> = {}
  for (const { array } of placed) modules[array] = (modules[array] ?? 0) + 1
  return {
    wiring: {
      designTemperatures: designTemperatures(project.site, climate),
      arrangement: { modules, trunkGapsFt: trunkGapsFt(placed) },
    },
    climate,
  }
}
