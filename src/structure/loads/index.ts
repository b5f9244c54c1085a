export { combinedLoads, type CombinedLoad } from './combine-loads.js'
export { gravityChangePct, type GravityInput } from './gravity-change.js'
export { siteLoads, type SiteLoads } from './site-loads.js'
export type { SiteSnow } from './site-snow.js'
