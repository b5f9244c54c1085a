import type { DistributionFeeder } from '../../project/index.js'
import type { Job } from '../system/index.js'
import { flowAlong, flowThroughFeeder, panelById } from './flows.js'
import { nodeConductor } from './feeder-conductor.js'
import { NO_CONDUCTOR, tapSkeleton } from './skeletons.js'
import type { BackfedDevice, FeederNode, Tree } from './tree.js'

/** The feeders, with a size for those that state none: for the device at their start and what sources feed through. */
export function buildFeeders(job: Job, bare: Tree): FeederNode[] {
  const stated = Object.entries(job.electrical.distribution?.feeders ?? {})
  // Which sources pass is known from the ways alone; sizes come after.
  const skeleton = {
    ...bare,
    feeders: stated.map(([id, feeder]) => plain(id, feeder)),
    taps: Object.entries(job.electrical.distribution?.taps ?? {}).map(([id, { feeder, position }]) =>
      tapSkeleton(id, feeder, position),
    ),
  }
  return stated.map(([id, feeder]) => {
    const node = plain(id, feeder)
    const flow = flowThroughFeeder(skeleton, node)
    const along = flowAlong(skeleton, node).sources.length > 0
    const deviceA = feeder.breaker_a ?? panelById(bare, feeder.from)?.mainA ?? 0
    const beyondA = panelById(bare, feeder.to)
    const sumA = deviceA + Math.max(flow.requiredA, flow.firstDevicesA)
    const guarded = beyondA?.mainA !== undefined && beyondA.mainA <= deviceA
    const share = bare.edition === 'NEC 2011' && flow.sources.length > 0 ? sumA / 1.2 : 0
    const neededA = Math.max(deviceA, flow.requiredA, beyondA?.loadA ?? 0, along && !guarded ? sumA : 0, share)
    return {
      ...node,
      conductor: nodeConductor(job, {
        where: node.where,
        material: feeder.material,
        size: feeder.size_awg,
        insulation: feeder.insulation,
        sets: feeder.conductor_sets ?? 1,
        ambientC: feeder.ambient_c,
        currentCarrying: feeder.current_carrying ?? 2,
        method: feeder.method,
        terminalC: lowest(panelById(bare, feeder.from)?.terminalC, beyondA?.terminalC),
        neededA,
        deviceA,
      }),
    }
  })
}

const lowest = (a: 60 | 75 | undefined, b: 60 | 75 | undefined): 60 | 75 => (a === 75 && b === 75 ? 75 : 60)

function plain(id: string, feeder: DistributionFeeder): FeederNode {
  const where = `electrical.distribution.feeders.${id}`
  const device: BackfedDevice = {
    ratingA: feeder.breaker_a,
    type: feeder.breaker_type ?? 'standard',
    markedForBackfeed: feeder.breaker_marked_for_backfeed === true,
    markedLineLoad: feeder.breaker_marked_line_load === true,
    oppositeEnd: feeder.breaker_position === undefined ? undefined : feeder.breaker_position === 'opposite_end',
    where,
  }
  return {
    id,
    where,
    from: feeder.from,
    to: feeder.to,
    device,
    throughLugs: feeder.through_lugs === true,
    conductor: NO_CONDUCTOR,
    groundAwg: feeder.ground_size_awg,
    method: feeder.method,
    lengthFt: feeder.length_ft,
  }
}
