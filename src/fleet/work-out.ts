import { resolve } from 'node:path'
import { FileError } from '../files/index.js'
import { runHouse } from '../house/index.js'
import { documentsOf, loadProject, placeText, ProjectError, type LoadedProject } from '../project/index.js'
import { cleanLine, defectText, stageErrorText } from '../report/index.js'
import { countFitted } from '../roof/index.js'
import { StageError, type Finding } from '../worksheet/index.js'
import type { FleetPlan } from './plan.js'
import { stampsAsRead } from './input-stamp.js'
import { itemsOf, PRICE_LIST_FILE } from './price-items.js'
import { writeProjectFiles, type WorkedStage } from './project-files.js'
import { emptyOutcome } from './run-in-order.js'
import { sharedClimateRun } from './shared-climate.js'
import { figuresInCurrency } from './stage-figures.js'
import { FLEET_STAGES, type FleetStage } from './stages.js'
import type { FleetFinding, FleetJob, FleetOutcome, FleetProblem } from './types.js'

/** Houses of one site share its climate. */
const runYield = sharedClimateRun()

/** Works one project out. Whatever happens to it stands in its outcome; nothing is thrown. */
export async function workOut(job: FleetJob, plan: FleetPlan): Promise<FleetOutcome> {
  const start = emptyOutcome(job)
  const sinceMs = Date.now()
  let loaded: LoadedProject | undefined
  try {
    loaded = loadProject({ path: job.path, overrides: job.overrides, allowOutside: plan.allowOutside })
    loaded = { ...loaded, project: countFitted(loaded.project) }
    // Before the stages, which take long enough for somebody to change a file.
    const inputs = stampsAsRead(inputsOf(loaded), sinceMs)
    return await runStages(job, plan, loaded, inputs)
  } catch (error) {
    const known = { ...start, title: loaded?.project.title ?? null, digest: loaded?.digest ?? null }
    return { ...known, ...failureOf(error, job, plan) }
  }
}

async function runStages(
  job: FleetJob,
  plan: FleetPlan,
  loaded: LoadedProject,
  inputs: readonly string[],
): Promise<FleetOutcome> {
  const { project } = loaded
  const isWanted = ({ name, needs }: FleetStage): boolean =>
    plan.stages === undefined ? needs(project) : plan.stages.includes(name)
  const wanted = FLEET_STAGES.filter(isWanted)
  const isOffer = plan.write.some((kind) => kind === 'proposal' || kind === 'proposal-html')
  const payTheBom = isOffer || wanted.some(({ name }) => name === 'bom')
  const house = runHouse(loaded, { runYield, wishes: { payTheBom, briefPayback: plan.outputFolder === undefined } })
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
      stages[stage.name] = figuresInCurrency(stage.figures(result.values), project.finance?.currency)
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
      for (const { stage, finding } of await writeProjectFiles(job, plan, loaded, { house, worked }, files))
        tell(stage, finding)
    }
  } catch (error) {
    failure = failureOf(error, job, plan)
  }
  let items: FleetOutcome['items']
  if (plan.outputFolder !== undefined && plan.write.includes('price-list')) {
    try {
      items = await itemsOf(house)
    } catch (error) {
      if (!(error instanceof StageError)) throw error
      tell('bom', notInList(error))
    }
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
    ...(items === undefined ? {} : { items }),
    inputs,
    ...failure,
  }
}

function cannotRun(stage: string, { message, fix, where }: StageError): Finding {
  return { severity: 'error', id: `${stage}.cannot-run`, message: fix === '' ? message : `${message}; ${fix}`, where }
}

function notInList({ message, where }: StageError): Finding {
  return { severity: 'warning', id: 'fleet.not-in-price-list', message: `not in ${PRICE_LIST_FILE}: ${message}`, where }
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

function failureOf(error: unknown, job: FleetJob, plan: FleetPlan): Pick<FleetOutcome, 'status' | 'problems'> {
  if (error instanceof ProjectError) {
    const problems = error.problems.map(({ file, line, column, path, message }): FleetProblem => {
      const place = line === undefined ? file : `${file}:${line}:${column ?? 1}`
      return { place: cellOf(job, file) ?? place, key: path, message }
    })
    return { status: error.exitCode === 3 ? 'unreadable' : 'invalid', problems }
  }
  const problems = (text: string): FleetProblem[] => [{ place: emptyOutcome(job).from, key: '', message: text.trim() }]
  if (error instanceof FileError) {
    return { status: error.exitCode === 3 ? 'unreadable' : 'invalid', problems: problems(cleanLine(error.message)) }
  }
  if (error instanceof StageError) return { status: 'invalid', problems: problems(stageErrorText(error, undefined)) }
  return { status: 'defect', problems: problems(defectText(error, plan.showStack === true)) }
}
