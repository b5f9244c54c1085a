import { moduleCountOf, type Project } from '../project/facts.js'
import { StageError, Worksheet, type Finding, type Result } from '../worksheet/index.js'
import { CHECK_STAGES, type CheckStage } from './check-stages.js'
import type { House } from './house.js'

/** What a check of a project comes to; what is wrong or assumed stands in the findings and assumptions beside it. */
export interface CheckValues {
  /** Whether no check fails. */
  readonly ok: boolean
  /** What the file holds, so that a person sees that all of it was read. */
  readonly counts: { readonly roof_planes: number; readonly arrays: number; readonly modules: number }
  /** Names of the stages that the project has the parts for and that could run. */
  readonly stages_run: readonly string[]
}

/** Which stages are run, and who is told. */
export interface CheckOptions {
  readonly stages?: readonly CheckStage[] | undefined
  /** Takes the name of a stage before it is run. */
  readonly begin?: ((stage: string) => void) | undefined
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
  { stages = CHECK_STAGES, begin }: CheckOptions = {},
): Promise<Result<CheckValues>> {
  const sheet = new Worksheet()
  const ran: string[] = []
  for (const stage of stages) {
    if (!stage.applies(project)) continue
    begin?.(stage.name)
    if (await runStage(stage, house, project, sheet)) ran.push(stage.name)
  }
  const proof = sheet.result({})
  const findings = withoutRepeats(proof.findings)
  const ok = !findings.some(({ severity }) => severity === 'error')
  return { ...proof, findings, values: { ok, counts: countParts(project), stages_run: ran } }
}

/** A stage that cannot run is itself something to tell; the others still run. */
async function runStage(stage: CheckStage, house: House, project: Project, sheet: Worksheet): Promise<boolean> {
  try {
    sheet.include(await stage.run(house, project))
    return true
  } catch (error) {
    if (!(error instanceof StageError)) throw error
    const { where, message, fix } = error
    sheet.find({ severity: 'error', id: `${stage.name}.cannot-run`, message, where, fix })
    return false
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
