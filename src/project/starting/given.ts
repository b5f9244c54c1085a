import { MADE_UP } from '../made-up-tag.js'

/** A value for a new file: a person's, or one that is made up and gets the marker. */
export interface Given<Value extends number | string = number> {
  readonly value: Value
  readonly madeUp: boolean
}

export const stated = <Value extends number | string>(value: Value): Given<Value> => ({ value, madeUp: false })
export const madeUp = <Value extends number | string>(value: Value): Given<Value> => ({ value, madeUp: true })

/** The value as it stands in YAML, behind the marker where it is made up. */
export function put({ value, madeUp: isMadeUp }: Given<number | string>): string {
  const text = typeof value === 'number' ? String(value) : quoted(value)
  return isMadeUp ? `${MADE_UP} ${text}` : text
}

/** Text in single quotes, on one line. */
export function quoted(text: string): string {
  return `'${text.replaceAll(/\s+/g, ' ').replaceAll("'", "''")}'`
}

/** A number that follows from others, made up as soon as one of them is. */
export function follows(work: (...values: number[]) => number, ...from: readonly Given[]): Given {
  const value = Math.round(work(...from.map((each) => each.value)) * 10) / 10
  return { value, madeUp: from.some((each) => each.madeUp) }
}
