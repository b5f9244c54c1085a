import * as fc from '../fast-check.js'
import { describe, expect, it } from 'vitest'
import { sizeWire } from '../../src/electrical/index.js'
import { context } from './demo.js'
import { randomTree } from './random-tree.js'
import { judgeByHand, type Way } from './tree-evaluator.js'
import type { Tree } from './tree-model.js'
import { projectOf } from './tree-project.js'

/** Names of the ways of a busbar in results. */
const WAYS: Readonly<Record<string, Way['way']>> = {
  '100 percent': 'all',
  '100 percent of breakers': 'all',
  '120 percent': '120',
  '120 percent of breakers': '120',
  'sum of breakers': 'breaker sum',
  'centre-fed dwelling panel': 'centre-fed',
  'power control system': 'power control',
}

/** Every node with its verdict and, of busbars, each way with its sum and limit. */
function byProgram(tree: Tree): Record<string, string[]> {
  const { distribution } = sizeWire(projectOf(tree), context(30, 0)).values
  return Object.fromEntries(
    distribution
      .filter(({ kind }) => kind === 'panel' || kind === 'feeder' || kind === 'tap')
      .map(({ id, complies, rules }) => {
        const ways = rules.filter(({ rule, section }) => Object.hasOwn(WAYS, rule) && section !== 'no such rule')
        return [
          id,
          lines(
            complies,
            ways.map((r) => line(WAYS[r.rule] ?? '', r.holds, r.sum_a, r.limit_a)),
          ),
        ]
      }),
  )
}

const byHand = (tree: Tree): Record<string, string[]> =>
  Object.fromEntries(
    [...judgeByHand(tree).values()].map(({ id, complies, ways }) => [
      id,
      lines(
        complies,
        ways.map(({ way, holds, sumA, limitA }) => line(way, holds, sumA ?? null, limitA)),
      ),
    ]),
  )

const line = (way: string, holds: boolean, sumA: number | null, limitA: number | null): string =>
  `${way} ${holds ? 'holds' : 'fails'}: ${sumA === null ? 'not known' : sumA.toFixed(6)} of ${limitA?.toFixed(6) ?? '?'} A`

const lines = (complies: boolean, ways: readonly string[]): string[] => [
  complies ? 'complies' : 'fails',
  ...ways.toSorted(),
]

describe('random installations', () => {
  it('the program and the second opinion agree on every node', () => {
    fc.assert(
      fc.property(randomTree, (tree) => {
        expect(byProgram(tree)).toEqual(byHand(tree))
      }),
      { numRuns: 500 },
    )
  })
})
