/**
 * Where a function crosses zero: straight lines between the ends (with the weight of an end that stays halved), and the
 * middle whenever three lines did not halve the stretch. Ends on a jump too.
 *
 * @param low, high Ends at which the function has different signs.
 * @param tolerance Width of the stretch that is good enough.
 * @returns Undefined when both ends have the same sign.
 * @source Illinois variant of false position, Dowell & Jarratt 1971 (from memory)
 */
export function findRoot(
  valueAt: (x: number) => number,
  low: number,
  high: number,
  tolerance: number,
): number | undefined {
  let [a, b] = [low, high]
  let [atA, atB] = [valueAt(a), valueAt(b)]
  if (a === b || Math.sign(atA) === Math.sign(atB)) return undefined
  const signA = Math.sign(atA)
  let kept: 'a' | 'b' | undefined
  for (let round = 0, width = Math.abs(b - a); Math.abs(b - a) > tolerance && round < 200; round++) {
    const isSlow = round % 3 === 2 && Math.abs(b - a) > width / 2
    if (round % 3 === 2) width = Math.abs(b - a)
    const line = b - (atB * (b - a)) / (atB - atA)
    // Half a tolerance inside, so that the far end can come close too.
    const x = isSlow || !Number.isFinite(line) ? (a + b) / 2 : inside(line, a, b, tolerance / 2)
    const atX = valueAt(x)
    if (atX === 0) return x
    if (Math.sign(atX) === signA) {
      ;[a, atA] = [x, atX]
      if (kept === 'b') atB /= 2
      kept = 'b'
    } else {
      ;[b, atB] = [x, atX]
      if (kept === 'a') atA /= 2
      kept = 'a'
    }
  }
  return (a + b) / 2
}

function inside(x: number, a: number, b: number, margin: number): number {
  const [low, high] = a < b ? [a + margin, b - margin] : [b + margin, a - margin]
  return x < low ? low : x > high ? high : x
}
