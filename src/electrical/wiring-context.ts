import { designTemperatures } from '../climate/index.js'
import type { Project } from '../project/index.js'
import { placeModules } from '../roof/index.js'
import { Worksheet, type Result } from '../worksheet/index.js'
import { own } from '../values/index.js'
import type { WiringContext, WiringValues } from './system/index.js'
import { sizeWire } from './size-wire.js'
import { trunkGapsFt } from './voltage/index.js'

/** What the wiring stage needs besides the project, with the proof of where the design temperatures come from. */
export function wiringContext(project: Project): { readonly wiring: WiringContext; readonly climate: Worksheet } {
  const climate = new Worksheet()
  const placed = placeModules(project)
  const modules: Record<string, number> = {}
  for (const { array } of placed) modules[array] = (own(modules, array) ?? 0) + 1
  return {
    wiring: {
      designTemperatures: designTemperatures(project.site, climate),
      arrangement: { modules, trunkGapsFt: trunkGapsFt(placed) },
    },
    climate,
  }
}

/**
 * The wiring of a project with everything that it takes from site and roof: what every output that shows wiring uses, so
 * that packet, bill, work plan and table agree.
 *
 * @param edition Edition that wins over `codes.electrical`.
 * @throws StageError when a safety input is missing or a case is not covered.
 */
export function wiringOf(project: Project, edition?: string): Result<WiringValues> {
  const { wiring, climate } = wiringContext(project)
  const result = sizeWire(project, { ...wiring, edition })
  climate.include(result)
  return climate.result(result.values)
}
