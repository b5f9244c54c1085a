export { FIRE_ACCESS_RULES, type FireAccessEdition, type FireAccessRules, type FireRule } from './fire-access-rules.js'
