import { conductorSizes, tradeSizes, type ConductorSize, type TradeSize } from '../../tables/nec/index.js'
import { chooseRaceway } from '../raceways/index.js'
import { conductorAreaIn2, largerOf } from '../conductors/index.js'
import type { SizedSegment } from '../segments/index.js'
import type { Inches } from '../../values/index.js'
import type { BoxSite } from './box-sites.js'
import type { Held } from './box-contents.js'
import { leastCoverDistanceIn, leastEntryDistanceIn, leastPullIn } from './pull-box.js'

/** Size of a box for conductors of 4 AWG and larger. */
export interface PullVerdict {
  readonly largest: TradeSize
  readonly requiredIn: Inches
  readonly requiredEntryIn: Inches | undefined
  /** Where a raceway enters opposite a removable cover. */
  readonly requiredCoverIn: Inches | undefined
  /** false when a stated length is too small, undefined when something is not stated. */
  readonly passes: boolean | undefined
  /** Keys that are missing. */
  readonly missing: readonly string[]
}

/**
 * Whether a box is long enough for conductors of 4 AWG and larger.
 *
 * @returns undefined where no raceway size is known.
 * @source NEC 314.28(A), Table 312.6(A)
 */
export function judgePull({ box, segments }: BoxSite, { spliced, large }: Held): PullVerdict | undefined {
  const sizes = segments.flatMap((segment) => racewayOf(segment) ?? [])
  if (sizes.length === 0) return undefined
  const largest = sizes.reduce((a, b) => (tradeSizes.indexOf(a) >= tradeSizes.indexOf(b) ? a : b))
  // Without a stated pull the longer rule for one raceway counts.
  const others = box.other_trade_sizes ?? []
  const ofPull = leastPullIn(box.pull ?? 'straight', largest, others)
  const requiredIn = spliced ? Math.max(ofPull, leastPullIn('splice', largest, others)) : ofPull
  const turns = box.pull === 'angle' || box.pull === 'splice'
  const requiredEntryIn = turns ? leastEntryDistanceIn(largest) : undefined
  const { length_in: lengthIn, entry_distance_in: entryIn, cover_distance_in: coverIn } = box
  const requiredCoverIn = coverIn === undefined ? undefined : leastCoverDistanceIn(largestOf(large))
  const short = (stated: number | undefined, least: number | undefined): boolean =>
    stated !== undefined && least !== undefined && stated < least * (1 - 1e-9)
  const missing = [
    ...(box.pull === undefined ? ['pull'] : []),
    ...(lengthIn === undefined ? ['length_in'] : []),
    ...(turns && entryIn === undefined ? ['entry_distance_in'] : []),
    ...(coverIn !== undefined && requiredCoverIn === undefined ? ['the distance for conductors above 250 kcmil'] : []),
  ]
  const tooShort = short(lengthIn, requiredIn) || short(entryIn, requiredEntryIn) || short(coverIn, requiredCoverIn)
  return {
    largest,
    requiredIn,
    requiredEntryIn,
    requiredCoverIn,
    missing,
    passes: box.pull !== undefined && tooShort ? false : missing.length > 0 ? undefined : true,
  }
}

const largestOf = (large: Held['large']): ConductorSize => large.map(({ size }) => size).reduce(largerOf, '4')

/** Trade size of a segment; of a cable that of the tubing that its conductors would need. */
function racewayOf({ contents, segment, conditions: { method } }: SizedSegment): TradeSize | undefined {
  if (method.form === 'raceway') return contents.verdict?.tradeSize ?? segment.stated.trade_size
  if (method.form === 'open') return undefined
  const areaIn2 = contents.conductors.reduce((sum, { size_awg: name, count }) => {
    const size = conductorSizes.find((candidate) => candidate === name)
    return sum + count * (size === undefined ? 0 : (conductorAreaIn2(size, 'THWN-2', undefined) ?? 0))
  }, 0)
  return chooseRaceway('EMT', contents.count, areaIn2, false)?.tradeSize
}
