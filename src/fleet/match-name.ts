import { FleetError } from './fleet-error.js'

/** One part of a pattern for a name: any characters, or one character of a kind. */
type Part = 'any' | ((character: string) => boolean)

/**
 * Makes a matcher of names: `*` stands for any characters, `?` for one, `[a-c]` and `[!a-c]` for one of a list. A name
 * that begins with a dot matches only a pattern that does. A match takes at most length of name times length of pattern.
 *
 * @param whole The pattern as the person wrote it, for messages.
 * @throws FleetError for a list that is not closed or runs backwards.
 */
export function nameMatcher(segment: string, whole: string): (name: string) => boolean {
  const parts = partsOf(Array.from(segment), whole)
  const takesHidden = segment.startsWith('.')
  return (name) => (takesHidden || !name.startsWith('.')) && matches(parts, Array.from(name))
}

function partsOf(characters: readonly string[], whole: string): Part[] {
  const parts: Part[] = []
  for (let at = 0; at < characters.length; at += 1) {
    const one = characters[at]!
    if (one === '*') {
      if (parts.at(-1) !== 'any') parts.push('any')
    } else if (one === '?') parts.push(() => true)
    else if (one === '[') {
      // A bracket right after the opening one belongs to the list.
      const first = characters[at + 1] === '!' || characters[at + 1] === '^' ? at + 2 : at + 1
      const end = characters.indexOf(']', first + 1)
      if (end < 0) throw badPattern(whole, "the list that opens with '[' is not closed")
      parts.push(listPart(characters.slice(first, end), first > at + 1, whole))
      at = end
    } else parts.push((character) => character === one)
  }
  return parts
}

function listPart(list: readonly string[], negated: boolean, whole: string): Part {
  const ranges: (readonly [from: number, to: number])[] = []
  for (let at = 0; at < list.length; at += 1) {
    const from = list[at]!
    const isRange = list[at + 1] === '-' && at + 2 < list.length
    const to = isRange ? list[at + 2]! : from
    if (codeOf(from) > codeOf(to)) {
      throw badPattern(whole, `the range '${from}-${to}' runs backwards; write '${to}-${from}'`)
    }
    ranges.push([codeOf(from), codeOf(to)])
    if (isRange) at += 2
  }
  return (character) => {
    const code = codeOf(character)
    return ranges.some(([from, to]) => from <= code && code <= to) !== negated
  }
}

/** Goes back to the last `*` only: an earlier one has taken all that it must. */
function matches(parts: readonly Part[], name: readonly string[]): boolean {
  let [part, at, star, resume] = [0, 0, -1, 0]
  while (at < name.length) {
    const wanted = parts[part]
    if (wanted === 'any') {
      star = part
      resume = at
      part += 1
    } else if (wanted?.(name[at]!) === true) {
      part += 1
      at += 1
    } else if (star >= 0) {
      resume += 1
      at = resume
      part = star + 1
    } else return false
  }
  return parts.slice(part).every((rest) => rest === 'any')
}

function codeOf(character: string): number {
  return character.codePointAt(0) ?? 0
}

export function badPattern(pattern: string, why: string): FleetError {
  const shown = pattern.length > 200 ? `${pattern.slice(0, 200)}...` : pattern
  return new FleetError(`${shown}: no usable pattern: ${why}`, 2)
}
