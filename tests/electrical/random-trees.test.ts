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

/** Every node with its verdict and, of busbars, the ways that hold. */
function byProgram(tree: Tree): Record<string, string> {
  const { distribution } = sizeWire(projectOf(tree), context(30, 0)).values
  return Object.fromEntries(
    distribution
      .filter(({ kind }) => kind === 'panel' || kind === 'feeder' || kind === 'tap')
      .map(({ id, kind, complies, rules }) => [
        id,
        line(
          complies,
          rules
            .filter(({ holds }) => kind === 'panel' && holds)
            .map(({ rule }) => WAYS[rule])
            .filter((way) => way !== undefined),
        ),
      ]),
  )
}

const byHand = (tree: Tree): Record<string, string> =>
  Object.fromEntries(
    [...judgeByHand(tree).values()].map(({ id, complies, ways }) => [
      id,
      line(
        complies,
        ways.filter(({ holds }) => holds).map(({ way }) => way),
      ),
    ]),
  )

const line = (complies: boolean, ways: readonly Way['way'][]): string =>
  [complies ? 'complies' : 'fails', ...ways.toSorted()].join(', ')

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
