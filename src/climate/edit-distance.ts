/** Number of letters to insert, delete or replace to turn one word into the other (Levenshtein). */
export function editDistance(one: string, other: string): number {
  let above = Array.from({ length: other.length + 1 }, (_, index) => index)
  for (let row = 1; row <= one.length; row++) {
    const current = [row]
    for (let column = 1; column <= other.length; column++) {
      const replaced = above[column - 1]! + (one[row - 1] === other[column - 1] ? 0 : 1)
      current.push(Math.min(replaced, above[column]! + 1, current[column - 1]! + 1))
    }
    above = current
  }
  return above[other.length]!
}
