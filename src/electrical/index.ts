export { existingHouseChecks, existingHouseFindings, type HouseCheck } from './dwelling/existing-house.js'
export {
  boxFill,
  leastEntryDistanceIn,
  leastPullIn,
  smallestBox,
  type BoxContents,
  type BoxFill,
} from './boxes/index.js'
export { allCircuits } from './all-circuits.js'
export { cablesIn, cableText, type Cable } from './cables-in.js'
export { compareEditions, type EditionComparison, type EditionDifference } from './compare-editions.js'
export { editionConsequences, type EditionConsequence } from './edition-consequences.js'
export type { EditionTrait } from './edition-traits.js'
export {
  adjustmentFactor,
  ambientFactor,
  baseAmpacityA,
  conductorAreaIn2,
  dcResistanceOhmPerKft,
  effectiveImpedanceOhmPerKft,
  equipmentGroundSize,
  increasedGroundSize,
  judgeConductor,
  rooftopAdderRow,
  selectConductor,
  tenFootNeighbour,
  type Conductor,
  type ConductorDemand,
} from './conductors/index.js'
export { judgeBusbar, judgeSupplySide, type Busbar, type RuleVerdict } from './connection/index.js'
export {
  conductorConstant,
  constantFromResistance,
  faultAtService,
  faultAtTransformer,
  faultDown,
  faultValues,
  governingFaultA,
  NEUTRAL_VOLTAGE_V,
  pointToPointA,
  recordRun,
  type FaultPair,
  type FaultRun,
  type ServiceFault,
} from './fault/index.js'
export { bondingJumperSize, electrodeConductorSize } from './grounding/index.js'
export { loadValues, serviceLoad, type ServiceLoad } from './loads/index.js'
export { branchesAtSize, connectionAtSize } from './other-size.js'
export {
  chooseRaceway,
  judgeRaceway,
  lengthChangeIn,
  needsExpansionFitting,
  placeStraps,
  type RacewayKind,
  type RacewayVerdict,
} from './raceways/index.js'
export { sizeWire } from './size-wire.js'
export {
  coldVoltage,
  hotVoltageV,
  optimiserLengths,
  riseFromNoctC,
  stringLimits,
  tableFactor,
} from './strings/index.js'
export {
  deviceProtects,
  isAc,
  editionStanding,
  withoutFraction,
  labelsOfEdition,
  largestStandardDeviceA,
  nextStandardDeviceA,
  type BoxValues,
  type CircuitValues,
  type ConductorValues,
  type DcCombinerValues,
  type EditionLabel,
  type GroundingValues,
  type NodeRuleValues,
  type NodeValues,
  type OverheadValues,
  type PanelValues,
  type RacewayValues,
  type RemedyValues,
  type SegmentValues,
  type ServiceValues,
  type StorageCheckValues,
  type StorageValues,
  type StringValues,
  type WiringContext,
  type WiringValues,
} from './system/index.js'
export { trunkGapsFt, trunkRiseV, twoWireRiseV } from './voltage/index.js'
export { wiringContext, wiringOf } from './wiring-context.js'
