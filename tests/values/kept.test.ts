import { describe, expect, test } from 'vitest'
import { Kept, sortReals, RandomSource } from '../../src/values/index.js'

describe('values that are kept', () => {
  test('are made once, and anew when others were asked for since', () => {
    const kept = new Kept<string>(2)
    const made: string[] = []
    const ask = (text: string) => kept.of(text, () => (made.push(text), text.toUpperCase()))
    expect(['a', 'b', 'a', 'c', 'a', 'b'].map(ask)).toEqual(['A', 'B', 'A', 'C', 'A', 'B'])
    expect(made).toEqual(['a', 'b', 'c', 'b'])
  })

  test('what fails is tried again', () => {
    const kept = new Kept<number>(2)
    const fail = (): number => {
      throw new Error('no')
    }
    expect(() => kept.of('a', fail)).toThrow('no')
    expect(kept.of('a', () => 1)).toBe(1)
  })
})

// Against the engine's own sort.
describe('numbers sorted by buckets', () => {
  const source = new RandomSource(11)
  const draws = (count: number, draw: (index: number) => number) =>
    Float64Array.from({ length: count }, (_, i) => draw(i))
  test.each([
    ['of the normal law', draws(4093, () => source.normal())],
    ['with some that are never paid back', draws(2000, (i) => (i % 37 === 0 ? Infinity : 10 + source.normal()))],
    ['most of them never paid back', draws(2000, (i) => (i % 3 === 0 ? source.normal() : Infinity))],
    ['with one far out', draws(2000, (i) => (i === 7 ? 1e300 : source.normal()))],
    ['all alike', draws(500, () => 3)],
    ['with equal ones', draws(1000, (i) => (i * 7) % 500)],
    ['few', draws(5, () => source.normal())],
    ['below all numbers and none', draws(200, (i) => [-Infinity, Number.NaN, 1][i % 3] ?? 0)],
    ['none', new Float64Array(0)],
  ])('%s', (_name, reals) => {
    expect(sortReals(reals.slice())).toEqual(reals.slice().sort())
  })
})
