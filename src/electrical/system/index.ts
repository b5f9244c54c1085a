export {
  COMBINED_OUTPUT,
  SUPPLY_TAP,
  highestLineCurrentA,
  isAc,
  isShared,
  isStorage,
  isSupplyTap,
  pairCurrentsOf,
  polesOf,
  type Circuit,
  type Lines,
  type OptimiserFacts,
  type ServiceFloor,
  type StorageCircuitFacts,
  type StringFacts,
  type Trunk,
} from './circuit.js'
export { countModules } from './count-modules.js'
export { inverterById, makerMaxDeviceA, outputCurrentA } from './inverter-output.js'
export { extremeLowC, finite, newJob, outdoorDesignC, positive, practice, type Job, type WiringContext } from './job.js'
export { deviceDutyA, dropsFractions, withoutFraction } from './device-duty.js'
export { editionStanding, reportEditionChange } from './edition-change.js'
export { labelsOfEdition, type EditionLabel } from './labels-of-edition.js'
export type { FaultValues, LoadValues } from './load-values.js'
export {
  addPairs,
  apparentPowerVa,
  balancedPairs,
  highestLineA,
  inTurn,
  lineCurrentsOf,
  onePair,
  type PairCurrents,
  twoWireEquivalentA,
  unbalancePct,
} from './line-currents.js'
export { countedConductors, serviceOf, USUAL_SERVICE_V, type Service } from './service.js'
export { sizingSource } from './sizing-source.js'
export { ratedIsc, type RatedIsc } from './rated-isc.js'
export { optimiserById } from './optimiser-by-id.js'
export { onwardOf } from './onward.js'
export { resolveEdition } from './resolve-edition.js'
export { deviceProtects, largestStandardDeviceA, nextStandardDeviceA, standardNeighbours } from './standard-device.js'
export { shownDocument } from './shown-document.js'
export { supplySideRule } from './supply-side-rule.js'
export type { CircuitValues, SegmentValues } from './circuit-values.js'
export type { StorageCheckValues, StorageValues } from './storage-values.js'
export type {
  BoxValues,
  ConductorCount,
  ConductorValues,
  DcCombinerValues,
  GroundingValues,
  NodeRuleValues,
  NodeValues,
  PanelValues,
  RacewayValues,
  RemedyValues,
  RuleValues,
  ServiceValues,
  OverheadValues,
  StringValues,
  WiringValues,
} from './wiring-values.js'
