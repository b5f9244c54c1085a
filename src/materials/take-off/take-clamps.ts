import type { RailValue } from '../../structure/index.js'
import { StageError } from '../../worksheet/index.js'
import { own, type Inches } from '../../values/index.js'
import { gapsIn, modulesOnRail } from './modules-on-rail.js'
import type { Need } from './need.js'
import { practiceValue } from './practice.js'
import type { TakeOffJob } from './take-off-job.js'

/**
 * Mid clamps between neighbours and end clamps at the ends of every row of modules on a rail; a gap too wide for a mid
 * clamp takes two end clamps.
 *
 * @throws StageError when a rail carries no module (the results are of different layouts).
 */
export function takeClamps(job: TakeOffJob, rails: readonly RailValue[]): Need[] {
  const widestIn = practiceValue(job, 'mid_clamp_max_gap_in')
  return rails.flatMap((rail) => {
    const modules = modulesOnRail(rail, job.arrangement.modules)
    const [first] = modules
    if (first === undefined)
      throw new StageError(
        `roof_planes.${rail.plane}`,
        `rail ${rail.id} carries no module, so mounts and arrangement are not of the same layout`,
        'Make both results again from this project.',
      )
    const gaps = gapsIn(modules)
    const mids = gaps.filter((gap) => gap <= widestIn + 1e-6).length
    const ends = 2 + 2 * (gaps.length - mids)
    const on = `on rail ${rail.id} with ${modules.length} modules (mounts: values.rails, roof: values.modules)`
    const frame = thickness(job, first.array)
    return [
      clamp('mid', frame, mids, `${mids} between neighbours ${on}`),
      clamp('end', frame, ends, `${ends} at the ends ${on}`),
    ]
  })
}

/** Height of the module frame, which sets the length of the clamp. */
function thickness(job: TakeOffJob, arrayId: string): number | undefined {
  return own(job.project.equipment.modules, own(job.project.arrays, arrayId)?.module)?.thickness_in
}

function clamp(kind: 'mid' | 'end', frameIn: Inches | undefined, quantity: number, why: string): Need {
  const name = kind === 'mid' ? 'Mid clamp' : 'End clamp'
  return {
    item: frameIn === undefined ? `clamp.${kind}` : `clamp.${kind}.${frameIn}in`,
    general: `clamp.${kind}`,
    name: frameIn === undefined ? name : `${name} for a frame of ${frameIn} in`,
    group: 'racking',
    unit: 'each',
    quantity,
    why,
  }
}
