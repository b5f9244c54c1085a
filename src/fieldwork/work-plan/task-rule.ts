import type { WiringValues } from '../../electrical/index.js'
import type { MountValues } from '../../structure/index.js'
import { sectionOf, type SectionTopic } from '../../tables/nec/index.js'
import { formatSource, type Source } from '../../worksheet/index.js'
import type { PlanSystem } from './plan-system.js'
import type { PlanTask } from './plan-values.js'

/** A task: when a system has it, what it says to that system, and where it comes from. */
export interface TaskRule {
  /** Stable name of a task of safety or of a test; missing for the others. */
  readonly id?: string
  /** Missing: plain craft. */
  readonly source?: Source | ((system: PlanSystem) => Source | undefined)
  /** Missing: every system. */
  readonly when?: (system: PlanSystem) => boolean
  /** Several lines become as many tasks, none leaves the task out. */
  readonly says: string | ((system: PlanSystem) => string | readonly string[])
}

/** Tasks that stand together for each part of a system, each with a source of its own. */
export type TasksOfParts = (system: PlanSystem) => readonly PlanTask[]

/** The tasks that a system has, with its numbers. */
export function tasksOf(rules: readonly (TaskRule | TasksOfParts)[], system: PlanSystem): PlanTask[] {
  return rules.flatMap((rule) => {
    if (typeof rule === 'function') return rule(system)
    if (!(rule.when?.(system) ?? true)) return []
    const says = typeof rule.says === 'string' ? rule.says : rule.says(system)
    const source = typeof rule.source === 'function' ? rule.source(system) : rule.source
    return (typeof says === 'string' ? [says] : says).map((each) => task(each, source, rule.id))
  })
}

export function task(says: string, source?: Source, id = ''): PlanTask {
  return { id, says, source: source === undefined ? '' : formatSource(source) }
}

/** A section of the edition that the wiring was sized by; none when there is no wiring. */
export const section =
  (topic: SectionTopic) =>
  ({ edition }: PlanSystem): Source | undefined =>
    edition === undefined ? undefined : sectionOf(edition, topic)

/** The section on connections of this system's kind. */
export const connectionSection = (system: PlanSystem): Source | undefined =>
  section(system.supplySide ? 'supplySide' : 'loadSideBusbar')(system)

/** What follows from the mounts; nothing while there are none. */
export const ofMounts =
  <Part>(of: (mounts: MountValues, system: PlanSystem) => readonly Part[]) =>
  (system: PlanSystem): readonly Part[] =>
    system.mounts === undefined ? [] : of(system.mounts, system)

/** What follows from the wiring; nothing while there is none. */
export const ofWiring =
  <Part>(of: (wiring: WiringValues, system: PlanSystem) => readonly Part[]) =>
  (system: PlanSystem): readonly Part[] =>
    system.wire === undefined ? [] : of(system.wire, system)
