export { LFP_CELL } from './lfp-cell.js'
