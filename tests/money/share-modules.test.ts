import * as fc from '../fast-check.js'
import { describe, expect, it } from 'vitest'
import { shareModules, type ModuleLot } from '../../src/money/house/share-modules.js'

const lot = fc
  .record({
    kwh: fc.array(fc.integer({ min: 100, max: 900 }), { minLength: 1, maxLength: 5 }),
    own: fc.nat(5),
    refused: fc.option(fc.integer({ min: 1, max: 4 }), { nil: undefined }),
  })
  .map(({ kwh, own: asked, refused }): ModuleLot => {
    const own = Math.min(asked, kwh.length)
    // Own modules first, each part best first, as the stage gives them.
    const sorted = [...kwh.slice(0, own).toSorted((a, b) => b - a), ...kwh.slice(own).toSorted((a, b) => b - a)]
    const kwhOfFirst = [0]
    for (const each of sorted) kwhOfFirst.push((kwhOfFirst.at(-1) ?? 0) + each)
    return { arrayId: 'a', own, kwhOfFirst, takes: (modules) => modules !== refused }
  })

/** Every way to take modules, tried. */
function everyShare(lots: readonly ModuleLot[]): number[][] {
  return lots.reduce<number[][]>(
    (shares, one) => shares.flatMap((share) => one.kwhOfFirst.map((_, count) => [...share, count])),
    [[]],
  )
}

describe('sharing modules over arrays', () => {
  it('finds the best of all ways, and leaves out only what no way reaches', () => {
    fc.assert(
      fc.property(fc.array(lot, { minLength: 1, maxLength: 3 }), (lots) => {
        const own = lots.reduce((sum, one) => sum + one.own, 0)
        const kwhOf = (share: readonly number[]): number =>
          share.reduce((sum, count, i) => sum + (lots[i]?.kwhOfFirst[count] ?? 0), 0)
        const sizeOf = (share: readonly number[]): number => share.reduce((sum, count) => sum + count, 0)
        const allowed = everyShare(lots).filter((share) =>
          share.every((count, i) => {
            const one = lots[i] as ModuleLot
            const side = sizeOf(share) < own ? count <= one.own : count >= one.own
            return side && (count === one.own || one.takes(count))
          }),
        )
        const found = shareModules(lots)
        const most = lots.reduce((sum, one) => sum + one.kwhOfFirst.length - 1, 0)
        for (let size = 1; size <= most; size += 1) {
          const all = allowed.filter((share) => sizeOf(share) === size)
          const share = found.get(size)
          if (all.length === 0) expect(share).toBeUndefined()
          else expect(kwhOf(share ?? [])).toBe(Math.max(...all.map(kwhOf)))
        }
        if (own > 0) expect(found.get(own)).toEqual(lots.map((one) => one.own))
      }),
      { numRuns: 200 },
    )
  })
})
