import * as fc from 'fast-check'

/**
 * The property checks draw the same cases each time, so that the same tree gives the same answer.
 * `PROPERTY_SEED=random npm test` (or a number) looks at others; a failure prints its seed.
 */
const wanted = process.env['PROPERTY_SEED'] ?? '20261125'
fc.configureGlobal(wanted === 'random' ? {} : { seed: Number(wanted) })

export * from 'fast-check'
