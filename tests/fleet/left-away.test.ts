import { mkdtempSync, readFileSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, expect, test } from 'vitest'
import type { FleetPlan } from '../../src/fleet/plan.js'
import { workOut } from '../../src/fleet/work-out.js'

const folder = mkdtempSync(join(tmpdir(), 'gablewatt-left-away-'))
afterAll(() => rmSync(folder, { recursive: true }))

const plan: FleetPlan = {
  stages: ['payback'],
  write: ['results'],
  outputFolder: undefined,
  force: true,
  allowOutside: true,
  showStack: false,
  tool: 'gablewatt 9.9.9',
}
const house = {
  index: 0,
  name: 'house',
  path: new URL('../../examples/fleet/springfield-whole-job.yaml', import.meta.url).pathname,
  overrides: ['finance.installed_cost_usd=15000'],
}

test('a result file holds the sensitivity table; the line of a house is the same without', async () => {
  const lineAlone = await workOut(house, plan)
  const withFiles = await workOut(house, { ...plan, outputFolder: folder })
  const { values } = JSON.parse(readFileSync(join(folder, 'house/payback.json'), 'utf8')) as {
    values: { sensitivity: readonly unknown[] }
  }
  expect(values.sensitivity.length).toBeGreaterThan(3)
  expect(lineAlone.stages).toEqual(withFiles.stages)
  expect(lineAlone.findings).toEqual(withFiles.findings)
}, 60_000)
