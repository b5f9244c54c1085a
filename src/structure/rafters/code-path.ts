import { GRAVITY_INCREASE_LIMIT_PCT } from '../../tables/irc/index.js'
import { at, poundFeetOf, type Inches, type Percent, type PoundFeet } from '../../values/index.js'
import type { LoadKind } from './rafter-loads.js'
import type { RafterPlace } from './rafter-place.js'
import type { RafterSpans } from './rafter-spans.js'
import type { SolvedPart } from './rafter-parts.js'

/** Bending of a rafter with the array against bending before it. */
export interface CodePath {
  readonly rafter: number
  readonly place: RafterPlace
  readonly momentLbFt: PoundFeet
  readonly momentBeforeLbFt: PoundFeet
  /** Of the moment of dead load and the larger of live load and snow. */
  readonly changePct: Percent
  /** Of the moment of dead load alone. */
  readonly deadChangePct: Percent
  /** Of D + Lr and D + S each. */
  readonly combinations: readonly { readonly name: string; readonly changePct: Percent }[]
  readonly passes: boolean
}

/** Solved beams of a rafter with the array and without it. */
export interface BeforeAndAfter {
  readonly before: readonly SolvedPart[]
  readonly after: readonly SolvedPart[]
}

/**
 * What the rule for existing buildings says of one rafter: an allowed increase, which says nothing about strength.
 *
 * Bending before is that of dead load with the larger of roof live load and balanced snow; with the array the live load is left out
 * under the modules where the code lets it.
 *
 * @param snowFactor Factor of snow in the gravity combination of the edition.
 * @source IEBC 2021 805.2, gravity load up by at most 5 % (secondary)
 */
export function codePathOf(
  rafter: number,
  { supportsIn }: RafterSpans,
  { before, after }: BeforeAndAfter,
  snowFactor: number,
): CodePath | undefined {
  let worst: CodePath | undefined
  for (const place of placesOf(supportsIn)) {
    const of = (parts: readonly SolvedPart[], terms: Terms): PoundFeet => poundFeetOf(momentAt(parts, place, terms))
    const dead = { before: of(before, { dead: 1 }), after: of(after, { dead: 1, array: 1 }) }
    const live = {
      before: of(before, { dead: 1, 'bare live': 1 }),
      after: of(after, { dead: 1, array: 1, live: 1 }),
    }
    const snow = {
      before: of(before, { dead: 1, 'bare snow': snowFactor }),
      after: of(after, { dead: 1, array: 1, snow: snowFactor }),
    }
    const momentBeforeLbFt = Math.max(live.before, snow.before)
    const momentLbFt = Math.max(live.after, snow.after)
    if (momentBeforeLbFt <= 0) continue
    const changePct = changeOf({ before: momentBeforeLbFt, after: momentLbFt })
    worst = moreOf(worst, {
      rafter,
      place,
      momentLbFt,
      momentBeforeLbFt,
      changePct,
      deadChangePct: changeOf(dead),
      combinations: [
        { name: 'D + Lr', changePct: changeOf(live) },
        { name: 'D + S', changePct: changeOf(snow) },
      ],
      passes: changePct <= GRAVITY_INCREASE_LIMIT_PCT + 1e-9,
    })
  }
  return worst
}

const changeOf = ({ before, after }: { before: number; after: number }): Percent =>
  before > 0 ? 100 * (after / before - 1) : 0

/** The one whose bending grows more. */
export function moreOf(a: CodePath | undefined, b: CodePath | undefined): CodePath | undefined {
  if (a === undefined || b === undefined) return a ?? b
  return b.changePct > a.changePct ? b : a
}

function placesOf(supportsIn: readonly Inches[]): RafterPlace[] {
  return supportsIn.flatMap((_, i): RafterPlace[] => [
    ...(i > 0 ? [{ kind: 'span' as const, number: i }] : []),
    ...(i > 0 && i < supportsIn.length - 1 ? [{ kind: 'support' as const, number: i }] : []),
  ])
}

/** Factors of loads; of snow only the first case counts, which is the balanced one. */
type Terms = Readonly<Partial<Record<LoadKind, number>>>

/** Largest moment of a sum of loads in a span, or over a support of a rafter that runs through, lb-in. */
function momentAt(parts: readonly SolvedPart[], { kind, number }: RafterPlace, terms: Terms): number {
  const inside = (solved: SolvedPart): boolean => solved.part.firstSupport + solved.part.supportsIn.length > number + 1
  const solved =
    kind === 'span'
      ? parts.find(({ part }) => part.firstSupport === number - 1)
      : parts.find((each) => each.part.firstSupport < number && inside(each))
  if (solved === undefined) return 0
  const { part, stations, loads, lines } = solved
  const first = loads.find(({ kind: each }) => each.includes('snow'))?.snowCase
  const counted = loads.flatMap((load, index) => {
    const factor = terms[load.kind]
    const line = lines[index]?.momentLbIn
    const isCounted = load.snowCase === '' || load.snowCase === first
    return factor === undefined || line === undefined || !isCounted ? [] : [{ factor, line }]
  })
  const from = at(part.supportsIn, kind === 'span' ? number - 1 - part.firstSupport : number - part.firstSupport)
  const to = kind === 'span' ? at(part.supportsIn, number - part.firstSupport) : from
  let most = 0
  for (let k = 0; k < stations.length; k++) {
    const x = stations[k]!
    if (x < from - 1e-6 || x > to + 1e-6) continue
    let moment = 0
    for (const { factor, line } of counted) moment += factor * line[k]!
    most = Math.max(most, kind === 'span' ? moment : Math.abs(moment))
  }
  return most
}
