import type { Finding } from '../worksheet/index.js'
import type { KeepOut } from './keep-out.js'
import { moduleName, type ModulePlacement } from './placement.js'
import {
  boxCorners,
  containsPoint,
  distanceBetweenFt,
  distanceToSegmentFt,
  reachBetween,
  type Feet,
  type Inches,
  type Point,
} from '../values/index.js'
import type { RoofSurface } from './roof-surface.js'

/** Differences below this are drawing accuracy, in. */
const ACCURACY_IN = 0.01

/** Pairs of modules of one plane that lie on each other, whatever array they belong to. */
export function overlapFindings(modules: readonly ModulePlacement[]): Finding[] {
  return modules.flatMap((first, index) =>
    modules.slice(index + 1).flatMap((second) => {
      if (first.roofPlane !== second.roofPlane) return []
      const [acrossIn, upIn] = overlapIn(first, second)
      if (acrossIn < ACCURACY_IN || upIn < ACCURACY_IN) return []
      return [
        {
          severity: 'error' as const,
          id: 'roof.modules-overlap',
          message: `${moduleName(first)} and ${moduleName(second)} lie on each other by ${inches(acrossIn)} along the eave and ${inches(upIn)} up the slope`,
          where: placePath(second),
          fix: `Move one of them by ${inches(Math.min(acrossIn, upIn))}, or leave it out with omit.`,
        },
      ]
    }),
  )
}

/** Modules that leave the plane, come too near to an edge, or lie on what must stay free. */
export function placementFindings(
  surface: RoofSurface,
  keepOuts: readonly KeepOut[],
  modules: readonly ModulePlacement[],
): Finding[] {
  return modules.flatMap((module) => {
    const outside = outsideFinding(surface, module)
    if (outside !== undefined) return [outside]
    return keepOuts.flatMap((keepOut) => tooNear(keepOut, module) ?? [])
  })
}

function outsideFinding(surface: RoofSurface, module: ModulePlacement): Finding | undefined {
  const box = boxCorners(module)
  const crossed = surface.edges.filter((edge) => meets([edge.from, edge.to], module))
  const middle = { xFt: module.xFt + module.widthFt / 2, yFt: module.yFt + module.heightFt / 2 }
  if (crossed.length === 0 && containsPoint(surface.corners, middle)) return undefined
  const beyondIn = 12 * Math.max(...box.map((corner) => beyondFt(surface, corner)), notchDepthFt(surface, module))
  if (crossed.length > 0 && beyondIn < ACCURACY_IN) return undefined
  const names = [...new Set(crossed.map((edge) => edge.kind))].join(' and the ')
  return {
    severity: 'error',
    id: 'roof.module-outside',
    message:
      names === ''
        ? `${moduleName(module)} lies wholly off plane ${surface.id}, by up to ${inches(beyondIn)}`
        : `${moduleName(module)} reaches ${inches(beyondIn)} beyond the ${names} of plane ${surface.id}`,
    where: placePath(module),
    fix: `Move it in by ${inches(beyondIn)}, leave it out with omit, or measure the outline again.`,
  }
}

function beyondFt(surface: RoofSurface, corner: Point): Feet {
  const nearest = Math.min(...surface.edges.map((edge) => distanceToSegmentFt(corner, [edge.from, edge.to])))
  return containsPoint(surface.corners, corner) ? 0 : nearest
}

/** How deep a corner of the outline reaches into a module whose own corners lie on the plane, ft. */
function notchDepthFt(surface: RoofSurface, { xFt, yFt, widthFt, heightFt }: ModulePlacement): Feet {
  const depths = surface.corners.map((corner) =>
    Math.min(corner.xFt - xFt, xFt + widthFt - corner.xFt, corner.yFt - yFt, yFt + heightFt - corner.yFt),
  )
  return Math.max(0, ...depths)
}

function tooNear(keepOut: KeepOut, module: ModulePlacement): Finding | undefined {
  const where = placePath(module)
  const { clearanceIn, source } = keepOut
  const covers = keepOut.thing.length > 2 && meets(keepOut.thing, module)
  const gapIn = covers ? 0 : 12 * distanceBetweenFt(boxCorners(module), keepOut.thing)
  if (covers) {
    const [acrossIn, upIn] = overlapIn(module, boundsOf(keepOut.thing))
    if (Math.min(acrossIn, upIn) < ACCURACY_IN) return undefined
    const rescue = keepOut.kind === 'rescue-opening'
    return {
      severity: rescue && source.standing === 'project file' ? 'warning' : 'error',
      id: rescue ? 'roof.module-below-rescue-opening' : 'roof.module-on-obstruction',
      message: `${moduleName(module)} lies ${rescue ? 'below rescue opening' : 'on'} ${keepOut.name} (${inches(acrossIn)} along the eave by ${inches(upIn)} up the slope)`,
      where,
      source,
      fix: `Move it by ${inches(Math.min(acrossIn, upIn) + clearanceIn)}, or leave it out with omit.`,
    }
  }
  const missingIn = clearanceIn - gapIn
  if (missingIn < ACCURACY_IN) return undefined
  return {
    severity: 'error',
    id: keepOut.kind === 'edge' ? 'roof.edge-clearance' : 'roof.obstruction-clearance',
    message: `${moduleName(module)} is ${Math.floor(gapIn * 10 + 1e-6) / 10} in from ${keepOut.name}; ${inches(clearanceIn)} must stay free (${inches(missingIn)} too near)`,
    where,
    source,
    fix: `Move it ${inches(missingIn)} away, or leave it out with omit.`,
  }
}

function meets(figure: readonly Point[], module: ModulePlacement): boolean {
  const reach = reachBetween(figure, module.yFt, module.yFt + module.heightFt)
  return reach !== undefined && reach[0] < module.xFt + module.widthFt - 1e-7 && reach[1] > module.xFt + 1e-7
}

type Box = Pick<ModulePlacement, 'xFt' | 'yFt' | 'widthFt' | 'heightFt'>

function boundsOf(points: readonly Point[]): Box {
  const [xs, ys] = [points.map((point) => point.xFt), points.map((point) => point.yFt)]
  const [xFt, yFt] = [Math.min(...xs), Math.min(...ys)]
  return { xFt, yFt, widthFt: Math.max(...xs) - xFt, heightFt: Math.max(...ys) - yFt }
}

function overlapIn(a: Box, b: Box): [acrossIn: Inches, upIn: Inches] {
  return [
    sharedIn(a.xFt, a.xFt + a.widthFt, b.xFt, b.xFt + b.widthFt),
    sharedIn(a.yFt, a.yFt + a.heightFt, b.yFt, b.yFt + b.heightFt),
  ]
}

function sharedIn(a0: number, a1: number, b0: number, b1: number): Inches {
  return 12 * (Math.min(a1, b1) - Math.max(a0, b0))
}

function placePath(module: ModulePlacement): string {
  const arrangement = `arrays.${module.array}.arrangement`
  return module.block === 'fit' ? arrangement : `${arrangement}.blocks.${module.block}`
}

/** Inches with one decimal, rounded up so that what is reported as missing is enough. */
function inches(valueIn: Inches): string {
  return `${Math.ceil(valueIn * 10 - 1e-6) / 10} in`
}
