import {
  boxAllowances,
  boxConductorSizes,
  boxGrounds,
  boxVolumes,
  type BoxConductorSize,
  type Edition,
} from '../../tables/nec/index.js'

/** Conductors of one size in a box; each counts as often as it enters and ends, or once where it passes whole. */
export interface BoxConductors {
  readonly size: BoxConductorSize
  readonly count: number
  readonly grounding: boolean
}

/** What takes volume in a box. */
export interface BoxContents {
  readonly conductors: readonly BoxConductors[]
  readonly internalClamps: boolean
  /** Kinds of support fittings. */
  readonly supportFittings: number
  readonly terminalBlocks: number
  /** Yokes; the size of their largest conductor, of the largest in the box when missing. */
  readonly devices: readonly { readonly size?: BoxConductorSize | undefined; readonly gangs: number }[]
}

/** Volume that a box needs, row by row. */
export interface BoxFill {
  readonly rows: readonly {
    readonly what: string
    readonly count: number
    readonly size: BoxConductorSize
    readonly volumeIn3: number
  }[]
  /** Sum of the counts. */
  readonly count: number
  readonly requiredIn3: number
}

/** Volumes that a yoke counts for each gang. */
const VOLUMES_OF_A_GANG = 2

/**
 * Volume that the contents of a box need.
 *
 * Terminal blocks count in every edition, though only 2023 says so, which is on the safe side.
 *
 * @source NEC 314.16(B)
 */
export function boxFill(contents: BoxContents, edition: Edition): BoxFill {
  const { conductors, internalClamps, supportFittings, terminalBlocks, devices } = contents
  const all = conductors.filter(({ count }) => count > 0)
  const largest = all.map(({ size }) => size).reduce(largerIn, '18')
  const row = (what: string, count: number, size: BoxConductorSize) => ({
    what,
    count,
    size,
    volumeIn3: count * boxAllowances[size],
  })
  const grounds = all.filter(({ grounding }) => grounding)
  const groundCount = grounds.reduce((sum, { count }) => sum + count, 0)
  const { forOne, furtherShare } = boxGrounds(edition)
  const rows = [
    ...boxConductorSizes.map((size) =>
      row(
        `${size} AWG conductors`,
        all.reduce((sum, each) => sum + (each.size === size && !each.grounding ? each.count : 0), 0),
        size,
      ),
    ),
    row('internal clamps', internalClamps ? 1 : 0, largest),
    row('support fittings', supportFittings, largest),
    row('terminal blocks', terminalBlocks, largest),
    ...devices.map(({ size, gangs }) => row('device', VOLUMES_OF_A_GANG * gangs, size ?? largest)),
    row(
      `${groundCount} grounding conductors`,
      groundCount === 0 ? 0 : 1 + furtherShare * Math.max(0, groundCount - forOne),
      grounds.map(({ size }) => size).reduce(largerIn, '18'),
    ),
  ].filter(({ count }) => count > 0)
  return {
    rows,
    count: rows.reduce((sum, { count }) => sum + count, 0),
    requiredIn3: rows.reduce((sum, { volumeIn3 }) => sum + volumeIn3, 0),
  }
}

/** The smallest round or square box of the table that holds a volume; undefined when none does. */
export function smallestBox(volumeIn3: number): string | undefined {
  return boxVolumes
    .filter(({ id, volumeIn3: own }) => /(?:round|square)$/u.test(id) && own >= volumeIn3 - 1e-9)
    .toSorted((a, b) => a.volumeIn3 - b.volumeIn3)[0]?.id
}

function largerIn(a: BoxConductorSize, b: BoxConductorSize): BoxConductorSize {
  return boxConductorSizes.indexOf(a) >= boxConductorSizes.indexOf(b) ? a : b
}
