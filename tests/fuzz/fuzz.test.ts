import { execa } from 'execa'
import { beforeAll, expect, test } from 'vitest'
import { ensureBuilt, ROOT } from '../cli/binary.js'

beforeAll(ensureBuilt)

// Every run has the same inputs; a longer search is `node tests/fuzz/run.mjs --count 200000 --binary 200`.
test('2000 damaged and made-up inputs find nothing', { timeout: 300_000 }, async () => {
  const run = await execa(
    process.execPath,
    ['tests/fuzz/run.mjs', '--seed', '20260302', '--count', '2000', '--light'],
    {
      cwd: ROOT,
      reject: false,
      all: true,
    },
  )
  expect(run.all).toMatch(/^2000 inputs in /mu)
  expect(run.all).toMatch(/^no fault$/mu)
  expect(run.exitCode).toBe(0)
})
