import { LAG_GEOMETRY, LAG_SCREWS } from '../../tables/nds/index.js'
import type { RoofProject } from '../../project/index.js'
import { own } from '../../values/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import { leadHoleIn } from '../fasteners/index.js'
import { lagsOf, type LagScrews } from '../mounts/index.js'
import { reportCovering } from './report-covering.js'
import { reportMountLimits } from './report-mount-limits.js'
import type { RailKit, SolvedPlane } from '../planes/index.js'

/** Findings about drilling, screw spacing and covering on one plane, and what the sheet of the mount limits. */
export function reportFieldRules(project: RoofProject, plane: SolvedPlane, kit: RailKit, worksheet: Worksheet): void {
  const { id } = plane.model.geometry
  const screws = lagsOf(plane.mount)
  if (screws !== undefined) reportLags(plane, screws, kit, worksheet)
  reportCovering(id, plane.framing.covering, kit, worksheet)
  reportMountLimits(project, plane, kit, worksheet)
  reportDamage(project, id, worksheet)
}

function reportDamage(project: RoofProject, plane: string, worksheet: Worksheet): void {
  if (own(project.structure?.framing, plane)?.sheathing?.damaged !== true) return
  worksheet.find({
    severity: 'error',
    id: 'structure.sheathing-damaged',
    message: `plane '${plane}': the sheathing under the array is stated as damaged`,
    where: `structure.framing.${plane}.sheathing.damaged`,
    source: { document: 'Trade practice before a roof is covered', standing: 'common practice, no source' },
    fix: 'Have it replaced, and the rafters under it looked at, before anything is mounted.',
  })
}

/** Lead hole, distance of two screws, and where the rafter must be met. */
function reportLags(plane: SolvedPlane, screws: LagScrews, kit: RailKit, worksheet: Worksheet): void {
  const { id } = plane.model.geometry
  const { size } = screws.lag
  const { lag } = kit.mount.product
  const hole = leadHoleIn(screws.specificGravity, size)
  if (
    lag?.lead_hole_in !== undefined &&
    (lag.lead_hole_in < hole.leastIn - 1e-9 || lag.lead_hole_in > hole.mostIn + 1e-9)
  ) {
    worksheet.find({
      severity: 'warning',
      id: 'structure.lead-hole',
      message: `a lead hole of ${lag.lead_hole_in} in is outside ${hole.leastIn.toFixed(3)} to ${hole.mostIn.toFixed(3)} in for a ${size} in screw in the rafters of plane '${id}'`,
      where: `${kit.mount.at}.lag.lead_hole_in`,
      source: { document: 'NDS 2018', place: '12.1.4.2', standing: 'from memory' },
      fix: 'Use a drill within that range; too large a hole loses holding power, too small a one splits the rafter.',
    })
  }
  const least = LAG_GEOMETRY.spacing * LAG_SCREWS[size].diameterIn
  if (lag !== undefined && lag.count > 1 && (lag.in_line_spacing_in ?? 0) < least) {
    worksheet.find({
      severity: 'error',
      id: 'structure.lag-spacing',
      message: `two ${size} in screws ${lag.in_line_spacing_in ?? 0} in apart are closer than 4 diameters (${least.toFixed(2)} in)`,
      where: `${kit.mount.at}.lag.in_line_spacing_in`,
      source: { document: 'NDS 2018', place: 'table 12.5.1B', standing: 'secondary' },
      fix: 'Choose a mount with its screws farther apart.',
    })
  }
  worksheet.find({
    severity: 'note',
    id: 'structure.rafter-probe',
    message: `plane '${id}': a ${size} in screw must sit within ${(plane.framing.breadthIn / 2 - LAG_GEOMETRY.edge * LAG_SCREWS[size].diameterIn).toFixed(2)} in of the middle of the rafter`,
    where: `structure.framing.${id}`,
    source: { document: 'NDS 2018', place: 'table 12.5.1C', standing: 'secondary' },
    fix: 'Find both edges of the rafter with a probe before drilling.',
  })
}
