import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { runHouse, type HouseInput } from '../../src/house/index.js'
import { loadProject, type Project } from '../../src/project/index.js'
import { spaceMounts } from '../../src/structure/index.js'

/** An example of the fleet whose modules may be clamped on both sides, with as many modules as its roof takes. */
function house(change: (project: Project) => void = () => undefined): HouseInput {
  const path = new URL('../../examples/fleet/springfield-whole-job.yaml', import.meta.url).pathname
  const { project } = loadProject({ path })
  const copy = structuredClone(project)
  Object.assign(copy.equipment.modules?.['m410'] ?? {}, { clamp_zone_short_side_in: [4, 10] })
  delete copy.arrays['main']?.modules
  change(copy)
  return { project: copy }
}

describe('layouts of a fitted array', () => {
  test('stand beside the chosen one with the mounts that each really gets', async () => {
    const input = house()
    const stages = runHouse(input)
    const layouts = await stages.layouts()
    const [chosen, ...others] = layouts
    const { values } = await stages.mounts()
    expect(others.length).toBeGreaterThan(0)
    expect(others.length).toBeLessThanOrEqual(3)
    expect(chosen).toMatchObject({
      chosen: true,
      modules: values.counts.modules,
      mounts: values.counts.mounts,
      rails: values.counts.rails,
      energy_pct: 100,
      cost_usd: null,
      refused: null,
    })
    for (const other of others) expect(other.energy_pct).toBeLessThanOrEqual(100)
    const { values: roof } = await stages.roof()
    const [next] = roof.alternatives?.['main'] ?? []
    const mounts = spaceMounts(input.project, { planes: Object.values(roof.planes), modules: next?.modules ?? [] })
    expect(others.map((other) => other.mounts)).toContain(mounts.values.counts.mounts)
  })

  test('are ranked as wished or as the project says', async () => {
    const first = async (rank: 'energy' | 'mounts' | 'cost') =>
      (await runHouse(house(), { wishes: { rank } }).layouts())[0]
    const [energy, mounts] = [await first('energy'), await first('mounts')]
    expect(energy?.modules).toBeGreaterThan(mounts?.modules ?? Infinity)
    const perModule = (one: typeof energy): number => (one?.mounts ?? Infinity) / (one?.modules ?? 1)
    expect(perModule(mounts)).toBeLessThan(perModule(energy))
    const stated = house((project) => {
      Object.assign(project.arrays['main'] ?? {}, { arrangement: { fit: { orientation: 'either', rank: 'mounts' } } })
    })
    expect((await runHouse(stated).layouts())[0]).toEqual(mounts)
  })

  test('of a stated number never give fewer for the sake of mounts', async () => {
    const input = house((project) => Object.assign(project.arrays['main'] ?? {}, { modules: 20 }))
    const [chosen] = await runHouse(input, { wishes: { rank: 'mounts' } }).layouts()
    expect(chosen?.modules).toBe(20)
  })

  test('have the cost of their goods where a price list has all of them', async () => {
    const text = readFileSync(new URL('../../examples/prices.yaml', import.meta.url), 'utf8')
    const input = house((project) => Object.assign(project, { materials: { price_list: 'prices.yaml' } }))
    const layouts = await runHouse({ ...input, files: new Map([['prices.yaml', text]]) }).layouts()
    expect(layouts.length).toBeGreaterThan(1)
    for (const { cost_usd: cost, modules } of layouts) expect(cost).toBeGreaterThan(148 * modules)
    const costs = new Set(layouts.map((layout) => layout.cost_usd))
    expect(costs.size).toBe(layouts.length)
  })

  test('are none where modules lie in blocks', async () => {
    const input = house((project) => {
      const main = { orientation: 'portrait', rows: 2, columns: 6, x_ft: 4, y_ft: 2 } as const
      Object.assign(project.arrays['main'] ?? {}, { arrangement: { blocks: { main } } })
    })
    expect(await runHouse(input).layouts()).toEqual([])
  })
})
