import type { Degrees } from '../../values/index.js'

/** How much of the light passes from a part of the sky: none, less than half, more than half. */
export type Hiding = 'all' | 'most' | 'some'

/** A part of the sky with one outline, as azimuth and elevation, degrees. */
export interface HiddenPart {
  readonly hiding: Hiding
  readonly corners: readonly (readonly [azimuthDeg: Degrees, elevationDeg: Degrees])[]
}

/** Hidden stretch of a column of the sky. */
interface Run {
  readonly hiding: Hiding
  readonly fromDeg: Degrees
  readonly toDeg: Degrees
}

/** Width of a column, and the height that nothing is looked for within. */
const STEP_DEG = 1
const FINE_DEG = 0.05
/** Mean shares of light that pass: less than the first counts as none, more than the last as all. */
const BOUNDS = { none: 0.02, half: 0.5, all: 0.98 } as const

/** The class of a mean share of light, undefined where (nearly) all of it passes. */
export function hidingOf(passes: number): Hiding | undefined {
  if (passes <= BOUNDS.none) return 'all'
  if (passes < BOUNDS.half) return 'most'
  return passes < BOUNDS.all ? 'some' : undefined
}

/**
 * The hidden parts of the sky between two azimuths, column by column; columns that have the same kinds above each other are
 * joined.
 *
 * @param passes Share of light that passes from a direction, mean of the year, 0 to 1.
 */
export function hiddenParts(
  passes: (azimuthDeg: Degrees, elevationDeg: Degrees) => number,
  fromDeg: Degrees,
  toDeg: Degrees,
): HiddenPart[] {
  const count = Math.round((toDeg - fromDeg) / STEP_DEG)
  const columns = Array.from({ length: count }, (_, index) => {
    const azimuthDeg = fromDeg + (index + 0.5) * STEP_DEG
    return { azimuthDeg, runs: runsOf((elevationDeg) => hidingOf(passes(azimuthDeg, elevationDeg))) }
  })
  const parts: HiddenPart[] = []
  for (let begin = 0; begin < count;) {
    const kinds = kindsOf(columns[begin]!.runs)
    let end = begin + 1
    while (end < count && kindsOf(columns[end]!.runs) === kinds) end += 1
    const group = columns.slice(begin, end)
    columns[begin]!.runs.forEach(({ hiding }, run) => {
      parts.push({ hiding, corners: outline(group, run) })
    })
    begin = end
  }
  return parts
}

function kindsOf(runs: readonly Run[]): string {
  return runs.map(({ hiding }) => hiding).join(' ')
}

/** Up the left half-columns, along the tops, and back along the bottoms. */
function outline(
  group: readonly { readonly azimuthDeg: Degrees; readonly runs: readonly Run[] }[],
  run: number,
): (readonly [Degrees, Degrees])[] {
  const edge = (of: (run: Run) => Degrees): (readonly [Degrees, Degrees])[] => {
    const points = group.map(({ azimuthDeg, runs }) => [azimuthDeg, of(runs[run]!)] as const)
    const [first, last] = [points[0]!, points.at(-1)!]
    return [[first[0] - STEP_DEG / 2, first[1]], ...points, [last[0] + STEP_DEG / 2, last[1]]]
  }
  return [...edge(({ toDeg }) => toDeg), ...edge(({ fromDeg }) => fromDeg).toReversed()]
}

/** Stretches of one kind from the horizon to the zenith; their ends are found by halving. */
function runsOf(kindAt: (elevationDeg: Degrees) => Hiding | undefined): Run[] {
  const runs: Run[] = []
  let [beganDeg, kind] = [0, kindAt(0.01)]
  const end = (atDeg: Degrees): void => {
    if (kind !== undefined && atDeg > beganDeg) runs.push({ hiding: kind, fromDeg: beganDeg, toDeg: atDeg })
  }
  for (let elevationDeg = 0; elevationDeg < 90; elevationDeg += STEP_DEG / 2) {
    const above = elevationDeg + STEP_DEG / 2
    const next = kindAt(Math.min(above, 89.99))
    if (next === kind) continue
    let [low, high] = [elevationDeg, above]
    while (high - low > FINE_DEG) {
      const middle = (low + high) / 2
      if (kindAt(middle) === kind) low = middle
      else high = middle
    }
    end(high)
    ;[beganDeg, kind] = [high, next]
  }
  end(90)
  return runs
}
