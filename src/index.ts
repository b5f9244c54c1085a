/**
 * The public library: the whole job of the subcommands, typed. `loadProject` reads a project, `runHouse` gives its stages,
 * each worked out once when it is asked for, `checkHouse` all that is wrong or assumed, `preparePacket` the permit packet
 * as bytes, `prepareForm` a filled PDF form, `prepareApplication` and `prepareHandover` papers for utility and owner, and `runFleet` does it for many houses.
 *
 * A stage is a pure function from a project (and earlier results) to a result that carries its proof. Files are read by
 * `loadProject`, `preparePacket` and `runFleet`, and written by `runFleet` alone. Numbers have their unit in their name.
 * What a person has to mend is thrown as `ProjectError`, `StageError`, `FileError` or `FleetError`; any other error is a
 * defect.
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
export {
  renderDxf,
  renderSvg,
  requiredLabels,
  type PaperName,
  type RequiredLabel,
  type Sheet,
} from './drawings/index.js'
export {
  planWork,
  productionLimits,
  readProduction,
  reviewProduction,
  weatherOfDays,
  type PlanInput,
  type ReviewValues,
  type WorkPlanValues,
} from './fieldwork/index.js'
export { FileError } from './files/index.js'
export {
  FleetError,
  runFleet,
  type BaselineRequest,
  type FleetListener,
  type FleetOutcome,
  type FleetRequest,
  type FleetRow,
  type FleetRun,
  type JournalRequest,
  type Move,
  type Shard,
} from './fleet/index.js'
export {
  checkHouse,
  runHouse,
  type CheckOptions,
  type CheckStage,
  type CheckValues,
  type House,
  type HouseInput,
  type HouseOptions,
  type MeasuredProduction,
  type NamedText,
} from './house/index.js'
export { compareBills, cutStock, priceBom, readPriceList } from './materials/index.js'
export {
  billAcrossRates,
  billFromPeriods,
  billsOfProject,
  checkBills,
  chooseSize,
  compareAlternatives,
  computeBill,
  importRate,
  impliedInflation,
  internalRate,
  lifeCycleCost,
  modifiedInternalRate,
  modifiedUniformPresentValue,
  monthlyRate,
  payback,
  paybackOfProject,
  readTariff,
  readUsage,
  singlePresentValue,
  sizesOfProject,
  uniformCapitalRecovery,
  uniformPresentValue,
  type BillsInput,
  type CheckedBill,
  type CheckedBillsValues,
  type ImportedRateValues,
  type RateAnswers,
  type RateFile,
} from './money/index.js'
export { preparePacket, type DrawnPacket, type PacketOptions, type PreparedPacket } from './packet/index.js'
export {
  listFormFields,
  prepareApplication,
  prepareForm,
  prepareHandover,
  type ApplicationAttachment,
  type ApplicationField,
  type ApplicationValues,
  type FilledField,
  type FormFile,
  type HandoverValues,
  type HandoverWishes,
  type ListedField,
  type ListedForm,
  type MappingFile,
  type PageSize,
  type PreparedForm,
  type PreparedPaper,
  type TableText,
} from './papers/index.js'
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
export {
  inWorker,
  type Ask,
  type ForeignRunner,
  type ForeignSubject,
  type ForeignTask,
} from './project/foreign/index.js'
export type { Report, Section, TableData } from './report/index.js'
export { arrangeModules, countFitted, type ModulePlacement } from './roof/index.js'
export { spaceMounts, type MountValues, type MountWishes, type SpaceMountsOptions } from './structure/index.js'
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
