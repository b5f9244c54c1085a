import { combinedCapacityLb } from '../fasteners/index.js'
import { degreesOf } from '../../values/index.js'
import { checkList, sheetAllows } from './check-list.js'
import { lagCapacity } from './lag-mount.js'
import type { MountCheck, MountLoad, TileHookMount } from './mount-strength.js'

/**
 * Checks of a hook between tiles: its neck, its screws with the prying of the arm, and the gap to the tile below.
 *
 * @source statics: neck M = N e; screws T = N + N e / jd when pulled, N e / jd when pressed, and V h / jd from the load along the
 * slope; NDS 2018 eq. 12.2-1 and 12.4-1
 * @limits One screw takes the whole tension. The base lies on the rafter or on sheathing over it, without an open gap.
 */
export function tileHookChecks(mount: TileHookMount, load: MountLoad): MountCheck[] {
  const list = checkList()
  const allowed = sheetAllows(mount, load)
  const { normalLb, alongLb, loadDuration } = load
  const size = Math.abs(normalLb)
  if (normalLb > 0) list.add('mount uplift', normalLb, allowed.upliftLb)
  else {
    list.add('mount down', size, allowed.downLb)
    list.add('hook on tile', size, mount.tileContactLb)
  }
  list.add('hook neck', size, mount.neckLb)
  const tension =
    Math.max(0, normalLb) + (size * mount.armIn) / mount.screwLeverIn + (alongLb * mount.heightIn) / mount.screwLeverIn
  const one = lagCapacity({ ...mount.screws, lagCount: 1 }, loadDuration)
  const each = one.lateralLb / (mount.screws.plate === undefined ? mount.screws.lagCount : 1)
  list.add('lag withdrawal', tension, one.withdrawalLb)
  list.add('lag root tension', tension, one.rootTensionLb)
  const shear = alongLb / mount.screws.lagCount
  const resultant = Math.hypot(tension, shear)
  if (resultant > 0) {
    const angle = degreesOf(Math.atan2(tension, shear))
    list.add('lag combined', resultant, combinedCapacityLb(one.withdrawalLb, each, angle))
  }
  if (allowed.lateralLb !== undefined) list.add('mount lateral', alongLb, allowed.lateralLb)
  return list.checks
}
