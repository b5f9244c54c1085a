import { GRAVITY_INCREASE_LIMIT_PCT, RAFTER_SPANS_LIVE_20, ROOF_LIVE_LOAD_PSF } from '../tables/irc/index.js'
import { beamExtremes } from './beam-shape.js'
import { solveContinuousBeam, type LineLoad } from './continuous-beam.js'
import type { FramingSpec } from './framing-spec.js'

/** A mount's vertical gravity load on a rafter. */
export interface RafterPoint {
  /** Rafter number, 1 at the left. */
  readonly rafter: number
  /** Up the slope from the eave, in. */
  readonly yIn: number
  readonly verticalLb: number
}

/** Everything that the rafters of one plane carry. */
export interface RafterInput {
  readonly framing: FramingSpec
  readonly slopeDeg: number
  /** Roof snow on the horizontal, ASD, psf. */
  readonly snowPsf: number
  readonly points: readonly RafterPoint[]
  /** Stretches of the slope that modules cover, in from the eave, by rafter. */
  readonly coveredIn: (rafter: number) => readonly { readonly fromIn: number; readonly toIn: number }[]
}

export interface RafterResult {
  readonly rafter: number
  /** Bending moment of the worst rafter with the array, lb-ft. */
  readonly momentLbFt: number
  readonly momentBeforeLbFt: number
  /** The larger of 105 % of the moment before and what the span table stands for, lb-ft. */
  readonly allowedLbFt: number
  readonly basis: 'span table' | '5 percent rule'
  /** Largest span of the table, ft, when it covers these rafters. */
  readonly tableSpanFt: number | undefined
  /** Why the table does not cover them. */
  readonly notCovered: string | undefined
}

/**
 * Largest span of the prescriptive table for rafters with a dead load, ft.
 *
 * @source IBC 2018 table 2308.7.2(2), twin of IRC 2018 R802.4.1(2), roof live load 20 psf
 * @limits Only the sizes, species and spacings that are held; rafter spacing rounds up to 12 or 16 in.
 */
export function prescriptiveSpanFt(
  framing: Pick<FramingSpec, 'nominalSize' | 'species' | 'grade' | 'spacingIn'>,
  deadPsf: number,
): { spanFt: number; deadPsf: 10 | 20; spacingIn: number } | undefined {
  const size = framing.nominalSize
  if ((size !== '2x4' && size !== '2x6' && size !== '2x8') || deadPsf > 20) return undefined
  const row = RAFTER_SPANS_LIVE_20.find(
    (r) => r.species === framing.species && r.grade === framing.grade && r.spacingIn >= framing.spacingIn,
  )
  if (row === undefined) return undefined
  const column = deadPsf <= 10 ? 10 : 20
  return { spanFt: row.spansIn[column][size] / 12, deadPsf: column, spacingIn: row.spacingIn }
}

/**
 * Bending of the worst rafter with mounts on it, against the larger of what it had to carry before plus 5 percent and what
 * the prescriptive table stands for.
 *
 * @source IEBC 2021 805.2 (secondary); IBC 2018 table 2308.7.2(2); statics of a simple span
 * @limits Rafters on two supports; the part above the first span is left out.
 */
export function checkRafters(input: RafterInput, arrayDeadPsf: number): RafterResult {
  const { framing } = input
  const cos = Math.cos((input.slopeDeg * Math.PI) / 180)
  const widthFt = framing.spacingIn / 12
  const dead = framing.existingDeadPsf / cos
  const variable = Math.max(ROOF_LIVE_LOAD_PSF, input.snowPsf)
  const before = ((dead + variable) * widthFt * framing.spanFt ** 2) / 8
  let [worst, number] = [0, 0]
  for (const rafter of new Set(input.points.map((p) => p.rafter))) {
    const moment = rafterMoment(input, rafter, dead * widthFt, variable * widthFt)
    if (moment > worst) [worst, number] = [moment, rafter]
  }
  const table = prescriptiveSpanFt(framing, framing.existingDeadPsf + arrayDeadPsf)
  const notCovered =
    table === undefined
      ? 'size, species, grade, spacing or dead load is not in the held part of the table'
      : coverageGap(input)
  const byRule = before * (1 + GRAVITY_INCREASE_LIMIT_PCT / 100)
  const byTable =
    table === undefined || notCovered !== undefined
      ? 0
      : ((table.deadPsf + ROOF_LIVE_LOAD_PSF) * (table.spacingIn / 12) * table.spanFt ** 2) / 8
  return {
    rafter: number,
    momentLbFt: worst,
    momentBeforeLbFt: before,
    allowedLbFt: Math.max(byRule, byTable),
    basis: byTable > byRule ? 'span table' : '5 percent rule',
    tableSpanFt: notCovered === undefined ? table?.spanFt : undefined,
    notCovered,
  }
}

function coverageGap(input: RafterInput): string | undefined {
  return input.snowPsf > ROOF_LIVE_LOAD_PSF
    ? `roof snow of ${input.snowPsf.toFixed(1)} psf is over the table's ${ROOF_LIVE_LOAD_PSF} psf`
    : undefined
}

/** Moment of one rafter over its span, lb-ft: own dead load, live load or snow beside the modules, mounts as points. */
function rafterMoment(input: RafterInput, rafter: number, deadLbPerFt: number, variableLbPerFt: number): number {
  const cos = Math.cos((input.slopeDeg * Math.PI) / 180)
  const startIn = input.framing.eaveOverhangIn
  const endIn = startIn + input.framing.spanFt * 12
  const loads: LineLoad[] = [{ fromIn: startIn, toIn: endIn, lbPerIn: deadLbPerFt / 12 }]
  let free = startIn
  const covered = input.coveredIn(rafter).map((c) => ({ from: c.fromIn * cos, to: c.toIn * cos }))
  for (const { from, to } of covered.toSorted((a, b) => a.from - b.from)) {
    if (from > free) loads.push({ fromIn: free, toIn: Math.min(from, endIn), lbPerIn: variableLbPerFt / 12 })
    free = Math.max(free, to)
  }
  if (free < endIn) loads.push({ fromIn: free, toIn: endIn, lbPerIn: variableLbPerFt / 12 })
  for (const point of input.points) {
    const x = point.yIn * cos
    if (point.rafter !== rafter || x <= startIn + 0.5 || x >= endIn - 0.5) continue
    loads.push({ fromIn: x - 0.5, toIn: x + 0.5, lbPerIn: point.verticalLb })
  }
  const beam = { startIn, endIn, supportsIn: [startIn, endIn], loads }
  return beamExtremes(beam, solveContinuousBeam(beam)).momentLbIn / 12
}
