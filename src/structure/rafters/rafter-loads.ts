import type { LineLoad } from '../beam/index.js'
import type { SnowCase } from '../snow/index.js'
import { snowAtPsf } from '../snow/index.js'
import { feetOf, inchesOf, radiansOf, type Inches, type Pounds, type SquareFeet } from '../../values/index.js'
import type { FramingSpec } from './framing-spec.js'
import type { RafterInput, RafterPoint } from './rafter-input.js'
import { planInOf } from './rafter-spans.js'

/** Kinds of load on a rafter before they are combined; the last two are those of the roof without the array. */
export type LoadKind =
  | 'dead'
  | 'array'
  | 'least array'
  | 'live'
  | 'snow'
  | 'wind down'
  | 'wind up'
  | 'bare live'
  | 'bare snow'

/** One load on one rafter, as it bends it: lb per in of the horizontal, positive down. */
export interface RafterLoad {
  readonly kind: LoadKind
  /** Name of the snow case; empty for other kinds. */
  readonly snowCase: string
  readonly loads: readonly LineLoad[]
}

/** Half the length over which a mount presses, in: as good as a point. */
const HALF_POINT_IN = 0.01

/** Steps in which a load that changes along the rafter is laid on, in. */
const STEP_IN = 6

/** A rafter on the grid of its plane. */
export interface RafterToLoad {
  readonly number: number
  readonly xIn: number
  /** Horizontal distances of its ends from the lowest eave, in. */
  readonly lowIn: Inches
  readonly highIn: Inches
  /** Longest of its spans, in. */
  readonly longestSpanIn: Inches
}

/**
 * Points on one rafter with what load sharing leaves on it and brings to it.
 *
 * @source None but the stated document; off by default (NDS 2018 gives no factor beyond the repetitive one)
 */
export function pointsOn({ points, framing }: Pick<RafterInput, 'points' | 'framing'>, rafter: number): RafterPoint[] {
  const share = framing.loadSharing?.share ?? 1
  return points.flatMap((point) => {
    const distance = Math.abs(point.rafter - rafter)
    const part = distance === 0 ? share : distance === 1 ? (1 - share) / 2 : 0
    if (part === 0) return []
    return [
      {
        ...point,
        rafter,
        deadLb: part * point.deadLb,
        leastDeadLb: part * point.leastDeadLb,
        areaFt2: part * point.areaFt2,
        windDownLb: part * point.windDownLb,
        windUpLb: part * point.windUpLb,
      },
    ]
  })
}

/**
 * All loads on one rafter with the array on the roof.
 *
 * A vertical load bends a sloping rafter as its horizontal shadow; a load at right angles to the roof bends it as a vertical one
 * of 1 / cos2 on the shadow (a force: 1 / cos).
 *
 * @source statics; dead load on the slope D / cos, snow and live load on the horizontal
 */
export function rafterLoads(input: RafterInput, rafter: RafterToLoad): RafterLoad[] {
  const { framing, plane } = input
  const cos = Math.cos(radiansOf(plane.tiltDeg))
  const perIn = framing.spacingIn / 144
  const whole = { fromIn: rafter.lowIn, toIn: rafter.highIn }
  const covered = input
    .coveredIn(rafter.number)
    .map(({ fromIn, toIn }) => ({ fromIn: planInOf(plane, fromIn), toIn: planInOf(plane, toIn) }))
  const free = uncovered(whole, covered)
  const points = pointsOn(input, rafter.number).map((point) => ({ ...point, atIn: planInOf(plane, point.yIn) }))
  const mounts = (lb: (point: RafterPoint & { atIn: Inches }) => Pounds): LineLoad[] =>
    points.flatMap((point) => (lb(point) === 0 ? [] : [pointLoad(whole, point.atIn, lb(point))]))
  const windOn = (direction: 'uplift' | 'down'): LineLoad[] => {
    const areaFt2 = windAreaFt2(framing, rafter.longestSpanIn / cos)
    const sign = direction === 'down' ? 1 : -1
    const psfAt = (atIn: Inches): number =>
      input.bareWindPsf({ xIn: rafter.xIn, yIn: slopeInOf(plane, atIn) }, areaFt2, direction)
    return stepped(free, (atIn) => (sign * psfAt(atIn) * perIn) / cos ** 2)
  }
  return [
    one('dead', evenLoad([whole], (framing.existingDeadPsf / cos) * perIn)),
    one(
      'array',
      mounts((p) => p.deadLb),
    ),
    one(
      'least array',
      mounts((p) => p.leastDeadLb),
    ),
    one('live', evenLoad(input.liveLeftOut ? free : [whole], input.livePsf * perIn)),
    one('wind down', [...windOn('down'), ...mounts((p) => p.windDownLb / cos)]),
    one('wind up', [...windOn('uplift'), ...mounts((p) => -p.windUpLb / cos)]),
    ...input.snow.map((snow) => {
      const onMounts = mounts((p) => p.areaFt2 * snowAtPsf(snow, feetOf(p.atIn)) * cos)
      return one('snow', [...snowLoad(free, snow, perIn), ...onMounts], snow.name)
    }),
  ]
}

/** Dead load, live load and snow on one rafter as if there were no array. */
export function bareLoads(input: RafterInput, rafter: Pick<RafterToLoad, 'lowIn' | 'highIn'>): RafterLoad[] {
  const cos = Math.cos(radiansOf(input.plane.tiltDeg))
  const perIn = input.framing.spacingIn / 144
  const whole = [{ fromIn: rafter.lowIn, toIn: rafter.highIn }]
  return [
    one('dead', evenLoad(whole, (input.framing.existingDeadPsf / cos) * perIn)),
    one('bare live', evenLoad(whole, input.livePsf * perIn)),
    ...input.snow.map((snow) => one('bare snow', snowLoad(whole, snow, perIn), snow.name)),
  ]
}

const one = (kind: LoadKind, loads: readonly LineLoad[], snowCase = ''): RafterLoad => ({ kind, snowCase, loads })

const evenLoad = (parts: readonly Part[], lbPerIn: number): LineLoad[] =>
  lbPerIn === 0 ? [] : parts.map((part) => ({ ...part, lbPerIn }))

const snowLoad = (parts: readonly Part[], snow: SnowCase, perIn: number): LineLoad[] =>
  stepped(parts, (atIn) => snowAtPsf(snow, feetOf(atIn)) * perIn)

interface Part {
  readonly fromIn: Inches
  readonly toIn: Inches
}

/** Effective wind area of a rafter: span times spacing, the width at least a third of the span. @source ASCE 7 26.2 (secondary) */
function windAreaFt2(framing: Pick<FramingSpec, 'spacingIn'>, spanIn: Inches): SquareFeet {
  return (spanIn * Math.max(framing.spacingIn, spanIn / 3)) / 144
}

/** Height up the slope of a horizontal distance from the lowest eave, plane coordinates, in. */
function slopeInOf(plane: RafterInput['plane'], atIn: Inches): Inches {
  const lowestIn = inchesOf(Math.min(...plane.edges.map((edge) => edge.from.yFt)))
  return lowestIn + atIn / Math.cos(radiansOf(plane.tiltDeg))
}

/** A force on a rafter; one at its end lies a hair within it. */
function pointLoad(whole: Part, placeIn: Inches, lb: Pounds): LineLoad {
  const atIn = Math.min(Math.max(placeIn, whole.fromIn + HALF_POINT_IN), whole.toIn - HALF_POINT_IN)
  return { fromIn: atIn - HALF_POINT_IN, toIn: atIn + HALF_POINT_IN, lbPerIn: lb / (2 * HALF_POINT_IN) }
}

/** Parts of a stretch that none of the others covers. */
function uncovered(whole: Part, covered: readonly Part[]): Part[] {
  const parts: Part[] = []
  let free = whole.fromIn
  for (const { fromIn, toIn } of covered.toSorted((a, b) => a.fromIn - b.fromIn)) {
    if (fromIn > free) parts.push({ fromIn: free, toIn: Math.min(fromIn, whole.toIn) })
    free = Math.max(free, toIn)
  }
  if (free < whole.toIn) parts.push({ fromIn: free, toIn: whole.toIn })
  return parts
}

/** A load that changes along the rafter, in steps; equal neighbours are one. */
function stepped(parts: readonly Part[], lbPerInAt: (atIn: Inches) => number): LineLoad[] {
  const loads: LineLoad[] = []
  for (const { fromIn, toIn } of parts) {
    const steps = Math.max(1, Math.ceil((toIn - fromIn) / STEP_IN))
    const h = (toIn - fromIn) / steps
    for (let k = 0; k < steps; k++) {
      const [a, b] = [fromIn + k * h, fromIn + (k + 1) * h]
      const lbPerIn = lbPerInAt((a + b) / 2)
      const last = loads.at(-1)
      if (last !== undefined && Math.abs(last.toIn - a) < 1e-9 && Math.abs(last.lbPerIn - lbPerIn) < 1e-12) {
        loads[loads.length - 1] = { ...last, toIn: b }
      } else if (lbPerIn !== 0) loads.push({ fromIn: a, toIn: b, lbPerIn })
    }
  }
  return loads
}
