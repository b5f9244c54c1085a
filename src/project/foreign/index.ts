export { foreignLimits, type ForeignLimits } from './limits.js'
export { serveForeign } from './serve.js'
export { IN_THIS_THREAD, type Ask, type ForeignRunner, type ForeignSubject, type ForeignTask } from './task.js'
export { inWorker, inWorkerWith } from './worker-runner.js'
