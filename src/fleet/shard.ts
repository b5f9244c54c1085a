import { FleetError } from './fleet-error.js'

/** One of several equal parts of a fleet. */
export interface Shard {
  /** Counted from 1. */
  readonly part: number
  readonly of: number
}

/**
 * Reads `2/8`.
 *
 * @throws FleetError when it is no such thing.
 */
export function readShard(text: string): Shard {
  const found = /^(\d{1,6})\/(\d{1,6})$/u.exec(text.trim())
  const [part, of] = [Number(found?.[1]), Number(found?.[2])]
  if (found === null || part < 1 || part > of) {
    throw new FleetError(`--shard ${text}: write part/parts with the first part 1, such as 2/8`, 2)
  }
  return { part, of }
}

/**
 * The part of a fleet that a shard works out: parts follow each other, so that their outputs joined in order are the
 * output of the whole, and their sizes differ by one at most.
 *
 * @param count Number of projects in the whole fleet.
 * @returns First project and the one after the last, counted from 0.
 */
export function shardRange(count: number, { part, of }: Shard): { readonly from: number; readonly to: number } {
  return { from: Math.floor(((part - 1) * count) / of), to: Math.floor((part * count) / of) }
}
