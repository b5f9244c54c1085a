export { acImpedance, type AcImpedanceRow } from './ac-impedance.js'
export { ambientCorrection, type AmbientCorrectionRow } from './ambient-correction.js'
export { ampacityFreeAir } from './ampacity-free-air.js'
export { ampacityRaceway } from './ampacity-raceway.js'
export type { AmpacityRow } from './ampacity-row.js'
export { busbarRules, type BusbarRule } from './busbar-rules.js'
export { bondingJumper } from './bonding-jumper.js'
export {
  boxAllowances,
  boxConductorSizes,
  boxGrounds,
  boxVolumes,
  CONDUIT_BODY_FACTOR,
  PULL_BOX_FACTORS,
  type BoxConductorSize,
} from './box-volumes.js'
export { changes2026, type Change2026, type Rule2026 } from './changes-2026.js'
export { conductorAdjustment } from './conductor-adjustment.js'
export { conductorAreas, use2Areas } from './conductor-areas.js'
export {
  conductorSizes,
  tradeSizes,
  type ConductorMaterial,
  type ConductorSize,
  type TradeSize,
} from './conductor-sizes.js'
export { coverDistances } from './cover-distances.js'
export { dcResistance, RESISTANCE_TEMPERATURE_C, type DcResistanceRow } from './dc-resistance.js'
export { CARRIED_FROM, EDITION_NOT_READ, type WrittenEdition } from './edition-2026.js'
export { editionSections, type SectionTopic } from './edition-sections.js'
export { editions, isEdition, type Edition } from './editions.js'
export { electrodeConductor } from './electrode-conductor.js'
export { equipmentGround } from './equipment-ground.js'
export {
  ARC_FAULT_FROM_V,
  DWELLING_DC_LIMIT_V,
  groundingRules,
  lockableDisconnect,
  ENCASED_CONDUCTOR_AWG,
  ROD_CONDUCTOR_AWG,
  UNPROTECTED_GROUND_AWG,
} from './grounding-rules.js'
export { insulationTypes, type Insulation, type InsulationRow } from './insulation-types.js'
export { labelQuestions, type LabelQuestion } from './label-questions.js'
export { labelRules, type LabelCondition, type LabelRule, type LabelSpot } from './label-rules.js'
export { labelWordRows } from './label-word-rows.js'
export type { LabelColours, LabelWords } from './label-word-row.js'
export { labelWords, onOneLine } from './label-words.js'
export { groundClearances, OVERHEAD_RULED_UP_TO_V, roofClearance, type GroundClearance } from './overhead-clearances.js'
export { pvHighTemperature, pvHighTemperatureAmpacity } from './pv-high-temperature.js'
export { EXPANSION_FITTING_FROM_IN, PVC_COEFFICIENT_PER_F, pvcExpansion, STEEL_SHARE_OF_PVC } from './pvc-expansion.js'
export { rapidShutdownRules, type RapidShutdownRule } from './rapid-shutdown-rules.js'
export { racewayAreas, type RacewayAreaRow, type RacewayTableKind } from './raceway-areas.js'
export { NIPPLE_FILL_PCT, NIPPLE_LENGTH_IN, racewayFill } from './raceway-fill.js'
export { ARRAY_CABLE_SUPPORT_IN, racewaySupports } from './raceway-supports.js'
export { rooftopAdderExempt, rooftopAdders, type RooftopAdderRow } from './rooftop-adders.js'
export { necSource, sectionOf } from './section-of.js'
export { smallConductors } from './small-conductors.js'
export {
  largerStandardDevices,
  NEXT_SIZE_UP_LIMIT_A,
  smallerStandardDevices,
  standardDevices,
} from './standard-devices.js'
export { LEAST_SERVICE_A, supplySideRules, type SupplySideRule } from './supply-side-rules.js'
export { vocCorrection } from './voc-correction.js'
export {
  CABLE_ENTRY_LENGTH_IN,
  CABLES_WITHOUT_ADJUSTMENT,
  wiringMethodRows,
  type InsulationLimit,
  type Permission,
  type WiringMethod,
  type WiringMethodRow,
} from './wiring-methods.js'
export { WORKING_HEIGHT_IN, WORKING_WIDTH_IN, workingSpace } from './working-space.js'
export { CONTINUOUS_FACTOR, SHORT_CIRCUIT_FACTOR, SOURCE_FACTOR } from './current-factors.js'
export { tapRules, type TapRule } from './tap-rules.js'
export { DWELLING_SERVICE_SHARE } from './dwelling-service.js'
export { powerControlSections } from './power-control.js'
export {
  STORAGE_ARTICLE_KWH,
  storageDisconnectRules,
  storagePlace,
  storageSection,
  type StorageDisconnectRule,
  type StorageTopic,
} from './storage-sections.js'
export {
  FAULT_CONDUCTOR_C,
  IMPEDANCE_TOLERANCE,
  NEUTRAL_FAULT_RATIO,
  POINT_TO_POINT,
  RESISTANCE_COEFFICIENT_PER_K,
} from './fault-factors.js'
export {
  CIRCUIT_VA,
  HEAT_SHARES,
  LARGEST_MOTOR_SHARE,
  LEAST_DRYER_VA,
  LEAST_DWELLING_SERVICE_A,
  loadFactors,
  MEASURED_FACTOR,
  ONE_RANGE,
  OPTIONAL_LEAST_SERVICE_A,
  REST_SHARE,
  STANDARD_LIGHTING,
  type LoadFactors,
} from './load-factors.js'
export { factorsOf, loadSource } from './load-source.js'
export {
  COMBINER_WITHOUT_SWITCH_A,
  deviceSection,
  type DeviceTopic,
  OUTSIDE_BOUNDARY_V,
  REAR_SHARE,
  REAR_SHARE_SOURCE,
  VOLTAGE_UNBALANCE_PCT,
} from './device-sections.js'
