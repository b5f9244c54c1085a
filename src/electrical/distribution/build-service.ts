import type { Job } from '../system/index.js'
import type { Amperes } from '../../values/index.js'
import { nodeConductor } from './feeder-conductor.js'
import type { NodeConductor, PanelNode, ServiceNode } from './tree.js'

/** The service as stated; the ampacity of its conductors from their size where the person gives none. */
export function buildService(job: Job, panels: readonly PanelNode[], loadA: Amperes | undefined): ServiceNode {
  const { service } = job.electrical
  const conductor = serviceConductor(job, panels)
  return {
    where: 'electrical.service',
    ratingA: service?.rating_a,
    conductor,
    bare:
      conductor === undefined && service?.conductor_size !== undefined && service.conductor_material !== undefined
        ? { size: service.conductor_size, material: service.conductor_material, sets: service.conductor_sets ?? 1 }
        : undefined,
    ampacityA: ampacityOf(job, conductor),
    loadA,
  }
}

/** Ampacity of the service, A: a stated figure counts no further than the size that is stated beside it can carry. */
function ampacityOf(job: Job, conductor: NodeConductor | undefined): Amperes | undefined {
  const statedA = job.electrical.service?.conductor_ampacity_a
  if (statedA === undefined || conductor === undefined || statedA <= conductor.ampacityA)
    return statedA ?? conductor?.ampacityA
  job.worksheet.find({
    severity: 'warning',
    id: 'wire.service-ampacity',
    message: `an ampacity of ${statedA} A is stated for the service conductors, ${conductor.size} ${conductor.material} carry at most ${conductor.ampacityA.toFixed(1)} A (${conductor.how}); the lower one counts`,
    where: 'electrical.service.conductor_ampacity_a',
    source: job.nec('ampacityTable'),
    fix: 'Read size, metal and insulation on the conductors again, and take the figure out or correct it',
  })
  return conductor.ampacityA
}

/** Conductors of the service; undefined when size, metal or insulation are not stated, for which nothing is guessed. */
function serviceConductor(job: Job, panels: readonly PanelNode[]): NodeConductor | undefined {
  const { service } = job.electrical
  if (service?.conductor_size === undefined || service.conductor_material === undefined) return undefined
  if (service.conductor_insulation === undefined && service.conductor_ampacity_a === undefined) return undefined
  return nodeConductor(job, {
    where: 'electrical.service',
    material: service.conductor_material,
    size: service.conductor_size,
    // Beside a stated ampacity the best insulation is the bound that it is held to.
    insulation: service.conductor_insulation ?? 'THWN-2',
    sets: service.conductor_sets ?? 1,
    ambientC: service.conductor_ambient_c,
    currentCarrying: 2,
    method: undefined,
    // Terminals above 100 A are rated 75 deg C, 110.14(C)(1)(b); below as the first panel is marked.
    terminalC: (service.rating_a ?? 0) > 100 ? 75 : (panels[0]?.terminalC ?? 60),
    neededA: 0,
    deviceA: 0,
  })
}
