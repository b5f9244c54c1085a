import {
  SHEATHING_GRAVITY,
  SHEATHING_NAILS,
  WOOD_SCREW_DIAMETER_IN,
  type SheathingKind,
  type SheathingNail,
  type WoodScrewSize,
} from '../../tables/nds/index.js'
import type { Inches, Pounds } from '../../values/index.js'

/**
 * Reference withdrawal of one wood screw through sheathing, lb: 2850 G^2 D lb per inch times the thickness.
 *
 * @source NDS 2018 eq. 12.2-2 (secondary); gravity of panels from memory
 * @limits Before load duration; the screw goes through the whole thickness. For mounts only a line of plausibility.
 * @example screwThroughSheathingLb('#10', 'plywood', 0.46875) is 44.8
 */
export function screwThroughSheathingLb(size: WoodScrewSize, kind: SheathingKind, thicknessIn: Inches): Pounds {
  return 2850 * SHEATHING_GRAVITY[kind] ** 2 * WOOD_SCREW_DIAMETER_IN[size] * thicknessIn
}

/**
 * Reference withdrawal of one smooth nail of the sheathing from the rafter, lb: 1380 G^2.5 D lb per inch in the rafter.
 *
 * @param specificGravity G of the rafter.
 * @param sheathingIn Thickness that the nail passes through, in.
 * @source NDS 2018 eq. 12.2-3 (secondary)
 * @limits Before load duration and moisture.
 * @example sheathingNailLb('8d_common', 0.42, 0.4375) is 42.6
 */
export function sheathingNailLb(nail: SheathingNail, specificGravity: number, sheathingIn: Inches): Pounds {
  const { diameterIn, lengthIn } = SHEATHING_NAILS[nail]
  return 1380 * specificGravity ** 2.5 * diameterIn * Math.max(0, lengthIn - sheathingIn)
}
