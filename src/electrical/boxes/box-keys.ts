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
const OF_LARGE = ['pull', 'length_in', 'other_trade_sizes', 'entry_distance_in', 'marked_for_conductors'] as const

/** Stated keys that did nothing in this box. */
export function idleKeys(box: WiringBox, large: boolean, spliced: boolean): string[] {
  if (!large) return OF_LARGE.filter((key) => box[key] !== undefined)
  const listed = box.marked_for_conductors === true
  return OF_LARGE.filter((key) => {
    if (box[key] === undefined || key === 'marked_for_conductors') return false
    if (listed) return true
    return box.pull === 'straight' && (key === 'entry_distance_in' || (key === 'other_trade_sizes' && !spliced))
  })
}
