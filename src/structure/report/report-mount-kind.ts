import type { RoofProject } from '../../project/index.js'
import { LOAD_DURATION, NAIL_WITHDRAWAL, STEEL_BENDING_FACTOR, WOOD_SCREW_WITHDRAWAL } from '../../tables/nds/index.js'
import type { Source, Worksheet } from '../../worksheet/index.js'
import { own } from '../../values/index.js'
import {
  clipCapacityLb,
  gridOf,
  nearRafterShare,
  type DeckMount,
  type SeamClampMount,
  type StructuralScrewMount,
  type TileHookMount,
} from '../mounts/index.js'
import type { RailKit, SolvedPlane } from '../planes/index.js'
import { reportUnusedKeys } from './unused-keys.js'

/** One plane with its mount, as the steps name it. */
interface OnPlane {
  readonly id: string
  readonly at: string
  readonly framing: string
  readonly sheet: Source
}

/** Writes what mounts of other kinds than lag screws hold on one plane on the worksheet, and what is not checked about them. */
export function reportMountKind(project: RoofProject, plane: SolvedPlane, kit: RailKit, worksheet: Worksheet): void {
  const { id } = plane.model.geometry
  const { mount } = plane
  const { product, at } = kit.mount
  const report = product.test_report?.id === undefined ? '' : `, report ${product.test_report.id}`
  const on: OnPlane = {
    id: `structure.${id}.mount`,
    at,
    framing: `structure.framing.${id}`,
    sheet: { document: `${product.sheet ?? `sheet of mount ${kit.mount.id}`}${report}`, standing: 'project file' },
  }
  reportUnusedKeys(kit.mount, worksheet)
  switch (mount.kind) {
    case 'standing_seam_clamp':
      recordSeam(on, mount, worksheet)
      noteUnseen(on, 'seam', worksheet)
      break
    case 'tile_hook':
      recordHook(on, mount, product.hook ?? {}, worksheet)
      break
    case 'deck':
      recordDeck(on, mount, own(project.structure?.framing, id)?.sheathing?.nail_spacing_in ?? 0, worksheet)
      noteUnseen(on, 'deck', worksheet)
      break
    case 'structural_screw':
      recordScrew(on, mount, product.structural_screw?.sheet ?? '', worksheet)
      break
    case undefined:
    case 'rafter_screw':
  }
  if (gridOf(mount) === 'rafter') return
  worksheet.find({
    severity: 'note',
    id: 'structure.load-not-on-rafter',
    message: `plane '${id}': the mounts stand on ${gridOf(mount) === 'seam' ? 'seams' : 'the sheathing'}; each hands its load to the two rafters beside it, the nearer one more`,
    where: on.framing,
    source: { document: 'Statics', standing: 'read' },
    fix: 'Nothing to do; the sheathing between two rafters carries it as a beam on two supports.',
  })
}

function recordSeam(on: OnPlane, mount: SeamClampMount, worksheet: Worksheet): void {
  const roof = `${on.framing}.standing_seam`
  worksheet.step({
    id: `${on.id}.clip`,
    says: 'What one clip of the panel holds under wind',
    formula: 'smaller of the panel test and n W t CD of its screws through the sheathing',
    inputs: [
      ...(mount.clipSheetLb === undefined
        ? []
        : [{ symbol: 'test', value: mount.clipSheetLb, unit: 'lb', from: `${roof}.clip_capacity_lb` }]),
      ...(mount.clipScrewsLb === undefined
        ? []
        : [
            { symbol: 'n W t', value: mount.clipScrewsLb, unit: 'lb', from: `${roof}.clip_screws` },
            { symbol: 'CD', value: LOAD_DURATION.wind, unit: '', from: 'table 2.3.2' },
          ]),
    ],
    result: { symbol: 'clip', value: clipCapacityLb(mount, LOAD_DURATION.wind), unit: 'lb' },
    source:
      mount.clipScrewsLb === undefined
        ? { document: 'Test of the panel', standing: 'project file' }
        : WOOD_SCREW_WITHDRAWAL,
  })
  worksheet.step({
    id: `${on.id}.clip-share`,
    says: 'Share of the pull of a clamp that the nearer clip takes; the wind on its own part of the panel comes on top',
    formula: 'share = (c - a) / c',
    inputs: [
      { symbol: 'c', value: mount.clipSpacingIn, unit: 'in', from: `${roof}.clip_spacing_in` },
      { symbol: 'a', value: mount.clampFromClipIn, unit: 'in', from: `${roof}.clamp_from_clip_in, 0 when missing` },
    ],
    result: { symbol: 'share', value: (mount.clipSpacingIn - mount.clampFromClipIn) / mount.clipSpacingIn, unit: '' },
    source: { document: 'Statics of a beam on two clips', standing: 'read' },
    limits: 'modules above are not taken to keep the wind off the panel',
  })
  if (mount.seamMomentLbIn !== undefined) return
  worksheet.find({
    severity: 'warning',
    id: 'structure.seam-bending-not-checked',
    message: `what the seam bears between two clips is not stated, so its bending under a clamp is not checked; clamps on one seam keep the distance of the clips`,
    where: `${roof}.seam_moment_lb_in`,
    source: { document: 'Safe rule for seams: the same pattern as the clips', standing: 'common practice, no source' },
    fix: 'Set each clamp beside a clip, or state the allowable moment from the test of the panel.',
  })
}

type Hook = NonNullable<RailKit['mount']['product']['hook']>

function recordHook(on: OnPlane, mount: TileHookMount, stated: Hook, worksheet: Worksheet): void {
  const hook = `${on.at}.hook`
  worksheet.step({
    id: `${on.id}.neck`,
    says: 'Load at right angles to the roof that the neck of a hook bears',
    formula: 'N = Fy Z / (factor e)',
    inputs: [
      { symbol: 'Fy', value: stated.yield_ksi ?? 0, unit: 'ksi', from: `${hook}.yield_ksi` },
      {
        symbol: 'Z',
        value: stated.neck_section_modulus_in3 ?? 0,
        unit: 'in3',
        from: `${hook}.neck_section_modulus_in3`,
      },
      { symbol: 'factor', value: STEEL_BENDING_FACTOR, unit: '', from: 'AISC 360 chapter F' },
      { symbol: 'e', value: mount.armIn, unit: 'in', from: `${hook}.arm_in` },
    ],
    result: { symbol: 'N', value: mount.neckLb, unit: 'lb' },
    source: { document: 'AISC 360, chapter F, allowable strength', standing: 'from memory' },
  })
  worksheet.step({
    id: `${on.id}.prying`,
    says: 'Pull of the upper screw for each pound at right angles to the roof, up',
    formula: 'T / N = 1 + e / jd, and V h / jd on top',
    inputs: [
      { symbol: 'e', value: mount.armIn, unit: 'in', from: `${hook}.arm_in` },
      { symbol: 'jd', value: mount.screwLeverIn, unit: 'in', from: `${hook}.screw_lever_in` },
      { symbol: 'h', value: mount.heightIn, unit: 'in', from: `${hook}.height_in` },
    ],
    result: { symbol: 'T / N', value: 1 + mount.armIn / mount.screwLeverIn, unit: '' },
    source: { document: 'Statics of a base that bears on its edge', standing: 'read' },
    limits: 'one screw takes the whole pull; a second one stands above or below it and shares the shear only',
  })
  worksheet.step({
    id: `${on.id}.tile`,
    says: 'Load at which a hook touches the tile below it',
    formula: 'N = tested load gap / deflection at the tested load',
    inputs: [
      { symbol: 'gap', value: stated.tile_gap_in ?? 0, unit: 'in', from: `${hook}.tile_gap_in` },
      { symbol: 'deflection', value: stated.deflection_in ?? 0, unit: 'in', from: `${hook}.deflection_in` },
    ],
    result: { symbol: 'N', value: mount.tileContactLb, unit: 'lb' },
    source: on.sheet,
  })
}

/** What no input shows, so that only a person can look at it. */
function noteUnseen(on: OnPlane, kind: 'seam' | 'deck', worksheet: Worksheet): void {
  if (kind === 'seam') {
    worksheet.find({
      severity: 'note',
      id: 'structure.seam-float-not-checked',
      message: 'whether rails across many seams leave the panels free to move with heat is not checked',
      where: on.at,
      source: on.sheet,
      fix: 'Keep to the longest rail between gaps that the sheets of clamp and panel allow.',
    })
    return
  }
  worksheet.find({
    severity: 'note',
    id: 'structure.deck-panel-edges-not-checked',
    message:
      'whether mounts keep the distance of their sheet from the edges of the sheathing, and whether there is a second layer of covering under them, is not checked',
    where: on.framing,
    source: on.sheet,
    fix: 'Look for the joints of the sheathing from the attic and mark them on the roof before the layout.',
  })
}

function recordDeck(on: OnPlane, mount: DeckMount, spacingIn: number, worksheet: Worksheet): void {
  worksheet.step({
    id: `${on.id}.nails`,
    says: 'What the nails of the sheathing within 12 in up and down one rafter hold under wind',
    formula: 'n 1380 G^2.5 D p CD CM Ct',
    inputs: [
      { symbol: 'spacing', value: spacingIn, unit: 'in', from: `${on.framing}.sheathing.nail_spacing_in` },
      { symbol: 'CD', value: LOAD_DURATION.wind, unit: '', from: 'table 2.3.2' },
      { symbol: 'share', value: nearRafterShare(mount), unit: '', from: `${on.at}.deck.from_rafter_in` },
    ],
    result: { symbol: 'nails', value: mount.nailsLb * LOAD_DURATION.wind, unit: 'lb' },
    source: NAIL_WITHDRAWAL,
    limits:
      'they hold the pull of the mount and the wind on the roof itself; CM is 0.25 unless the framing was dry when nailed and since',
  })
}

function recordScrew(on: OnPlane, mount: StructuralScrewMount, report: string, worksheet: Worksheet): void {
  worksheet.step({
    id: `${on.id}.withdrawal`,
    says: 'Withdrawal of all structural screws of a mount under wind',
    formula: "W' = n W pt CD CM Ct, W of the report of the screw",
    inputs: [
      { symbol: 'n', value: mount.screwCount, unit: '', from: `${on.at}.structural_screw.count` },
      { symbol: 'W pt', value: mount.withdrawalLb, unit: 'lb', from: `${on.at}.structural_screw.withdrawal_lb_per_in` },
      { symbol: 'CD', value: LOAD_DURATION.wind, unit: '', from: 'table 2.3.2' },
      { symbol: 'CM Ct', value: mount.serviceFactor, unit: '', from: on.framing },
    ],
    result: {
      symbol: "W'",
      value: mount.screwCount * mount.withdrawalLb * LOAD_DURATION.wind * mount.serviceFactor,
      unit: 'lb',
    },
    source: { document: report, standing: 'project file' },
  })
}
