import type { DesignTemperatures } from '../../climate/index.js'
import { withAcModules } from '../../project/facts.js'
import type { Electrical, Project } from '../../project/index.js'
import { sectionOf, type Edition, type SectionTopic } from '../../tables/nec/index.js'
import { StageError, type Source, type Worksheet } from '../../worksheet/index.js'
import type { Celsius } from '../../values/index.js'

/** What the wiring stage needs besides the project. */
export interface WiringContext {
  /** Edition that wins over `codes.electrical`: `NEC 2020`. */
  readonly edition?: string | undefined
  readonly designTemperatures: DesignTemperatures
  /** What is known of where the modules lie. */
  readonly arrangement?:
    | {
        /** Trunk length by branch id, ft, from the feed to the last inverter of the longer half. */
        readonly trunkLengthFt?: Readonly<Record<string, number>> | undefined
        /**
         * Way of the trunk to each module from the one before it, ft, by array id; the first is the way from the
         * junction box to the first module.
         */
        readonly trunkGapsFt?: Readonly<Record<string, readonly number[]>> | undefined
        /** Number of modules by array id. */
        readonly modules?: Readonly<Record<string, number>> | undefined
      }
    | undefined
}

/** One run of the stage. */
export interface Job {
  readonly project: Project
  readonly electrical: Electrical
  readonly edition: Edition
  readonly context: WiringContext
  readonly worksheet: Worksheet
  /** Section of this edition as a source. */
  readonly nec: (topic: SectionTopic, detail?: string) => Source
}

export function newJob(project: Project, edition: Edition, context: WiringContext, worksheet: Worksheet): Job {
  if (project.electrical === undefined)
    throw new StageError(
      'electrical',
      'the part electrical is missing, so there is no path from the array to the panel',
      'State connection, panel and runs under electrical',
    )
  return {
    project: withAcModules(project),
    electrical: project.electrical,
    edition,
    context,
    worksheet,
    nec: (topic, detail = '') => sectionOf(edition, topic, detail),
  }
}

/** A habit of the trade, or a document other than the code. */
export const practice = (place: string): Source => ({
  document: place,
  standing: 'common practice, no source',
})

/**
 * Outdoor temperature that conductors are designed for.
 *
 * @returns deg C.
 * @throws StageError when neither the climate table nor the project knows it.
 */
export function outdoorDesignC(job: Job): Celsius {
  const high = job.context.designTemperatures.high2pct
  if (high !== undefined) return finite(high.valueC, 'site.design_temperatures.high_2pct_c')
  throw new StageError(
    'site.design_temperatures.high_2pct_c',
    'the hot design temperature is not known for this site',
    'Take the mean of the June to August 2 % dry-bulb from the ASHRAE table of a station nearby, or ask the authority which value it wants',
  )
}

/**
 * Lowest temperature that voltages are designed for.
 *
 * @returns deg C.
 */
export function extremeLowC(job: Job): Celsius {
  const low = job.context.designTemperatures.extremeLow
  if (low !== undefined) return finite(low.valueC, 'site.design_temperatures.extreme_low_c')
  throw new StageError(
    'site.design_temperatures.extreme_low_c',
    'the lowest design temperature is not known for this site',
    'Take the extreme annual mean minimum dry-bulb from the ASHRAE table of a station nearby, or ask the authority',
  )
}

/** A number that has to be finite. */
export function finite(value: number, where: string): number {
  if (Number.isFinite(value)) return value
  throw new StageError(where, 'the number is not finite', 'State a number')
}

/** A number that has to be above zero. */
export function positive(value: number, where: string, what: string): number {
  if (Number.isFinite(value) && value > 0) return value
  throw new StageError(where, `${what} is ${value}; it must be above 0`, 'Measure it and state it')
}
