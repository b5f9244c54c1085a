import type { RoofProject } from '../../project/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import { own } from '../../values/index.js'
import { screwThroughSheathingLb } from '../fasteners/index.js'
import { LOAD_DURATION, WOOD_SCREW_WITHDRAWAL } from '../../tables/nds/index.js'
import type { RailKit, SolvedPlane } from '../planes/index.js'
import { topHeightIn } from '../planes/index.js'

/** A tested uplift of a deck mount over this many times the withdrawal of its screws is suspect. @source common practice, no source */
const SUSPECT_TIMES = 3

/** Findings where roof, array or metals leave what the sheet of the mount allows, or the sheet itself is not plausible. */
export function reportMountLimits(project: RoofProject, plane: SolvedPlane, kit: RailKit, worksheet: Worksheet): void {
  reportRange(project, plane, kit, worksheet)
  if (plane.mount.kind === 'standing_seam_clamp') reportMetals(project, plane, kit, worksheet)
  if (plane.mount.kind === 'deck') reportPlausible(project, plane, kit, worksheet)
}

function reportRange(project: RoofProject, plane: SolvedPlane, { mount }: RailKit, worksheet: Worksheet): void {
  const { at, product } = mount
  const { id, tiltDeg } = plane.model.geometry
  const sheet = { document: product.sheet ?? `sheet of mount ${mount.id}`, standing: 'project file' as const }
  const [least = 0, most = 90] = product.slope_range_deg ?? []
  const topIn = Math.max(...plane.model.modules.map((module) => topHeightIn(project, module.array)))
  const roofFt = project.structure?.wind?.mean_roof_height_ft ?? 0
  const limits = [
    [
      tiltDeg < least - 1e-9 || tiltDeg > most + 1e-9,
      `a slope of ${tiltDeg.toFixed(1)} degrees`,
      'slope_range_deg',
      `${least} to ${most} degrees`,
    ],
    [
      topIn > (product.max_module_height_in ?? Infinity),
      `modules ${topIn.toFixed(2)} in high above the roof`,
      'max_module_height_in',
      `at most ${product.max_module_height_in ?? 0} in`,
    ],
    [
      roofFt > (product.max_roof_height_ft ?? Infinity),
      `a mean roof height of ${roofFt} ft`,
      'max_roof_height_ft',
      `at most ${product.max_roof_height_ft ?? 0} ft`,
    ],
  ] as const
  for (const [broken, what, key, allowed] of limits) {
    if (!broken) continue
    worksheet.find({
      severity: 'error',
      id: 'structure.mount-sheet-range',
      message: `plane '${id}': ${what} is outside the sheet of mount '${mount.id}', which allows ${allowed}`,
      where: `${at}.${key}`,
      source: sheet,
      fix: 'Use a mount whose sheet covers this roof and array.',
    })
  }
}

/** Metals of clamp, panel and screws that eat each other when wet. */
function reportMetals(project: RoofProject, plane: SolvedPlane, { mount }: RailKit, worksheet: Worksheet): void {
  const { id } = plane.model.geometry
  const panel = own(project.structure?.framing, id)?.standing_seam?.metal
  const { clamp_metal: clamp, hardware_metal: hardware } = mount.product.seam_clamp ?? {}
  const where = `${mount.at}.seam_clamp`
  const source = { document: 'Trade practice for metals that touch', standing: 'common practice, no source' as const }
  if (clamp === undefined || hardware === undefined) {
    worksheet.find({
      severity: 'error',
      id: 'structure.seam-metals-not-stated',
      message: `the metal of the ${clamp === undefined ? 'clamp' : 'screws'} of mount '${mount.id}' is not stated, so whether it may touch the panels of plane '${id}' is not checked`,
      where,
      fix: 'State clamp_metal and hardware_metal from the sheet.',
    })
  }
  const eaten = panel === 'copper' && clamp === 'aluminum' ? 'aluminum clamps on copper panels' : undefined
  const plated = hardware === 'zinc_plated' ? 'zinc-plated screws in seam clamps' : undefined
  for (const what of [eaten, plated]) {
    if (what === undefined) continue
    worksheet.find({
      severity: 'error',
      id: 'structure.seam-metals',
      message: `plane '${id}': ${what} corrode`,
      where,
      source,
      fix: 'Use clamps of a metal that may touch the panels (brass on copper), with stainless hardware.',
    })
  }
}

/** A test far above what the wood gives is another mount, another panel or a wrong digit. */
function reportPlausible(project: RoofProject, plane: SolvedPlane, { mount }: RailKit, worksheet: Worksheet): void {
  const { id } = plane.model.geometry
  const framing = own(project.structure?.framing, id)
  const { screws, screw_size: size } = mount.product.deck ?? {}
  const kind = framing?.sheathing?.kind
  if (screws === undefined || size === undefined || kind === undefined) {
    worksheet.find({
      severity: 'error',
      id: 'structure.deck-test-not-compared',
      message: `mount '${mount.id}': number and size of its screws are not stated, so whether its tested uplift is plausible is not checked`,
      where: `${mount.at}.deck`,
      fix: 'State screws and screw_size from the sheet.',
    })
    return
  }
  const line = screws * screwThroughSheathingLb(size, kind, framing?.sheathing_in ?? 0) * LOAD_DURATION.wind
  if (plane.mount.upliftLb <= SUSPECT_TIMES * line) return
  worksheet.find({
    severity: 'error',
    id: 'structure.deck-test-suspect',
    message: `mount '${mount.id}': an allowable uplift of ${plane.mount.upliftLb.toFixed(0)} lb is over ${SUSPECT_TIMES} times the ${line.toFixed(0)} lb that ${screws} screws ${size} would hold in this sheathing by withdrawal`,
    where: `${mount.at}.deck.tests`,
    source: WOOD_SCREW_WITHDRAWAL,
    fix: 'Read the report again: sheathing, number of screws, ultimate or allowable.',
  })
}
