export { cellRiseKPerWM2, installedNoctC, type CellTemperatureModel } from './cell-temperature.js'
export { daytimeTemperatureC } from './daytime-temperature.js'
export { DAY_TYPE_COUNT, dayTypeSteps } from './day-type-steps.js'
export { outputOfYear, statedDegradation } from './degradation.js'
export { expectedHours, type DayChoice, type ExpectedHours } from './expected-hours.js'
export { stepTable, type StepTable } from './hourly-table.js'
export { hourlySteps } from './hourly-steps.js'
export { constantEfficiency, curveEfficiency, EFFICIENCY_WEIGHTS, unlimitedAcW } from './inverter-model.js'
export { LADDER, type Ladder, type LadderStep } from './ladder.js'
export { lowLightSlope, modulePowerW, type ModuleModel } from './module-model.js'
export { monthlySnowLoss } from './monthly-snow-loss.js'
export { partOfSystem } from './part-of-system.js'
export { estimateYield, runYield, type YieldContext, type YieldRun } from './run-yield.js'
export type { SkySteps, StepLabel } from './sky-steps.js'
export { seenSky, type SeenSky } from './seen-sky.js'
export { sweepAngle, type Sweep, type SweepPoint } from './sweep.js'
export { snowCover } from './snow-cover.js'
export { performanceRatio } from './summarise.js'
export { AGE_TERM, SNOW_TERM, WEATHER_TERMS, YEARLY_TERM } from './uncertainty/index.js'
export type { SystemAc } from './system-ac.js'
export type {
  AnnualYield,
  ArrayYield,
  ClimateValues,
  ModuleYield,
  MonthlyYield,
  SystemModule,
  YieldValues,
} from './yield-values.js'
