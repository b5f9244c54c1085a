import { describe, expect, test } from 'vitest'
import { priceBom } from '../../src/materials/index.js'
import { billOf, house, inputOf, lineOf } from './demo.js'

test('x', () => {
  const { values } = billOf(house(6))
  console.log(values.lines.map((l) => `${l.item} ${l.quantity} ${l.unit} | ${l.why}`).join('\n'))
  console.log(JSON.stringify(inputOf(house(6)).mounts?.values.rails))
})
