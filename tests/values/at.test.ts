import { describe, expect, it } from 'vitest'
import { at } from '../../src/values/index.js'

describe('at', () => {
  it('gives the element, 0 and empty text too', () => {
    expect(at([3, 0], 1)).toBe(0)
    expect(at(['a', ''], 1)).toBe('')
    expect(at(Float64Array.of(1.5, 2.5), 0)).toBe(1.5)
  })

  it('is a defect past either end, between two places, and at a hole', () => {
    expect(() => at([1, 2], 2)).toThrow('there is no element 2 among 2')
    expect(() => at([1, 2], -1)).toThrow(RangeError)
    expect(() => at([1, 2], 0.5)).toThrow(RangeError)
    expect(() => at([1, undefined], 1)).toThrow(RangeError)
    expect(() => at(Float64Array.of(), 0)).toThrow('among 0')
  })
})
