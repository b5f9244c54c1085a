export {
  COMBINED_OUTPUT,
  SERVICE_VOLTAGE_V,
  SUPPLY_TAP,
  isAc,
  isShared,
  isSupplyTap,
  type Circuit,
  type ServiceFloor,
  type StringFacts,
  type Trunk,
} from './circuit.js'
export { countModules } from './count-modules.js'
export { inverterById, makerMaxDeviceA, outputCurrentA } from './inverter-output.js'
export { extremeLowC, finite, newJob, outdoorDesignC, positive, practice, type Job, type WiringContext } from './job.js'
export { labelsOfEdition, type EditionLabel } from './labels-of-edition.js'
export type { FaultValues, LoadValues } from './load-values.js'
export { resolveEdition } from './resolve-edition.js'
export { deviceProtects, largestStandardDeviceA, nextStandardDeviceA, standardNeighbours } from './standard-device.js'
export { shownDocument } from './shown-document.js'
export { supplySideRule } from './supply-side-rule.js'
export type {
  CircuitValues,
  ConductorCount,
  ConductorValues,
  GroundingValues,
  NodeRuleValues,
  NodeValues,
  PanelValues,
  RacewayValues,
  RemedyValues,
  RuleValues,
  SegmentValues,
  StringValues,
  WiringValues,
} from './wiring-values.js'
