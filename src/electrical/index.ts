export { adjustmentFactor } from './conductors/adjustment-factor.js'
export { ambientFactor } from './conductors/ambient-factor.js'
export { baseAmpacityA, type Conductor } from './conductors/base-ampacity.js'
export { bondingJumperSize } from './grounding/bonding-jumper-size.js'
export { chooseRaceway, judgeRaceway, type RacewayKind, type RacewayVerdict } from './raceways/choose-raceway.js'
export { coldVoltage, tableFactor } from './strings/cold-voltage.js'
export { compareEditions, type EditionComparison, type EditionDifference } from './compare-editions.js'
export { compareSizes } from './conductors/compare-sizes.js'
export { conductorAreaIn2 } from './conductors/conductor-area.js'
export { electrodeConductorSize } from './grounding/electrode-conductor-size.js'
export { equipmentGroundSize, increasedGroundSize } from './conductors/equipment-ground-size.js'
export { hotVoltageV, riseFromNoctC } from './strings/hot-voltage.js'
export type { WiringContext } from './system/job.js'
export { judgeBusbar, type Busbar, type RuleVerdict } from './connection/judge-busbar.js'
export { judgeSupplySide } from './connection/judge-supply-side.js'
export { labelsOfEdition, type EditionLabel } from './system/labels-of-edition.js'
export { branchesAtSize, connectionAtSize } from './other-size.js'
export { placeStraps } from './raceways/place-straps.js'
export { lengthChangeIn, needsExpansionFitting } from './raceways/pvc-movement.js'
export { dcResistanceOhmPerKft, effectiveImpedanceOhmPerKft } from './conductors/resistance.js'
export { rooftopAdderRow } from './conductors/rooftop-adder.js'
export { judgeConductor, selectConductor, type ConductorDemand } from './conductors/select-conductor.js'
export { sizeWire } from './size-wire.js'
export { deviceProtects, largestStandardDeviceA, nextStandardDeviceA } from './system/standard-device.js'
export { stringLimits } from './strings/string-limits.js'
export { tenFootNeighbour } from './conductors/ten-foot-rule.js'
export { wiringContext, wiringOf } from './wiring-context.js'
export { trunkGapsFt } from './voltage/trunk-gaps.js'
export { trunkRiseV, twoWireRiseV } from './voltage/voltage-rise.js'
export type {
  CircuitValues,
  GroundingValues,
  PanelValues,
  RacewayValues,
  SegmentValues,
  StringValues,
  WiringValues,
} from './system/wiring-values.js'
