import { at, type Inches, type PoundInches, type Pounds, type PoundsPerInch } from '../../values/index.js'

/** A load that is constant over a length of the beam; positive pulls away from the supports' side or pushes, as the caller means it. */
export interface LineLoad {
  readonly fromIn: Inches
  readonly toIn: Inches
  readonly lbPerIn: PoundsPerInch
}

/** A place where the two sides of a beam turn against each other. */
export interface BeamKink {
  readonly xIn: number
  /** Angle by which the slope to the right exceeds that to the left, times EI, lb-in2. */
  readonly timesStiffness: number
}

/** A prismatic beam on unyielding supports with free ends. */
export interface BeamModel {
  readonly startIn: Inches
  readonly endIn: Inches
  /** Ascending, at least two, within the ends. */
  readonly supportsIn: readonly Inches[]
  readonly loads: readonly LineLoad[]
  /** Kinks between the supports; none when missing. */
  readonly kinks?: readonly BeamKink[]
}

export interface BeamSolution {
  /** lb, against the load, one a support. */
  readonly reactionsLb: readonly Pounds[]
  /** lb-in over each support; negative is hogging (tension on the loaded side). */
  readonly supportMomentsLbIn: readonly PoundInches[]
}

/** Part of a load that lies between two places, measured from the first. */
function within(load: LineLoad, from: number, to: number): { a: number; b: number; w: number } | undefined {
  const [a, b] = [Math.max(load.fromIn, from) - from, Math.min(load.toIn, to) - from]
  return b > a ? { a, b, w: load.lbPerIn } : undefined
}

/** Moment of the load on a free end about its support, lb-in. */
function cantileverMoment(beam: BeamModel, from: number, to: number, support: number): number {
  let moment = 0
  for (const load of beam.loads) {
    const part = within(load, from, to)
    if (part === undefined) continue
    const centre = from + (part.a + part.b) / 2
    moment += part.w * (part.b - part.a) * Math.abs(centre - support)
  }
  return moment
}

/**
 * Load terms of a span for the three-moment equation: 6 A a / L from the left and from the right, and the simple reactions.
 * A is the area of the moment diagram of the simple span, a the distance of its centroid.
 */
function spanTerms(beam: BeamModel, from: number, to: number): { left: number; right: number; rl: number; rr: number } {
  const L = to - from
  let [left, right, rl, rr] = [0, 0, 0, 0]
  for (const load of beam.loads) {
    const part = within(load, from, to)
    if (part === undefined) continue
    const { a, b, w } = part
    const total = w * (b - a)
    const right1 = (total * (a + b)) / (2 * L)
    rr += right1
    rl += total - right1
    // A point load P at x from the left gives 6 A a / L = P x (L^2 - x^2) / L; integrated from a to b.
    const fromLeft = (u: number): number => (u * u * L * L) / 2 - u ** 4 / 4
    left += (w / L) * (fromLeft(b) - fromLeft(a))
    right += (w / L) * (fromLeft(L - a) - fromLeft(L - b))
  }
  // A kink alone turns the ends of a simple span as a load does: the far part of its angle at each end.
  for (const { xIn, timesStiffness } of beam.kinks ?? []) {
    if (xIn <= from || xIn >= to) continue
    left += (6 * timesStiffness * (xIn - from)) / L
    right += (6 * timesStiffness * (to - xIn)) / L
  }
  return { left, right, rl, rr }
}

/**
 * Reactions and support moments of a continuous beam over uneven spans with free ends, by the three-moment equation.
 *
 * @throws RangeError when there are fewer than two supports or they do not ascend within the beam (a defect of the caller).
 * @source Clapeyron's theorem of three moments: M1 L1 + 2 M2 (L1 + L2) + M3 L2 = -6 A1 a1 / L1 - 6 A2 b2 / L2
 * @limits Constant section, small deflections, supports that do not settle and hold in both directions.
 */
export function solveContinuousBeam(beam: BeamModel): BeamSolution {
  const x = beam.supportsIn
  const n = x.length
  if (n < 2) throw new RangeError('a beam needs at least two supports')
  const [first, last] = [at(x, 0), at(x, n - 1)]
  if (first < beam.startIn - 1e-9 || last > beam.endIn + 1e-9) throw new RangeError('a support lies off the beam')
  const spans = x.slice(1).map((to, index) => {
    const from = at(x, index)
    if (to - from <= 0) throw new RangeError('supports must ascend')
    return { L: to - from, ...spanTerms(beam, from, to) }
  })
  const moments = interiorMoments(
    spans,
    -cantileverMoment(beam, beam.startIn, first, first),
    -cantileverMoment(beam, last, beam.endIn, last),
  )
  const reactions = x.map(() => 0)
  reactions[0] = at(reactions, 0) + freeLoad(beam, beam.startIn, first)
  reactions[n - 1] = at(reactions, n - 1) + freeLoad(beam, last, beam.endIn)
  for (const [index, span] of spans.entries()) {
    const tilt = (at(moments, index + 1) - at(moments, index)) / span.L
    reactions[index] = at(reactions, index) + span.rl + tilt
    reactions[index + 1] = at(reactions, index + 1) + span.rr - tilt
  }
  return { reactionsLb: reactions, supportMomentsLbIn: moments }
}

function freeLoad(beam: BeamModel, from: number, to: number): number {
  let sum = 0
  for (const load of beam.loads) {
    const part = within(load, from, to)
    if (part !== undefined) sum += part.w * (part.b - part.a)
  }
  return sum
}

/** Solves the tridiagonal set of three-moment equations with known end moments. */
function interiorMoments(
  spans: readonly { L: number; left: number; right: number }[],
  startMoment: number,
  endMoment: number,
): number[] {
  const n = spans.length - 1
  const diagonal: number[] = []
  const known: number[] = []
  for (let i = 0; i < n; i++) {
    const [a, b] = [at(spans, i), at(spans, i + 1)]
    let d = 2 * (a.L + b.L)
    let k = -a.left - b.right
    if (i === 0) k -= a.L * startMoment
    if (i === n - 1) k -= b.L * endMoment
    if (i > 0) {
      const factor = a.L / at(diagonal, i - 1)
      d -= factor * a.L
      k -= factor * at(known, i - 1)
    }
    diagonal.push(d)
    known.push(k)
  }
  const moments = Array.from({ length: n }, () => 0)
  for (let i = n - 1; i >= 0; i--) {
    const coupling = i < n - 1 ? at(spans, i + 1).L * at(moments, i + 1) : 0
    moments[i] = (at(known, i) - coupling) / at(diagonal, i)
  }
  return [startMoment, ...moments, endMoment]
}
