import { countFitted } from '../../roof/index.js'
import { resolve } from 'node:path'
import {
  emptyOutcome,
  sharedClimateRun,
  type FleetFinding,
  type FleetJob,
  type FleetOutcome,
  type FleetProblem,
} from '../../fleet/index.js'
import { runHouse } from '../../house/index.js'
import { documentsOf, loadProject, type LoadedProject, type ProjectError } from '../../project/index.js'
import { StageError, type Finding } from '../../worksheet/index.js'
import { explainDefect, explainFailure } from '../failure.js'
import { FileError } from '../errors.js'
import { placeText } from '../place-text.js'
import { writeProjectFiles, type WorkedStage } from './fleet-files.js'
import { FLEET_STAGES, type FleetStage } from './fleet-stages.js'

/** What kinds of files are written for every project. */
export const FILE_KINDS = ['results', 'bom', 'packet'] as const
export type FleetFileKind = (typeof FILE_KINDS)[number]

/** Everything that a worker needs to know beside the project. */
export interface FleetPlan {
  readonly tool: string
  /** Names of the stages to run; undefined: all that a project has the parts for. */
  readonly stages: readonly string[] | undefined
  readonly allowOutside: boolean
  readonly outputFolder: string | undefined
  readonly write: readonly FleetFileKind[]
  /** Whether files in the output folder may be replaced. */
  readonly force: boolean
}

/** Houses of one site share its climate. */
const runYield = sharedClimateRun()

/** Works one project out. Whatever happens to it stands in its outcome; nothing is thrown. */
export async function workOut(job: FleetJob, plan: FleetPlan): Promise<FleetOutcome> {
  const start = emptyOutcome(job)
  let loaded: LoadedProject | undefined
  try {
    loaded = loadProject({ path: job.path, overrides: job.overrides, allowOutside: plan.allowOutside })
    loaded = { ...loaded, project: countFitted(loaded.project) }
    return await runStages(job, plan, loaded)
  } catch (error) {
    const known = {
      ...start,
      title: loaded?.project.title ?? null,
      digest: loaded?.digest ?? null,
      inputs: loaded === undefined ? [resolve(job.path)] : inputsOf(loaded),
    }
    return { ...known, ...failureOf(error, job) }
  }
}

async function runStages(job: FleetJob, plan: FleetPlan, loaded: LoadedProject): Promise<FleetOutcome> {
  const { project } = loaded
  const isWanted = ({ name, needs }: FleetStage): boolean =>
    plan.stages === undefined ? needs(project) : plan.stages.includes(name)
  const wanted = FLEET_STAGES.filter(isWanted)
  const house = runHouse(loaded, { runYield, wishes: { payTheBill: wanted.some(({ name }) => name === 'bom') } })
  const worked: WorkedStage[] = []
  const stages: Record<string, FleetOutcome['stages'][string]> = {}
  const findings = new Map<string, FleetFinding>()
  const tell = (stage: string, finding: Finding): void => {
    const { severity, id, message, where } = finding
    const key = [id, where, message].join('\n')
    // A stage brings the findings of those that it builds on.
    if (!findings.has(key)) findings.set(key, { stage, severity, id, where: placeOf(loaded, job, where), message })
  }
  const stopped = new Set<string>()
  for (const stage of wanted) {
    try {
      const result = await stage.run(house)
      worked.push({ stage: stage.name, cautions: stage.cautions, result })
      stages[stage.name] = stage.figures(result.values)
      for (const finding of result.findings) tell(stage.name, finding)
    } catch (error) {
      if (!(error instanceof StageError)) throw error
      // What stops a stage stops those that build on it too; it is told once.
      if (!stopped.has(error.message)) tell(stage.name, cannotRun(stage.name, error))
      stopped.add(error.message)
    }
  }
  const files: string[] = []
  // Papers that cannot be written or drawn take nothing away from what was worked out.
  let failure: Partial<FleetOutcome> = {}
  try {
    if (plan.outputFolder !== undefined) {
      for (const finding of await writeProjectFiles(job, plan, loaded, { house, worked }, files))
        tell('permit', finding)
    }
  } catch (error) {
    failure = failureOf(error, job)
  }
  const told = [...findings.values()]
  return {
    ...emptyOutcome(job),
    title: project.title,
    digest: loaded.digest,
    status: told.some(({ severity }) => severity === 'error') ? 'failed' : 'ok',
    stages,
    findings: told,
    files,
    inputs: inputsOf(loaded),
    ...failure,
  }
}

function cannotRun(stage: string, { message, fix, where }: StageError): Finding {
  return { severity: 'error', id: `${stage}.cannot-run`, message: fix === '' ? message : `${message}; ${fix}`, where }
}

function inputsOf({ path, folder, files, project }: LoadedProject): string[] {
  const named = [...files.keys(), ...documentsOf(project).map(({ file }) => file)]
  return [resolve(path), ...named.map((name) => resolve(folder, name))]
}

/** Where a path of the project stands: a cell of the table, or a place in a file. */
function placeOf(loaded: LoadedProject, job: FleetJob, path: string): string {
  if (path === '') return ''
  const place = placeText(loaded, path)
  return `${cellOf(job, place) ?? place} (${path})`
}

/** `customers.csv:7:31` for the name of an override that a cell made, undefined for any other place. */
function cellOf({ row }: FleetJob, place: string): string | undefined {
  const cell = row?.cells.find(({ key }) => place.startsWith(`--set ${key}=`))
  return row === undefined || cell === undefined ? undefined : `${row.file}:${cell.line}:${cell.column}`
}

function failureOf(error: unknown, job: FleetJob): Pick<FleetOutcome, 'status' | 'problems'> {
  if (isProjectError(error)) {
    const problems = error.problems.map(({ file, line, column, path, message }): FleetProblem => {
      const place = line === undefined ? file : `${file}:${line}:${column ?? 1}`
      return { place: cellOf(job, file) ?? place, key: path, message }
    })
    return { status: error.exitCode === 3 ? 'unreadable' : 'invalid', problems }
  }
  const { exitCode, text } = explainFailure(error, undefined)
  const message = text.replace(/^error: /u, '').trim()
  const problem = { place: emptyOutcome(job).from, key: '', message }
  if (error instanceof FileError) return { status: 'unreadable', problems: [problem] }
  if (exitCode === 2) return { status: 'invalid', problems: [problem] }
  return { status: 'defect', problems: [{ ...problem, message: explainDefect(error).text.trim() }] }
}

/** As the frame does it: by name. */
function isProjectError(error: unknown): error is ProjectError {
  return error instanceof Error && error.name === 'ProjectError'
}
