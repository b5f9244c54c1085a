import { statSync } from 'node:fs'
import { LARGEST_YAML_BYTES, readBytes, readFleetPart, type ExtraColumns } from '../project/index.js'
import { sha256Of } from '../seal/index.js'
import { digest } from './digest.js'
import { fileJobs } from './file-jobs.js'
import { FleetError, fileTrouble } from './fleet-error.js'
import { shardRange, type Shard } from './shard.js'
import { delimiterOf, tableJobs, type TableForm } from './table-jobs.js'
import type { FleetJob } from './types.js'

export interface JobSource {
  readonly projects: readonly string[]
  readonly table: string | undefined
  /** `path=value`, for every project. */
  readonly overrides: readonly string[]
  readonly shard: Shard | undefined
  /** Of the table: mark between its columns, and whether decimals follow a comma. */
  readonly form?: Omit<TableForm, 'extra'> | undefined
}

/** The projects of a run, read as they are needed. */
export interface JobList {
  /** Number of projects in this run. */
  readonly count: number
  /** Names of the whole fleet, that a shard is a part of. */
  readonly names: ReadonlySet<string>
  /** Headings of the person's own columns. */
  readonly extra: readonly string[]
  /** Mark between the columns of the table. */
  readonly delimiter: string | undefined
  /** Fingerprint of the whole fleet: the template, and names and values of all houses in their order. */
  readonly contents: string
  readonly jobs: () => Iterable<FleetJob>
}

/**
 * Finds the projects, and counts those of a table without keeping its rows.
 *
 * @throws FleetError when the table or a named file is not usable.
 */
export function listJobs({ projects, table, overrides, shard, form }: JobSource): JobList {
  if (table !== undefined && projects.length !== 1) throw new FleetError('--table goes with one template', 2)
  const extra = table === undefined ? { names: [] } : extraColumns(projects, overrides)
  const delimiter = table === undefined ? undefined : (form?.delimiter ?? delimiterOf(table))
  const all = jobsOf(projects, table, { overrides, form: { ...form, delimiter, extra } })
  const names = new Set<string>()
  const parts: string[] = table === undefined ? [] : [templateDigest(projects)]
  for (const job of all()) {
    names.add(job.name)
    parts.push(digest([job.name, ...job.overrides, JSON.stringify(job.extra ?? {})]))
  }
  if (names.size === 0) throw new FleetError(`${table ?? projects.join(' ')}: there is no project in it`, 2)
  const { from, to } = shard === undefined ? { from: 0, to: names.size } : shardRange(names.size, shard)
  return {
    count: to - from,
    names,
    extra: extra.names,
    delimiter,
    contents: digest(parts),
    jobs: () => slice(all(), from, to),
  }
}

/** @throws ProjectError when the template's `fleet` part is wrong; FleetError when an option shall change it. */
function extraColumns([template = '']: readonly string[], overrides: readonly string[]): ExtraColumns {
  const bad = overrides.find((text) => /^\s*fleet\s*[.=]/u.test(text))
  if (bad !== undefined) throw new FleetError(`--set ${bad}: what stands under fleet is read from the template`, 2)
  if (statSync(template, { throwIfNoEntry: false }) === undefined) {
    throw new FleetError(`cannot read ${template}: no such file or folder (ENOENT)`, 3)
  }
  return readFleetPart(template)
}

function templateDigest([template = '']: readonly string[]): string {
  try {
    return sha256Of(readBytes(template, LARGEST_YAML_BYTES))
  } catch (error) {
    throw fileTrouble('read', template, error)
  }
}

function jobsOf(
  projects: readonly string[],
  table: string | undefined,
  { overrides, form }: { readonly overrides: readonly string[]; readonly form: TableForm },
): () => Iterable<FleetJob> {
  if (table === undefined) {
    const found = fileJobs(projects, overrides)
    return () => found
  }
  const [template = ''] = projects
  return () => tableJobs(template, table, overrides, form)
}

function* slice(jobs: Iterable<FleetJob>, from: number, to: number): Generator<FleetJob> {
  for (const job of jobs) {
    if (job.index >= to) return
    if (job.index >= from) yield job
  }
}
