import { continuousRailFt } from '../../roof/index.js'
import type { RoofProject } from '../../project/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import type { RailPieces } from '../rails/index.js'
import type { RailValue } from '../model/index.js'
import type { RailKit } from './plane-rails.js'
import type { SplicedRail } from './splice-rails.js'
import { at, feetOf, inchesOf } from '../../values/index.js'

/** Describes a rail that is cut from stock, with findings about joints that break a rule and runs that are too long. */
export function cutLaidRail(rail: SplicedRail, kit: RailKit, project: RoofProject, worksheet: Worksheet): RailValue {
  const { line } = rail.loaded
  const length = line.endIn - line.startIn
  findSplices(rail, kit, worksheet)
  findExpansion(rail, kit, project, worksheet)
  const left = (rail.supportsIn[0] ?? line.startIn) - line.startIn
  const right = line.endIn - (rail.supportsIn.at(-1) ?? line.endIn)
  return {
    id: line.id,
    plane: line.plane,
    x_in: line.startIn,
    y_in: line.yIn,
    length_in: length,
    pieces_in: rail.pieces?.piecesIn ?? [length],
    splices_in: rail.pieces?.splicesIn ?? [],
    overhang_in: Math.max(left, right),
    overhang_left_in: left,
    overhang_right_in: right,
  }
}

/** Length of the first piece with fewer than two mounts, in. */
function pieceOnOneMount({ piecesIn, splicesIn }: RailPieces, rail: SplicedRail): number {
  const bounds = [rail.loaded.line.startIn, ...splicesIn, rail.loaded.line.endIn]
  return (
    piecesIn.find((_, i) => {
      const [from, to] = [at(bounds, i), at(bounds, i + 1)]
      return rail.supportsIn.filter((x) => x >= from && x <= to).length < 2
    }) ?? 0
  )
}

/** Findings about a rail whose pieces or joints break a rule. */
function findSplices(rail: SplicedRail, kit: RailKit, worksheet: Worksheet): void {
  const { line } = rail.loaded
  const name = `rail ${line.id} of ${(line.endIn - line.startIn).toFixed(1)} in`
  const where = `${kit.rail.at}.stock_lengths_in`
  const splice = `${kit.rail.at}.splice`
  if (rail.state === 'no cut') {
    worksheet.find({
      severity: 'error',
      id: 'structure.rail-splice',
      message: `${name} cannot be cut from the stock lengths with every splice where the sheet allows it`,
      where,
      fix: 'Add a stock length, or move a mount.',
    })
  } else if (rail.state === 'piece on one mount' && rail.pieces !== undefined) {
    worksheet.find({
      severity: 'error',
      id: 'structure.rail-piece-mounts',
      message: `${name} cannot be cut so that each piece stands on two mounts; a piece of ${pieceOnOneMount(rail.pieces, rail).toFixed(1)} in stands on fewer`,
      where,
      source: { document: 'Statics: a piece on one mount turns about it', standing: 'read' },
      fix: 'Add a longer stock length, or put the mounts closer together.',
    })
  } else if (rail.state === 'joint too weak') {
    worksheet.find({
      severity: 'error',
      id: 'structure.splice-not-held',
      message: `${name} cannot be cut so that every joint takes the moment and shear at its place and keeps out of the middle fifth of a span`,
      where: splice,
      source: { document: 'Statics of the continuous rail', standing: 'read' },
      fix: 'Add a stock length, put the mounts closer together, or use a stronger joint.',
    })
  } else if (rail.state === 'hinge off zero') {
    worksheet.find({
      severity: 'warning',
      id: 'structure.splice-hinge-place',
      message: `${name} cannot be cut with every joint near a place without moment; rail and mounts are checked with the joints as hinges where they are`,
      where: splice,
      source: { document: 'Statics of the continuous rail', standing: 'read' },
      fix: 'State the moment that the joint takes, or add a stock length.',
    })
  }
}

/** Tells of a rail that is longer than may run without an expansion break, and has no gap for one. */
function findExpansion(rail: SplicedRail, kit: RailKit, project: RoofProject, worksheet: Worksheet): void {
  const { line } = rail.loaded
  const length = line.endIn - line.startIn
  const { lengthFt, stated } = continuousRailFt(project)
  if (length <= inchesOf(lengthFt) + 1e-6) return
  worksheet.find({
    severity: stated ? 'error' : 'warning',
    id: 'structure.rail-expansion',
    message: `rail ${line.id} is ${feetOf(length).toFixed(1)} ft long, over the ${lengthFt} ft that may run without an expansion gap${stated ? '' : ' (common practice; the sheet states none)'}, and no gap between its modules has room for an end clamp on each side`,
    where: `${kit.rail.at}.splice.max_continuous_ft`,
    fix: 'Leave a wider gap between two modules of the row, so that the rails end on both sides of it; no module may bridge it.',
  })
}
