import { own } from '../values/index.js'
import type { ProjectFigures } from './baseline.js'
import { FleetError } from './fleet-error.js'
import type { Figure } from './types.js'

/** A value that is not what it was. */
export interface Move {
  readonly project: string
  readonly stage: string
  readonly key: string
  /** undefined: not there. */
  readonly was: Figure | undefined
  readonly is: Figure | undefined
  /** Change of a number in percent of what it was; undefined when that has no meaning. */
  readonly changePct: number | undefined
  readonly over: boolean
}

/** Moves are sorted as they are to be read: over the tolerance first, then the largest, by stage within equals. */
export function sortMoves(moves: readonly Move[]): Move[] {
  const size = ({ changePct }: Move): number => (changePct === undefined ? Infinity : Math.abs(changePct))
  const text = ({ stage, project, key }: Move): string => [stage, project, key].join('\n')
  return moves.toSorted((a, b) => {
    if (a.over !== b.over) return a.over ? -1 : 1
    if (size(a) !== size(b)) return size(b) - size(a)
    return text(a) < text(b) ? -1 : 1
  })
}

/**
 * Reads a tolerance such as `0.5%`.
 *
 * @returns percent.
 * @throws FleetError when it is no percentage.
 */
export function readTolerance(text: string): number {
  const found = /^(\d+\.?\d*|\.\d+)\s*%$/u.exec(text.trim())
  if (found === null) throw new FleetError(`--tolerance ${text}: write a percentage with its sign, such as 0.5%`, 2)
  return Number(found[1])
}

/**
 * What moved in one project. A text that changed, and a value that came or went, is over any tolerance.
 *
 * @param was Figures of the saved run; undefined when it did not hold the project.
 * @param is Figures of this run; undefined when this run does not hold it.
 * @param tolerancePct Largest change of a number that is let pass, percent of the saved one.
 */
export function compareProject(
  project: string,
  was: ProjectFigures | undefined,
  is: ProjectFigures | undefined,
  tolerancePct: number,
): Move[] {
  if (was === undefined || is === undefined) {
    const there = (figures: ProjectFigures | undefined): Figure | undefined => figures?.['project']?.['status']
    const move = { project, stage: 'project', key: 'status', was: there(was), is: there(is) }
    return was === is ? [] : [{ ...move, changePct: undefined, over: true }]
  }
  const moves: Move[] = []
  for (const stage of union(was, is)) {
    const [before, now] = [own(was, stage) ?? {}, own(is, stage) ?? {}]
    for (const key of union(before, now)) {
      const [a, b] = [own(before, key), own(now, key)]
      if (a === b) continue
      const changePct =
        typeof a === 'number' && typeof b === 'number' && a !== 0 ? (100 * (b - a)) / Math.abs(a) : undefined
      const over = changePct === undefined || Math.abs(changePct) > tolerancePct
      moves.push({ project, stage, key, was: a, is: b, changePct, over })
    }
  }
  return moves
}

function union(a: object, b: object): string[] {
  return [...new Set([...Object.keys(a), ...Object.keys(b)])]
}
