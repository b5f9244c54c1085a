import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { LayoutValue } from '../../src/house/index.js'
import { ensureBuilt, gablewattWarm, ROOT } from './binary.js'

const folder = mkdtempSync(join(tmpdir(), 'space-mounts-'))
const house = join(folder, 'house.yaml')
const example = (name: string): string => readFileSync(join(ROOT, 'examples/fleet', name), 'utf8')

beforeAll(() => {
  ensureBuilt()
  // As many modules as the roof takes, clamped on either side.
  writeFileSync(house, example('springfield-whole-job.yaml').replace(/^ {4}modules: 12\n/mu, ''))
  const zone = 'clamp_zone_from_corner_in: [10, 20]'
  writeFileSync(
    join(folder, 'equipment.yaml'),
    example('equipment.yaml').replaceAll(zone, `${zone}\n    clamp_zone_short_side_in: [4, 10]`),
  )
})
afterAll(() => rmSync(folder, { recursive: true }))

const layoutsOf = async (...more: string[]): Promise<readonly LayoutValue[]> => {
  const { stdout } = await gablewattWarm(['space-mounts', house, '--json', ...more])
  return (JSON.parse(stdout) as { values: { alternatives: readonly LayoutValue[] } }).values.alternatives
}

describe('space-mounts --rank', () => {
  test('chooses by energy when it is left out, by mounts when wished, without asking for what only the other holds', async () => {
    const [energy, mounts] = [await layoutsOf(), await layoutsOf('--rank', 'mounts')]
    expect(energy.map(({ chosen }) => chosen)).toEqual([true, ...energy.slice(1).map(() => false)])
    expect(energy[0]?.modules).toBeGreaterThan(mounts[0]?.modules ?? Infinity)
    expect(await layoutsOf('--rank', 'energy')).toEqual(energy)
    const { stderr } = await gablewattWarm(['space-mounts', house, '--rank', 'mounts'])
    expect(stderr).not.toContain('roof.fit-too-few')
  })

  test('shows the layouts beside each other with their cost, or that they are not priced', async () => {
    const { stdout } = await gablewattWarm(['space-mounts', house])
    expect(stdout).toMatch(/main \(chosen\) +mixed +\d+ +100 .*not priced/u)
    expect(stdout).toMatch(/main +portrait +\d+ +\d\d .*not priced/u)
  })

  test('takes no other word', async () => {
    const { exitCode, stderr } = await gablewattWarm(['space-mounts', house, '--rank', 'beauty'])
    expect(exitCode).toBe(2)
    expect(stderr).toContain('energy, mounts, cost')
  })
})
