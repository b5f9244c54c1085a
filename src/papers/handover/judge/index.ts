export { judgeAlike, judgeIsc, operatingRow } from './judge-current.js'
export { judgeInsulation } from './judge-insulation.js'
export { judgePolarity } from './judge-polarity.js'
export { judgeVoc } from './judge-voc.js'
export type { StringFacts } from './string-facts.js'
export {
  judgeAcVoltages,
  judgeBonding,
  judgeChecks,
  judgeEnergy,
  judgeLossOfMains,
  judgeShutdown,
  judgeTorques,
  judgeUnits,
  type SystemFacts,
} from './judge-system.js'
