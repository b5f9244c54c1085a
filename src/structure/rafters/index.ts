export { type CodePath } from './code-path.js'
export { framingSpec, type FramingSpec } from './framing-spec.js'
export {
  checkRafters,
  withoutBeams,
  highestRatio,
  LOWEST_USUAL,
  worstCheck,
  type CheckedRafter,
  type RafterResult,
  type WorstCheck,
} from './rafter-check.js'
export { rafterDocument } from './rafter-document.js'
export { cutRafters, rafterNumber } from '../../roof/index.js'
export type { RafterInput, RafterPoint } from './rafter-input.js'
export { placeOf, type RafterPlace } from './rafter-place.js'
export { planInOf, raftersAt, type RafterSpans } from './rafter-spans.js'
export { deflectionLimit, seatOf, tieFactor } from './rafter-limits.js'
export type { LoadShare } from './rafter-sums.js'
export { solveRafter, type RafterToSolve, type SolvedRafter } from './solve-rafter.js'
export type { CombinationLine, RafterCheck, RafterCheckName } from './worst-checks.js'
export type { Roof } from './rafter-cases.js'
export { sistersOf, type Sister } from './sister.js'
export { formulaSpanIn, tableSpan, type TableLoad, type TableSpan } from './span-table.js'
export { rafterThrust, type RafterThrust } from './rafter-thrust.js'
export { beamStability, columnStability, lowerEdgeStability, slendernessOf } from './stability.js'
export { lumberOf, woodStrength, type Wood, type WoodStrength } from './wood-strength.js'
