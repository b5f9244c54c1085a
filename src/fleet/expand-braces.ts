import { badPattern } from './match-name.js'

/** More than anybody lists by hand. */
const MOST_CHOICES = 1000

/**
 * The patterns that one with choices stands for: `{east,west}/*.yaml`, also one in another.
 *
 * @throws FleetError when a brace is not closed, or there are more than a thousand.
 */
export function expandBraces(pattern: string): readonly string[] {
  let open: ReadonlySet<string> = new Set([pattern])
  for (;;) {
    const next = new Set<string>()
    let isDone = true
    for (const text of open) {
      const end = text.indexOf('}')
      const start = text.lastIndexOf('{', end < 0 ? text.length : end)
      if (start < 0 && end < 0) {
        next.add(text)
        continue
      }
      if (start < 0) throw badPattern(pattern, "a '}' closes nothing")
      if (end < 0) throw badPattern(pattern, "the choice that opens with '{' is not closed")
      isDone = false
      for (const choice of text.slice(start + 1, end).split(',')) {
        next.add(text.slice(0, start) + choice + text.slice(end + 1))
        if (next.size > MOST_CHOICES) {
          throw badPattern(
            pattern,
            `its braces stand for more than ${MOST_CHOICES} patterns; use '*', or name a folder`,
          )
        }
      }
    }
    open = next
    if (isDone) return [...open]
  }
}
