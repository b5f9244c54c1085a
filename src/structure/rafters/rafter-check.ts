import { at, type Inches } from '../../values/index.js'
import { codePathOf, moreOf, type CodePath } from './code-path.js'
import type { RafterInput, RafterPoint } from './rafter-input.js'
import { pointsOn } from './rafter-loads.js'
import { isOnKnownSpan, planInOf, raftersAt, type RafterSpans } from './rafter-spans.js'
import { solveRafter, worseOf, type SolvedRafter } from './solve-rafter.js'
import { withShares, type RafterCheck, type RafterCheckName, type WorstOfRafter } from './worst-checks.js'
import { lumberOf, woodStrength, type WoodStrength } from './wood-strength.js'

/** One rafter with a mount on it. */
export interface CheckedRafter extends WorstOfRafter {
  readonly number: number
  readonly xIn: Inches
  readonly spans: RafterSpans
}

export interface RafterResult {
  /** Rafters with mounts on them; empty when the wood is not known. */
  readonly rafters: readonly CheckedRafter[]
  /** Undefined when species, grade or their values are not known. */
  readonly wood: WoodStrength | undefined
  /** Why the wood is not known, and what the lowest usual group would give. */
  readonly woodMissing: { readonly because: string; readonly lowest: WorstCheck | undefined } | undefined
  /** The existing-building rule on the worst rafter; undefined when no mount stands on a span whose supports are known. */
  readonly codePath: CodePath | undefined
  /** Mounts on parts of rafters whose supports are not stated. */
  readonly unchecked: readonly RafterPoint[]
}

/** The group with the lowest values of the grade that rafters usually have; No. 3, Stud and Utility lie lower still. */
export const LOWEST_USUAL = { species: 'Eastern Softwoods', grade: 'No. 2' } as const

const CHECK_NAMES: readonly RafterCheckName[] = ['bending', 'shear', 'bearing', 'deflection']

/**
 * The rafters of one plane with mounts on them: strength and stiffness of the wood, and, apart from that, what the rule for
 * existing buildings says.
 *
 * @source NDS 2018 (secondary); IEBC 2021 805.2 (secondary); statics
 */
export function checkRafters(input: RafterInput): RafterResult {
  const { framing } = input
  const lumber = lumberOf(framing)
  const wood = woodStrength(framing)
  const taken = wood ?? woodStrength({ ...framing, ...LOWEST_USUAL })
  const rafters: CheckedRafter[] = []
  const unchecked: RafterPoint[] = []
  // Without the array rafters of the same spans are alike.
  const bare = new Map<string, SolvedRafter>()
  let codePath: CodePath | undefined
  const snowFactor = input.combinations.find(({ snow, wind }) => snow > 0 && wind === 0)?.snow ?? 1
  for (const number of loadedRafters(input)) {
    const points = pointsOn(input, number)
    const xIn = framing.firstOffsetIn + (number - 1) * framing.spacingIn
    const stretches = raftersAt(input.plane, framing, xIn)
    const placeIn = (p: RafterPoint): number => planInOf(input.plane, p.yIn)
    const own = input.points.filter((p) => p.rafter === number)
    unchecked.push(...own.filter((p) => !stretches.some((rafter) => isOnKnownSpan(rafter, placeIn(p)))))
    for (const spans of stretches) {
      if (spans.supportsIn.length < 2) continue
      const isUnder = points.some((p) => placeIn(p) >= spans.lowIn - 1 && placeIn(p) <= spans.highIn + 1)
      if (!isUnder) continue
      if (taken === undefined) continue
      const rafter = { number, xIn, spans, wood: taken }
      const key = [spans.lowIn, spans.highIn, ...spans.supportsIn].join()
      const without = bare.get(key) ?? solveRafter(input, rafter, 'without the array')
      bare.set(key, without)
      const withArray = solveRafter(input, rafter, 'with the array')
      const parts = { before: without.parts, after: withArray.parts }
      codePath = moreOf(codePath, codePathOf(number, spans, parts, snowFactor))
      rafters.push({ number, xIn, spans, ...worseOf(withArray, without) })
    }
  }
  if (!('missing' in lumber)) return { rafters, wood, woodMissing: undefined, codePath, unchecked }
  const lowest = CHECK_NAMES.map((name) => worstCheck(rafters, name))
    .filter((worst) => worst !== undefined)
    .toSorted((a, b) => b.check.ratio - a.check.ratio)[0]
  return { rafters: [], wood, woodMissing: { because: lumber.missing, lowest }, codePath, unchecked }
}

/** The same without the beams that it was read from, which take several times the room: for a result that is kept. */
export function withoutBeams(result: RafterResult): RafterResult {
  return { ...result, rafters: result.rafters.map((rafter) => ({ ...rafter, lines: rafter.lines.map(withShares) })) }
}

/** Rafters that carry a mount, and with load sharing their neighbours. */
function loadedRafters({ points, framing }: RafterInput): number[] {
  const own = points.map((point) => point.rafter)
  const beside = framing.loadSharing === undefined ? [] : own.flatMap((rafter) => [rafter - 1, rafter + 1])
  return [...new Set([...own, ...beside])].filter((rafter) => rafter > 0).toSorted((a, b) => a - b)
}

/** A check with the rafter that it is of. */
export interface WorstCheck {
  readonly rafter: CheckedRafter
  readonly check: RafterCheck
}

/** The worst of one check over all rafters, with its rafter. */
export function worstCheck(rafters: readonly CheckedRafter[], name: RafterCheckName): WorstCheck | undefined {
  const all = rafters.flatMap((rafter) =>
    rafter.checks.filter(({ check }) => check === name).map((check) => ({ rafter, check })),
  )
  return all.length === 0 ? undefined : all.reduce((a, b) => (b.check.ratio > a.check.ratio ? b : a), at(all, 0))
}

/** The highest ratio of any check of any rafter; 0 without rafters. */
export function highestRatio(rafters: readonly CheckedRafter[]): number {
  let highest = 0
  for (const { checks } of rafters) for (const { ratio } of checks) highest = Math.max(highest, ratio)
  return highest
}
