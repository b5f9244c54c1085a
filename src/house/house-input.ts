import type { BomValues } from '../materials/index.js'
import type { SizeOptions } from '../money/index.js'
import type { FitRank } from '../roof/index.js'
import type { Project } from '../project/index.js'
import type { MountWishes } from '../structure/index.js'
import type { WiringValues } from '../electrical/index.js'
import type { MountValues } from '../structure/index.js'
import type { Result } from '../worksheet/index.js'
import type { YieldRun, YieldValues } from '../yield/index.js'
import type { Celsius, Dollars } from '../values/index.js'

/** What all stages of a house start from; what `loadProject` gives is one. */
export interface HouseInput {
  readonly project: Project
  /** Text of the files that the project names, by the path as written; none when left out. */
  readonly files?: ReadonlyMap<string, string>
  /** Ids under documents whose file is there; left out, none is. */
  readonly documents?: ReadonlySet<string>
  /** Why the file of a document that is there cannot be used, by id; nothing when left out. */
  readonly documentTroubles?: ReadonlyMap<string, string>
  /** Dotted paths of values that are made up and not confirmed; none when left out. */
  readonly madeUp?: readonly string[]
}

/** Results that were worked out before, of this very project: each stands in for its stage. */
export interface EarlierResults {
  readonly yield?: Result<YieldValues> | undefined
  readonly wire?: Result<WiringValues> | undefined
  readonly mounts?: Result<MountValues> | undefined
  readonly bom?: Result<BomValues> | undefined
}

/** What a person wishes otherwise than the project says. An earlier result does not stand in for a stage with a wish. */
export interface HouseWishes {
  /** Code edition that wins over `codes.electrical`. */
  readonly edition?: string | undefined
  /** Spacing of the mounts in inches, or the fewest. */
  readonly mounts?: MountWishes | undefined
  /** What comes first among the layouts of arrays that are fitted; wins over the project's. */
  readonly rank?: FitRank | undefined
  /** Price before incentives, USD; wins over the project's. */
  readonly installedCostUsd?: Dollars | undefined
  /** Whether the bill of materials of this house is worked out as its price, where no price is stated. */
  readonly payTheBom?: boolean | undefined
  /** Whether the payback tells the spread of the running sum of every year too. */
  readonly cashBand?: boolean | undefined
  /** Whether the payback leaves its sensitivity table out. */
  readonly briefPayback?: boolean | undefined
  /** Whether the payback tells what a battery could save at best, by perfect foresight. */
  readonly optimum?: boolean | undefined
  readonly size?: Omit<SizeOptions, 'estimate'> | undefined
  /** Temperature of the cells on the day of the work, deg C. */
  readonly cellC?: Celsius | undefined
}

/** What stands in for stages, what is wished, and how the energy is estimated. */
export interface HouseOptions {
  readonly earlier?: EarlierResults | undefined
  readonly wishes?: HouseWishes | undefined
  /** How the energy is estimated; `runYield` when left out. A run of many houses shares the climate of a site. */
  readonly runYield?: ((project: Project, files: ReadonlyMap<string, string>) => YieldRun) | undefined
}
