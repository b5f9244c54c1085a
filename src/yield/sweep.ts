import type { Project } from '../project/index.js'
import { StageError } from '../worksheet/index.js'
import { own, type Degrees, type KilowattHours } from '../values/index.js'
import { runYield, type YieldContext } from './run-yield.js'

export interface SweepPoint {
  readonly angle_deg: number
  readonly ac_kwh: number
}

export interface Sweep {
  readonly array: string
  readonly axis: 'tilt' | 'azimuth'
  readonly points: readonly SweepPoint[]
  /** Angle of the largest yield, between the points by a parabola through the best three. */
  readonly best_deg: number
  readonly best_kwh: number
  /** What the project has now. */
  readonly now_deg: number
  readonly now_kwh: number
}

const ANGLES = {
  tilt: Array.from({ length: 19 }, (_, index) => index * 5),
  azimuth: Array.from({ length: 25 }, (_, index) => index * 15),
} as const

/**
 * Yearly yield of one array against its tilt or its direction, everything else unchanged. Rows of an array that lies in
 * the plane of its roof do not shade each other at any angle; those of an array on racks do.
 *
 * @param project A valid project.
 * @param files Text of the files that the project names.
 * @param context Climate and sky of the run before, which do not change with the angle.
 * @param arrayId The array to turn.
 * @param axis Which angle to change.
 * @throws StageError when there is no such array.
 */
export function sweepAngle(
  project: Project,
  files: ReadonlyMap<string, string>,
  context: YieldContext,
  arrayId: string,
  axis: 'tilt' | 'azimuth',
): Sweep {
  const array = own(project.arrays, arrayId)
  if (array === undefined) {
    throw new StageError(
      'arrays',
      `there is no array '${arrayId}'`,
      `name one of ${Object.keys(project.arrays).join(', ')}`,
    )
  }
  const isFlush = array.module_tilt_deg === undefined && array.module_azimuth_deg === undefined
  const yieldAt = (angleDeg: Degrees | undefined): { readonly kwh: KilowattHours; readonly angleDeg: Degrees } => {
    const key = axis === 'tilt' ? 'module_tilt_deg' : 'module_azimuth_deg'
    const turned: Project =
      angleDeg === undefined
        ? project
        : { ...project, arrays: { ...project.arrays, [arrayId]: { ...array, [key]: angleDeg } } }
    const values = runYield(turned, files, { ...context, ...(isFlush ? { turned: arrayId } : {}) }).result.values
      .arrays[arrayId]
    if (values === undefined) throw new Error(`the estimate lost array ${arrayId}`)
    return { kwh: values.annual.ac_kwh, angleDeg: axis === 'tilt' ? values.tilt_deg : values.azimuth_deg }
  }
  const points = ANGLES[axis].map((angle) => ({ angle_deg: angle, ac_kwh: yieldAt(angle).kwh }))
  const now = yieldAt(undefined)
  return { array: arrayId, axis, points, ...summit(points, axis), now_deg: now.angleDeg, now_kwh: now.kwh }
}

/** Top of the parabola through the best point and its neighbours; a best point at the end of the range stands as it is. */
function summit(
  points: readonly SweepPoint[],
  axis: 'tilt' | 'azimuth',
): { readonly best_deg: number; readonly best_kwh: number } {
  let best = 0
  points.forEach((point, index) => {
    if (point.ac_kwh > points[best]!.ac_kwh) best = index
  })
  const top = points[best]!
  // The azimuth range closes on itself: 0 and 360 are one direction.
  const last = points.length - 1
  const before = points[axis === 'azimuth' && best === 0 ? last - 1 : best - 1]
  const after = points[axis === 'azimuth' && best === last ? 1 : best + 1]
  if (before === undefined || after === undefined) return { best_deg: top.angle_deg, best_kwh: top.ac_kwh }
  const curve = before.ac_kwh - 2 * top.ac_kwh + after.ac_kwh
  if (curve >= 0) return { best_deg: top.angle_deg, best_kwh: top.ac_kwh }
  const spacing = points[1]!.angle_deg - points[0]!.angle_deg
  const shift = (0.5 * (before.ac_kwh - after.ac_kwh)) / curve
  return {
    best_deg: top.angle_deg + shift * spacing,
    best_kwh: top.ac_kwh - 0.25 * (before.ac_kwh - after.ac_kwh) * shift,
  }
}
