import { describe, expect, test } from 'vitest'
import { runHouse, type HouseInput } from '../../src/house/index.js'
import { loadProject } from '../../src/project/index.js'
import { countFitted } from '../../src/roof/index.js'
import { StageError } from '../../src/worksheet/index.js'
import { estimateYield, runYield } from '../../src/yield/index.js'

const example = (name: string): HouseInput => {
  const loaded = loadProject({ path: new URL(`../../examples/${name}.yaml`, import.meta.url).pathname })
  return { ...loaded, project: countFitted(loaded.project) }
}
const lark = example('lark-hollow')

/** The house with a count of its energy estimates. */
function counted(input: HouseInput, options: Parameters<typeof runHouse>[1] = {}) {
  const counts = { estimates: 0 }
  const house = runHouse(input, {
    ...options,
    runYield: (project, files) => {
      counts.estimates += 1
      return runYield(project, files)
    },
  })
  return { house, counts }
}

describe('the stages of a house', () => {
  test('nothing is worked out before it is asked for, and the estimate once for all that need it', async () => {
    const { house, counts } = counted(lark)
    expect(counts.estimates).toBe(0)
    await house.wire()
    expect(counts.estimates).toBe(0)
    await Promise.all([house.yield(), house.payback(), house.work(), house.bill(), house.size()])
    await house.payback()
    expect(counts.estimates).toBe(1)
    expect((await house.yield()).values).toEqual(estimateYield(lark.project, lark.files ?? new Map()).values)
  })

  test('a stage that is asked for twice is the same result', async () => {
    const house = runHouse(lark)
    const stages = [
      'roof',
      'estimate',
      'yield',
      'wire',
      'ownMounts',
      'mounts',
      'labels',
      'prices',
      'takeOff',
      'bom',
      'bill',
      'payback',
      'size',
      'permit',
      'work',
    ] as const
    for (const stage of stages) expect(await house[stage](), stage).toBe(await house[stage]())
  })

  test('the bill is taken from the very results of mounts and wiring that the house tells', async () => {
    const house = runHouse(lark)
    const { mounts, wire: wiring, arrangement } = await house.takeOff()
    expect(mounts).toBe(await house.mounts())
    expect(wiring).toBe(await house.wire())
    expect(arrangement).toBe(await house.roof())
  })

  test('mounts are told with the proof of the arrangement first', async () => {
    const house = runHouse(lark)
    const [arrangement, own, mounts] = [await house.roof(), await house.ownMounts(), await house.mounts()]
    expect(mounts.values).toBe(own.values)
    const ids = [...new Set([...arrangement.worksheet, ...own.worksheet].map(({ id }) => id))]
    expect(mounts.worksheet.map(({ id }) => id)).toEqual(ids)
  })
})

describe('earlier results and wishes', () => {
  test('an earlier result stands in for its stage in all that build on it', async () => {
    const before = runHouse(lark)
    const earlier = { yield: await before.yield(), wire: await before.wire(), mounts: await before.mounts() }
    const { house, counts } = counted(lark, { earlier })
    expect(await house.yield()).toBe(earlier.yield)
    expect(await house.wire()).toBe(earlier.wire)
    expect((await house.takeOff()).mounts).toBe(earlier.mounts)
    const packet = await house.packet({ size: '11x17', documents: [] })
    expect(packet).toMatchObject({ mounts: earlier.mounts, wire: earlier.wire })
    expect((await house.bom()).values).toEqual((await before.bom()).values)
    expect(counts.estimates).toBe(0)
  })

  test('a wish for a stage wins over its earlier result', async () => {
    const before = runHouse(lark)
    const earlier = { wire: await before.wire(), mounts: await before.mounts() }
    const house = runHouse(lark, { earlier, wishes: { edition: 'NEC 2014', mounts: { optimise: true } } })
    expect((await house.wire()).values.edition).toBe('NEC 2014')
    expect(await house.mounts()).not.toBe(earlier.mounts)
  })

  test('an earlier bill is the price where none is stated, and gives way with a note where one is', async () => {
    const earlier = { bom: await runHouse(lark).bom() }
    const { gross_usd: grossUsd } = earlier.bom.values.totals
    const { installed_cost_usd: stated, ...finance } = lark.project.finance ?? {}
    const unpriced = { ...lark, project: { ...lark.project, finance } }
    const paid = await runHouse(unpriced, { earlier }).payback()
    expect(paid.values.gross_cost_usd).toBe(grossUsd)
    expect((await runHouse(unpriced, { wishes: { payTheBom: true } }).payback()).values).toEqual(paid.values)
    const own = await runHouse(lark, { earlier }).payback()
    expect(own.values.gross_cost_usd).toBe(stated)
    expect(own.findings.map(({ id }) => id)).toContain('payback.bom-not-used')
    await expect(runHouse(unpriced).payback()).rejects.toThrow('the cost of the system is not known')
  })
})

describe('a stage that cannot run', () => {
  const { structure: _, ...rest } = lark.project
  const house = runHouse({ ...lark, project: rest })

  test('rejects with a StageError each time it is asked for', async () => {
    await expect(house.mounts()).rejects.toBeInstanceOf(StageError)
    await expect(house.mounts()).rejects.toBeInstanceOf(StageError)
  })

  test('leaves its part out of the bill, and is told by packet and work plan', async () => {
    expect((await house.takeOff()).mounts).toBeUndefined()
    const packet = await house.packet({ size: '11x17', documents: [] })
    expect(packet.mounts).toBeUndefined()
    expect(packet.findings.find(({ id }) => id === 'permit.structure-cannot-run')?.message).toBe(
      'the project has no part structure',
    )
    expect((await house.work()).values.mounts).toEqual([])
  })
})

describe('an edition that nobody read', () => {
  test.each(['wire', 'bom', 'work', 'size'] as const)('%s says so once', async (stage) => {
    const by = (electrical: 'NEC 2023' | 'NEC 2026') =>
      runHouse({ ...lark, project: { ...lark.project, codes: { ...lark.project.codes, electrical } } })
    const told = async (edition: 'NEC 2023' | 'NEC 2026') =>
      (await by(edition)[stage]()).findings.filter(({ id }) => id === 'wire.edition-secondary').length
    expect([await told('NEC 2026'), await told('NEC 2023')]).toEqual([1, 0])
  })
})
