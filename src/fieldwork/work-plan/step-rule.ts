import type { PlanInput } from './plan-input.js'
import type { PlanSystem } from './plan-system.js'
import type { PlanCaution, PlanQuantity, PlanState, PlanStep } from './plan-values.js'
import { tasksOf, type TaskRule, type TasksOfParts } from './task-rule.js'

type Stage = PlanInput['missing'][number]['stage']

/** A step of the work: when a system has it, what is live meanwhile, what it takes, and what is done in which order. */
export interface StepRule {
  readonly id: string
  readonly title: string | ((system: PlanSystem) => string)
  /** Missing: `work`. */
  readonly kind?: PlanStep['kind']
  /** Missing: every system. */
  readonly when?: (system: PlanSystem) => boolean
  /** Missing: `dead`. */
  readonly state?: PlanState | ((system: PlanSystem) => PlanState)
  readonly tools?: readonly string[] | ((system: PlanSystem) => readonly string[])
  readonly quantities?: (system: PlanSystem) => readonly PlanQuantity[]
  readonly tasks: readonly (TaskRule | TasksOfParts)[]
  readonly cautions?: readonly PlanCaution[]
  /** The stage whose numbers the step is done by: while it cannot run, the step stops there. */
  readonly needs?: Stage
  /** Where the work stops when nothing is missing; missing: it goes straight on. */
  readonly stop?: string
}

/** The steps that a system has, with its numbers. */
export function stepsOf(rules: readonly StepRule[], system: PlanSystem): PlanStep[] {
  return rules
    .filter((rule) => rule.when?.(system) ?? true)
    .map((rule) => ({
      id: rule.id,
      title: typeof rule.title === 'function' ? rule.title(system) : rule.title,
      kind: rule.kind ?? 'work',
      state: (typeof rule.state === 'function' ? rule.state(system) : rule.state) ?? 'dead',
      tools: (typeof rule.tools === 'function' ? rule.tools(system) : rule.tools) ?? [],
      quantities: rule.quantities?.(system) ?? [],
      tasks: tasksOf(rule.tasks, system),
      cautions: rule.cautions ?? [],
      stop: stopForGap(system, rule.needs) ?? rule.stop ?? null,
    }))
}

/** What a missing stage means for a step. */
function stopForGap({ missing }: PlanInput, stage: Stage | undefined): string | undefined {
  const gap = missing.find((each) => each.stage === stage)
  return gap === undefined ? undefined : `do not begin: ${gap.stage} cannot run (${gap.where}: ${gap.why})`
}
