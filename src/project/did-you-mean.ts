import { editDistance } from '../values/index.js'

/** The one of `known` that the person most likely meant by `word`, or undefined when none is near. */
export function nearest(word: string, known: readonly string[]): string | undefined {
  if (word.length === 0 || word.length > 80) return undefined
  const lower = word.toLowerCase()
  let best: string | undefined
  let bestDistance = Infinity
  for (const candidate of known) {
    if (candidate.length > 80 || isAnotherEdition(word, candidate)) continue
    const distance = nearness(lower, candidate.toLowerCase())
    if (distance < bestDistance) [best, bestDistance] = [candidate, distance]
  }
  return bestDistance <= Math.max(1, Math.floor(word.length / 3)) ? best : undefined
}

/** Name of an edition of a code: `NEC 2020`, `ASCE 7-16`. */
const EDITION = /^[A-Z]+ \d[\d-]*$/u

/** Whether it names another edition of a code than the word: one edition is never taken for a slip of another. */
function isAnotherEdition(word: string, candidate: string): boolean {
  return EDITION.test(candidate) && digitsOf(word) !== digitsOf(candidate)
}

const digitsOf = (text: string): string => text.replaceAll(/\D/gu, '')

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
