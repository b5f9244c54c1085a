export { adjustmentFactor } from './adjustment-factor.js'
export { ambientFactor } from './ambient-factor.js'
export { baseAmpacityA, type Conductor } from './base-ampacity.js'
export { bondingJumperSize } from './bonding-jumper-size.js'
export { chooseRaceway, judgeRaceway, type RacewayKind, type RacewayVerdict } from './choose-raceway.js'
export { coldVoltage, tableFactor } from './cold-voltage.js'
export { compareEditions, type EditionComparison, type EditionDifference } from './compare-editions.js'
export { compareSizes } from './compare-sizes.js'
export { conductorAreaIn2 } from './conductor-area.js'
export { electrodeConductorSize } from './electrode-conductor-size.js'
export { equipmentGroundSize, increasedGroundSize } from './equipment-ground-size.js'
export { hotVoltageV, riseFromNoctC } from './hot-voltage.js'
export type { WiringContext } from './job.js'
export { judgeBusbar, type Busbar, type RuleVerdict } from './judge-busbar.js'
export { judgeSupplySide } from './judge-supply-side.js'
export { labelsOfEdition, type EditionLabel } from './labels-of-edition.js'
export { branchesAtSize, connectionAtSize } from './other-size.js'
export { placeStraps } from './place-straps.js'
export { lengthChangeIn, needsExpansionFitting } from './pvc-movement.js'
export { dcResistanceOhmPerKft, effectiveImpedanceOhmPerKft } from './resistance.js'
export { rooftopAdderRow } from './rooftop-adder.js'
export { judgeConductor, selectConductor, type ConductorDemand } from './select-conductor.js'
export { sizeWire } from './size-wire.js'
export { deviceProtects, largestStandardDeviceA, nextStandardDeviceA } from './standard-device.js'
export { stringLimits } from './string-limits.js'
export { tenFootNeighbour } from './ten-foot-rule.js'
export { wiringContext, wiringOf } from './wiring-context.js'
export { trunkGapsFt } from './trunk-gaps.js'
export { trunkRiseV, twoWireRiseV } from './voltage-rise.js'
export type {
  CircuitValues,
  GroundingValues,
  PanelValues,
  RacewayValues,
  SegmentValues,
  StringValues,
  WiringValues,
} from './wiring-values.js'
