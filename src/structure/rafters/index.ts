export { bendingStrength, type BendingStrength } from './bending-strength.js'
export { framingSpec, type FramingSpec } from './framing-spec.js'
export {
  checkRafters,
  prescriptiveSpanFt,
  type RafterIncrease,
  type RafterInput,
  type RafterPoint,
  type RafterResult,
  type RafterStress,
} from './rafter-check.js'
export { rafterDocument } from './rafter-document.js'
export { rafterNumber } from '../../roof/index.js'
export { placeOf, rafterMoment, type RafterLoad, type RafterPlace } from './rafter-moments.js'
export { planInOf, raftersAt, type RafterSpans } from './rafter-spans.js'
