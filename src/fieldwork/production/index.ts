export { readProduction, type ProductionLimits, type ReadProduction } from './read-production.js'
export type { ProductionSeries, Resolution, Span } from './production-series.js'
