export {
  readProduction,
  type ProductionLimits,
  type ProductionSeries,
  type ReadProduction,
} from './production/index.js'
export {
  productionLimits,
  reviewProduction,
  weatherOfDays,
  type ReviewRequest,
  type ReviewValues,
  type Sign,
} from './review/index.js'
export {
  monthRanges,
  planMarkdown,
  planSheets,
  planWork,
  moduleVocV,
  statedTorques,
  stringIscA,
  vocRange,
  cautionWords,
  quantityText,
  stateText,
  tape,
  type CurrentReading,
  type InsulationValue,
  type PlanInput,
  type StatedTorque,
  type VoltageReading,
  type WorkPlanValues,
} from './work-plan/index.js'
