/** Reproducible random numbers, the same on every machine: a 32-bit counter generator. */
export class RandomSource {
  #state: number
  /** The method makes two at a time. */
  #spare: number | undefined

  /** @param seed Whole number from 0 to 2^32 - 1. */
  constructor(seed: number) {
    this.#state = seed | 0
  }

  /** Uniform above 0 and below 1. */
  uniform(): number {
    // Signed, as the engine keeps those as plain integers.
    this.#state = (this.#state + 0x6d2b79f5) | 0
    let x = this.#state
    x = Math.imul(x ^ (x >>> 15), x | 1)
    x ^= x + Math.imul(x ^ (x >>> 7), x | 61)
    return (((x ^ (x >>> 14)) >>> 0) + 0.5) / 4_294_967_296
  }

  /**
   * Standard normal, by the polar form of the Box-Muller method.
   *
   * @source Marsaglia & Bray 1964, SIAM Review 6(3), 260-264 (from memory)
   */
  normal(): number {
    if (this.#spare !== undefined) {
      const spare = this.#spare
      this.#spare = undefined
      return spare
    }
    for (;;) {
      const u = 2 * this.uniform() - 1
      const v = 2 * this.uniform() - 1
      const square = u * u + v * v
      if (square >= 1) continue
      const factor = Math.sqrt((-2 * Math.log(square)) / square)
      this.#spare = v * factor
      return u * factor
    }
  }
}

/** As many as are kept: some 7,000 samples of 25 years, 1.6 MB. */
const MOST_KEPT = 200_000
let kept: { readonly seed: number; readonly deviates: Float64Array } | undefined

/** The first `count` standard normal deviates of a seed; the last ones are kept, as a fleet asks for the same again and again. */
export function normalDeviates(seed: number, count: number): Float64Array {
  if (kept?.seed === seed && kept.deviates.length >= count) return kept.deviates
  const source = new RandomSource(seed)
  const deviates = new Float64Array(count)
  for (let i = 0; i < count; i++) deviates[i] = source.normal()
  if (count <= MOST_KEPT) kept = { seed, deviates }
  return deviates
}
