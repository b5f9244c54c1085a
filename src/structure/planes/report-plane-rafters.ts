import type { Worksheet } from '../../worksheet/index.js'
import { reportProposals } from './rafter-proposals.js'
import { reportGravity } from './report-gravity.js'
import { reportRafters } from './report-rafters.js'
import { reportSpans } from './report-spans.js'
import type { SolvedPlane } from './solve-plane.js'

/** Writes what the rafters, or the trusses, of a plane carry on the worksheet. */
export function reportPlaneRafters(plane: SolvedPlane, worksheet: Worksheet): void {
  const { model, framing, arrays, covered, rafters } = plane
  const { id } = model.geometry
  const arrayDead = Math.max(0, ...[...arrays.values()].map((a) => a.dead.mostPsf))
  if (rafters === undefined) {
    reportTrusses(plane, worksheet)
  } else {
    reportSpans(model, framing, rafters.result, covered, worksheet)
    reportRafters({ id, ...rafters, covered }, worksheet)
    reportProposals(id, plane.proposals, worksheet)
  }
  reportGravity(model, framing, arrayDead, model.snowPsf.roof, worksheet)
}

/** Trusses are not judged here: their engineer is, on the loads that are printed. */
function reportTrusses({ model, covered }: SolvedPlane, worksheet: Worksheet): void {
  const { id } = model.geometry
  worksheet.find({
    severity: covered === undefined ? 'error' : 'note',
    id: 'structure.truss-not-checked',
    message: `plane '${id}': the trusses are not judged here; a factory-made truss must get no new load, hole or screw off its middle without its designer${covered === undefined ? '' : `; covered by ${covered}`}`,
    where: `structure.framing.${id}.kind`,
    source: { document: 'IRC', place: 'R802.10.4', standing: 'from memory' },
    fix: 'Write the load sheet (space-mounts --load-sheet FILE.pdf), give it to the designer of the trusses or a structural engineer, put the letter under documents and name its id as rafters_verified_by.',
  })
}
