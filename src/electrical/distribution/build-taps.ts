import { tapRules } from '../../tables/nec/index.js'
import type { DistributionTap } from '../../project/index.js'
import type { Job } from '../system/index.js'
import { feederById, flowOnTap, flowThroughFeeder } from './flows.js'
import { nodeConductor } from './feeder-conductor.js'
import { tapSkeleton } from './skeletons.js'
import type { TapNode, Tree } from './tree.js'

/** The taps, with a size for those that state none: for the shortest way of 240.21(B) that their length allows. */
export function buildTaps(job: Job, tree: Tree): TapNode[] {
  const taps = Object.entries(job.electrical.distribution?.taps ?? {})
  return taps.map(([id, stated]) => {
    const where = `electrical.distribution.taps.${id}`
    const facts = {
      id,
      where,
      feeder: stated.feeder,
      position: stated.position ?? ('along' as const),
      method: stated.method,
      lengthFt: stated.length_ft,
      endDeviceA: endDeviceOf(tree, id, stated),
      endDevices: endDevicesOf(tree, id, stated.end_devices),
      loadA: stated.load_a,
      leavesEnclosure: stated.leaves_enclosure ?? true,
      outdoors: stated.outdoors === true,
    }
    const skeleton = { ...tree, taps: taps.map(([other, tap]) => tapSkeleton(other, tap.feeder, tap.position)) }
    const feeder = feederById(tree, stated.feeder)
    const deviceA = feeder?.device.ratingA ?? 0
    const onFeeder = feeder === undefined ? undefined : flowThroughFeeder(skeleton, feeder)
    const countedA = deviceA + Math.max(onFeeder?.requiredA ?? 0, onFeeder?.firstDevicesA ?? 0)
    const ratio = tapRules.find(({ withinFt, outdoors }) =>
      outdoors ? facts.outdoors : stated.length_ft <= (withinFt ?? Infinity),
    )?.ratio
    const own = flowOnTap(skeleton, tapSkeleton(id, stated.feeder, stated.position))
    return {
      ...facts,
      conductor: nodeConductor(job, {
        where,
        material: stated.material,
        size: stated.size_awg,
        insulation: stated.insulation,
        sets: 1,
        ambientC: stated.ambient_c,
        currentCarrying: stated.current_carrying ?? 2,
        method: stated.method,
        terminalC: job.electrical.terminal_temperature_c === 75 ? 75 : 60,
        neededA: Math.max(facts.endDeviceA ?? 0, (ratio ?? 0) * countedA, stated.load_a ?? 0, own.requiredA),
        deviceA: facts.endDeviceA ?? 0,
      }),
    }
  })
}

/** Devices that it ends in together, A: of the sources that hang on it, else those stated. */
function endDeviceOf(
  tree: Tree,
  id: string,
  { end_device_a: eachA, end_devices: count }: DistributionTap,
): number | undefined {
  const devices = tree.sources
    .filter(({ at }) => at !== 'supply_side' && 'tap' in at && at.tap === id)
    .flatMap((source) => source.devices.map(({ ratingA }) => ratingA ?? 0))
  const sumA = devices.reduce((sum, ratingA) => sum + ratingA, 0)
  const statedA = eachA === undefined ? undefined : eachA * (count ?? 1)
  return sumA > 0 ? Math.max(sumA, statedA ?? 0) : statedA
}

function endDevicesOf(tree: Tree, id: string, stated: number | undefined): number {
  const devices = tree.sources
    .filter(({ at }) => at !== 'supply_side' && 'tap' in at && at.tap === id)
    .flatMap((source) => source.devices)
  return Math.max(stated ?? 1, devices.length)
}
