import { expect, test } from 'vitest'
import { parseYamlOnce } from '../../src/project/parse-yaml-once.js'
import { findValue } from '../../src/project/yaml-file.js'

test('the same text gives data of its own each time, and the same places', () => {
  const text = 'a:\n  b: [1, 2]\n'
  const first = parseYamlOnce('once.yaml', text)
  const second = parseYamlOnce('once.yaml', text)
  expect(second.data).toEqual(first.data)
  ;(first.data as { a: { b: number[] } }).a.b.push(3)
  expect(second.data).toEqual({ a: { b: [1, 2] } })
  expect(parseYamlOnce('once.yaml', text).data).toEqual({ a: { b: [1, 2] } })
  expect(findValue(second, ['a', 'b'])).toEqual(findValue(first, ['a', 'b']))
})

test('another text under the same name is read anew, also after one that is broken', () => {
  expect(parseYamlOnce('other.yaml', 'a: 1\n').data).toEqual({ a: 1 })
  expect(parseYamlOnce('other.yaml', 'a: [\n').problems).not.toHaveLength(0)
  expect(parseYamlOnce('other.yaml', 'a: 2\n').data).toEqual({ a: 2 })
})

test('more files than are kept are all read right', () => {
  for (let round = 0; round < 2; round++) {
    for (let i = 0; i < 20; i++) expect(parseYamlOnce(`file-${i}.yaml`, `a: ${i}\n`).data).toEqual({ a: i })
  }
})
