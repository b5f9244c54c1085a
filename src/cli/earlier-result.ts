import { readFileSync } from 'node:fs'
import type { Assumption, Finding, Result, Step } from '../worksheet/index.js'
import { FileError, UsageError } from './errors.js'
import { errnoWords } from './output/errno.js'
import { RESULT_FORMAT } from './output/json.js'

/** A result file as `--json` wrote it. */
export interface EarlierResult {
  readonly path: string
  readonly tool: string
  readonly stage: string
  readonly digest: string | undefined
  readonly result: Result<unknown>
}

/**
 * Reads a file of `--use`.
 *
 * @throws FileError when it cannot be read, UsageError when it is no result of this format.
 */
export function readEarlier(path: string): EarlierResult {
  let text: string
  try {
    text = readFileSync(path, 'utf8')
  } catch (error) {
    throw new FileError(`cannot read ${path}: ${errnoWords(error) ?? String(error)}`, { cause: error })
  }
  const refuse = (why: string): UsageError => new UsageError(`--use ${path}: ${why}`)
  let data: unknown
  try {
    data = JSON.parse(text)
  } catch {
    throw refuse('the file is not JSON; it must be what a subcommand wrote with --json')
  }
  if (!isObject(data) || typeof data['format'] !== 'string') {
    throw refuse('the file is no result; it must be what a subcommand wrote with --json')
  }
  if (data['format'] !== RESULT_FORMAT) {
    throw refuse(`its format is '${data['format']}', this program reads '${RESULT_FORMAT}'; make it again`)
  }
  const { tool, stage, project, values, worksheet, findings, assumptions } = data
  if (
    typeof tool !== 'string' ||
    typeof stage !== 'string' ||
    !isObject(values) ||
    !isListOfObjects(worksheet) ||
    !isListOfObjects(findings) ||
    !isListOfObjects(assumptions)
  ) {
    throw refuse(
      'the file is a damaged result: tool, stage, values, worksheet, findings or assumptions is missing; make it again',
    )
  }
  return {
    path,
    tool,
    stage,
    digest: isObject(project) && typeof project['digest'] === 'string' ? project['digest'] : undefined,
    result: {
      values,
      worksheet: worksheet as unknown as Step[],
      findings: findings as unknown as Finding[],
      assumptions: assumptions as unknown as Assumption[],
    },
  }
}

/**
 * Refuses a result that was not made by this version for this project and these `--set` values.
 *
 * @throws UsageError with what differs.
 */
export function checkEarlier(earlier: EarlierResult, tool: string, digest: string): void {
  const refuse = (why: string): UsageError => new UsageError(`--use ${earlier.path}: ${why}`)
  if (earlier.tool !== tool) throw refuse(`it was made by ${earlier.tool}, this is ${tool}; make it again`)
  if (earlier.digest !== digest) {
    throw refuse(
      'it was made from another project, or from this one before it or its --set values changed; make it again',
    )
  }
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}

function isListOfObjects(value: unknown): value is Record<string, unknown>[] {
  return Array.isArray(value) && value.every(isObject)
}
