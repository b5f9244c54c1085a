export { checkShutdown } from './check-shutdown.js'
