import { describe, expect, it } from 'vitest'
import { sizeWire } from '../../src/electrical/index.js'
import type { Electrical, Inverter, Project, PvModule } from '../../src/project/index.js'
import { editions } from '../../src/tables/nec/index.js'
import { estimateYield } from '../../src/yield/index.js'
import { context, microProject, stringProject } from './demo.js'

const find = (project: Project, id: string, edition = 'NEC 2020') =>
  sizeWire(project, { ...context(), edition }).findings.filter((finding) => finding.id === id)

function withSheets(project: Project, inverter: Partial<Inverter>, module: Partial<PvModule> = {}): Project {
  const { modules = {}, inverters = {} } = project.equipment
  const all = <T>(map: Record<string, T>, change: Partial<T>) =>
    Object.fromEntries(Object.entries(map).map(([id, one]) => [id, { ...one, ...change }]))
  return {
    ...project,
    equipment: { ...project.equipment, modules: all(modules, module), inverters: all(inverters, inverter) },
  }
}

describe('input of a module-level inverter', () => {
  it('a module with more short-circuit current than the inverter takes is an error', () => {
    // 13.87 A of the sheet against 10 A; NEC 110.3(B).
    const [finding] = find(
      withSheets(microProject(), { max_input_isc_a: 10 }, { isc_a: 13.87 }),
      'wire.input-short-circuit',
    )
    expect(finding).toMatchObject({ severity: 'error', where: 'arrays.south.inverter' })
    expect(finding?.message).toBe('each inverter of array south gets 13.9 A short-circuit current, 10 A is the limit')
    expect(find(withSheets(microProject(), { max_input_isc_a: 13.9 }), 'wire.input-short-circuit')).toEqual([])
    expect(find(withSheets(microProject(), { max_input_isc_a: 13.8 }), 'wire.input-short-circuit')).toHaveLength(1)
  })

  it('more operating current than it uses is a warning, where the sheet states it', () => {
    const [finding] = find(withSheets(microProject(), { max_input_current_a: 12 }), 'wire.input-current')
    expect(finding).toMatchObject({ severity: 'warning', where: 'arrays.south.inverter' })
    expect(find(microProject(), 'wire.input-current')).toEqual([])
  })

  it('a comparison that cannot be made says so, once for each missing key', () => {
    const unknown = (project: Project) => find(project, 'wire.input-limit-unknown').map(({ where }) => where)
    expect(unknown(microProject())).toEqual(['equipment.inverters.micro.max_input_isc_a'])
    expect(unknown(withSheets(microProject(), { max_input_isc_a: 20 }))).toEqual([])
    const bare = withSheets(microProject(), { max_input_isc_a: 20 })
    delete bare.equipment.modules?.['m410']?.isc_a
    expect(unknown(bare)).toEqual(['equipment.modules.m410.isc_a'])
    const strings = [
      { modules: 12, input: 1 },
      { modules: 12, input: 2 },
    ]
    expect(unknown(stringProject({}, strings))).toEqual(['equipment.inverters.s5000.max_input_isc_a'])
  })
})

describe('voltage inside the array boundary after rapid shutdown', () => {
  // 95 V x (1 + 0.0027 x 31) = 103.0 V at -6 deg C.
  const high = (project: Project) =>
    withSheets(project, { max_dc_voltage_v: 600, max_input_isc_a: 20 }, { voc_v: 95, vmp_v: 80 })
  const state = (project: Project, rapid: Electrical['rapid_shutdown']): Project => ({
    ...project,
    electrical: { ...project.electrical, rapid_shutdown: { ...project.electrical?.rapid_shutdown, ...rapid } },
  })

  it('a module above 80 V in the cold is an error since NEC 2017', () => {
    const found = editions.map((edition) => find(high(microProject()), 'wire.rapid-shutdown-voltage', edition).length)
    expect(Object.fromEntries(editions.map((edition, i) => [edition, found[i]]))).toEqual({
      'NEC 2011': 0,
      'NEC 2014': 0,
      'NEC 2017': 1,
      'NEC 2020': 1,
      'NEC 2023': 1,
      'NEC 2026': 1,
    })
    const [finding] = find(high(microProject()), 'wire.rapid-shutdown-voltage')
    expect(finding).toMatchObject({ severity: 'error', where: 'arrays.south.module' })
    expect(finding?.message).toContain('103.0 V in the cold; after rapid shutdown 80 V is the most')
    expect(finding?.source?.place).toBe('690.12(B)(2)')
  })

  it('counts one module of a string, as shutdown sits behind every module', () => {
    expect(find(stringProject(), 'wire.rapid-shutdown-voltage')).toEqual([])
    const strings = high(stringProject({}, [{ modules: 4, input: 1 }]))
    expect(find(strings, 'wire.rapid-shutdown-voltage')).toHaveLength(1)
  })

  it('a listed hazard control system or an array without exposed parts has no such limit', () => {
    for (const inside of ['hazard_control_system', 'no_exposed_parts'] as const)
      expect(find(state(high(microProject()), { inside_boundary: inside }), 'wire.rapid-shutdown-voltage')).toEqual([])
    expect(
      find(state(high(microProject()), { inside_boundary: 'module_level' }), 'wire.rapid-shutdown-voltage'),
    ).toHaveLength(1)
  })
})

describe('strings in parallel on one tracker', () => {
  const severities = (project: Project) => [
    find(project, 'wire.unlike-strings').map(({ severity }) => severity),
    estimateYield(project)
      .findings.filter(({ id }) => id === 'yield.unlike-strings')
      .map(({ severity }) => severity),
  ]
  const yieldable = (project: Project) =>
    withSheets(
      { ...project, site: { ...project.site, climate: 'nearby' } },
      { weighted_efficiency_pct: 97, max_input_isc_a: 40 },
      { max_series_fuse_a: 25 },
    )
  const strings = (...lengths: readonly [number, number][]) =>
    yieldable(
      stringProject(
        {},
        lengths.map(([modules, input]) => ({ modules, input })),
      ),
    )

  it('of another length are an error in wiring and in the estimate', () => {
    expect(severities(strings([12, 1], [12, 1]))).toEqual([[], []])
    expect(severities(strings([12, 1], [9, 2]))).toEqual([[], []])
    expect(severities(strings([12, 1], [9, 1]))).toEqual([['error'], ['error']])
    const [finding] = find(strings([12, 1], [9, 1]), 'wire.unlike-strings')
    expect(finding?.where).toBe('arrays.south.strings[1]')
    expect(finding?.message).toContain(
      'south_s1 has 12 modules m410, south_s2 has 9 modules m410, and both lie in parallel on garage input 1',
    )
  })

  // NEC 690.9(A): what the other string feeds back, 1.25 times its short-circuit current, against the module's largest fuse.
  it.each([
    [20, []],
    [15, ['error']],
  ] as const)('feed %d A modules back', (fuseA, severity) => {
    const project = withSheets(strings([12, 1], [12, 1]), {}, { isc_a: 13.9, max_series_fuse_a: fuseA })
    const found = find(project, 'wire.string-backfeed')
    expect([...new Set(found.map((finding) => finding.severity))]).toEqual(severity)
    if (found.length > 0) expect(found[0]?.message).toContain('can feed 17.4 A into south_s1, the modules take 15 A')
    expect(
      find(withSheets(strings([12, 1], [12, 2]), {}, { max_series_fuse_a: fuseA }), 'wire.string-backfeed'),
    ).toEqual([])
  })

  it('on an input that is not stated lie on input 1', () => {
    const project = strings([12, 1], [9, 1])
    for (const string of project.arrays['south']?.strings ?? []) delete string.input
    expect(severities(project)).toEqual([['error'], ['error']])
  })

  it('of another module are an error, in another direction a warning', () => {
    const two = (change: Partial<Project['arrays'][string]>): Project => {
      const project = strings([12, 1])
      const south = project.arrays['south']
      const m410 = project.equipment.modules?.['m410']
      if (south === undefined || m410 === undefined) throw new Error('no array')
      return {
        ...project,
        roof_planes: { ...project.roof_planes, west: { azimuth_deg: 270, tilt_deg: 25 } },
        arrays: { south, other: { ...south, ...change } },
        equipment: { ...project.equipment, modules: { m410, m400: { ...m410, pmax_w: 400 } } },
      }
    }
    expect(severities(two({}))).toEqual([[], []])
    expect(severities(two({ module: 'm400' }))).toEqual([['error'], ['error']])
    expect(severities(two({ roof_plane: 'west' }))).toEqual([['warning'], ['warning']])
    expect(severities(two({ module_tilt_deg: 40 }))).toEqual([['warning'], ['warning']])
  })
})
