import type { RoofProject } from '../../project/index.js'
import { LUMBER_SIZES, type NominalSize } from '../../tables/nds/index.js'
import { at, type Feet } from '../../values/index.js'

type Support = NonNullable<NonNullable<NonNullable<RoofProject['structure']>['framing']>[string]['supports']>[number]

/** A stated support between two spans that does not count as one. */
export interface UncountedSupport {
  /** Counted from the eave, 1 first. */
  readonly number: number
  /** What is not stated or not enough, in words. */
  readonly because: string
}

/**
 * What a braced purlin must have at least to carry rafters.
 *
 * @source IRC R802.4.5 (R802.5.1 before 2018): purlin as deep as the rafter, 2x4 braces at most 4 ft apart and 8 ft long
 *   unbraced, at 45 degrees or steeper, onto a bearing wall (secondary; the 4 ft from memory)
 */
const BRACES = { leastSize: '2x4', mostSpacingFt: 4, mostLengthFt: 8, leastAngleDeg: 45 } as const

/**
 * Spans between the supports that count; where one does not, the spans beside it are added.
 *
 * @param statedFt Spans from the eave up, ft.
 * @param supports What stands between them, as many as spans less one.
 */
export function countedSpans(
  statedFt: readonly Feet[],
  supports: readonly Support[],
  rafterSize: NominalSize | undefined,
): { spansFt: Feet[]; uncounted: UncountedSupport[] } {
  const spansFt: number[] = []
  const uncounted: UncountedSupport[] = []
  for (const [index, spanFt] of statedFt.entries()) {
    const because = index === 0 ? undefined : whyNot(supports[index - 1], rafterSize)
    if (because === undefined) spansFt.push(spanFt)
    else {
      uncounted.push({ number: index, because })
      spansFt[spansFt.length - 1] = at(spansFt, spansFt.length - 1) + spanFt
    }
  }
  return { spansFt, uncounted }
}

/** Why a support does not count, or undefined when it does. */
function whyNot(support: Support | undefined, rafterSize: NominalSize | undefined): string | undefined {
  if (support === undefined) return 'what stands there is not stated under supports'
  if (support.kind === 'bearing_wall' || support.kind === 'beam') return undefined
  const reasons = support.kind === 'purlin' ? purlinGaps(support, rafterSize) : kneeWallGaps(support)
  if (support.onto !== 'bearing_wall') {
    reasons.push(
      support.onto === undefined || support.onto === 'unknown'
        ? 'what it stands on is not known'
        : `it stands on ${support.onto.replaceAll('_', ' ')}, not on a bearing wall`,
    )
  }
  return reasons.length === 0 ? undefined : `${support.kind.replaceAll('_', ' ')}: ${reasons.join('; ')}`
}

const depthOf = (size: NominalSize): number => LUMBER_SIZES[size].depthIn

function purlinGaps(support: Support, rafterSize: NominalSize | undefined): string[] {
  const { nominal_size: size, brace_size: brace } = support
  return [
    ...(size === undefined ? ['its size is not stated'] : []),
    ...(size !== undefined && rafterSize !== undefined && depthOf(size) < depthOf(rafterSize)
      ? [`a ${size} is not as deep as the rafter`]
      : []),
    ...(brace === undefined ? ['the size of its braces is not stated'] : []),
    ...more('the distance of its braces', support.brace_spacing_ft, BRACES.mostSpacingFt, 'ft'),
    ...more('the length of its braces', support.brace_length_ft, BRACES.mostLengthFt, 'ft'),
    ...(support.brace_angle_deg === undefined ? ['the slope of its braces is not stated'] : []),
    ...(support.brace_angle_deg !== undefined && support.brace_angle_deg < BRACES.leastAngleDeg
      ? [`its braces stand at ${support.brace_angle_deg} degrees, less than ${BRACES.leastAngleDeg}`]
      : []),
  ]
}

function kneeWallGaps(support: Support): string[] {
  return [
    ...(support.nominal_size === undefined ? ['the size of its studs is not stated'] : []),
    ...more('the distance of its studs', support.brace_spacing_ft, BRACES.mostSpacingFt, 'ft'),
    ...more('the length of its studs', support.brace_length_ft, BRACES.mostLengthFt, 'ft'),
  ]
}

function more(what: string, value: number | undefined, most: number, unit: string): string[] {
  if (value === undefined) return [`${what} is not stated`]
  return value > most ? [`${what} is ${value} ${unit}, over ${most} ${unit}`] : []
}
