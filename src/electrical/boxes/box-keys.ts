import type { WiringBox } from '../../project/index.js'
import { StageError } from '../../worksheet/index.js'

/** Keys of one kind only. */
const OF_BODIES = ['area_in2', 'short_radius'] as const

/**
 * Refuses keys of a box that contradict each other or its kind.
 *
 * @throws StageError for such a key.
 */
export function checkBoxKeys(box: WiringBox, where: string): void {
  for (const key of OF_BODIES)
    if (box.kind === 'box' && box[key] !== undefined)
      throw new StageError(`${where}.${key}`, `${key} belongs to a conduit body, this is a box`, `Delete ${key}`)
  if (box.kind === 'conduit_body' && box.standard_box !== undefined)
    throw new StageError(
      `${where}.standard_box`,
      'a conduit body is no box of the table',
      'State the volume that is marked on it, as volume_in3',
    )
  if (box.standard_box !== undefined && box.volume_in3 !== undefined)
    throw new StageError(
      `${where}.volume_in3`,
      'both standard_box and volume_in3 are stated',
      'State the marked volume, or the box of the table where nothing is marked',
    )
}

/** Keys that only conductors of 4 AWG and larger give a meaning. */
const OF_LARGE = [
  'pull',
  'length_in',
  'other_trade_sizes',
  'entry_distance_in',
  'cover_distance_in',
  'marked_for_conductors',
] as const
/** Keys that only a count by volume gives a meaning. */
const OF_VOLUME = [
  'extension_in3',
  'clamps',
  'support_fittings',
  'terminal_blocks',
  'long_loops',
  'devices',
  'other_conductors',
] as const

/** How a box was judged, as far as it decides which keys matter. */
export interface Judged {
  readonly large: boolean
  readonly spliced: boolean
  readonly byVolume: boolean
  readonly volumeKnown: boolean
}

/** Stated keys that did nothing in this box. */
export function idleKeys(box: WiringBox, judged: Judged): string[] {
  const { large, byVolume } = judged
  const ofLarge = large ? idleInPull(box, judged.spliced) : OF_LARGE
  const ofVolume = byVolume ? idleInVolume(judged) : OF_VOLUME
  const ofBody = large || box.short_radius === true ? (['area_in2'] as const) : []
  return [...ofLarge, ...ofVolume, ...ofBody].filter((key) => box[key] !== undefined)
}

function idleInPull(box: WiringBox, spliced: boolean): (typeof OF_LARGE)[number][] {
  if (box.marked_for_conductors === true) return OF_LARGE.filter((key) => key !== 'marked_for_conductors')
  if (box.pull !== 'straight') return []
  return spliced ? ['entry_distance_in'] : ['entry_distance_in', 'other_trade_sizes']
}

function idleInVolume({ spliced, volumeKnown }: Judged): (typeof OF_VOLUME)[number][] {
  return [...(spliced ? (['long_loops'] as const) : []), ...(volumeKnown ? [] : (['extension_in3'] as const))]
}
