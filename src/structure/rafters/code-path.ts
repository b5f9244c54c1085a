import { GRAVITY_INCREASE_LIMIT_PCT, ROOF_LIVE_LOAD_PSF } from '../../tables/irc/index.js'
import { at, poundFeetOf, type Inches, type Percent, type PoundFeet } from '../../values/index.js'
import { beamLines, stationAt, stationsOf } from '../beam/index.js'
import type { RafterInput } from './rafter-input.js'
import { bareLoads, rafterLoads, type LoadKind, type RafterLoad } from './rafter-loads.js'
import type { RafterPlace } from './rafter-place.js'
import type { RafterSpans } from './rafter-spans.js'

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

/**
 * What the rule for existing buildings says of one rafter: an allowed increase, which says nothing about strength.
 *
 * Total bending before is that of dead load with the larger of 20 psf roof live load and snow; with the array the live load is left out
 * under the modules where the code lets it.
 *
 * @source IEBC 2021 805.2, gravity load up by at most 5 % (secondary)
 */
export function codePathOf(
  input: RafterInput,
  { number, xIn, spans }: { readonly number: number; readonly xIn: Inches; readonly spans: RafterSpans },
): CodePath | undefined {
  const { supportsIn, lowIn, highIn } = spans
  const rafter = { number, xIn, lowIn, highIn, longestSpanIn: at(supportsIn, 1) - at(supportsIn, 0) }
  // The rule compares with the live load that the roof was designed for, whatever the slope takes off today.
  const designed = { ...input, livePsf: ROOF_LIVE_LOAD_PSF, bareWindPsf: () => 0 }
  const loads = [...rafterLoads(designed, rafter), ...bareLoads(designed, rafter).filter(({ kind }) => kind !== 'dead')]
  const snowFactor = input.combinations.find(({ snow, wind }) => snow > 0 && wind === 0)?.snow ?? 1
  const [first] = input.snow
  const before = {
    dead: [['dead', 1]],
    live: [
      ['dead', 1],
      ['bare live', 1],
    ],
    snow: [
      ['dead', 1],
      ['bare snow', snowFactor],
    ],
  } as const
  const after = {
    dead: [
      ['dead', 1],
      ['array', 1],
    ],
    live: [
      ['dead', 1],
      ['array', 1],
      ['live', 1],
    ],
    snow: [
      ['dead', 1],
      ['array', 1],
      ['snow', snowFactor],
    ],
  } as const
  let worst: CodePath | undefined
  for (const place of placesOf(supportsIn)) {
    const moments = momentsAt(loads, first?.name ?? '', spans, place)
    const of = (terms: Terms): PoundFeet => poundFeetOf(moments(terms))
    const dead = { before: of(before.dead), after: of(after.dead) }
    const live = { before: of(before.live), after: of(after.live) }
    const snow = { before: of(before.snow), after: of(after.snow) }
    const momentBeforeLbFt = Math.max(live.before, snow.before)
    const momentLbFt = Math.max(live.after, snow.after)
    if (momentBeforeLbFt <= 0) continue
    const changePct = changeOf({ before: momentBeforeLbFt, after: momentLbFt })
    worst = moreOf(worst, {
      rafter: number,
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

type Terms = readonly (readonly [kind: LoadKind, factor: number])[]

/**
 * Largest moment of sums of loads in a span that ends at its supports, or over a support of a rafter that runs through, lb-in.
 *
 * @param snowCase Name of the snow that counts.
 */
function momentsAt(
  loads: readonly RafterLoad[],
  snowCase: string,
  { supportsIn }: RafterSpans,
  { kind, number }: RafterPlace,
): (terms: Terms) => number {
  const held = kind === 'span' ? supportsIn.slice(number - 1, number + 1) : supportsIn
  const beam = { startIn: at(held, 0), endIn: at(held, held.length - 1), supportsIn: held }
  const stations = stationsOf({ ...beam, loads: [] }, loads)
  const lines = new Map(
    loads
      .filter((load) => load.loads.length > 0 && (load.snowCase === '' || load.snowCase === snowCase))
      .map((load) => [load.kind, beamLines({ ...beam, loads: load.loads }, stations).momentLbIn]),
  )
  const support = stationAt(stations, at(supportsIn, number))
  return (terms) => {
    let most = 0
    const [from, to] = kind === 'span' ? [0, stations.length - 1] : [support, support]
    for (let k = from; k <= to; k++) {
      const moment = terms.reduce((sum, [load, factor]) => sum + factor * (lines.get(load)?.[k] ?? 0), 0)
      most = Math.max(most, kind === 'span' ? moment : Math.abs(moment))
    }
    return most
  }
}
