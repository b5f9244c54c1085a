import * as fc from '../fast-check.js'
import { describe, expect, it } from 'vitest'
import { sizeWire } from '../../src/electrical/index.js'
import { context } from './demo.js'
import { randomTree } from './random-tree.js'
import type { NodeValues } from './small-tree.js'
import { nextRatingA } from './tree-evaluator.js'
import { sourcesThrough, wayOf, type Tree, type TreePanel, type TreeSource, type TreeTap } from './tree-model.js'
import { projectOf } from './tree-project.js'

type Nodes = ReadonlyMap<string, NodeValues>

const nodesOf = (tree: Tree): Nodes =>
  new Map(sizeWire(projectOf(tree), context(30, 0)).values.distribution.map((node) => [node.id, node]))

/** Nodes that failed and now comply. */
const improved = (before: Nodes, after: Nodes): string[] =>
  [...before.values()].filter(({ id, complies }) => !complies && after.get(id)?.complies === true).map(({ id }) => id)

/** Nodes whose rules or facts differ. */
const changed = (before: Nodes, after: Nodes): string[] =>
  [...before.values()].filter((node) => JSON.stringify(node) !== JSON.stringify(after.get(node.id))).map(({ id }) => id)

/** A number that chooses one of a list whose length is not known yet. */
const which = fc.nat({ max: 999 })

const pick = <T>(list: readonly T[], number: number): T | undefined => list[number % list.length]

const swap = <T extends { readonly id: string }>(list: readonly T[], id: string, change: (one: T) => T): readonly T[] =>
  list.map((one) => (one.id === id ? change(one) : one))

const stronger = (source: TreeSource, byA: number): TreeSource => {
  const deviceA = Math.max(source.deviceA, nextRatingA(1.25 * (source.currentA + byA)))
  return { ...source, currentA: source.currentA + byA, deviceA, firstDevicesA: [deviceA] }
}

const SIZES = ['8', '6', '4', '3', '2', '1', '1/0', '2/0'] as const

const smaller = (size: string): string => SIZES[Math.max(0, SIZES.findIndex((each) => each === size) - 1)] ?? '8'

/** What makes an installation worse, by a random number. */
const WORSE: readonly (readonly [string, (tree: Tree, number: number) => Tree])[] = [
  [
    'more current from a source',
    (tree, number) => {
      const source = pick(
        tree.sources.filter(({ id }) => id !== 'pv'),
        number,
      )
      if (source === undefined) return tree
      return { ...tree, sources: swap(tree.sources, source.id, (one) => stronger(one, 1 + (number % 40))) }
    },
  ],

  [
    'a source more',
    (tree, number) => {
      const on = pick([...tree.panels, ...tree.taps], number)?.id ?? 'main'
      const more: TreeSource = {
        id: 'more',
        kind: 'storage',
        on,
        currentA: 12,
        deviceA: 15,
        firstDevicesA: [15],
        atOppositeEnd: number % 2 === 0,
        parallel: number % 3 > 0,
      }
      return { ...tree, sources: [...tree.sources, more] }
    },
  ],

  [
    'a smaller busbar',
    (tree, number) => {
      const id = pick(tree.panels, number)?.id ?? 'main'
      return { ...tree, panels: swap(tree.panels, id, (panel) => ({ ...panel, busA: panel.busA - 5 - (number % 60) })) }
    },
  ],

  [
    'hotter air round feeders and taps',
    (tree, number) => {
      const hotter = <T extends { readonly ambientC: number }>(one: T): T => ({ ...one, ambientC: 31 + (number % 30) })
      return { ...tree, feeders: tree.feeders.map(hotter), taps: tree.taps.map(hotter) }
    },
  ],

  [
    'smaller conductors',
    (tree, number) => {
      const thinner = <T extends { readonly size: string }>(one: T, index: number): T =>
        number % 3 === index % 3 ? { ...one, size: smaller(one.size) } : one
      return { ...tree, feeders: tree.feeders.map(thinner), taps: tree.taps.map(thinner) }
    },
  ],

  [
    'longer taps, and taps that end in more devices',
    (tree, number) => {
      const worse = (tap: TreeTap): TreeTap =>
        number % 2 === 0
          ? { ...tap, lengthFt: tap.lengthFt + (number % 30) }
          : { ...tap, endDevices: tap.endDevices + (tap.endDeviceA === undefined ? 0 : 1) }
      return { ...tree, taps: tree.taps.map(worse) }
    },
  ],

  [
    'more load',
    (tree, number) => {
      const loaded = <T extends { readonly loadA: number | undefined }>(one: T): T => ({
        ...one,
        loadA: (one.loadA ?? 0) + (number % 50),
      })
      return { ...tree, panels: tree.panels.map(loaded), taps: tree.taps.map(loaded) }
    },
  ],

  [
    'a power control system without proof, or with a higher setting',
    ({ control, ...tree }, number) => {
      if (control === undefined) return { ...tree, control }
      const worse =
        number % 3 === 0
          ? { documented: false }
          : number % 3 === 1
            ? { locked: false }
            : { settingA: control.settingA + (number % 70) }
      return { ...tree, control: { ...control, ...worse } }
    },
  ],
]

describe('what makes it worse never turns a failure into a pass', () => {
  it.each(WORSE)('%s', (_, change) => {
    fc.assert(
      fc.property(randomTree, which, (tree, number) => {
        expect(improved(nodesOf(tree), nodesOf(change(tree, number)))).toEqual([])
      }),
      { numRuns: 60 },
    )
  })
})

describe('a larger main', () => {
  it('never makes a way of its busbar hold', () => {
    fc.assert(
      fc.property(randomTree, which, (tree, number) => {
        const panel = pick(
          tree.panels.filter(({ mainA }) => mainA !== undefined),
          number,
        )
        if (panel?.mainA === undefined) return
        const larger = (one: TreePanel): TreePanel => ({ ...one, mainA: (one.mainA ?? 0) + 5 + (number % 50) })
        const waysOf = (of: Tree) =>
          nodesOf(of)
            .get(panel.id)
            ?.rules.filter(({ needed, rule, holds }) => needed === 'one_of' && rule !== 'power control system' && holds)
            .map(({ rule }) => rule) ?? []
        const before = new Set(waysOf(tree))
        expect(waysOf({ ...tree, panels: swap(tree.panels, panel.id, larger) }).filter((r) => !before.has(r))).toEqual(
          [],
        )
      }),
      { numRuns: 80 },
    )
  })
})

describe('the PV system one panel deeper', () => {
  it('changes nothing above the panel that it left, and leaves the sum of currents there as it was', () => {
    let seen = 0
    fc.assert(
      fc.property(randomTree, (tree) => {
        const pv = tree.sources.find(({ id }) => id === 'pv')
        const down = tree.feeders.find(({ from, to }) => from === pv?.on && to !== 'shed')
        if (pv === undefined || down === undefined) return
        seen += 1
        const before = nodesOf(tree)
        const after = nodesOf({ ...tree, sources: swap(tree.sources, 'pv', (one) => ({ ...one, on: down.to })) })
        const above = new Set([...wayOf(tree, pv), 'service'].filter((id) => id !== pv.on))
        expect(changed(before, after).filter((id) => above.has(id))).toEqual([])
        const sum = (nodes: Nodes) =>
          nodes.get(pv.on)?.rules.find(({ rule }) => rule.startsWith('100 percent'))?.sum_a ?? Number.NaN
        expect(sum(after)).toBeCloseTo(sum(before), 9)
        expect(after.get(pv.on)?.inverter_a).toBeCloseTo(before.get(pv.on)?.inverter_a ?? 0, 9)
      }),
      { numRuns: 80 },
    )
    expect(seen).toBeGreaterThan(15)
  })
})

describe('what lies off the way of every source', () => {
  it('changes only its own rules', () => {
    let seen = 0
    fc.assert(
      fc.property(randomTree, (tree) => {
        const idle = [...tree.panels, ...tree.feeders].filter(({ id }) => sourcesThrough(tree, id).length === 0)
        const nodes = nodesOf(tree)
        for (const { id } of idle) {
          seen += 1
          const after = nodesOf({
            ...tree,
            panels: swap(tree.panels, id, (panel) => ({ ...panel, busA: panel.busA + 25, breakersA: [20] })),
            feeders: swap(tree.feeders, id, (feeder) => ({ ...feeder, size: '4/0' })),
          })
          expect(changed(nodes, after)).toEqual([id])
        }
      }),
      { numRuns: 40 },
    )
    expect(seen).toBeGreaterThan(20)
  })

  it('load taps change only themselves', () => {
    fc.assert(
      fc.property(randomTree, (tree) => {
        const idle = tree.taps.filter(({ id }) => !tree.sources.some(({ on }) => on === id))
        for (const { id } of idle) {
          const after = nodesOf({ ...tree, taps: swap(tree.taps, id, (tap) => ({ ...tap, size: '2/0', lengthFt: 7 })) })
          expect(changed(nodesOf(tree), after)).toEqual([id])
        }
      }),
      { numRuns: 40 },
    )
  })
})
