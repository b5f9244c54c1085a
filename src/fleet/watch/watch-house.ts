import type { ReviewValues } from '../../fieldwork/index.js'
import { runHouse } from '../../house/index.js'
import { FileError } from '../../files/index.js'
import { LARGEST_METER_BYTES, loadProject, ProjectError, readNamedText } from '../../project/index.js'
import { StageError, type Finding, type Result } from '../../worksheet/index.js'
import { EXIT_OF_WATCH, type WatchedHouse, type WatchedOutcome, type WatchLine } from './watch-types.js'

const NOTHING = {
  format: 'gablewatt-watch/1',
  from: null,
  to: null,
  performance_pct: null,
  performance_low_pct: null,
  performance_high_pct: null,
  signs: [],
  lost_kwh_per_month: null,
  lost_usd_per_month: null,
} as const

/**
 * Reviews the readings of one house. What is wrong with its files becomes its line, so that the others go on.
 *
 * @param failBelow Present output below this share of the expected fails, %; undefined: only sure signs do.
 */
export async function watchHouse(house: WatchedHouse, failBelow: number | undefined): Promise<WatchedOutcome> {
  try {
    const loaded = loadProject({ path: house.projectPath })
    const text = readNamedText(house.productionPath, LARGEST_METER_BYTES, 'latin1')
    const result = await runHouse(loaded).output({ table: { name: house.productionPath, text } })
    return judged(house, result, failBelow)
  } catch (error) {
    const line = troubleOf(house.name, error)
    if (line === undefined) throw error
    return { line, findings: [] }
  }
}

function judged({ name }: WatchedHouse, result: Result<ReviewValues>, failBelow: number | undefined): WatchedOutcome {
  const { values, findings } = result
  const errors = findings.filter(({ severity }) => severity === 'error').map(sayFinding)
  const isLow = failBelow !== undefined && values.performance_pct < failBelow
  const messages = isLow
    ? [...errors, `present output ${values.performance_pct.toFixed(1)} %, below the ${failBelow} % asked for`]
    : errors
  const { as_is_kwh: asIs, mended_kwh: mended, mending_worth_usd: worth } = values.projection
  return {
    line: {
      ...NOTHING,
      house: name,
      status: messages.length > 0 ? 'failed' : 'ok',
      from: values.period.from,
      to: values.period.to,
      performance_pct: values.performance_pct,
      performance_low_pct: values.performance_low_pct,
      performance_high_pct: values.performance_high_pct,
      signs: values.signs,
      lost_kwh_per_month: (mended - asIs) / 12,
      lost_usd_per_month: worth === null ? null : worth / 12,
      messages,
    },
    findings,
  }
}

function sayFinding({ message, id }: Finding): string {
  return `${message} [${id}]`
}

function troubleOf(house: string, error: unknown): WatchLine | undefined {
  if (error instanceof ProjectError) {
    const messages = error.problems.map(({ file, line, column, path, message }) =>
      [`${file}${line === undefined ? '' : `:${line}:${column ?? 1}`}`, path, message]
        .filter((part) => part !== '')
        .join('  '),
    )
    return { ...NOTHING, house, status: error.exitCode === 3 ? 'unreadable' : 'invalid', messages }
  }
  if (error instanceof FileError) {
    return { ...NOTHING, house, status: error.exitCode === 3 ? 'unreadable' : 'invalid', messages: [error.message] }
  }
  if (error instanceof StageError) {
    return { ...NOTHING, house, status: 'invalid', messages: [`${error.where}: ${error.message}; ${error.fix}`] }
  }
  return undefined
}

/** The worst exit code of all. */
export function worstOf(outcomes: readonly WatchedOutcome[]): 0 | 1 | 2 | 3 {
  return outcomes.reduce<0 | 1 | 2 | 3>((worst, { line }) => {
    const own = EXIT_OF_WATCH[line.status]
    return own > worst ? own : worst
  }, 0)
}

/** Houses that could not be judged, then what costs most; houses without a tariff by their energy, after those with one. */
export function dearestFirst(outcomes: readonly WatchedOutcome[]): WatchedOutcome[] {
  const rank = ({ line }: WatchedOutcome): readonly [number, number] =>
    line.lost_kwh_per_month === null
      ? [0, 0]
      : line.lost_usd_per_month === null
        ? [2, -line.lost_kwh_per_month]
        : [1, -line.lost_usd_per_month]
  return outcomes.toSorted((a, b) => {
    const [[oneKind, one], [otherKind, other]] = [rank(a), rank(b)]
    return oneKind - otherKind || one - other || (a.line.house < b.line.house ? -1 : 1)
  })
}
