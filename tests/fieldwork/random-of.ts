/** A generator of its own, so that the tests do not share one with the code: xorshift32. */
export function randomOf(seed: number): { uniform: () => number; normal: () => number } {
  let state = seed * 2_654_435_761 + 1
  const uniform = (): number => {
    state ^= state << 13
    state ^= state >>> 17
    state ^= state << 5
    return ((state >>> 0) + 0.5) / 4_294_967_296
  }
  const normal = (): number => Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform())
  for (let round = 0; round < 20; round += 1) uniform()
  return { uniform, normal }
}
