export { checkCombiner, checkMainPanel, type Sources } from './check-panel.js'
export { checkSupplySide } from './check-supply-side.js'
export { judgeBusbar, type Busbar, type RuleVerdict } from './judge-busbar.js'
export { judgeSupplySide } from './judge-supply-side.js'
