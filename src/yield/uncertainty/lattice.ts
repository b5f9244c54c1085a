import { normalQuantiles, RandomSource } from '../../values/index.js'

/** How many draws there are: a prime, so that every stride passes through all places. */
export const DRAWS = 4093

/** Of all whole numbers the one whose first 24 powers are least correlated with each other: 0.016 at most. */
const BASE = 2317

/** Order in which the equally likely parts of one cause are taken: a stride through 0 to DRAWS - 1. */
export interface Course {
  readonly start: number
  readonly stride: number
}

/**
 * Courses of one cause after the other. Together they are a lattice, which fills the space of all causes more evenly than
 * shuffled orders do; the seed moves it as a whole.
 *
 * @source Korobov 1959, lattice of the powers of one number; Cranley & Patterson 1976, random shift (both from memory; how
 *   steady the figures are is tested)
 */
export function courses(seed: number): () => Course {
  const random = new RandomSource(seed)
  let next = 1
  return () => {
    const stride = next
    next = (next * BASE) % DRAWS
    return { start: Math.floor(random.uniform() * DRAWS), stride }
  }
}

/** Standard normal deviates in the order of a course, each of DRAWS equally likely parts once. */
export function normals({ start, stride }: Course): Float64Array {
  const parts = normalQuantiles(DRAWS)
  const deviates = new Float64Array(DRAWS)
  for (let draw = 0, place = start; draw < DRAWS; draw += 1) {
    deviates[draw] = parts[place]!
    place += stride
    if (place >= DRAWS) place -= DRAWS
  }
  return deviates
}
