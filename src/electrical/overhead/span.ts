import type { OverheadLine } from '../../project/index.js'
import type { ToGround } from '../../scene/index.js'
import type { Point } from '../../sun/index.js'
import type { Feet } from '../../values/index.js'

/** Level distance between two looked-at places of a line, ft. */
const STEP_FT = 0.05
const MOST_STEPS = 20_000

/** A line in space, looked at in small steps. */
export interface HangingLine {
  /** Places of each span, from support to support. */
  readonly spans: readonly (readonly Point[])[]
  /** Largest distance along the line between two of them, ft. */
  readonly stepFt: Feet
  /** Largest level distance between two of them, ft. */
  readonly levelStepFt: Feet
  /** Steepest rise of the line, ft per level ft. */
  readonly steepest: number
}

/**
 * A span as a parabola, which a cable with a small sag is within a hundredth of the sag.
 *
 * @limits Sag up to a tenth of the span; wind swings the line sideways, which is not in it.
 */
export function hang(line: OverheadLine, toGround: ToGround): HangingLine {
  const supports = line.points.map((point): Point => {
    const { xFt, yFt } = toGround(point)
    return { east: xFt, north: yFt, up: point.height_ft }
  })
  const shapes = supports.slice(1).map((to, index) => spanOf(supports[index]!, to, line))
  return {
    spans: shapes.map(({ places }) => places),
    stepFt: Math.max(...shapes.map(({ levelStepFt, steepest }) => levelStepFt * Math.hypot(1, steepest))),
    levelStepFt: Math.max(...shapes.map(({ levelStepFt }) => levelStepFt)),
    steepest: Math.max(...shapes.map(({ steepest }) => steepest)),
  }
}

function spanOf(from: Point, to: Point, line: OverheadLine) {
  const sagFt = line.sag_ft ?? sagOf(from.up, to.up, line.lowest_ft ?? 0)
  const levelFt = Math.hypot(to.east - from.east, to.north - from.north)
  const count = Math.min(MOST_STEPS, Math.max(40, 2 * Math.ceil(levelFt / STEP_FT / 2)))
  const places = Array.from({ length: count + 1 }, (_, index): Point => {
    const t = index / count
    return {
      east: from.east + (to.east - from.east) * t,
      north: from.north + (to.north - from.north) * t,
      up: from.up + (to.up - from.up) * t - 4 * sagFt * t * (1 - t),
    }
  })
  return {
    places,
    levelStepFt: levelFt / count,
    steepest: (Math.abs(to.up - from.up) + 4 * sagFt) / levelFt,
  }
}

/**
 * Sag at which a parabola between two heights is at its lowest as low as stated: from (a + b) / 2 - s - (a - b)^2 / 16 s.
 */
export function sagOf(firstFt: Feet, secondFt: Feet, lowestFt: Feet): Feet {
  const mean = (firstFt + secondFt) / 2 - lowestFt
  const apart = firstFt - secondFt
  return (mean + Math.sqrt(Math.max(0, mean * mean - (apart * apart) / 4))) / 2
}
