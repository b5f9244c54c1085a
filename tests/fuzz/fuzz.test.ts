import { execa } from 'execa'
import { beforeAll, expect, test } from 'vitest'
import { ensureBuilt, ROOT } from '../cli/binary.js'

beforeAll(ensureBuilt)

const COUNT = '3000'

// Every run has the same inputs, of every kind and through every door; `npm run nightly` searches through many more.
test(`${COUNT} damaged and made-up inputs find nothing`, { timeout: 1_200_000 }, async () => {
  const args = ['--seed', '20260302', '--count', COUNT, '--jobs', '2', '--light', '--damaged-forms', '11']
  const run = await execa(process.execPath, ['tests/fuzz/run.mjs', ...args], { cwd: ROOT, reject: false, all: true })
  expect(run.all).toMatch(/^3000 inputs in /mu)
  expect(run.all).toMatch(/^11 starts with a damaged compiled form, 22 answers compared$/mu)
  // A new argument or option that names a file, and no input goes through it: it wants a kind of input.
  expect(/^doors opened: .*$/mu.exec(run.all ?? '')?.[0]).toMatch(/^doors opened: (\d+) of \1$/u)
  expect(run.all).toMatch(/^no fault$/mu)
  expect(run.all?.match(/^ {2}[a-z]\w+ +\d+ {3}by exit code/gimu)).toHaveLength(35)
  expect(run.exitCode).toBe(0)
})
