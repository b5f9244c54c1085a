import { describe, expect, it } from 'vitest'
import { branchesAtSize, connectionAtSize, sizeWire, wiringContext } from '../../src/electrical/index.js'
import { sizesOfProject } from '../../src/money/index.js'
import { loadProject, type Project } from '../../src/project/index.js'
import { editions } from '../../src/tables/nec/index.js'

const LARK = new URL('../../examples/lark-hollow.yaml', import.meta.url).pathname

function lark(overrides: string[] = [], withBranches = true) {
  const { project, files } = loadProject({ path: LARK, overrides })
  const { branches: _, ...electrical } = project.electrical ?? {}
  return { project: withBranches ? project : { ...project, electrical }, files }
}

/** The project with other numbers of modules, as a person would write it. */
function written(project: Project, modules: Readonly<Record<string, number>>): Project {
  const arrays = Object.entries(project.arrays).flatMap(([id, placed]) => {
    const { arrangement: _, ...array } = placed
    return (modules[id] ?? 0) > 0 ? [[id, { ...array, modules: modules[id] ?? 0 }] as const] : []
  })
  return { ...project, arrays: Object.fromEntries(arrays) }
}

const wired = (project: Project) => sizeWire(project, wiringContext(project).wiring)

describe('choose-size counts and judges as the wiring stage does', () => {
  it.each([
    ['by the inverter', []],
    ['by a trunk cable for four', ['equipment.trunk_cables.trunk12.max_inverters=4']],
    ['by the ampacity of the trunk', ['equipment.trunk_cables.trunk12.ampacity_a=8']],
    ['by the breaker of the trunk', ['equipment.trunk_cables.trunk12.max_ocpd_a=15']],
  ])('branches limited %s', (_, overrides) => {
    const { project } = lark([...overrides], false)
    for (const [south, west] of [
      [14, 6],
      [9, 1],
      [4, 0],
      [13, 7],
    ] as const) {
      const circuits = wired(written(project, { south, west })).values.circuits
      const branches = circuits.filter(({ kind }) => kind === 'ac_branch').length
      expect(branchesAtSize(project, { south, west })).toBe(branches)
    }
  })

  it('a trunk cable for four inverters makes six branches, and they are paid', () => {
    const size = (overrides: string[], withBranches = false) => {
      const { project, files } = lark(overrides, withBranches)
      const { sizes, cost_fixed_usd: fixed, cost_usd_per_module: each } = sizesOfProject(project, files).values
      return { row: sizes.find(({ modules }) => modules === 20), base: fixed + 20 * each - Math.min(1500, 0.2 * 8200) }
    }
    // 14 modules make four branches of at most four, 6 make two; each after the first costs 350 USD.
    const four = ['equipment.trunk_cables.trunk12.max_inverters=4']
    for (const { row, base } of [size(four), size(four, true)]) {
      expect(row?.branches).toBe(6)
      expect(row?.net_cost_usd).toBeCloseTo(base + 5 * 350, 6)
    }
    const { row, base } = size([])
    expect(row?.branches).toBe(3)
    expect(row?.net_cost_usd).toBeCloseTo(base + 2 * 350, 6)
  })

  it.each(editions)('%s: every size that it offers passes the panel, and no other does', (edition) => {
    const { project, files } = lark([`codes.electrical=${edition}`], false)
    const { sizes, modules_by_array: shares } = sizesOfProject(project, files).values
    for (const { modules, arrays } of shares) {
      const { panel, combiner } = wired(written(project, arrays)).values
      expect(panel.complies && combiner?.complies, `${modules} modules`).toBe(true)
    }
    const last = shares.at(-1)
    expect(sizes.at(-1)?.modules).toBe(last?.modules)
    const more = { south: last?.arrays['south'] ?? 0, west: (last?.arrays['west'] ?? 0) + 1 }
    const next = wired(written(project, more)).values
    expect(next.panel.complies).toBe(false)
    expect(connectionAtSize(project, more).panel).toEqual(next.panel)
  })

  it('NEC 2011: three branch breakers are more than the busbar takes, so the 20 modules are not offered', () => {
    const { project, files } = lark(['codes.electrical=NEC 2011'])
    const { findings, values } = wired(project)
    const finding = findings.find(({ id }) => id === 'wire.panel-busbar')
    expect(finding?.message).toBe(
      'no connection rule holds on the panel: the rule counts PV breakers, of which the busbar takes 40.0 A here (245.0 A > 240.0 A); the inverters give 30.60 A',
    )
    expect(values.panel.max_inverter_a).toBeLessThan(30.6)
    const offered = sizesOfProject(project, files).values
    expect(offered.sizes.map(({ modules }) => modules)).not.toContain(20)
    // Two branches of one array take 15 A breakers each.
    expect(offered.sizes.at(-1)?.modules).toBe(14)
    expect(offered.stopped_by).toBe('the connection to the panel (705.12(D)(2) and (D)(7))')
  })

  it('stated branches that hold the modules of a size are judged as they are', () => {
    const { project, files } = lark(['codes.electrical=NEC 2011'])
    const fuller = {
      ...project,
      electrical: {
        ...project.electrical,
        branches: { a: { modules: { south: 10 } }, b: { modules: { south: 4, west: 6 } } },
      },
    }
    // Two 20 A breakers: 40 A.
    expect(wired(fuller).values.panel.complies).toBe(true)
    const result = sizesOfProject(fuller, files)
    expect(result.values.sizes.at(-1)).toMatchObject({ modules: 20, branches: 2 })
    expect(result.findings.find(({ id }) => id === 'size.refused')?.message).toContain('15, 16, 17, 18, 19 modules')
  })

  it('a combiner whose busbar is too small stops it too', () => {
    const { project, files } = lark(['electrical.combiner.bus_a=40'])
    expect(sizesOfProject(project, files).values.stopped_by).toMatch(/^the busbar of the combiner panel \(705\.12/u)
  })

  it('says so when the branches are not known', () => {
    const { project, files } = lark()
    const { trunk_cables: _, ...equipment } = project.equipment
    const result = sizesOfProject({ ...project, equipment }, files)
    expect(result.findings.map(({ id }) => id)).toEqual(
      expect.arrayContaining(['size.branches-unknown', 'size.panel-not-checked']),
    )
  })
})
