import { describe, expect, test } from 'vitest'
import { editDistance } from '../../src/values/index.js'

/** The same by its definition: the fewest steps of a search over all words that one change makes. */
function bySearch(from: string, to: string, letters: string): number {
  const seen = new Set([from])
  let words = [from]
  for (let steps = 0; ; steps++) {
    if (words.includes(to)) return steps
    words = words.flatMap((word) => changed(word, letters, to.length + 2).filter((each) => !seen.has(each)))
    for (const word of words) seen.add(word)
  }
}

function changed(word: string, letters: string, most: number): string[] {
  const found: string[] = []
  for (let at = 0; at <= word.length; at++) {
    const [head, tail] = [word.slice(0, at), word.slice(at)]
    if (word.length < most) for (const letter of letters) found.push(head + letter + tail)
    if (tail === '') continue
    found.push(head + tail.slice(1))
    for (const letter of letters) found.push(head + letter + tail.slice(1))
    if (tail.length > 1) found.push(head + tail[1] + tail[0] + tail.slice(2))
  }
  return found
}

describe('changes between two words', () => {
  // Worked examples of the textbook case (Levenshtein 1966; from memory) and of swapped neighbours (Damerau 1964; from memory).
  test.each([
    ['kitten', 'sitting', 3],
    ['saturday', 'sunday', 3],
    ['', 'abc', 3],
    ['abc', '', 3],
    ['tariff', 'tariff', 0],
    ['lenght', 'length', 1],
    ['azimuth_deg', 'azimut_deg', 1],
    ['tilt', 'tilts', 1],
    ['rows', 'row', 1],
    ['bus_a', 'sub_a', 2],
  ])('%s and %s: %d', (a, b, distance) => {
    expect([editDistance(a, b), editDistance(b, a)]).toEqual([distance, distance])
  })

  test('are the fewest of all ways, on every pair of short words', () => {
    const words = ['', 'a', 'b', 'ab', 'ba', 'aab', 'aba', 'abb', 'bab', 'bba']
    for (const a of words) {
      for (const b of words) {
        // A swap counts once and is not changed again, which a search may do: never more than the search by more than one.
        const [ours, searched] = [editDistance(a, b), bySearch(a, b, 'ab')]
        expect([a, b, ours >= searched && ours <= searched + 1]).toEqual([a, b, true])
      }
    }
  })
})
