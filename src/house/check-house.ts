import { moduleCountOf, type Project } from '../project/facts.js'
import { StageError, Worksheet, type Finding, type Result } from '../worksheet/index.js'
import { CHECK_STAGES, type CheckStage } from './check-stages.js'
import type { House } from './house.js'
import { stageProgress, type StageOutcome, type StageProgress } from './stage-progress.js'

/** What a check of a project comes to; what is wrong or assumed stands in the findings and assumptions beside it. */
export interface CheckValues {
  /** Whether no check fails. */
  readonly ok: boolean
  /** What the file holds, so that a person sees that all of it was read. */
  readonly counts: { readonly roof_planes: number; readonly arrays: number; readonly modules: number }
  /** Names of the stages that the project has the parts for and that could run. */
  readonly stages_run: readonly string[]
  /** How far each stage is that a person runs by itself, in the order of the job. */
  readonly stages: readonly StageProgress[]
  /** What to run now; null when nothing is missing, failing or made up. */
  readonly next: string | null
}

/** Which stages are run, and who is told. */
export interface CheckOptions {
  readonly stages?: readonly CheckStage[] | undefined
  /** Takes the name of a stage before it is run. */
  readonly begin?: ((stage: string) => void) | undefined
  /** Dotted paths of values that are made up, as of a loaded project. */
  readonly madeUp?: readonly string[]
  /** Name of the project file, for commands that are told. */
  readonly file?: string
}

/**
 * Runs the stages of a project that are quick, for what they find and assume. A stage that cannot run is a finding
 * `<stage>.cannot-run`, and the others still run.
 *
 * @param house The stages of the project, of `runHouse`.
 * @returns Findings without repeats, errors first; no steps are left out.
 */
export async function checkHouse(
  project: Project,
  house: House,
  { stages = CHECK_STAGES, begin, madeUp = [], file = 'project.yaml' }: CheckOptions = {},
): Promise<Result<CheckValues>> {
  const sheet = new Worksheet()
  const ran: string[] = []
  const progress: StageProgress[] = []
  for (const stage of stages) {
    let outcome: StageOutcome
    if (stage.applies(project)) {
      begin?.(stage.name)
      outcome = await runStage(stage, house, project, sheet)
      if (!(outcome instanceof StageError)) ran.push(stage.name)
    }
    if (stage.own !== undefined)
      progress.push(stageProgress(stage.own, outcome, { project, madeUp, file, before: progress }))
  }
  const proof = sheet.result({})
  const findings = withoutRepeats(proof.findings)
  const ok = !findings.some(({ severity }) => severity === 'error')
  const next = progress.find(({ state }) => state !== 'ready')?.next ?? null
  return { ...proof, findings, values: { ok, counts: countParts(project), stages_run: ran, stages: progress, next } }
}

/** A stage that cannot run is itself something to tell; the others still run. */
async function runStage(
  stage: CheckStage,
  house: House,
  project: Project,
  sheet: Worksheet,
): Promise<readonly Finding[] | StageError> {
  try {
    const result = await stage.run(house, project)
    sheet.include(result)
    return result.findings
  } catch (error) {
    if (!(error instanceof StageError)) throw error
    const { where, message, fix } = error
    sheet.find({ severity: 'error', id: `${stage.name}.cannot-run`, message, where, fix })
    return error
  }
}

/** A stage brings the findings of the stages that it builds on, so that one may arrive more than once. */
function withoutRepeats(findings: readonly Finding[]): Finding[] {
  return [
    ...new Map(findings.map((finding) => [[finding.id, finding.where, finding.message].join('\n'), finding])).values(),
  ]
}

function countParts({ roof_planes, arrays }: Project): CheckValues['counts'] {
  return {
    roof_planes: Object.keys(roof_planes).length,
    arrays: Object.keys(arrays).length,
    modules: Object.values(arrays).reduce((sum, array) => sum + moduleCountOf(array), 0),
  }
}
