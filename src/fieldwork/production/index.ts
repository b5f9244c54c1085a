export type { ProductionLimits } from './production-limits.js'
export { readProduction, type ReadProduction } from './read-production.js'
export type { ProductionSeries, Resolution, Span } from './production-series.js'
export type { SpanList } from './span-list.js'
