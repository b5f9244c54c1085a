import { LAG_ROOT_TENSION_PSI, LAG_SCREWS } from '../../tables/nds/index.js'
import {
  combinedCapacityLb,
  lateralReferenceLb,
  penetrationShare,
  penetrationIn,
  threadInRafterIn,
  withdrawalPerInchLb,
} from '../fasteners/index.js'
import { degreesOf, type Pounds } from '../../values/index.js'
import { checkList, sheetAllows } from './check-list.js'
import type { LagMount, LagScrews, MountCheck, MountLoad } from './mount-strength.js'

/** Adjusted capacities of all lag screws of a mount for one load duration, lb. */
export interface LagCapacity {
  readonly withdrawalLb: Pounds
  readonly lateralLb: Pounds
  readonly rootTensionLb: Pounds
}

/**
 * Adjusted capacities of the screws of one mount.
 *
 * @param loadDuration CD, 0.9 to 1.6.
 * @source NDS 2018 table 11.3.1 (adjustment factors), 12.2.1, 12.3.1; without a known steel plate the mount sheet's lateral value
 */
export function lagCapacity(mount: LagScrews, loadDuration: number): LagCapacity {
  const { lag, lagCount, specificGravity } = mount
  const service = loadDuration * mount.wetFactor * mount.temperatureFactor
  const withdrawal =
    withdrawalPerInchLb(specificGravity, LAG_SCREWS[lag.size].diameterIn) * threadInRafterIn(lag) * service
  const lateral =
    mount.plate === undefined
      ? (mount.lateralLb ?? 0)
      : lagCount *
        lateralReferenceLb(specificGravity, lag.size, mount.plate, 'parallel') *
        penetrationShare(penetrationIn(lag), lag.size) *
        service
  const rootArea = (Math.PI / 4) * LAG_SCREWS[lag.size].rootDiameterIn ** 2
  return {
    withdrawalLb: lagCount * withdrawal,
    lateralLb: lateral,
    rootTensionLb: lagCount * LAG_ROOT_TENSION_PSI * rootArea,
  }
}

/** Checks of a mount with lag screws. */
export function lagMountChecks(mount: LagMount, load: MountLoad): MountCheck[] {
  const list = checkList()
  const { normalLb, alongLb, loadDuration } = load
  const allowed = sheetAllows(mount, load)
  const lags = lagCapacity(mount, loadDuration)
  const pull = Math.max(0, normalLb)
  if (pull > 0) {
    list.add('mount uplift', pull, allowed.upliftLb)
    list.add('lag withdrawal', pull, lags.withdrawalLb)
    list.add('lag root tension', pull, lags.rootTensionLb)
    const angle = degreesOf(Math.atan2(pull, alongLb))
    list.add('lag combined', Math.hypot(pull, alongLb), combinedCapacityLb(lags.withdrawalLb, lags.lateralLb, angle))
  } else {
    list.add('mount down', -normalLb, allowed.downLb)
    list.add('lag lateral', alongLb, lags.lateralLb)
  }
  if (allowed.lateralLb !== undefined) list.add('mount lateral', alongLb, allowed.lateralLb)
  return list.checks
}
