import type { Worksheet } from '../../worksheet/index.js'
import { type LaidRail, cutRail, type RailCut, type RailPieces } from '../rails/index.js'
import { type RailValue, need } from '../model/index.js'
import type { RailKit } from './plane-rails.js'
import { at, feetOf, inchesOf } from '../../values/index.js'

/** Length of the first piece with fewer than two mounts, in. */
function pieceOnOneMount({ piecesIn, splicesIn }: RailPieces, rail: LaidRail): number {
  const bounds = [rail.loaded.line.startIn, ...splicesIn, rail.loaded.line.endIn]
  return (
    piecesIn.find((_, i) => {
      const [from, to] = [at(bounds, i), at(bounds, i + 1)]
      return rail.supportsIn.filter((x) => x >= from && x <= to).length < 2
    }) ?? 0
  )
}

const SHEET = 'It stands on the data sheet of the rail.'

/**
 * Cuts a laid rail from stock and describes it.
 *
 * @throws StageError when the sheet's stock lengths or splice rules are needed and missing.
 */
export function cutLaidRail(rail: LaidRail, kit: RailKit, worksheet: Worksheet): RailValue {
  const { line } = rail.loaded
  const length = line.endIn - line.startIn
  const cut = cutFromStock(rail, kit, worksheet)
  findExpansion(rail, kit, worksheet)
  const left = (rail.supportsIn[0] ?? line.startIn) - line.startIn
  const right = line.endIn - (rail.supportsIn.at(-1) ?? line.endIn)
  return {
    id: line.id,
    plane: line.plane,
    x_in: line.startIn,
    y_in: line.yIn,
    length_in: length,
    pieces_in: cut?.piecesIn ?? [length],
    splices_in: cut?.splicesIn ?? [],
    overhang_in: Math.max(left, right),
    overhang_left_in: left,
    overhang_right_in: right,
  }
}

/** What to cut: the rail, its mounts, and what the sheet says of stock lengths and splices. */
function railCutOf(rail: LaidRail, kit: RailKit): RailCut {
  const { startIn, endIn } = rail.loaded.line
  const { product, at: sheet } = kit.rail
  const stock = need(product.stock_lengths_in, `${sheet}.stock_lengths_in`, 'the stock lengths of the rail', SHEET)
  const needsSplice = endIn - startIn > Math.max(...stock) + 1e-9
  return {
    startIn,
    endIn,
    mountsIn: rail.supportsIn,
    stockLengthsIn: stock,
    minFromMountIn: needsSplice
      ? need(
          product.splice?.min_from_mount_in,
          `${sheet}.splice.min_from_mount_in`,
          'the least distance from a splice to a mount',
          SHEET,
        )
      : 0,
    maxFromMountOfSpan: product.splice?.max_from_mount_of_span ?? 0.5,
    allowedInEndSpan: product.splice?.allowed_in_end_span ?? !needsSplice,
  }
}

/** Pieces that stand on two mounts each, else any pieces with an error; undefined, with an error, when no cut is allowed. */
function cutFromStock(rail: LaidRail, kit: RailKit, worksheet: Worksheet): RailPieces | undefined {
  const { line } = rail.loaded
  const asked = railCutOf(rail, kit)
  const whole = cutRail(asked)
  if (whole !== undefined) return whole
  const cut = cutRail(asked, 0)
  const length = (line.endIn - line.startIn).toFixed(1)
  const where = `${kit.rail.at}.stock_lengths_in`
  if (cut === undefined) {
    worksheet.find({
      severity: 'error',
      id: 'structure.rail-splice',
      message: `rail ${line.id} of ${length} in cannot be cut from the stock lengths with every splice where the sheet allows it`,
      where,
      fix: 'Add a stock length, or move a mount.',
    })
  } else {
    worksheet.find({
      severity: 'error',
      id: 'structure.rail-piece-mounts',
      message: `rail ${line.id} of ${length} in cannot be cut so that each piece stands on two mounts; a piece of ${pieceOnOneMount(cut, rail).toFixed(1)} in stands on fewer`,
      where,
      source: { document: 'Statics: a piece on one mount turns about it', standing: 'read' },
      fix: 'Add a longer stock length, or put the mounts closer together.',
    })
  }
  return cut
}

/** Warns of a rail that is longer than may run without a gap. */
function findExpansion(rail: LaidRail, kit: RailKit, worksheet: Worksheet): void {
  const { line } = rail.loaded
  const length = line.endIn - line.startIn
  const longest = kit.rail.product.splice?.max_continuous_ft
  if (longest === undefined || length <= inchesOf(longest)) return
  worksheet.find({
    severity: 'warning',
    id: 'structure.rail-expansion',
    message: `rail ${line.id} is ${feetOf(length).toFixed(1)} ft long, over the ${longest} ft that may run without an expansion gap`,
    where: `${kit.rail.at}.splice.max_continuous_ft`,
    fix: 'Leave an expansion gap; no module may bridge it.',
  })
}
