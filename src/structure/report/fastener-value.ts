import type { FastenerValue } from '../model/index.js'
import type { RailKit } from '../planes/index.js'

/** What fixes one mount of this kind, for lists and sheets. */
export function fastenerOf({ mount }: RailKit, mounts: number): FastenerValue {
  const { kind, lag, structural_screw: screw, seam_clamp: clamp, deck } = mount.product
  const value = (name: string, into: FastenerValue['into'], each: number): FastenerValue => ({
    name,
    into,
    each,
    count: mounts * each,
  })
  if (kind === 'standing_seam_clamp') return value('setscrew of the seam clamp', 'seam', clamp?.setscrews ?? 1)
  if (kind === 'deck') return value(`wood screw ${deck?.screw_size ?? 'of the sheet'}`, 'sheathing', deck?.screws ?? 1)
  if (screw !== undefined) {
    const size = `${screw.diameter_in ?? '?'} x ${screw.length_in ?? '?'} in`
    return value(`${screw.name ?? 'structural screw'} ${size}`, 'rafter', screw.count ?? 1)
  }
  return value(
    lag === undefined ? 'lag screw' : `lag screw ${lag.size} x ${lag.length_in} in`,
    'rafter',
    lag?.count ?? 1,
  )
}
