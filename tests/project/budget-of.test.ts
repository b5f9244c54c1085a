import { expect, test } from 'vitest'
import { budgetOf } from '../../src/project/read-file.js'

test('under --untrusted a quarter of each size is read', () => {
  const before = process.env['GABLEWATT_UNTRUSTED']
  try {
    delete process.env['GABLEWATT_UNTRUSTED']
    expect(budgetOf(2_000_000)).toBe(2_000_000)
    process.env['GABLEWATT_UNTRUSTED'] = '1'
    expect(budgetOf(2_000_000)).toBe(500_000)
    expect(budgetOf(100_000)).toBe(25_000)
  } finally {
    if (before === undefined) delete process.env['GABLEWATT_UNTRUSTED']
    else process.env['GABLEWATT_UNTRUSTED'] = before
  }
})
