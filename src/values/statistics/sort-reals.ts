/** Fewer numbers than this, or more in one bucket, are left to the engine. */
const WORTH_IT = 64

/**
 * Sorts numbers upwards in place: dealt to as many buckets as there are numbers, which draws fill evenly, and put in order there. The
 * engine's own sort takes several times as long for some thousand draws.
 *
 * @param reals Infinity may be among them; with NaN or -Infinity the engine sorts.
 * @returns The same array.
 */
export function sortReals(reals: Float64Array): Float64Array {
  const count = reals.length
  let low = Infinity
  let high = -Infinity
  let isPlain = count >= WORTH_IT
  for (let i = 0; i < count; i++) {
    const real = reals[i]!
    if (!(real > -Infinity)) isPlain = false
    if (real < low) low = real
    if (real > high && real < Infinity) high = real
  }
  const perUnit = (count - 1) / (high - low)
  if (!isPlain || !(perUnit > 0) || perUnit === Infinity) return reals.sort()
  const bucketOf = (real: number): number => (real === Infinity ? count : Math.floor((real - low) * perUnit))
  const starts = new Uint32Array(count + 2)
  for (let i = 0; i < count; i++) {
    const bucket = bucketOf(reals[i]!) + 1
    starts[bucket] = starts[bucket]! + 1
  }
  // All that never pay back are alike.
  for (let bucket = 0; bucket < count; bucket++) if (starts[bucket + 1]! > WORTH_IT) return reals.sort()
  for (let bucket = 1; bucket < starts.length; bucket++) starts[bucket] = starts[bucket]! + starts[bucket - 1]!
  const dealt = reals.slice()
  for (let i = 0; i < count; i++) {
    const real = dealt[i]!
    const bucket = bucketOf(real)
    const place = starts[bucket]!
    starts[bucket] = place + 1
    reals[place] = real
  }
  for (let i = 1; i < count; i++) {
    const real = reals[i]!
    let place = i
    while (place > 0 && reals[place - 1]! > real) {
      reals[place] = reals[place - 1]!
      place -= 1
    }
    reals[place] = real
  }
  return reals
}
