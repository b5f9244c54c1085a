import { StageError } from '../../worksheet/index.js'

/**
 * Hands a stated value through, or stops the stage when it is missing.
 *
 * @param where Dotted path in project.yaml.
 * @param what Plain name of the value.
 * @param fix Where the person finds it.
 * @throws StageError when the value is undefined.
 */
export function need<Value>(value: Value | undefined, where: string, what: string, fix: string): Value {
  if (value === undefined) throw new StageError(where, `${what} is not stated`, fix)
  return value
}
