export { PRACTICE_DEFAULTS, type PracticeKey } from './practice-defaults.js'
export { TOOLS, type Tool, type ToolCondition } from './tools.js'
