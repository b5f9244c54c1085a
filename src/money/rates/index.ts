export { importRate, type ImportedRateValues, type ListedRate, type RateFile } from './import-rate.js'
export { SOLAR_RULES, type RateAnswers, type SolarRuleName } from './rate-answers.js'
