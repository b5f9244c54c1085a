import { execa } from 'execa'
import { beforeAll, expect, test } from 'vitest'
import { ensureBuilt, ROOT } from '../cli/binary.js'

beforeAll(ensureBuilt)

// Every run has the same inputs, a sample of every kind; `npm run nightly` searches through many more.
test('400 damaged and made-up inputs find nothing', { timeout: 300_000 }, async () => {
  const run = await execa(process.execPath, ['tests/fuzz/run.mjs', '--seed', '20260302', '--count', '400', '--light'], {
    cwd: ROOT,
    reject: false,
    all: true,
  })
  expect(run.all).toMatch(/^400 inputs in /mu)
  expect(run.all).toMatch(/^no fault$/mu)
  expect(run.all?.match(/^ {2}[a-z]\w+ +\d+ {3}by exit code/gimu)).toHaveLength(19)
  expect(run.exitCode).toBe(0)
})
