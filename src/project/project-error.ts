import { formatCodeFrame } from './code-frame.js'
import { formatProblem, type Problem } from './problem.js'

/** The project cannot be used. Holds every problem that was found, in the order of the file. */
export class ProjectError extends Error {
  override readonly name = 'ProjectError'
  readonly problems: readonly Problem[]
  /** 2: the project is invalid; 3: a file cannot be read. */
  readonly exitCode: 2 | 3
  /** Text of the files that the problems point into, for code frames. */
  readonly sources: ReadonlyMap<string, string>

  constructor(problems: readonly Problem[], exitCode: 2 | 3, sources: ReadonlyMap<string, string> = new Map()) {
    super(problems.map(formatProblem).join('\n'))
    this.problems = problems
    this.exitCode = exitCode
    this.sources = sources
  }

  /** Every problem on a line of its own; with `frames`, each followed by the lines of the file that it points at. */
  format({ frames = false }: { readonly frames?: boolean } = {}): string {
    if (!frames) return this.message
    const blocks = this.problems.map((problem) => {
      const source = this.sources.get(problem.file)
      const frame = source === undefined ? undefined : formatCodeFrame(source, problem)
      return frame === undefined ? formatProblem(problem) : `${formatProblem(problem)}\n${frame}\n`
    })
    return blocks.join('\n').trimEnd()
  }
}
