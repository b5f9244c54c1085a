import { combinedCapacityLb } from '../fasteners/index.js'
import { degreesOf } from '../../values/index.js'
import { checkList, sheetAllows } from './check-list.js'
import type { MountCheck, MountLoad, StructuralScrewMount } from './mount-strength.js'

/**
 * Checks of a mount whose screws have values of their own report.
 *
 * @source the report of the screw; both directions together as for every screw that the wood holds, NDS 2018 eq. 12.4-1
 */
export function structuralScrewChecks(mount: StructuralScrewMount, load: MountLoad): MountCheck[] {
  const list = checkList()
  const allowed = sheetAllows(mount, load)
  const { normalLb, alongLb, loadDuration } = load
  const service = mount.screwCount * loadDuration * mount.serviceFactor
  const [withdrawal, lateral] = [mount.withdrawalLb * service, mount.screwLateralLb * service]
  if (normalLb > 0) {
    list.add('mount uplift', normalLb, allowed.upliftLb)
    list.add('screw withdrawal', normalLb, withdrawal)
    list.add('screw tension', normalLb, mount.screwCount * mount.tensionLb)
    const angle = degreesOf(Math.atan2(normalLb, alongLb))
    list.add('screw combined', Math.hypot(normalLb, alongLb), combinedCapacityLb(withdrawal, lateral, angle))
  } else list.add('mount down', -normalLb, allowed.downLb)
  list.add('screw lateral', alongLb, lateral)
  if (allowed.lateralLb !== undefined) list.add('mount lateral', alongLb, allowed.lateralLb)
  return list.checks
}
