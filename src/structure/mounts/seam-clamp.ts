import { feetOf, type Pounds } from '../../values/index.js'
import { addInteraction, checkList, sheetAllows } from './check-list.js'
import type { MountCheck, MountLoad, SeamClampMount } from './mount-strength.js'

/**
 * Checks of a clamp on a seam, of the seam between two clips and of the clip nearer to it.
 *
 * The clip holds its share of the pull by statics of a beam on two clips and the wind on its own part of the panel, which
 * modules above are not taken to keep off.
 *
 * @source statics: R = T (c - a) / c, M = T c / 4
 * @limits One clamp between two clips; what neighbours on the same seam add is checked when all stand.
 */
export function seamClampChecks(mount: SeamClampMount, load: MountLoad): MountCheck[] {
  const list = checkList()
  const allowed = sheetAllows(mount, load)
  const pull = Math.max(0, load.normalLb)
  if (pull > 0) {
    list.add('mount uplift', pull, allowed.upliftLb)
    list.add('seam clip', clipReactionLb(mount, pull, load.roofUpliftPsf), clipCapacityLb(mount, load.loadDuration))
    const { seamMomentLbIn, clipSpacingIn } = mount
    if (seamMomentLbIn !== undefined) list.add('seam bending', pull, (4 * seamMomentLbIn) / clipSpacingIn)
  } else list.add('mount down', -load.normalLb, allowed.downLb)
  list.add('mount lateral', load.alongLb, allowed.lateralLb)
  addInteraction(list, allowed, pull, load.alongLb)
  return list.checks
}

/** Pull on the clip nearer to a clamp, the wind on its own part of the panel included, lb. */
export function clipReactionLb(
  { clipSpacingIn, clampFromClipIn, panelWidthIn }: SeamClampMount,
  pullLb: Pounds,
  roofUpliftPsf: number,
): Pounds {
  const share = (clipSpacingIn - clampFromClipIn) / clipSpacingIn
  return pullLb * share + roofUpliftPsf * feetOf(panelWidthIn) * feetOf(clipSpacingIn)
}

/** What one clip holds, lb: the lower of the test of the panel and its screws in the sheathing. */
export function clipCapacityLb({ clipSheetLb, clipScrewsLb }: SeamClampMount, loadDuration: number): Pounds {
  return Math.min(clipSheetLb ?? Infinity, clipScrewsLb === undefined ? Infinity : clipScrewsLb * loadDuration)
}
