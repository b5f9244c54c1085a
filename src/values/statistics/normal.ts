import { normalBelow } from './normal-law.js'

/** z below which a share of a standard normal lies, by bisection. @param share Above 0 and below 1. */
export function normalQuantile(share: number): number {
  let [low, high] = [-8, 8]
  for (let round = 0; round < 60; round += 1) {
    const middle = (low + high) / 2
    if (normalBelow(middle) < share) low = middle
    else high = middle
  }
  return (low + high) / 2
}

let quantiles: Float64Array | undefined

/** The middles of `count` equally likely parts of a standard normal, upwards; those asked for last are kept. */
export function normalQuantiles(count: number): Float64Array {
  if (quantiles?.length === count) return quantiles
  const values = new Float64Array(count)
  let z = normalQuantile(0.5 / count)
  for (let index = 0; index < Math.ceil(count / 2); index += 1) {
    const share = (index + 0.5) / count
    // From its neighbour two or three steps of Newton are enough.
    for (let round = 0; round < 4; round += 1) {
      z -= (normalBelow(z) - share) / (Math.exp((-z * z) / 2) * 0.3989422804014327)
    }
    values[index] = z
    values[count - 1 - index] = -z
  }
  if (count % 2 === 1) values[(count - 1) / 2] = 0
  quantiles = values
  return values
}
