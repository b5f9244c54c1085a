import type { Source } from '../../worksheet/index.js'

/** What came out of one check: it holds, it does not, a fact for it is missing, or the code in force does not ask for it. */
export type StorageVerdict = 'pass' | 'fail' | 'not_stated' | 'not_ruled'

/** One check of a storage system. */
export interface StorageCheck {
  /** Name of the check: `unit-energy`. */
  readonly id: string
  /** Path in the project file of what was checked, or of the fact that is missing. */
  readonly where: string
  /** One sentence with numbers and units, no full stop. */
  readonly says: string
  readonly verdict: StorageVerdict
  readonly source: Source
  readonly fix: string
  /** Number that was compared; undefined where the check compares none. */
  readonly value?: number | undefined
  readonly limit?: number | undefined
  readonly unit?: string | undefined
  readonly relation?: '<=' | '>='
  /** Severity of a check that fails; error when missing. */
  readonly severity?: 'error' | 'warning' | 'note'
}

/** The parts of a check that compares two numbers. */
interface Comparison extends Omit<StorageCheck, 'verdict' | 'says' | 'value' | 'limit' | 'unit' | 'relation'> {
  readonly what: string
  readonly value: number | undefined
  readonly limit: number
  readonly unit: string
  readonly relation: '<=' | '>='
}

/** Holds a stated number against a limit; one that is not stated is a check that could not be made. */
export function compareStated({ what, ...parts }: Comparison): StorageCheck {
  const { value, limit, unit, relation } = parts
  if (value === undefined)
    return {
      ...parts,
      verdict: 'not_stated',
      says: `${what} is not stated, so it was not held against ${relation === '<=' ? 'at most' : 'at least'} ${limit} ${unit}`,
    }
  const noise = 1e-9 * Math.max(1, Math.abs(limit))
  const holds = relation === '<=' ? value <= limit + noise : value >= limit - noise
  return {
    ...parts,
    verdict: holds ? 'pass' : 'fail',
    says: `${what} is ${rounded(value)} ${unit}${holds ? ',' : ', but'} ${relation === '<=' ? `at most ${limit} ${unit} is the limit` : `at least ${limit} ${unit} is asked for`}`,
  }
}

/** The parts of a check that a yes or no answers. */
interface Answer extends Omit<StorageCheck, 'verdict' | 'says' | 'value' | 'limit' | 'unit'> {
  /** Undefined where the person has not said. */
  readonly answer: boolean | undefined
  readonly yes: string
  readonly no: string
  readonly missing: string
}

/** A check that a stated fact decides. */
export function answerStated({ answer, yes, no, missing, ...parts }: Answer): StorageCheck {
  if (answer === undefined) return { ...parts, verdict: 'not_stated', says: missing }
  return { ...parts, verdict: answer ? 'pass' : 'fail', says: answer ? yes : no }
}

const rounded = (value: number): number => Number(value.toFixed(3))
