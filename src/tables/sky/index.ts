export { PEREZ_1990 } from './perez-1990.js'
