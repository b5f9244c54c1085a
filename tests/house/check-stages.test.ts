import { describe, expect, test } from 'vitest'
import { checkHouse, runHouse } from '../../src/house/index.js'
import { loadProject } from '../../src/project/index.js'
import { countFitted } from '../../src/roof/index.js'

const path = new URL('../../examples/lark-hollow.yaml', import.meta.url).pathname
const loaded = loadProject({ path })
const whole = { ...loaded, project: countFitted(loaded.project) }

/** The stages that a check runs when the project lacks some of its parts. */
async function stagesWithout(...parts: readonly (keyof typeof whole.project)[]): Promise<readonly string[]> {
  const project = Object.fromEntries(
    Object.entries(whole.project).filter(([key]) => !parts.includes(key as keyof typeof whole.project)),
  ) as typeof whole.project
  return (await checkHouse(project, runHouse({ ...whole, project }))).values.stages_run
}

describe('the stages of a check', () => {
  test('a whole project has all of them, in the order of the job', async () => {
    expect(await stagesWithout()).toEqual(['roof', 'yield', 'wire', 'mounts', 'payback', 'permit'])
  })

  test.each([
    ['electrical', ['roof', 'yield', 'mounts', 'payback']],
    ['structure', ['roof', 'yield', 'wire', 'payback']],
    ['tariff', ['roof', 'yield', 'wire', 'mounts', 'permit']],
    ['usage', ['roof', 'yield', 'wire', 'mounts', 'permit']],
  ] as const)('without %s only those that have their parts', async (part, stages) => {
    expect(await stagesWithout(part)).toEqual(stages)
  })

  test('without tariff and usage the bills are not asked for', async () => {
    expect(await stagesWithout('tariff', 'usage')).toEqual(['roof', 'yield', 'wire', 'mounts', 'permit'])
  })
})
