import { describe, expect, test } from 'vitest'
import { DoubtfulJson, parseJson, TooMuchJson } from '../../src/values/index.js'

describe('JSON of which two readers may think differently', () => {
  test.each([
    ['a key twice', '{"a":1,"a":2}'],
    ['a key twice, far down', '[{"b":[{"c":1,"d":{"c":1},"c":1}]}]'],
    ['a key twice, one written by its number', String.raw`{"a":1,"\u0061":1}`],
    ['a key twice that is the name of an object of the language', '{"__proto__":1,"__proto__":2}'],
    ['a number beyond all', '{"a":[1e999]}'],
    ['a number below all', '-1e400'],
  ])('%s is refused, and handed over for whoever tells of it', (_, text) => {
    let thrown: unknown
    try {
      parseJson(text)
    } catch (error) {
      thrown = error
    }
    expect(thrown).toBeInstanceOf(DoubtfulJson)
    expect((thrown as DoubtfulJson).data).toEqual(JSON.parse(text))
  })

  test.each([
    '{"a:b":":","c":{"a:b":[":",{"a:b":null}]}}',
    String.raw`{"\\":":\"","x":"\\"}`,
    '{"__proto__":{"a":1},"constructor":2}',
    '[1.7976931348623157e308,-0,12345678901234567890,5e-324]',
    '{}',
    '[{"a":1},{"a":1}]',
    '{"a":{"a":{"a":1}}}',
  ])('%s is taken', (text) => {
    expect(parseJson(text)).toEqual(JSON.parse(text))
  })
})

describe('keys of one map', () => {
  const mapOf = (keys: number): string => `{${Array.from({ length: keys }, (_, key) => `"k${key}":0`).join(',')}}`

  test('end at half a million, those of others not counted', () => {
    const [most, few] = [mapOf(499_999).slice(0, -1), mapOf(3)]
    expect(Object.keys(parseJson(`${most},"l":[${few},${few}]}`) as object)).toHaveLength(500_000)
    const beside = Array.from({ length: 200_000 }, () => few).join(',')
    expect(parseJson(`[${beside}]`)).toHaveLength(200_000)
    expect(() => parseJson(`${most},"l":${few},"m":0}`)).toThrow(TooMuchJson)
    expect(() => parseJson(`[${few},${most},"l":0,"m":0}]`)).toThrow('more than 500000 keys in one map')
  })
})
