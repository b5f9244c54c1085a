export { bondingJumperSize } from './bonding-jumper-size.js'
export { checkGrounding } from './check-grounding.js'
export { electrodeConductorSize } from './electrode-conductor-size.js'
