import { sectionOf, type Edition, type SectionTopic } from '../../tables/nec/index.js'
import { formatSource, type Source } from '../../worksheet/index.js'
import type { PlanInput } from './plan-input.js'
import type { PlanSystem } from './plan-system.js'
import type { PlanCaution, PlanQuantity, PlanState, PlanStep, PlanTask } from './plan-values.js'

export function task(says: string, source?: Source, id = ''): PlanTask {
  return { id, says, source: source === undefined ? '' : formatSource(source) }
}

/** A task of safety or of a test: when a system has it, what it says to that system, and where it comes from. */
export interface TaskRule {
  readonly id: string
  readonly source: Source | ((system: PlanSystem) => Source | undefined)
  /** Missing: every system. */
  readonly when?: (system: PlanSystem) => boolean
  readonly says: string | ((system: PlanSystem) => string | readonly string[])
}

/** The tasks that a system has, with its numbers. */
export function tasksOf(rules: readonly TaskRule[], system: PlanSystem): PlanTask[] {
  return rules
    .filter((rule) => rule.when?.(system) ?? true)
    .flatMap((rule) => {
      const says = typeof rule.says === 'string' ? rule.says : rule.says(system)
      const source = typeof rule.source === 'function' ? rule.source(system) : rule.source
      return (typeof says === 'string' ? [says] : says).map((each) => task(each, source, rule.id))
    })
}

const STATE_TEXTS: Readonly<Record<PlanState, string>> = {
  not_proved_dead: 'the house is live as ever; everything counts as live until the absence of voltage is proved',
  dead: 'dead: everything of the system off and locked out',
  open_strings_live: 'off and locked out; modules and open strings are live by light',
  closed_strings_off: 'off and locked out; the strings are closed and live up to the open DC switch',
  on_after_permission: 'on, only after the written permission of the utility',
}

export function stateText({ state }: PlanStep): string {
  return STATE_TEXTS[state]
}

/** A section of the edition that the wiring was sized by, undefined when there is none. */
export function nec(input: PlanInput, topic: SectionTopic): Source | undefined {
  return input.wire === undefined ? undefined : sectionOf(input.wire.edition as Edition, topic)
}

export function step(
  id: string,
  title: string,
  parts: {
    readonly kind?: PlanStep['kind']
    readonly state?: PlanState
    readonly tools?: readonly string[]
    readonly quantities?: readonly PlanQuantity[]
    readonly tasks: readonly (PlanTask | readonly PlanTask[] | undefined)[]
    readonly cautions?: readonly PlanCaution[]
    readonly stop?: string | undefined
  },
): PlanStep {
  return {
    id,
    title,
    kind: parts.kind ?? 'work',
    state: parts.state ?? 'dead',
    tools: parts.tools ?? [],
    quantities: parts.quantities ?? [],
    tasks: parts.tasks.flatMap((each) => each ?? []),
    cautions: parts.cautions ?? [],
    stop: parts.stop ?? null,
  }
}

export function quantity(what: string, count: number, unit = ''): PlanQuantity {
  return { what, count, unit }
}

/** What the missing stage means for a step. */
export function stopFor(input: PlanInput, stage: 'space-mounts' | 'size-wire'): string | undefined {
  const gap = input.missing.find((each) => each.stage === stage)
  return gap === undefined ? undefined : `do not begin: ${stage} cannot run (${gap.where}: ${gap.why})`
}

/** A length as a tape shows it, to the nearest sixteenth: `5 ft 3-1/2 in`. */
export function tape(inches: number): string {
  return tapeText(Math.round(inches * 16))
}

/** A length that must not be exceeded, rounded down to the sixteenth. */
export function tapeAtMost(inches: number): string {
  return tapeText(Math.floor(inches * 16 + 1e-6))
}

function tapeText(sixteenths: number): string {
  const feet = Math.floor(sixteenths / 192)
  const whole = Math.floor((sixteenths - feet * 192) / 16)
  let [top, bottom] = [sixteenths % 16, 16]
  while (top > 0 && top % 2 === 0) [top, bottom] = [top / 2, bottom / 2]
  const rest = top === 0 ? `${whole}` : whole === 0 ? `${top}/${bottom}` : `${whole}-${top}/${bottom}`
  return feet === 0 ? `${rest} in` : `${feet} ft ${rest} in`
}

/** `46 x mounts`, `18 ft of EMT` */
export function quantityText({ what, count, unit }: PlanQuantity): string {
  const number = Number.isInteger(count) ? `${count}` : count.toFixed(1)
  return unit === '' ? `${number} x ${what}` : `${number} ${unit} of ${what}`
}

/** `height, live conductors`: which of the plan's cautions this step is about. */
export function cautionWords({ cautions }: PlanStep): string {
  return cautions.map((each) => each.replaceAll('-', ' ')).join(', ')
}

export function plural(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`
}
