import { GRAVITY_INCREASE_LIMIT_PCT, RAFTER_SPANS_LIVE_20, ROOF_LIVE_LOAD_PSF } from '../../tables/irc/index.js'
import { LOAD_DURATION } from '../../tables/nds/index.js'
import { bendingStrength, type BendingStrength } from './bending-strength.js'
import type { FramingSpec } from './framing-spec.js'
import type { PlaneGeometry } from '../model/index.js'
import { rafterMoment, type RafterLoad, type RafterPlace } from './rafter-moments.js'
import { isOnKnownSpan, planInOf, raftersAt } from './rafter-spans.js'
import {
  at,
  feetOf,
  poundFeetOf,
  radiansOf,
  type Feet,
  type Inches,
  type PoundFeet,
  type Pounds,
  type PoundsPerSquareFoot,
  type PoundsPerSquareInch,
} from '../../values/index.js'

/** A mount's vertical gravity load on a rafter. */
export interface RafterPoint {
  /** Rafter number, 1 at the left. */
  readonly rafter: number
  /** Up the slope, in plane coordinates, in. */
  readonly yIn: number
  readonly deadLb: Pounds
  readonly snowLb: Pounds
}

/** Everything that the rafters of one plane carry. */
export interface RafterInput {
  readonly framing: FramingSpec
  readonly plane: PlaneGeometry
  /** Roof snow on the horizontal, ASD, psf. */
  readonly snowPsf: PoundsPerSquareFoot
  readonly points: readonly RafterPoint[]
  /** Stretches of the slope that modules cover, in from the eave, by rafter. */
  readonly coveredIn: (rafter: number) => readonly { readonly fromIn: Inches; readonly toIn: Inches }[]
}

/** Bending with the array against bending before it, at the place where it has grown most for what is allowed. */
export interface RafterIncrease {
  readonly rafter: number
  readonly place: RafterPlace
  /** Spans beside the place, ft. */
  readonly spansFt: readonly Feet[]
  readonly momentLbFt: PoundFeet
  readonly momentBeforeLbFt: PoundFeet
  /** The larger of 105 % of the moment before and what the span table stands for, lb-ft. */
  readonly allowedLbFt: PoundFeet
  readonly basis: 'span table' | '5 percent rule'
}

/** Bending with the array against the strength of the wood, at the place with the highest ratio. */
export interface RafterStress {
  readonly rafter: number
  readonly place: RafterPlace
  /** `D`, `D + Lr` or `D + S`. */
  readonly combination: string
  readonly momentLbFt: PoundFeet
  readonly loadDuration: number
  readonly stressPsi: PoundsPerSquareInch
  /** Fb' */
  readonly allowablePsi: PoundsPerSquareInch
}

export interface RafterResult {
  /** Undefined when no mount stands on a span whose supports are known. */
  readonly increase: RafterIncrease | undefined
  readonly stress: RafterStress | undefined
  readonly strength: BendingStrength
  /** Mounts on parts of rafters whose supports are not stated. */
  readonly unchecked: readonly RafterPoint[]
  /** Largest span of the table, ft, when it covers these rafters. */
  readonly tableSpanFt: Feet | undefined
  /** Why the table does not cover them. */
  readonly notCovered: string | undefined
}

/** From the strongest down. */
const GRADES_DOWN: readonly string[] = ['Select Structural', 'No. 1', 'No. 2', 'No. 3']

/**
 * Largest span of the prescriptive table for rafters with a dead load, ft.
 *
 * @source IBC 2018 table 2308.7.2(2), twin of IRC 2018 R802.4.1(2), roof live load 20 psf
 * @limits Only the sizes, species and spacings that are held; rafter spacing rounds up to 12 or 16 in, and a grade that is not held
 *   takes the row of a weaker one.
 */
export function prescriptiveSpanFt(
  framing: Pick<FramingSpec, 'nominalSize' | 'species' | 'grade' | 'spacingIn'>,
  deadPsf: PoundsPerSquareFoot,
): { spanFt: Feet; deadPsf: 10 | 20; spacingIn: Inches } | undefined {
  const size = framing.nominalSize
  if ((size !== '2x4' && size !== '2x6' && size !== '2x8') || deadPsf > 20) return undefined
  const column = deadPsf <= 10 ? 10 : 20
  const strength = GRADES_DOWN.indexOf(framing.grade ?? '')
  const rows = RAFTER_SPANS_LIVE_20.filter(
    (r) =>
      r.species === framing.species &&
      strength >= 0 &&
      GRADES_DOWN.indexOf(r.grade) >= strength &&
      r.spacingIn >= framing.spacingIn,
  )
  const [row] = rows.toSorted(
    (a, b) => a.spacingIn - b.spacingIn || GRADES_DOWN.indexOf(a.grade) - GRADES_DOWN.indexOf(b.grade),
  )
  return row && { spanFt: row.spansIn[column][size] / 12, deadPsf: column, spacingIn: row.spacingIn }
}

/**
 * Bending of the rafters with mounts on them: against what they had to carry before (an allowed increase, which says nothing
 * about strength) and against the strength of the wood.
 *
 * @source IEBC 2021 805.2 (secondary); IBC 2018 table 2308.7.2(2); NDS 2018 3.3 (secondary); statics
 * @limits Gravity only; shear, bearing, deflection, thrust of rafters without a ridge beam, wind and unbalanced snow are left out.
 */
export function checkRafters(input: RafterInput, arrayDeadPsf: PoundsPerSquareFoot): RafterResult {
  const { framing, plane } = input
  const strength = bendingStrength(framing)
  const table = prescriptiveSpanFt(framing, framing.existingDeadPsf + arrayDeadPsf)
  const notCovered =
    table === undefined
      ? 'size, species, grade, spacing or dead load is not in the held part of the table'
      : coverageGap(input)
  const tableLbFt =
    table === undefined || notCovered !== undefined
      ? 0
      : ((table.deadPsf + ROOF_LIVE_LOAD_PSF) * (table.spacingIn / 12) * table.spanFt ** 2) / 8
  const unchecked: RafterPoint[] = []
  let increase: RafterIncrease | undefined
  let stress: RafterStress | undefined
  for (const number of new Set(input.points.map((p) => p.rafter))) {
    const points = input.points.filter((p) => p.rafter === number)
    const xIn = framing.firstOffsetIn + (number - 1) * framing.spacingIn
    const rafters = raftersAt(plane, framing, xIn)
    const placeIn = (p: RafterPoint): number => planInOf(plane, p.yIn)
    unchecked.push(...points.filter((p) => !rafters.some((rafter) => isOnKnownSpan(rafter, placeIn(p)))))
    for (const { supportsIn } of rafters) {
      for (const place of loadedPlaces(supportsIn, points.map(placeIn))) {
        const grown = increaseAt(input, number, supportsIn, place, tableLbFt)
        if (increase === undefined || overAllowed(grown) > overAllowed(increase)) increase = grown
        const stressed = stressAt(input, number, supportsIn, place, strength)
        if (stress === undefined || overAllowable(stressed) > overAllowable(stress)) stress = stressed
      }
    }
  }
  const tableSpanFt = notCovered === undefined ? table?.spanFt : undefined
  return { increase, stress, strength, unchecked, tableSpanFt, notCovered }
}

const overAllowed = (one: RafterIncrease): number => one.momentLbFt / one.allowedLbFt
const overAllowable = (one: RafterStress): number => one.stressPsi / one.allowablePsi

function coverageGap(input: RafterInput): string | undefined {
  return input.snowPsf > ROOF_LIVE_LOAD_PSF
    ? `roof snow of ${input.snowPsf.toFixed(1)} psf is over the table's ${ROOF_LIVE_LOAD_PSF} psf`
    : undefined
}

/** Spans with a mount on them, and the supports beside those. */
function loadedPlaces(supportsIn: readonly Inches[], atIn: readonly Inches[]): RafterPlace[] {
  const places: RafterPlace[] = []
  for (let i = 1; i < supportsIn.length; i++) {
    const [a, b] = [at(supportsIn, i - 1), at(supportsIn, i)]
    if (!atIn.some((x) => x > a && x < b)) continue
    places.push({ kind: 'span', number: i })
    for (const support of [i - 1, i]) {
      const isBetween = support > 0 && support < supportsIn.length - 1
      const isKnown = places.some((place) => place.kind === 'support' && place.number === support)
      if (isBetween && !isKnown) places.push({ kind: 'support', number: support })
    }
  }
  return places
}

/** Load of one rafter in lb per in of the horizontal. */
function loadOf(
  input: RafterInput,
  rafter: number,
  variablePsf: PoundsPerSquareFoot,
  mountLb: (point: RafterPoint) => number,
): RafterLoad {
  const { framing, plane } = input
  const perIn = framing.spacingIn / 144
  return {
    deadLbPerIn: (framing.existingDeadPsf / Math.cos(radiansOf(plane.tiltDeg))) * perIn,
    variableLbPerIn: variablePsf * perIn,
    covered: input
      .coveredIn(rafter)
      .map(({ fromIn, toIn }) => ({ fromIn: planInOf(plane, fromIn), toIn: planInOf(plane, toIn) })),
    mounts: input.points
      .filter((p) => p.rafter === rafter)
      .map((p) => ({ atIn: planInOf(plane, p.yIn), lb: mountLb(p) })),
  }
}

function increaseAt(
  input: RafterInput,
  rafter: number,
  supportsIn: readonly Inches[],
  place: RafterPlace,
  tableLbFt: PoundFeet,
): RafterIncrease {
  const variablePsf = Math.max(ROOF_LIVE_LOAD_PSF, input.snowPsf)
  const load = loadOf(input, rafter, variablePsf, (p) => p.deadLb + p.snowLb)
  const before = poundFeetOf(rafterMoment({ ...load, covered: [], mounts: [] }, supportsIn, place))
  const byRule = before * (1 + GRAVITY_INCREASE_LIMIT_PCT / 100)
  return {
    rafter,
    place,
    spansFt: spansBeside(supportsIn, place),
    momentLbFt: poundFeetOf(rafterMoment(load, supportsIn, place)),
    momentBeforeLbFt: before,
    allowedLbFt: Math.max(byRule, tableLbFt),
    basis: tableLbFt > byRule ? 'span table' : '5 percent rule',
  }
}

function spansBeside(supportsIn: readonly Inches[], { kind, number }: RafterPlace): number[] {
  const spanFt = (i: number): Feet => feetOf(at(supportsIn, i) - at(supportsIn, i - 1))
  return kind === 'span' ? [spanFt(number)] : [spanFt(number), spanFt(number + 1)]
}

/** Stress of the governing gravity combination; live load lies only beside the modules and never with snow. */
function stressAt(
  input: RafterInput,
  rafter: number,
  supportsIn: readonly Inches[],
  place: RafterPlace,
  strength: BendingStrength,
): RafterStress {
  const dead = (p: RafterPoint): number => p.deadLb
  const cases = [
    { combination: 'D', duration: LOAD_DURATION.dead, load: loadOf(input, rafter, 0, dead) },
    {
      combination: 'D + Lr',
      duration: LOAD_DURATION.roofLive,
      load: loadOf(input, rafter, ROOF_LIVE_LOAD_PSF, dead),
    },
    ...(input.snowPsf > 0
      ? [
          {
            combination: 'D + S',
            duration: LOAD_DURATION.snow,
            load: loadOf(input, rafter, input.snowPsf, (p) => p.deadLb + p.snowLb),
          },
        ]
      : []),
  ]
  const stresses = cases.map(({ combination, duration, load }): RafterStress => {
    const momentLbIn = rafterMoment(load, supportsIn, place)
    return {
      rafter,
      place,
      combination,
      momentLbFt: poundFeetOf(momentLbIn),
      loadDuration: duration,
      stressPsi: momentLbIn / strength.sectionModulusIn3,
      allowablePsi: strength.allowablePsi * duration,
    }
  })
  return stresses.reduce((a, b) => (overAllowable(b) > overAllowable(a) ? b : a))
}
