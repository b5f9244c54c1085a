import { NAIL_WITHDRAWAL_WET } from '../../tables/nds/index.js'
import { StageError, type Worksheet } from '../../worksheet/index.js'
import type { Framing } from '../../project/index.js'
import { inchesOf, type Inches } from '../../values/index.js'
import { sheathingNailLb } from '../fasteners/index.js'
import { need } from '../model/index.js'
import { NAIL_REACH_FT, type DeckMount } from '../mounts/index.js'
import type { FramingSpec } from '../rafters/index.js'
import type { Chosen, MountProduct } from './equipment-spec.js'
import { allowableLb, SHEET, testReport } from './sheet-values.js'

const ATTIC = 'Look at the sheathing from the attic: stamp, thickness and nails that missed or show.'

/** Thicknesses that differ by less are the same panel, in. */
const SAME_PANEL_IN = 0.02

/** Farther from a rafter a mount stands only where its test covers the span of the sheathing, in. @source common practice, no source */
const NEAR_RAFTER_IN = 6

/**
 * Strength of a mount on the sheathing of one plane.
 *
 * @param at Path of the framing.
 * @throws StageError when a value is missing, the sheathing is damaged, or no test covers it.
 */
export function deckMount(
  mount: Chosen<MountProduct>,
  framing: FramingSpec,
  stated: Framing,
  at: string,
  worksheet: Worksheet,
): DeckMount {
  const test = testOn(mount, stated, at)
  const fromRafterIn =
    mount.product.deck?.from_rafter_in ??
    worksheet.assume({
      path: `${mount.at}.deck.from_rafter_in`,
      value: 0,
      unit: 'in',
      why: 'over a rafter the nails of that rafter take the whole pull, which is the safe side',
      source: { document: 'Statics', standing: 'read' },
    })
  refusePlace(mount, framing, test, fromRafterIn)
  return {
    kind: 'deck',
    upliftLb: allowableLb(mount, test.uplift_lb),
    downLb: allowableLb(mount, test.down_lb),
    lateralLb: allowableLb(mount, test.along_lb),
    timesDuration: mount.product.multiply_by_load_duration === true,
    interactionExponent: mount.product.interaction_exponent ?? 1,
    rafterSpacingIn: framing.spacingIn,
    fromRafterIn,
    nailsLb: nailsLb(framing, stated, at, worksheet),
  }
}

export type DeckTest = NonNullable<NonNullable<MountProduct['deck']>['tests']>[number]

/** The test on the sheathing of a plane. @throws StageError when there is none, or the sheathing is damaged or not stated. */
export function testOn(mount: Chosen<MountProduct>, stated: Framing, at: string): DeckTest {
  const kind = need(stated.sheathing?.kind, `${at}.sheathing.kind`, 'what the sheathing is', ATTIC)
  const thickness = need(stated.sheathing_in, `${at}.sheathing_in`, 'the thickness of the sheathing', ATTIC)
  const damaged = need(stated.sheathing?.damaged, `${at}.sheathing.damaged`, 'whether the sheathing is damaged', ATTIC)
  if (damaged) {
    throw new StageError(
      `${at}.sheathing.damaged`,
      'the sheathing is damaged, so nothing may hold in it',
      'Have it replaced first.',
    )
  }
  testReport(mount)
  const path = `${mount.at}.deck.tests`
  const tests = need(mount.product.deck?.tests, path, 'what the mount holds on which sheathing', SHEET)
  const test = tests.find((t) => t.sheathing === kind && Math.abs(t.thickness_in - thickness) < SAME_PANEL_IN)
  if (test !== undefined) return test
  throw new StageError(
    path,
    `no test of the mount is on ${kind} of ${thickness} in; no rule of wood design covers a screw in so thin a panel`,
    'Use a mount whose report is for this very sheathing, or one that is screwed into the rafter.',
  )
}

function refusePlace(mount: Chosen<MountProduct>, framing: FramingSpec, test: DeckTest, fromRafterIn: Inches): void {
  const where = `${mount.at}.deck.from_rafter_in`
  if (fromRafterIn > framing.spacingIn / 2) {
    throw new StageError(
      where,
      `${fromRafterIn} in is more than half the rafter spacing (${framing.spacingIn} in), so another rafter is nearer`,
      'State the distance to the nearest rafter.',
    )
  }
  const covered = test.max_rafter_spacing_in !== undefined && framing.spacingIn <= test.max_rafter_spacing_in
  if (covered || fromRafterIn <= NEAR_RAFTER_IN) return
  throw new StageError(
    where,
    `${fromRafterIn} in from a rafter the sheathing bends under the mount, and the test does not cover rafters ${framing.spacingIn} in apart`,
    `Set the mounts within ${NEAR_RAFTER_IN} in of a rafter, or use a mount whose report covers this spacing.`,
  )
}

/** Withdrawal of the nails within reach of a mount on one rafter, moisture and heat included, lb. */
function nailsLb(framing: FramingSpec, stated: Framing, at: string, worksheet: Worksheet): number {
  const path = `${at}.sheathing`
  const nail = need(stated.sheathing?.nail, `${path}.nail`, 'the nails of the sheathing', ATTIC)
  const spacing = need(stated.sheathing?.nail_spacing_in, `${path}.nail_spacing_in`, 'the distance of its nails', ATTIC)
  const dry = stated.sheathing?.framing_dry_since_nailed
  if (dry === undefined) {
    worksheet.assume({
      path: `${path}.framing_dry_since_nailed`,
      value: 'no',
      unit: '',
      why: 'nobody knows whether the rafters were dry when nailed, so the nails keep a quarter of their withdrawal value',
      source: { document: 'NDS 2018', place: 'table 11.3.3', standing: 'secondary' },
    })
  }
  const moisture = dry === true && !framing.wet ? NAIL_WITHDRAWAL_WET.dry : NAIL_WITHDRAWAL_WET.wetted
  const count = Math.floor((2 * inchesOf(NAIL_REACH_FT)) / spacing + 1e-9) + 1
  const each = sheathingNailLb(nail, framing.specificGravity, stated.sheathing_in ?? 0)
  if (each === 0) {
    throw new StageError(
      `${path}.nail`,
      `nails ${nail.replace('_', ' ')} are no longer than the sheathing (${stated.sheathing_in ?? 0} in) and hold in no rafter`,
      'Look at the nails again.',
    )
  }
  return count * each * moisture * framing.temperatureFactor
}
