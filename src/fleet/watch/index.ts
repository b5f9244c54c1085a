export { dearestFirst, watchHouse, worstOf } from './watch-house.js'
export { watchedHouses } from './watched-houses.js'
export type { WatchedHouse, WatchedOutcome, WatchLine } from './watch-types.js'
