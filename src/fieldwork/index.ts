export {
  readProduction,
  type ProductionLimits,
  type ProductionSeries,
  type ReadProduction,
} from './production/index.js'
export {
  productionLimits,
  ratedAcKw,
  reviewProduction,
  weatherOfDays,
  type ReviewRequest,
  type ReviewValues,
} from './review/index.js'
export {
  monthRanges,
  planMarkdown,
  planSheets,
  planWork,
  cautionWords,
  quantityText,
  stateText,
  tape,
  type PlanInput,
  type WorkPlanValues,
} from './work-plan/index.js'
