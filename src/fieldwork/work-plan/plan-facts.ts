import type { RequiredLabel } from '../../drawings/index.js'
import type { WiringValues } from '../../electrical/index.js'
import type { Project } from '../../project/index.js'
import type { MountValues } from '../../structure/index.js'
import { sectionOf, type Edition, type SectionTopic } from '../../tables/nec/index.js'
import { formatSource, type Source } from '../../worksheet/index.js'
import type { YieldRun } from '../../yield/index.js'
import type { PlanCaution, PlanQuantity, PlanStep, PlanTask } from './plan-values.js'

/** What the plan is made from; a stage that could not run is left out, and its steps say so. */
export interface PlanInput {
  readonly project: Project
  readonly run: YieldRun
  readonly mounts?: MountValues | undefined
  readonly wiring?: WiringValues | undefined
  readonly labels?: readonly RequiredLabel[] | undefined
  /** Why a stage is missing, by its subcommand. */
  readonly missing: readonly {
    readonly stage: 'space-mounts' | 'size-wire'
    readonly where: string
    readonly why: string
    readonly fix: string
  }[]
  /** Cell temperature of today, deg C. */
  readonly cellC?: number | undefined
}

export function task(says: string, source?: Source): PlanTask {
  return { says, source: source === undefined ? '' : formatSource(source) }
}

/** A section of the edition that the wiring was sized by, undefined when there is none. */
export function nec(input: PlanInput, topic: SectionTopic): Source | undefined {
  return input.wiring === undefined ? undefined : sectionOf(input.wiring.edition as Edition, topic)
}

export function step(
  id: string,
  title: string,
  parts: {
    readonly kind?: PlanStep['kind']
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
