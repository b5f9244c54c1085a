export {
  baselineFigures,
  BASELINE_FORMAT,
  readBaseline,
  writeBaseline,
  type Baseline,
  type ProjectFigures,
} from './baseline.js'
export { compareProject, readTolerance, sortMoves, type Move } from './compare-baseline.js'
export { digest } from './digest.js'
export { figuresOf } from './figures.js'
export { FleetError } from './fleet-error.js'
export { fileJobs } from './file-jobs.js'
export { openJournal, type Journal, type JournalOptions } from './journal.js'
export { FLEET_FORMAT, jsonLine } from './jsonl.js'
export { junitProject, junitXml, sayMove, type JunitProject } from './junit.js'
export { progressBar, type Progress } from './progress-bar.js'
export { emptyOutcome, runInOrder, type RunOptions, type Runner } from './run-in-order.js'
export { readShard, shardRange, type Shard } from './shard.js'
export { sharedClimateRun, sharedClimateYield } from './shared-climate.js'
export { tableJobs } from './table-jobs.js'
export {
  EXIT_OF_STATUS,
  type Figure,
  type Figures,
  type FleetFinding,
  type FleetJob,
  type FleetOutcome,
  type FleetProblem,
  type FleetStatus,
  type TableCell,
  type TableRow,
} from './types.js'
export { singleRunner, workerPool, type PoolOptions } from './worker-pool.js'
