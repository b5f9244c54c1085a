import { StageError } from '../../worksheet/index.js'
import { screwThroughSheathingLb } from '../fasteners/index.js'
import { need } from '../model/index.js'
import type { SeamClampMount } from '../mounts/index.js'
import type { Framing } from '../../project/index.js'
import type { Chosen, MountProduct } from './equipment-spec.js'
import { needLateral, SHEET, sheetStrength, testReport } from './sheet-values.js'

const ROOFER = 'It stands in the papers of the roof, or ask the roofer or the maker of the panels.'

/**
 * Strength of a seam clamp on the panels of one plane.
 *
 * @param at Path of the framing.
 * @throws StageError when a value is missing, or the test was on another seam, metal or gauge.
 */
export function seamMount(mount: Chosen<MountProduct>, framing: Framing, at: string): SeamClampMount {
  const path = `${at}.standing_seam`
  const roof = need(framing.standing_seam, path, 'what the seams and clips of the roof are', ROOFER)
  testReport(mount)
  refuseOtherSeam(mount, roof, path)
  const strength = sheetStrength(mount)
  const clipSpacingIn = need(roof.clip_spacing_in, `${path}.clip_spacing_in`, 'the distance of the clips', ROOFER)
  const clampFromClipIn = roof.clamp_from_clip_in ?? 0
  if (clampFromClipIn > clipSpacingIn / 2) {
    throw new StageError(
      `${path}.clamp_from_clip_in`,
      `${clampFromClipIn} in is more than half the distance of the clips (${clipSpacingIn} in), so another clip is nearer`,
      'State the distance to the nearer clip.',
    )
  }
  return {
    kind: 'standing_seam_clamp',
    ...strength,
    lateralLb: needLateral(mount, strength.lateralLb),
    interactionExponent: mount.product.interaction_exponent ?? 1,
    panelWidthIn: need(roof.seam_spacing_in, `${path}.seam_spacing_in`, 'the width of the panels', ROOFER),
    clipSpacingIn,
    clampFromClipIn,
    ...clips(roof, framing, at),
    seamMomentLbIn: roof.seam_moment_lb_in,
    fixedPointLb: need(
      roof.fixed_point_capacity_lb,
      `${path}.fixed_point_capacity_lb`,
      'what the fixed point of a panel holds along the slope',
      ROOFER,
    ),
  }
}

type Roof = NonNullable<Framing['standing_seam']>

function clips(roof: Roof, framing: Framing, at: string): Pick<SeamClampMount, 'clipSheetLb' | 'clipScrewsLb'> {
  const path = `${at}.standing_seam`
  if (roof.clip_screws === undefined) {
    const sheet = need(roof.clip_capacity_lb, `${path}.clip_capacity_lb`, 'what a clip holds, or clip_screws,', ROOFER)
    return { clipSheetLb: sheet, clipScrewsLb: undefined }
  }
  const size = need(roof.clip_screw_size, `${path}.clip_screw_size`, 'the size of the clip screws', ROOFER)
  const kind = need(framing.sheathing?.kind, `${at}.sheathing.kind`, 'what the sheathing under the clips is', ROOFER)
  const thickness = need(framing.sheathing_in, `${at}.sheathing_in`, 'the thickness of the sheathing', ROOFER)
  if (thickness === 0) {
    throw new StageError(
      `${at}.sheathing_in`,
      'the clips are screwed into sheathing, and its thickness is stated as 0',
      'State the thickness, or clip_capacity_lb of the test of the panel on its purlins instead of clip_screws.',
    )
  }
  return {
    clipSheetLb: roof.clip_capacity_lb,
    clipScrewsLb: roof.clip_screws * screwThroughSheathingLb(size, kind, thickness),
  }
}

/** A test of a clamp holds for its very seam. */
function refuseOtherSeam({ at, product }: Chosen<MountProduct>, roof: Roof, path: string): void {
  const clamp = product.seam_clamp
  const same = (text: string): string => text.trim().toLowerCase()
  const pairs = [
    ['profile', 'profile', clamp?.profile, roof.profile],
    ['metal', 'panel_metal', clamp?.panel_metal, roof.metal],
    ['gauge', 'gauge', clamp?.gauge, roof.gauge],
  ] as const
  for (const [what, key, tested, built] of pairs) {
    const onSheet = need(tested, `${at}.seam_clamp.${key}`, `the ${what} of the seam in the test`, SHEET)
    const onRoof = need(built, `${path}.${what}`, `the ${what} of the seam on the roof`, ROOFER)
    if (same(String(onSheet)) === same(String(onRoof))) continue
    throw new StageError(
      `${at}.seam_clamp.${key}`,
      `the clamp was tested on ${what} ${onSheet}, the roof has ${onRoof}`,
      'Use a clamp whose report is for this very seam, metal and gauge.',
    )
  }
}
