import { LAG_ROOT_TENSION_PSI, LAG_SCREWS, type LagSize, type SidePlate } from '../../tables/nds/index.js'
import {
  combinedCapacityLb,
  lateralReferenceLb,
  penetrationShare,
  penetrationIn,
  threadInRafterIn,
  withdrawalPerInchLb,
  type LagInRafter,
} from '../fasteners/index.js'
import { degreesOf, type Pounds } from '../../values/index.js'

/** Everything that decides what one mount holds. */
export interface MountStrength {
  readonly upliftLb: Pounds
  readonly downLb: Pounds
  /** Along the slope; undefined when the sheet does not say. */
  readonly lateralLb: Pounds | undefined
  readonly lagCount: number
  readonly lag: LagInRafter & { readonly size: LagSize }
  readonly specificGravity: number
  /** Steel under the head; undefined when it is another metal or a gap is bridged, then only the sheet's value counts. */
  readonly plate: SidePlate | undefined
  readonly wetFactor: number
  readonly temperatureFactor: number
}

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
export function lagCapacity(mount: MountStrength, loadDuration: number): LagCapacity {
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

/** One way in which a mount can fail: what it must hold, and what it holds. */
export interface MountCheck {
  readonly name: string
  readonly demandLb: Pounds
  readonly capacityLb: Pounds
  readonly ratio: number
}

/**
 * Checks of a mount under one load combination.
 *
 * @param normalLb At right angles to the roof, lb; positive pulls the mount out, negative presses it down.
 * @param alongLb Along the slope, lb, 0 or more.
 * @param loadDuration CD of the combination.
 */
export function mountChecks(
  mount: MountStrength,
  normalLb: Pounds,
  alongLb: Pounds,
  loadDuration: number,
): MountCheck[] {
  const lags = lagCapacity(mount, loadDuration)
  const pull = Math.max(0, normalLb)
  const checks: MountCheck[] = []
  const add = (name: string, demandLb: Pounds, capacityLb: Pounds): void => {
    checks.push({ name, demandLb, capacityLb, ratio: demandLb / capacityLb })
  }
  if (pull > 0) {
    add('mount uplift', pull, mount.upliftLb)
    add('lag withdrawal', pull, lags.withdrawalLb)
    add('lag root tension', pull, lags.rootTensionLb)
    const angle = degreesOf(Math.atan2(pull, alongLb))
    add('lag combined', Math.hypot(pull, alongLb), combinedCapacityLb(lags.withdrawalLb, lags.lateralLb, angle))
  } else {
    add('mount down', -normalLb, mount.downLb)
    add('lag lateral', alongLb, lags.lateralLb)
  }
  if (mount.lateralLb !== undefined) add('mount lateral', alongLb, mount.lateralLb)
  return checks
}
