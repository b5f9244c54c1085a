import * as fc from 'fast-check'

/**
 * The property checks draw the same cases each time, so that the same tree gives the same answer.
 * `PROPERTY_SEED=random npm test` (or a number) looks at others; a failure prints its seed. `PROPERTY_RUNS=5` draws five
 * times as many, which `npm run nightly` does.
 */
const wanted = process.env['PROPERTY_SEED'] ?? '20261125'
fc.configureGlobal(wanted === 'random' ? {} : { seed: Number(wanted) })

const times = Number(process.env['PROPERTY_RUNS'] ?? '1')

export const assert = ((property: Parameters<typeof fc.assert>[0], parameters: Parameters<typeof fc.assert>[1]) =>
  fc.assert(property, { ...parameters, numRuns: (parameters?.numRuns ?? 100) * times })) as typeof fc.assert

export * from 'fast-check'
