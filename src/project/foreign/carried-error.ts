import { FileError } from '../../files/index.js'
import { ProjectError } from '../project-error.js'
import type { Problem } from '../problem.js'

/** An error on its way from one thread to another, where classes do not go. */
export type CarriedError =
  | { readonly kind: 'file'; readonly message: string; readonly exitCode: 2 | 3 }
  | {
      readonly kind: 'project'
      readonly problems: readonly Problem[]
      readonly exitCode: 2 | 3
      readonly sources: ReadonlyMap<string, string>
    }
  | { readonly kind: 'defect'; readonly message: string; readonly stack: string | undefined }

export function packError(error: unknown): CarriedError {
  if (error instanceof FileError) return { kind: 'file', message: error.message, exitCode: error.exitCode }
  if (error instanceof ProjectError) {
    const { problems, exitCode, sources } = error
    return { kind: 'project', problems, exitCode, sources }
  }
  const known = error instanceof Error ? error : new Error(String(error))
  return { kind: 'defect', message: known.message, stack: known.stack }
}

export function unpackError(carried: CarriedError): Error {
  if (carried.kind === 'file') return new FileError(carried.message, { exitCode: carried.exitCode })
  if (carried.kind === 'project') return new ProjectError(carried.problems, carried.exitCode, carried.sources)
  const error = new Error(carried.message)
  if (carried.stack !== undefined) error.stack = carried.stack
  return error
}
