import type { CurrentReading, InsulationValue } from '../../../fieldwork/index.js'
import type { PvModule, StringReading } from '../../../project/index.js'

/** A string with what its data sheets say and what was read. */
export interface StringFacts {
  /** `south_s1`, as in size-wire. */
  readonly id: string
  readonly what: string
  readonly moduleId: string
  readonly module: PvModule
  readonly modules: number
  /** Strings with the same are alike: module, count, tilt and direction. */
  readonly alike: string
  readonly current: CurrentReading
  readonly insulation: InsulationValue | undefined
  readonly reading: StringReading
  /** Cell temperature and light of its readings, or of the day; undefined when nobody noted them. */
  readonly cellC: number | undefined
  readonly irradianceWM2: number | undefined
  /** Path of its readings in the project file. */
  readonly where: string
}
