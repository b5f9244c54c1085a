export { riseRemedies, type RiseParts } from './rise-remedies.js'
export { trunkGapsFt } from './trunk-gaps.js'
export {
  impedanceLimits,
  impedanceOhmPerKft,
  isMade,
  powerFactorOf,
  racewayMetal,
  trunkEachA,
  trunkOhmPerKft,
  trunkRiseOf,
  voltageFloor,
  voltageLimitPct,
} from './voltage-limits.js'
export { invertersOnLongerHalf, trunkRiseV, twoWireRiseV } from './voltage-rise.js'
