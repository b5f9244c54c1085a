export { listRemedies } from './list-remedies.js'
