export { combinedCapacityLb } from './lag-combined.js'
export { lateralReferenceLb, penetrationShare } from './lag-lateral.js'
export { penetrationIn, threadInRafterIn, withdrawalPerInchLb, type LagInRafter } from './lag-withdrawal.js'
export { centringToleranceIn, leadHoleIn } from './lead-hole.js'
