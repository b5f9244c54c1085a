export { DISCLOSURES, type Disclosure, type Supplier } from './disclosures.js'
export { CALIFORNIA_DAYS, COOLING_OFF, RULE_SETS, type RuleSet, type RuleSetFacts } from './rule-sets.js'
