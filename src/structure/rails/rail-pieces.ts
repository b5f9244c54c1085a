import { at, type Inches } from '../../values/index.js'

/** A rail and the rules for its joints. */
export interface RailCut {
  readonly startIn: Inches
  readonly endIn: Inches
  readonly mountsIn: readonly Inches[]
  readonly stockLengthsIn: readonly Inches[]
  readonly minFromMountIn: Inches
  /** Largest distance from a joint to the nearer mount as a share of the span. */
  readonly maxFromMountOfSpan: number
  readonly allowedInEndSpan: boolean
  /** Whether a joint may lie at one of the places; at all of them when missing. */
  readonly isAllowed?: (xIn: number) => boolean
}

/** Mounts that each piece needs: a piece on one mount is held by its joint alone. @source statics */
const LEAST_MOUNTS = 2

export interface RailPieces {
  readonly piecesIn: readonly Inches[]
  /** Places of the joints in plane coordinates, in. */
  readonly splicesIn: readonly Inches[]
}

const STEP_IN = 1

/** Places where a joint may lie, on a net of one inch and at the bounds. */
export function jointPlaces(cut: RailCut): { x: number; span: number }[] {
  const places: { x: number; span: number }[] = []
  const last = cut.mountsIn.length - 2
  for (let span = 0; span <= last; span++) {
    if (!cut.allowedInEndSpan && (span === 0 || span === last)) continue
    const [a, b] = [at(cut.mountsIn, span), at(cut.mountsIn, span + 1)]
    const reach = cut.maxFromMountOfSpan * (b - a)
    for (let d = cut.minFromMountIn; d <= b - a - cut.minFromMountIn + 1e-9; d += STEP_IN) {
      const x = a + d
      if (Math.min(d, b - a - d) <= reach + 1e-9 && cut.isAllowed?.(x) !== false) places.push({ x, span })
    }
  }
  return places
}

function mountsBetween(mountsIn: readonly Inches[], fromIn: Inches, toIn: Inches): number {
  return mountsIn.filter((x) => x >= fromIn - 1e-9 && x <= toIn + 1e-9).length
}

/** Shortest stock length that holds a piece, in. */
function shortestStock(stockLengthsIn: readonly Inches[], length: number): number {
  let shortest = Infinity
  for (const stock of stockLengthsIn) if (stock >= length - 1e-9 && stock < shortest) shortest = stock
  return shortest
}

/**
 * Cuts a rail from stock lengths: the fewest pieces, then the least waste, with at most one joint a span, every joint at its
 * distance from the mounts and every piece on two mounts.
 *
 * @param leastMounts Mounts that each piece needs.
 * @returns The pieces from left to right, or undefined when no set of joints obeys the rules.
 */
export function cutRail(cut: RailCut, leastMounts: number = LEAST_MOUNTS): RailPieces | undefined {
  const longest = Math.max(...cut.stockLengthsIn)
  if (cut.endIn - cut.startIn <= longest + 1e-9) return { piecesIn: [cut.endIn - cut.startIn], splicesIn: [] }
  const nodes = [{ x: cut.startIn, span: -1 }, ...jointPlaces(cut), { x: cut.endIn, span: Infinity }]
  const best: ({ pieces: number; waste: number; from: number } | undefined)[] = [{ pieces: 0, waste: 0, from: -1 }]
  // Nodes ascend, so that what is too far from one is too far from all that follow.
  let nearest = 0
  for (let to = 1; to < nodes.length; to++) {
    const target = at(nodes, to)
    while (target.x - at(nodes, nearest).x > longest + 1e-9) nearest += 1
    for (let from = nearest; from < to; from++) {
      const origin = at(nodes, from)
      const before = best[from]
      if (before === undefined || origin.span === target.span) continue
      const held = best[to]
      const pieces = before.pieces + 1
      if (held !== undefined && pieces > held.pieces) continue
      if (mountsBetween(cut.mountsIn, origin.x, target.x) < leastMounts) continue
      const length = target.x - origin.x
      const waste = before.waste + (shortestStock(cut.stockLengthsIn, length) - length)
      if (held === undefined || pieces < held.pieces || waste < held.waste - 1e-9) best[to] = { pieces, waste, from }
    }
  }
  const splices: number[] = []
  const last = best[nodes.length - 1]
  if (last === undefined) return undefined
  for (let from = last.from; from > 0; from = at(best, from).from) splices.unshift(at(nodes, from).x)
  const bounds = [cut.startIn, ...splices, cut.endIn]
  return { piecesIn: bounds.slice(1).map((x, index) => x - at(bounds, index)), splicesIn: splices }
}
