export * from './conversions.js'
export type * from './units.js'
