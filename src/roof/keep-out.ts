import type { RoofProject, RoofPlane } from '../project/index.js'
import type { Source, Worksheet } from '../worksheet/index.js'
import { boxCorners, feetOf, own, type Box, type Feet, type Inches, type Point } from '../values/index.js'
import type { PlaneFireAccess } from './fire-access.js'
import { isFlue } from './flue.js'
import type { PlaneEdge } from './plane-edge.js'
import type { RoofSurface } from './roof-surface.js'

/** A part of a plane that must stay free of modules. */
export interface KeepOut {
  readonly kind: 'edge' | 'obstruction' | 'rescue-opening' | 'pathway' | 'module'
  /** How findings name it: `the ridge`, `chimney`. */
  readonly name: string
  /** Dotted path in project.yaml. */
  readonly path: string
  /** The thing itself, a segment or a convex figure, ft. */
  readonly thing: readonly Point[]
  /** Distance from the thing that must stay free, in. */
  readonly clearanceIn: Inches
  readonly source: Source
  /** Convex area, the strip round the thing included, ft. It is at least as large as the true distance asks. */
  readonly corners: readonly Point[]
}

const STATED: Source = { document: 'Project file', standing: 'project file' }

/** Strips along the edges: the larger of the fire access rule and the person's own clearance. */
export function edgeKeepOuts(surface: RoofSurface, plane: RoofPlane, fire: PlaneFireAccess | undefined): KeepOut[] {
  return surface.edges.map((edge, index) => {
    const ownIn = plane.edge_clearances?.[`${edge.kind}_in`] ?? plane.edge_clearance_in ?? 0
    const asked = fire === undefined ? undefined : fireStrip(edge, fire)
    const fireRules = asked !== undefined && asked.value > ownIn
    const clearanceIn = fireRules ? asked.value : ownIn
    return {
      kind: 'edge',
      name: `the ${edge.kind}`,
      path: `roof_planes.${surface.id}.outline${plane.outline?.shape === 'polygon' ? `.corners.${index}` : ''}`,
      thing: [edge.from, edge.to],
      clearanceIn,
      source: fireRules ? asked.source : STATED,
      corners: segmentStrip(edge, feetOf(clearanceIn)),
    }
  })
}

function fireStrip(edge: PlaneEdge, fire: PlaneFireAccess): PlaneFireAccess['ridgeIn'] | undefined {
  if (edge.kind === 'ridge') return fire.ridgeIn
  return edge.kind === 'hip' || edge.kind === 'valley' ? fire.hipValleyIn : undefined
}

/** The area nearer to an edge than a distance, with square instead of round ends. */
export function segmentStrip(edge: Pick<PlaneEdge, 'from' | 'to' | 'lengthFt'>, distanceFt: Feet): Point[] {
  if (distanceFt === 0) return [edge.from, edge.to]
  const tx = (distanceFt * (edge.to.xFt - edge.from.xFt)) / edge.lengthFt
  const ty = (distanceFt * (edge.to.yFt - edge.from.yFt)) / edge.lengthFt
  return [
    { xFt: edge.from.xFt - tx + ty, yFt: edge.from.yFt - ty - tx },
    { xFt: edge.to.xFt + tx + ty, yFt: edge.to.yFt + ty - tx },
    { xFt: edge.to.xFt + tx - ty, yFt: edge.to.yFt + ty + tx },
    { xFt: edge.from.xFt - tx - ty, yFt: edge.from.yFt - ty + tx },
  ]
}

/** Obstructions with the space that must stay free round them. */
export function obstructionKeepOuts(project: RoofProject, planeId: string, worksheet: Worksheet): KeepOut[] {
  return Object.entries(own(project.roof_planes, planeId)?.obstructions ?? {}).map(([id, box]) => {
    const path = `roof_planes.${planeId}.obstructions.${id}`
    // A flue without its clearance is an error of its own; nothing is taken for it.
    const clearanceIn =
      box.clearance_in ??
      (isFlue(box) ? 0 : undefined) ??
      worksheet.assume({
        path: `${path}.clearance_in`,
        value: 0,
        unit: 'in',
        why: 'no free space round it is stated, so modules may touch it; flashing, vents and appliances may need more',
        source: { document: 'Size of the obstruction as stated', standing: 'project file' },
      })
    const figure = { xFt: box.x_ft, yFt: box.y_ft, widthFt: box.width_ft, heightFt: box.length_ft }
    return {
      kind: 'obstruction',
      name: id,
      path,
      thing: boxCorners(figure),
      clearanceIn,
      source: STATED,
      corners: boxCorners(grown(figure, feetOf(clearanceIn))),
    }
  })
}

/** Roof below rescue openings, at least as wide as the pathway that must lead to them. */
export function rescueKeepOuts(surface: RoofSurface, plane: RoofPlane, pathwayIn: Inches, source: Source): KeepOut[] {
  const lowest = Math.min(...surface.corners.map((corner) => corner.yFt))
  return Object.entries(plane.rescue_openings ?? {}).map(([id, opening]) => {
    const widthFt = Math.max(opening.width_ft, feetOf(pathwayIn))
    const xFt = opening.x_ft + opening.width_ft / 2 - widthFt / 2
    const corners = boxCorners({ xFt, yFt: lowest, widthFt, heightFt: opening.y_ft - lowest })
    const path = `roof_planes.${surface.id}.rescue_openings.${id}`
    return { kind: 'rescue-opening', name: id, path, thing: corners, clearanceIn: 0, source, corners }
  })
}

function grown(box: Box, byFt: Feet): Box {
  return {
    xFt: box.xFt - byFt,
    yFt: box.yFt - byFt,
    widthFt: box.widthFt + 2 * byFt,
    heightFt: box.heightFt + 2 * byFt,
  }
}
