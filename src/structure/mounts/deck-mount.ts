import { SHEATHING_POINT_LOAD_LB } from '../../tables/nds/index.js'
import { feetOf, type Pounds } from '../../values/index.js'
import { addInteraction, checkList, sheetAllows } from './check-list.js'
import { NAIL_REACH_FT, type DeckMount, type MountCheck, type MountLoad } from './mount-strength.js'

/**
 * Checks of a mount on the sheathing: its test, and the nails that hold the sheathing on the nearer rafter.
 *
 * @source the test sheet; statics for the share of the rafter; NDS 2018 eq. 12.2-3 for the nails
 * @limits What neighbours on the same rafter add is checked when all stand.
 */
export function deckMountChecks(mount: DeckMount, load: MountLoad): MountCheck[] {
  const list = checkList()
  const allowed = sheetAllows(mount, load)
  const pull = Math.max(0, load.normalLb)
  if (pull > 0) {
    list.add('mount uplift', pull, allowed.upliftLb)
    const demand = pull * nearRafterShare(mount) + suctionOnNailsLb(mount, load.roofUpliftPsf)
    list.add('sheathing nails', demand, mount.nailsLb * load.loadDuration)
  } else {
    list.add('mount down', -load.normalLb, allowed.downLb)
    list.add('sheathing point load', -load.normalLb, SHEATHING_POINT_LOAD_LB)
  }
  list.add('mount lateral', load.alongLb, allowed.lateralLb)
  addInteraction(list, allowed, pull, load.alongLb)
  return list.checks
}

/** Share of the pull that the nails on the nearer rafter take: all over it, half in the middle between two. */
export function nearRafterShare({ fromRafterIn, rafterSpacingIn }: DeckMount): number {
  return 1 - fromRafterIn / rafterSpacingIn
}

/** Suction of wind on the roof itself that the same nails hold, lb. */
export function suctionOnNailsLb({ rafterSpacingIn }: DeckMount, roofUpliftPsf: number): Pounds {
  return roofUpliftPsf * feetOf(rafterSpacingIn) * 2 * NAIL_REACH_FT
}
