import type { FramingSpec } from './framing-spec.js'
import type { PlaneEdgeKind, PlaneGeometry } from '../model/index.js'
import { feetOf, inchesOf, radiansOf, type Inches } from '../../values/index.js'

/** A rafter of a plane on its supports, horizontal distances from the plane's lowest eave, in. */
export interface RafterSpans {
  /** Ends of the rafter; the lower one may overhang. */
  readonly lowIn: Inches
  readonly highIn: Inches
  /** Ascending; two or more where there is a span to check. */
  readonly supportsIn: readonly Inches[]
  /** Edges of the plane where it begins and ends. */
  readonly lowKind: PlaneEdgeKind
  readonly highKind: PlaneEdgeKind
}

/** A mount this near to a support stands on it, and two supports this near are one: half a wall and a ridge board, in. */
export const OVER_SUPPORT_IN = 6

type Spans = Pick<FramingSpec, 'spansFt' | 'eaveOverhangIn'>

/** Horizontal distance of a height of the plane from its lowest eave, in. */
export function planInOf(plane: PlaneGeometry, yIn: number): number {
  return (yIn - 12 * Math.min(...plane.edges.map((edge) => edge.from.yFt))) * cosOf(plane)
}

function cosOf(plane: PlaneGeometry): number {
  return Math.cos(radiansOf(plane.tiltDeg))
}

/**
 * The rafters at a place of the eave with their supports: the wall under the plane's lowest eave, then at the stated spans.
 *
 * A rafter that begins or ends elsewhere (at a hip, a valley, a notch) rests on its own wall or on that edge. The part above the
 * last stated span has no support.
 *
 * @param xIn Place along the eave, in.
 */
export function raftersAt(plane: PlaneGeometry, framing: Spans, xIn: number): RafterSpans[] {
  let support = framing.eaveOverhangIn
  const lines = [support, ...framing.spansFt.map((spanFt) => (support += inchesOf(spanFt)))]
  return stretchesAt(plane, xIn).map(({ lowIn, highIn, lowKind, highKind }) => {
    const supportsIn = [lowKind === 'eave' ? lowIn + framing.eaveOverhangIn : lowIn]
    for (const line of lines) {
      if (line > (supportsIn.at(-1) ?? 0) + OVER_SUPPORT_IN && line <= highIn) supportsIn.push(line)
    }
    const rest = highIn - (supportsIn.at(-1) ?? 0)
    if ((lines.at(-1) ?? 0) > highIn && rest > 1) supportsIn.push(highIn)
    return { lowIn, highIn, supportsIn, lowKind, highKind }
  })
}

/** Whether a mount stands on a part of the rafter whose supports are known. */
export function isOnKnownSpan({ supportsIn }: RafterSpans, xIn: number): boolean {
  const [first, last] = [supportsIn[0] ?? Infinity, supportsIn.at(-1) ?? -Infinity]
  return xIn >= first - OVER_SUPPORT_IN && xIn <= last + OVER_SUPPORT_IN
}

interface Stretch {
  readonly lowIn: Inches
  readonly highIn: Inches
  readonly lowKind: PlaneEdgeKind
  readonly highKind: PlaneEdgeKind
}

/** Where a line up the slope lies within the plane; more than once in a plane with a deep notch. */
function stretchesAt(plane: PlaneGeometry, xIn: number): Stretch[] {
  // A hair beside a corner a line crosses each edge once or not at all.
  const right = stretchesBeside(plane, feetOf(xIn) + HAIR_FT)
  return right.length > 0 ? right : stretchesBeside(plane, feetOf(xIn) - HAIR_FT)
}

const HAIR_FT = 1e-7

function stretchesBeside(plane: PlaneGeometry, xFt: number): Stretch[] {
  const crossings = plane.edges
    .filter(({ from, to }) => from.xFt > xFt !== to.xFt > xFt)
    .map(({ kind, from, to }) => {
      const yFt = from.yFt + ((xFt - from.xFt) / (to.xFt - from.xFt)) * (to.yFt - from.yFt)
      return { kind, atIn: planInOf(plane, inchesOf(yFt)) }
    })
    .sort((a, b) => a.atIn - b.atIn)
  const stretches: Stretch[] = []
  for (let i = 0; i + 1 < crossings.length; i += 2) {
    const [low, high] = [crossings[i], crossings[i + 1]]
    if (low !== undefined && high !== undefined) {
      stretches.push({ lowIn: low.atIn, highIn: high.atIn, lowKind: low.kind, highKind: high.kind })
    }
  }
  return stretches
}
