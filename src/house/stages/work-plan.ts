import type { RequiredLabel } from '../../drawings/index.js'
import type { WiringValues } from '../../electrical/index.js'
import { planWork, type PlanInput, type WorkPlanValues } from '../../fieldwork/index.js'
import type { Project } from '../../project/index.js'
import type { MountValues } from '../../structure/index.js'
import { StageError, Worksheet, type Result } from '../../worksheet/index.js'
import type { YieldRun } from '../../yield/index.js'
import type { Celsius } from '../../values/index.js'

/** What the plan is made from. A stage that could not run stands with its reason; its steps then have no numbers. */
export interface WorkPlanNeeds {
  readonly run: YieldRun
  readonly mounts: Result<MountValues> | StageError
  readonly wire: Result<WiringValues> | StageError
  readonly labels: readonly RequiredLabel[] | undefined
  /** Temperature of the cells on the day of the work, deg C. */
  readonly cellC: Celsius | undefined
}

/** How far the edition is known stands in every result that it rules; what is deadly stands in every plan of work. */
const IS_TOLD: ReadonlySet<string> = new Set(['wire.edition-secondary', 'wire.overhead-work'])

/** The work plan, with the errors of the stages that it rests on: a plan for a design that fails a check must say so. */
export function workPlanFrom(
  project: Project,
  { run, mounts, wire: wiring, labels, cellC }: WorkPlanNeeds,
): Result<WorkPlanValues> {
  const missing = [...missingOf('space-mounts', mounts), ...missingOf('size-wire', wiring)]
  const stages = [mounts, wiring].flatMap((stage) => (stage instanceof StageError ? [] : [stage]))
  const plan = planWork({
    project,
    run,
    mounts: mounts instanceof StageError ? undefined : mounts.values,
    wire: wiring instanceof StageError ? undefined : wiring.values,
    labels,
    missing,
    cellC,
  })
  const worksheet = new Worksheet()
  worksheet.include(plan)
  for (const { findings, assumptions } of stages) {
    for (const finding of findings) if (finding.severity === 'error' || IS_TOLD.has(finding.id)) worksheet.find(finding)
    for (const assumption of assumptions) worksheet.assume(assumption)
  }
  return worksheet.result(plan.values)
}

function missingOf(stage: 'space-mounts' | 'size-wire', result: Result<unknown> | StageError): PlanInput['missing'] {
  if (!(result instanceof StageError)) return []
  return [{ stage, where: result.where, why: result.message, fix: result.fix }]
}
