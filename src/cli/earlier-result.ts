import { LARGEST_RESULT_BYTES, MOST_RESULT_MARKS, readNamedText } from '../project/index.js'
import { RESULT_FORMAT } from '../report/index.js'
import { BUILD, sayBuild, standingOf } from '../seal/index.js'
import type { Assumption, Finding, Result, Step } from '../worksheet/index.js'
import { UsageError } from './errors.js'
import { bomValues, mountsValues, result, wireValues, yieldValues } from './result-validators.generated.js'
import { DoubtfulJson, parseJson, TooMuchJson } from '../values/index.js'

/** A result file as `--json` wrote it. */
export interface EarlierResult {
  readonly path: string
  readonly tool: string
  readonly stage: string
  readonly digest: string | undefined
  /** The build that made it, where that is another. */
  readonly otherBuild: string | undefined
  readonly result: Result<unknown>
  /** What is to be told where it is taken although another build made it. */
  readonly warning?: string
}

/** What can be taken, by stage: the subcommand that makes it, and the check of its values. */
const TAKEN = new Map([
  ['yield', { command: 'estimate-yield', validate: yieldValues }],
  ['wire', { command: 'size-wire', validate: wireValues }],
  ['mounts', { command: 'space-mounts', validate: mountsValues }],
  ['bom', { command: 'price-bom', validate: bomValues }],
])

/** The envelope, once its schema has been checked. */
interface Envelope {
  readonly tool: string
  readonly stage: string
  readonly project: { readonly digest: string } | null
  readonly values: object
  readonly worksheet: readonly Step[]
  readonly findings: readonly Finding[]
  readonly assumptions: readonly Assumption[]
}

/**
 * Reads a file of `--use`.
 *
 * @param project The project that it is to be of, as the person named it; for the message.
 * @throws FileError when it cannot be read or is no text, UsageError when it is no result of this format, or not what was written.
 */
export function readEarlier(path: string, project: string): EarlierResult {
  const text = readNamedText(path, LARGEST_RESULT_BYTES)
  let data: unknown
  try {
    data = parseJson(text, MOST_RESULT_MARKS)
  } catch (error) {
    const what =
      error instanceof DoubtfulJson
        ? `is JSON ${error.message}`
        : error instanceof TooMuchJson
          ? error.ofFile
          : 'is not JSON'
    throw refusal(path, project, `the file ${what}; it must be what a subcommand wrote with --json`)
  }
  if (!isObject(data) || typeof data['format'] !== 'string') {
    throw refusal(path, project, 'the file is no result; it must be what a subcommand wrote with --json')
  }
  const { stage } = data
  const refuse = (why: string): UsageError => refusal(path, project, why, stage)
  if (data['format'] !== RESULT_FORMAT) {
    throw refuse(`its format is '${data['format']}', this program reads '${RESULT_FORMAT}'`)
  }
  if (!result(data)) throw refuse(`the file is a damaged result: ${misfit(result.errors)}`)
  const envelope = data as unknown as Envelope
  const standing = standingOf(data, envelope.stage)
  if (!standing.isWhole) {
    throw refuse('the file is not as it was written: its seal does not fit, so that it was damaged or changed by hand')
  }
  const taken = TAKEN.get(envelope.stage)
  if (taken === undefined) {
    const stages = [...TAKEN.keys()].map((name) => `'${name}'`).join(', ')
    throw new UsageError(
      `--use ${path}: no subcommand takes a '${envelope.stage}' result, only ${stages}; leave it out`,
    )
  }
  if (!standing.fits) {
    throw refuse(
      `its values have another form than this program's, as ${sayBuild(standing.otherBuild ?? BUILD)} made it`,
    )
  }
  if (!taken.validate(envelope.values)) {
    throw refuse(`its values are not those of a '${envelope.stage}' result: ${misfit(taken.validate.errors)}`)
  }
  return {
    path,
    tool: envelope.tool,
    stage: envelope.stage,
    digest: envelope.project?.digest,
    otherBuild: standing.otherBuild,
    result: {
      values: envelope.values,
      worksheet: envelope.worksheet,
      findings: envelope.findings,
      assumptions: envelope.assumptions,
    },
  }
}

/** For what a result is to be used. */
export interface Purpose {
  /** The project, as the person named it. */
  readonly project: string
  readonly tool: string
  readonly digest: string
  /** Whether a result of another version or build is taken, with a warning. */
  readonly anyway: boolean
}

/**
 * Refuses a result that was not made by this build of the program for this project and these `--set` values.
 *
 * @returns The result, with a warning where it is taken although another build made it.
 * @throws UsageError with what differs.
 */
export function checkEarlier(earlier: EarlierResult, { project, tool, digest, anyway }: Purpose): EarlierResult {
  const refuse = (why: string): UsageError => refusal(earlier.path, project, why, earlier.stage)
  if (earlier.digest !== digest) {
    throw refuse(
      'it was made from another project, from this one before it or its --set values changed, or by --codes or --rank, which the project file states by codes.electrical and rank',
    )
  }
  const maker = makerOf(earlier, tool)
  if (maker === undefined) return earlier
  if (!anyway) throw refuse(`it was made by ${maker}; --use-anyway takes it with a warning`)
  const warning: Finding = {
    severity: 'warning',
    id: 'use.other-build',
    message: `the stage '${earlier.stage}' was not worked out anew: it was made by ${maker}, and taken by --use-anyway`,
    where: '',
    fix: 'Work it out anew with this build before you rely on it.',
  }
  return {
    ...earlier,
    warning: warning.message,
    result: { ...earlier.result, findings: [warning, ...earlier.result.findings] },
  }
}

/** Which other version or build made it, beside this one; undefined when it was this one. */
function makerOf({ tool: by, otherBuild }: EarlierResult, tool: string): string | undefined {
  if (by !== tool) return `${by}, this is ${tool}`
  return otherBuild === undefined ? undefined : `${sayBuild(otherBuild)} of ${by}, this is ${sayBuild(BUILD)}`
}

/** Why a file is not taken, and what makes it anew. */
function refusal(path: string, project: string, why: string, stage?: unknown): UsageError {
  const command = typeof stage === 'string' ? TAKEN.get(stage)?.command : undefined
  const again =
    command === undefined
      ? 'make it again'
      : `make it again: gablewatt ${command} ${project} --json --out ${path} --force`
  return new UsageError(`--use ${path}: ${why}; ${again}`)
}

/** Where data first do not fit their schema, and by which of its rules. */
function misfit(errors: typeof result.errors): string {
  const error = errors?.[0]
  const place =
    error?.instancePath === undefined || error.instancePath === '' ? 'at its top' : `at ${error.instancePath}`
  const lacks = error?.params['missingProperty']
  if (typeof lacks === 'string') return `${place}, '${lacks}' is missing`
  const unknown = error?.params['additionalProperty']
  if (typeof unknown === 'string') return `${place}, there is no key '${unknown}'`
  return `${place}, the value is none that can stand there`
}

function isObject(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null && !Array.isArray(value)
}
