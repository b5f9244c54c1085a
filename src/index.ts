/**
 * The public library: the same stages as the subcommands, typed. A stage is a pure function from a project (and earlier
 * results) to a result that carries its proof; only `loadProject` reads files. `runHouse` strings them together.
 */
export { designTemperatures, findSite, listSites, parseEpw, siteClimate } from './climate/index.js'
export type { Climate, HourlyClimate, MonthlyClimate } from './climate/index.js'
export {
  compareEditions,
  labelsOfEdition,
  sizeWire,
  trunkGapsFt,
  wiringContext,
  wiringOf,
  type WiringContext,
  type WiringValues,
} from './electrical/index.js'
export { requiredLabels, type RequiredLabel } from './drawings/index.js'
export {
  planWork,
  productionLimits,
  readProduction,
  reviewProduction,
  weatherOfDays,
  type PlanInput,
  type WorkPlanValues,
} from './fieldwork/index.js'
export { runHouse, type House, type HouseInput, type HouseOptions } from './house/index.js'
export { compareBills, cutStock, priceBom, readPriceList } from './materials/index.js'
export {
  billsOfProject,
  chooseSize,
  computeBill,
  internalRate,
  payback,
  paybackOfProject,
  readTariff,
  readUsage,
  sizesOfProject,
} from './money/index.js'
export {
  formatProblem,
  loadProject,
  ProjectError,
  startingFile,
  type LoadedProject,
  type LoadOptions,
  type Problem,
  type Project,
} from './project/index.js'
export { arrangeModules, countFitted, type ModulePlacement } from './roof/index.js'
export { spaceMounts, type MountValues, type SpaceMountsOptions } from './structure/index.js'
export { sunPosition, type SunPosition } from './sun/index.js'
export {
  formatSource,
  StageError,
  Worksheet,
  type Assumption,
  type Finding,
  type Result,
  type Source,
  type Step,
} from './worksheet/index.js'
export {
  estimateYield,
  expectedHours,
  runYield,
  stepTable,
  sweepAngle,
  type YieldRun,
  type YieldValues,
} from './yield/index.js'
