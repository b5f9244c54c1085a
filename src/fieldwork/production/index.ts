export type { ProductionLimits } from './production-limits.js'
export { readProduction, type ReadProduction } from './read-production.js'
export type { ProductionSeries, Resolution } from './production-series.js'
export type { Span, SpanList } from './span-list.js'
