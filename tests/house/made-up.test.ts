import { describe, expect, test } from 'vitest'
import { renderSvg } from '../../src/drawings/index.js'
import { checkHouse, runHouse, type House } from '../../src/house/index.js'
import { loadProject, PART_NAMES, startingFile, type PartName } from '../../src/project/index.js'
import { countFitted } from '../../src/roof/index.js'
import { preparePacket } from '../../src/packet/index.js'

const SITE = { name: 'Reno, NV', lat: 39.5, lon: -119.8 }

function load(parts: readonly PartName[], overrides: readonly string[] = [], change = (text: string) => text) {
  const loaded = loadProject({ path: '-', text: change(startingFile({ site: SITE, parts })), overrides })
  return { ...loaded, project: countFitted(loaded.project) }
}

const whole = load(PART_NAMES)
const house = runHouse(whole)

const safety = (result: { readonly findings: readonly { readonly id: string; readonly where: string }[] }): string[] =>
  result.findings.filter(({ id }) => id === 'project.made-up-safety').map(({ where }) => where)

describe('made-up values of a project', () => {
  test.each<[keyof House, () => Promise<{ findings: readonly { id: string; where: string }[] }>, string[], string[]]>([
    ['yield', () => house.yield(), ['roof_planes.south', 'equipment.modules'], ['structure.wind', 'electrical.panel']],
    ['wire', () => house.wire(), ['electrical.panel', 'electrical.runs', 'equipment.trunk_cables'], ['structure.wind']],
    [
      'mounts',
      () => house.mounts(),
      ['structure.wind', 'structure.snow', 'structure.framing', 'equipment.rails'],
      ['electrical.panel'],
    ],
    ['payback', () => house.payback(), ['equipment.modules'], ['structure.wind', 'electrical.panel']],
    ['bom', () => house.bom(), ['structure.wind', 'electrical.panel'], []],
    ['work', () => house.work(), ['structure.wind', 'electrical.panel'], []],
    ['packet', () => house.packet({ documents: [] }), ['structure.wind', 'electrical.panel', 'roof_access'], []],
  ])('are a warning in %s where it reads them', async (_, run, told, untold) => {
    const places = safety(await run())
    expect(places).toEqual(expect.arrayContaining(told))
    expect(places.filter((place) => untold.includes(place))).toEqual([])
    expect(new Set(places).size).toBe(places.length)
  })

  test('are told with their units, and no more once they are stated', async () => {
    const wind = (await house.mounts()).findings.find(({ where }) => where === 'structure.wind')
    expect(wind?.message).toContain('basic_speed_mph 115 mph')
    const stated = load(PART_NAMES, ['structure.wind.basic_speed_mph=120'])
    const after = (await runHouse(stated).mounts()).findings.find(({ where }) => where === 'structure.wind')
    expect(after?.message).not.toContain('basic_speed_mph')
    expect(after?.message).toContain('exposure B')
  })

  test('of money are a note in payback, and none in wiring', async () => {
    const noteOf = async (run: Promise<{ findings: readonly { id: string; message: string }[] }>) =>
      (await run).findings.find(({ id }) => id === 'project.made-up')?.message ?? ''
    expect(await noteOf(house.payback())).toContain('5 in finance')
    expect(await noteOf(house.wire())).not.toContain('finance')
  })

  test('leave a project without markers as it was', async () => {
    const clean = load(PART_NAMES, [], (text) => text.replaceAll('!made_up ', '').replaceAll(' !made_up', ''))
    expect(clean.madeUp).toEqual([])
    const result = await runHouse(clean).mounts()
    expect(result.findings.filter(({ id }) => id.startsWith('project.'))).toEqual([])
    expect(result.values).toEqual((await house.mounts()).values)
  })

  test('make each sheet of a packet a draft that names them; without markers it is none', async () => {
    const words = async (loaded: typeof whole): Promise<string[]> => {
      const { sheets } = await (await preparePacket(loaded, runHouse(loaded))).draw(false)
      return sheets.map((sheet) => renderSvg(sheet))
    }
    const drafts = await words(whole)
    expect(drafts.length).toBeGreaterThan(5)
    expect(drafts.filter((text) => !text.includes('DRAFT'))).toEqual([])
    expect(drafts[0]).toContain('basic_speed_mph')
    const clean = load(PART_NAMES, [], (text) => text.replaceAll('!made_up ', '').replaceAll(' !made_up', ''))
    expect((await words(clean)).filter((text) => text.includes('DRAFT'))).toEqual([])
  })
})

describe('how far a project is', () => {
  const progress = async (loaded: typeof whole) =>
    (await checkHouse(loaded.project, runHouse(loaded), { madeUp: loaded.madeUp, file: 'p.yaml' })).values

  test('a new file: the estimate runs on made-up values, the others miss their parts', async () => {
    const { stages, next } = await progress(load([]))
    expect(stages.map(({ stage, state }) => [stage, state])).toEqual([
      ['yield', 'made_up'],
      ['wire', 'missing'],
      ['mounts', 'missing'],
      ['payback', 'missing'],
      ['permit', 'missing'],
    ])
    expect(next).toBe('gablewatt estimate-yield p.yaml')
    expect(stages[1]?.next).toBe('gablewatt new-project --parts wire --add-to p.yaml --force')
    const missing = stages.flatMap((each) => each.missing)
    expect(missing.map(({ path }) => path)).toEqual(
      expect.arrayContaining(['electrical.panel.bus_a', 'structure.snow.ground_psf', 'usage.monthly_kwh', 'site_plan']),
    )
    expect(missing.filter(({ find }) => find.trim() === '')).toEqual([])
  })

  test('with all parts nothing is missing and all of it made up, what is about safety first', async () => {
    const { stages } = await progress(whole)
    for (const { state, missing, made_up } of stages) {
      expect(state).toBe('made_up')
      expect(missing).toEqual([])
      const order = made_up.map(({ safety: isAbout }) => Number(isAbout))
      expect(order).toEqual(order.toSorted((a, b) => b - a))
    }
  })

  test('a key that is taken away is missing in its stage and in the packet', async () => {
    const { stages } = await progress(load(PART_NAMES, ['electrical.panel.bus_a=null']))
    const of = (name: string) => stages.find(({ stage }) => stage === name)
    expect(of('wire')).toMatchObject({ state: 'missing', next: 'gablewatt explain electrical.panel.bus_a' })
    expect(of('permit')?.missing.map(({ path }) => path)).toEqual(['electrical.panel.bus_a'])
    expect(of('mounts')?.missing).toEqual([])
  })

  test.each(['lark-hollow', 'harbor-point'])('a finished house misses nothing of what it states: %s', async (name) => {
    const path = new URL(`../../examples/${name}.yaml`, import.meta.url).pathname
    const loaded = loadProject({ path })
    const { stages } = await progress({ ...loaded, project: countFitted(loaded.project) })
    const ran = stages.filter(({ stage }) => ['yield', 'wire', 'payback'].includes(stage))
    expect(ran.map(({ state, missing, made_up }) => [state, missing, made_up])).toEqual(
      ran.map(() => ['ready', [], []]),
    )
  })

  test('a failing check is told as such', async () => {
    const { stages } = await progress(
      load(PART_NAMES, ['electrical.panel.bus_a=60', 'electrical.panel.main_a=60', 'electrical.service.rating_a=60']),
    )
    expect(stages.find(({ stage }) => stage === 'wire')?.state).toBe('failing')
    expect(stages.find(({ stage }) => stage === 'permit')?.state).toBe('failing')
  })
})
