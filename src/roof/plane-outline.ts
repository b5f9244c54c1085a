import type { Outline } from '../project/index.js'
import { StageError, type Source, type Worksheet } from '../worksheet/index.js'
import type { EdgeKind, PlaneEdge } from './plane-edge.js'
import { crossingEdges, segmentsOf, signedAreaFt2, TOLERANCE_FT, type Point } from '../values/index.js'
import { shapeCorners } from './shape-corners.js'

const INFERRED: Source = {
  document:
    'Direction of the edge: level edges are eave or ridge, those straight up the slope are rakes, others hip or valley',
  standing: 'common practice, no source',
}

/**
 * Edges of a roof plane, counter-clockwise from the left end of the eave.
 *
 * @param outline The outline as stated.
 * @param path Dotted path of the outline.
 * @param worksheet Takes the kinds of edges that were inferred.
 * @throws StageError when a size is missing, or the outline crosses itself, has no area or runs clockwise.
 */
export function outlineEdges(outline: Outline, path: string, worksheet: Worksheet): PlaneEdge[] {
  const corners = shapeCorners(outline, path)
  refuseDegenerate(corners, `${path}${outline.shape === 'polygon' ? '.corners' : ''}`)
  return segmentsOf(corners).map(([from, to], index) => {
    const stated = corners[index]?.edge
    const kind =
      stated ??
      worksheet.assume<EdgeKind>({
        path: `${path}.corners.${index}.edge`,
        value: inferKind(from, to),
        unit: '',
        why: 'the kind of the edge is not stated; it is taken from the direction of the edge',
        source: INFERRED,
      })
    return { kind, from, to, lengthFt: Math.hypot(to.xFt - from.xFt, to.yFt - from.yFt) }
  })
}

/** Corners run counter-clockwise, so an edge to the right has the roof above it and an edge to the left below it. */
function inferKind(from: Point, to: Point): EdgeKind {
  const [dx, dy] = [to.xFt - from.xFt, to.yFt - from.yFt]
  if (Math.abs(dy) < TOLERANCE_FT) return dx > 0 ? 'eave' : 'ridge'
  if (Math.abs(dx) < TOLERANCE_FT) return 'rake'
  return dx > 0 ? 'valley' : 'hip'
}

function refuseDegenerate(corners: readonly Point[], path: string): void {
  for (const [index, [a, b]] of segmentsOf(corners).entries()) {
    if (Math.hypot(b.xFt - a.xFt, b.yFt - a.yFt) > TOLERANCE_FT) continue
    throw new StageError(
      `${path}.${index}`,
      `corners ${index + 1} and ${((index + 1) % corners.length) + 1} are the same point (${show(a)})`,
      'Leave one of them out; the last corner joins the first by itself.',
    )
  }
  const area = signedAreaFt2(corners)
  const crossing = crossingEdges(corners)
  if (crossing !== undefined && Math.abs(area) > TOLERANCE_FT) {
    const [first, second] = crossing
    throw new StageError(
      path,
      `the outline crosses itself: the edge from corner ${first + 1} meets the edge from corner ${second + 1}`,
      'List the corners in order round the plane, counter-clockwise from the left end of the eave.',
    )
  }
  if (Math.abs(area) <= TOLERANCE_FT) {
    throw new StageError(path, 'the outline has no area: all its corners lie on one line', 'Check the corners.')
  }
  if (area < 0) {
    throw new StageError(
      path,
      'the corners run clockwise; they must run counter-clockwise, seen from outside facing the slope',
      'Turn the list round, and check that each edge kind still stands at the corner where its edge starts.',
    )
  }
}

function show(point: Point): string {
  return `x ${point.xFt} ft, y ${point.yFt} ft`
}
