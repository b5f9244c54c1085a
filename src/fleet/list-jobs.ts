import { statSync } from 'node:fs'
import { fileJobs } from './file-jobs.js'
import { FleetError } from './fleet-error.js'
import { shardRange, type Shard } from './shard.js'
import { tableJobs } from './table-jobs.js'
import type { FleetJob } from './types.js'

export interface JobSource {
  readonly projects: readonly string[]
  readonly table: string | undefined
  /** `path=value`, for every project. */
  readonly overrides: readonly string[]
  readonly shard: Shard | undefined
}

/** The projects of a run, read as they are needed. */
export interface JobList {
  /** Number of projects in this run. */
  readonly count: number
  /** Names of the whole fleet, that a shard is a part of. */
  readonly names: ReadonlySet<string>
  readonly jobs: () => Iterable<FleetJob>
}

/**
 * Finds the projects, and counts those of a table without keeping its rows.
 *
 * @throws FleetError when the table or a named file is not usable.
 */
export function listJobs({ projects, table, overrides, shard }: JobSource): JobList {
  const all = jobsOf(projects, table, overrides)
  const names = new Set<string>()
  for (const job of all()) names.add(job.name)
  if (names.size === 0) throw new FleetError(`${table ?? projects.join(' ')}: there is no project in it`, 2)
  const { from, to } = shard === undefined ? { from: 0, to: names.size } : shardRange(names.size, shard)
  return { count: to - from, names, jobs: () => slice(all(), from, to) }
}

function jobsOf(
  projects: readonly string[],
  table: string | undefined,
  overrides: readonly string[],
): () => Iterable<FleetJob> {
  if (table === undefined) {
    const found = fileJobs(projects, overrides)
    return () => found
  }
  const [template] = projects
  if (template === undefined || projects.length > 1) throw new FleetError('--table goes with one template', 2)
  if (statSync(template, { throwIfNoEntry: false }) === undefined) {
    throw new FleetError(`cannot read ${template}: no such file or folder (ENOENT)`, 3)
  }
  return () => tableJobs(template, table, overrides)
}

function* slice(jobs: Iterable<FleetJob>, from: number, to: number): Generator<FleetJob> {
  for (const job of jobs) {
    if (job.index >= to) return
    if (job.index >= from) yield job
  }
}
