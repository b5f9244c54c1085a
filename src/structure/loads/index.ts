export { combinedLoads, loadDurationOf, roofCombinations, type CombinedLoad } from './combine-loads.js'
export { gravityChangePct, type GravityInput } from './gravity-change.js'
export { liveLoadLeftOut, roofLiveLoadPsf, type LiveLoadCodes } from './roof-live-load.js'
export { siteLoads, type SiteLoads } from './site-loads.js'
