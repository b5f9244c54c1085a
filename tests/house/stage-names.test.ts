import { readdirSync, readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { FLEET_STAGES } from '../../src/fleet/index.js'
import { CHECK_STAGES, runHouse } from '../../src/house/index.js'
import { loadProject } from '../../src/project/index.js'

const house = runHouse(
  loadProject({ path: new URL('../../examples/lark-hollow.yaml', import.meta.url).pathname }),
) as unknown as Readonly<Record<string, unknown>>
const isStage = (name: string): boolean => typeof house[name] === 'function'

const COMMANDS = new URL('../../src/cli/commands/', import.meta.url)
/** Stages of reports as the subcommands write them. */
const reported = readdirSync(COMMANDS)
  .filter((file) => file.endsWith('.ts'))
  .flatMap((file) => [...readFileSync(new URL(file, COMMANDS), 'utf8').matchAll(/\bstage: '([a-z-]+)'/gu)])
  .map(([, name = '']) => name)
/** What is no stage of a house: about one without a project, about all of its stages, about two editions at once, or papers made of stages. */
const OTHERS = new Set([
  'sites',
  'explain',
  'check',
  'wire-comparison',
  'form',
  'form-fields',
  'equipment',
  'proposal',
  'application',
  'handover',
  'equipment',
  'verify',
  'rate',
  'check-bill',
  'parts',
  'watch',
])

describe('a stage has one name', () => {
  test('in a check', () => {
    expect(CHECK_STAGES.map(({ name }) => name).filter((name) => !isStage(name))).toEqual([])
  })

  test('in a fleet', () => {
    expect(FLEET_STAGES.map(({ name }) => name).filter((name) => !isStage(name))).toEqual([])
  })

  test('in JSON', () => {
    expect(new Set(reported).size).toBeGreaterThan(10)
    expect(reported.filter((name) => !OTHERS.has(name) && !isStage(name))).toEqual([])
  })
})
