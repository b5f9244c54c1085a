export { findRoot } from './find-root.js'
export { normalBelow, normalQuantile, normalQuantiles } from './normal.js'
export { quantile } from './quantile.js'
export { normalDeviates, RandomSource } from './random.js'
