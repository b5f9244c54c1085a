export { checkOverhead } from './check-overhead.js'
