import { markedLine } from '../report/index.js'

/** One thing that is wrong with a project file, at one place. */
export interface Problem {
  /** File as the person named it, or `--set path=value` when an override is to blame. */
  readonly file: string
  /** Counted from 1; missing when the whole file or an override is meant. */
  readonly line?: number
  readonly column?: number
  /** Number of characters that a code frame underlines. */
  readonly length?: number
  /** Dotted path of the value, '' when the file as such is meant. */
  readonly path: string
  /** What was found, what is allowed, and a fix. */
  readonly message: string
}

/** `project.yaml:12:7  roof_planes.south.azimth_deg  unknown key; did you mean azimuth_deg?` */
export function formatProblem(problem: Problem): string {
  const place = problem.line === undefined ? problem.file : `${problem.file}:${problem.line}:${problem.column ?? 1}`
  return [place, problem.path, problem.message]
    .filter((part) => part !== '')
    .map((part) => markedLine(part))
    .join('  ')
}

/** More are not told one by one: they have one cause, and finding the places takes time. */
export const MOST_PROBLEMS = 200

/** Files in the order of first reading, and within a file from top to bottom; each problem once. */
export function sortProblems(problems: readonly Problem[], files: readonly string[]): Problem[] {
  const rank = (problem: Problem) => (files.includes(problem.file) ? files.indexOf(problem.file) : files.length)
  const sorted = problems.toSorted(
    (a, b) => rank(a) - rank(b) || (a.line ?? 0) - (b.line ?? 0) || (a.column ?? 0) - (b.column ?? 0),
  )
  const seen = new Set<string>()
  const unique = sorted.filter((problem) => {
    const text = formatProblem(problem)
    return !seen.has(text) && seen.add(text)
  })
  const [first] = unique
  if (first === undefined || unique.length <= MOST_PROBLEMS) return unique
  const message = `more than ${MOST_PROBLEMS} problems; only the first ones are shown`
  return [...unique.slice(0, MOST_PROBLEMS), { file: first.file, path: '', message }]
}
