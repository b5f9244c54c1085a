import { STEEL_BENDING_FACTOR } from '../../tables/nds/index.js'
import type { Framing } from '../../project/index.js'
import { need } from '../model/index.js'
import type { TileHookMount } from '../mounts/index.js'
import type { FramingSpec } from '../rafters/index.js'
import type { Chosen, MountProduct } from './equipment-spec.js'
import { lagScrews } from './screw-spec.js'
import { SHEET, sheetStrength, testReport } from './sheet-values.js'

/**
 * Strength of a tile hook in the rafters of one plane. Its base lies on the sheathing, so the tile is not between.
 *
 * @param at Path of the framing.
 * @throws StageError when a value is missing or the screws reach too little into the rafter.
 */
export function hookMount(
  mount: Chosen<MountProduct>,
  framing: FramingSpec,
  stated: Framing,
  at: string,
): TileHookMount {
  const { product } = mount
  const path = `${mount.at}.hook`
  const hook = need(product.hook, path, 'the size of the hook', SHEET)
  const of = (key: keyof typeof hook, what: string): number => need(hook[key], `${path}.${key}`, what, SHEET)
  testReport(mount)
  const strength = sheetStrength(mount)
  const armIn = of('arm_in', 'the arm of the hook')
  const sheathingIn = need(stated.sheathing_in, `${at}.sheathing_in`, 'the thickness of the sheathing', SHEET)
  const neckLbIn =
    (1000 *
      of('yield_ksi', 'the yield strength of its metal') *
      of('neck_section_modulus_in3', 'its section modulus')) /
    STEEL_BENDING_FACTOR
  return {
    kind: 'tile_hook',
    ...strength,
    screws: lagScrews(mount, framing, sheathingIn, strength.lateralLb),
    armIn,
    neckLb: neckLbIn / armIn,
    screwLeverIn: of('screw_lever_in', 'the distance from bearing edge to screws'),
    heightIn: of('height_in', 'the height of the rail line'),
    // The hook goes down in proportion to its load.
    tileContactLb:
      ((product.capacity_down_lb ?? 0) * of('tile_gap_in', 'the gap to the tile below')) /
      of('deflection_in', 'how far it goes down in the test'),
  }
}
