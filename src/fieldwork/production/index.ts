export type { ProductionLimits } from './raw-row.js'
export { readProduction, type ReadProduction } from './read-production.js'
export type { ProductionSeries, Resolution, Span } from './production-series.js'
