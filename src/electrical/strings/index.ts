export { checkStrings } from './check-strings.js'
export { coldVoltage, tableFactor } from './cold-voltage.js'
export { hotVoltageV, riseFromNoctC } from './hot-voltage.js'
export { stringLimits } from './string-limits.js'
