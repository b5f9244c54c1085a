import { describe, expect, test } from 'vitest'
import { findRoot } from '../../src/values/index.js'

function counted(f: (x: number) => number): { f: (x: number) => number; calls: () => number } {
  let calls = 0
  return { f: (x) => ((calls += 1), f(x)), calls: () => calls }
}

describe('findRoot', () => {
  test.each<[string, (x: number) => number, number, number, number]>([
    ['a line', (x) => 3 * x - 1, -5, 8, 1 / 3],
    ['a power that keeps one end for long', (x) => x ** 9 - 0.5, 0, 4, 0.5 ** (1 / 9)],
    ['a falling curve', (x) => Math.exp(-x) - 0.2, 0, 40, Math.log(5)],
    ['a jump', (x) => (x < 2.5 ? -1 : 4), 0, 10, 2.5],
    ['a search from high to low', (x) => x - 1, 9, -9, 1],
    ['a root at an end', (x) => x, 0, 5, 0],
  ])('finds that of %s in fewer than 100 steps', (_, of, low, high, root) => {
    const { f, calls } = counted(of)
    expect(findRoot(f, low, high, 1e-9)).toBeCloseTo(root, 8)
    expect(calls()).toBeLessThan(100)
  })

  test('takes fewer steps than halving, which takes 43, for a smooth function', () => {
    const { f, calls } = counted((rate) => 100 / (1 + rate) ** 10 - 40)
    expect(findRoot(f, -0.5, 5, 1e-12)).toBeCloseTo(2.5 ** 0.1 - 1, 11)
    expect(calls()).toBeLessThan(30)
  })

  test('is undefined where both ends have the same sign', () => {
    expect(findRoot((x) => x * x + 1, -1, 1, 1e-9)).toBeUndefined()
  })
})
