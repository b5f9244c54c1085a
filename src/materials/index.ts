export { cutStock, type CutPlan, type CutStick } from './cut/cut-stock.js'
export type { CutPiece, CutStock } from './cut/cutting-problem.js'
