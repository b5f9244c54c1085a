/** Number of insertions, deletions, substitutions and swaps of neighbours that turn one word into the other. */
export function editDistance(a: string, b: string): number {
  const rows: number[][] = [Array.from({ length: b.length + 1 }, (_, j) => j)]
  const at = (i: number, j: number) => rows[i]?.[j] ?? 0
  for (let i = 1; i <= a.length; i++) {
    rows[i] = [i]
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1] ? 0 : 1
      let best = Math.min(at(i - 1, j) + 1, at(i, j - 1) + 1, at(i - 1, j - 1) + same)
      if (i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1]) best = Math.min(best, at(i - 2, j - 2) + 1)
      rows[i]?.push(best)
    }
  }
  return at(a.length, b.length)
}

/** The one of `known` that the person most likely meant by `word`, or undefined when none is near. */
export function nearest(word: string, known: readonly string[]): string | undefined {
  if (word.length === 0 || word.length > 80) return undefined
  const lower = word.toLowerCase()
  let best: string | undefined
  let bestDistance = Infinity
  for (const candidate of known) {
    if (candidate.length > 80) continue
    const distance = nearness(lower, candidate.toLowerCase())
    if (distance < bestDistance) [best, bestDistance] = [candidate, distance]
  }
  return bestDistance <= Math.max(1, Math.floor(word.length / 3)) ? best : undefined
}

/** `tilt`, `tilt_degrees` and `tilt_deg` differ by the unit only: that counts as near. */
function nearness(word: string, candidate: string): number {
  const distance = editDistance(word, candidate)
  if (distance <= 1) return distance
  const sameStem = candidate.startsWith(`${word}_`) || (word.includes('_') && stem(word) === stem(candidate))
  return sameStem ? 1 : distance
}

function stem(key: string): string {
  return key.replace(/_[a-z0-9]+$/, '')
}

/** `; did you mean south?` or '' when nothing is near. */
export function didYouMean(word: string, known: readonly string[]): string {
  const near = nearest(word, known)
  return near === undefined ? '' : `; did you mean ${near}?`
}
