export {
  baselineFigures,
  BASELINE_FORMAT,
  readBaseline,
  writeBaseline,
  type Baseline,
  type ProjectFigures,
  type SavedBaseline,
} from './baseline.js'
export { compareProject, readTolerance, sortMoves, type Move } from './compare-baseline.js'
export { figuresOf } from './figures.js'
export { FleetError } from './fleet-error.js'
export { fileJobs } from './file-jobs.js'
export { readFleetLine, type FleetLine, type ReadFleetLine } from './fleet-line.js'
export { mergeParts, type MergedParts } from './merge-parts.js'
export { openJournal, type Journal, type JournalOptions } from './journal.js'
export type { BaselineRequest, FleetListener, FleetRequest, JournalRequest } from './fleet-request.js'
export { FLEET_FORMAT, jsonLine, type FleetIdentity } from './jsonl.js'
export { junitProject, junitXml, sayMove, type JunitProject } from './junit.js'
export { FILE_KINDS, type FleetFileKind, type FleetPlan } from './plan.js'
export { progressBar, type Progress } from './progress-bar.js'
export type { FleetRow } from './collect.js'
export type { FleetRun } from './fleet-run.js'
export { runFleet } from './run-fleet.js'
export { emptyOutcome, runInOrder, type RunOptions, type Runner } from './run-in-order.js'
export { readShard, shardRange, type Shard } from './shard.js'
export { sharedClimateRun, sharedClimateYield } from './shared-climate.js'
export { figuresInCurrency } from './stage-figures.js'
export { FLEET_STAGES, type FleetStage } from './stages.js'
export { tableJobs, type TableForm } from './table-jobs.js'
export {
  EXIT_OF_STATUS,
  type ExitOfFleet,
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
export { workOut } from './work-out.js'
export { serveFleet, workerScript } from './worker.js'
export { singleRunner, threadPool, workerPool, type PoolOptions, type ThreadPool } from './worker-pool.js'
export { dearestFirst, watchedHouses, watchHouse, worstOf, type WatchedOutcome, type WatchLine } from './watch/index.js'
