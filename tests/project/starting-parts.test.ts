import { parse } from 'yaml'
import { describe, expect, it, test, vi } from 'vitest'
import { CHECK_STAGES, checkHouse, runHouse } from '../../src/house/index.js'
import {
  addBlocks,
  houseOfProject,
  madeUp,
  PART_NAMES,
  partLines,
  stated,
  startingFile,
} from '../../src/project/index.js'
import { countFitted } from '../../src/roof/index.js'
import { loadText, STARTER } from './support.js'

// A check runs all stages of a house.
vi.setConfig({ testTimeout: 240_000 })

const SITE = { name: 'Reno, NV', lat: 39.5, lon: -119.8, elevationFt: 4400, utcOffsetH: -8 }

function houseOf(text: string) {
  const loaded = loadText(text)
  const project = countFitted(loaded.project)
  return { project, loaded, house: runHouse({ ...loaded, project }) }
}

describe('parts of a new file', () => {
  it('let every stage of a check run, without errors', async () => {
    const { project, house } = houseOf(startingFile({ site: SITE, parts: PART_NAMES }))
    const { values, findings } = await checkHouse(project, house)
    expect(values.stages_run).toEqual(CHECK_STAGES.map(({ name }) => name))
    expect(findings.filter(({ severity }) => severity === 'error')).toEqual([])
    expect(findings.filter(({ id }) => id === 'permit.no-site-plan')).toEqual([])
  })

  test.each([
    ['a hip roof to the west', 255, 8, 30, 14, 18],
    ['a flat one', 180, 2, 60, 25, 60],
    ['a small one in a point to the north-east', 45, 12, 24, 14, 12],
  ])('fit the house: %s', async (_, azimuth, pitch, width, ridge, depth) => {
    const plane = {
      id: 'roof',
      azimuthDeg: stated(azimuth),
      tilt: stated(pitch),
      tiltKey: 'pitch_in_12' as const,
      widthFt: stated(width),
      depthFt: stated(depth === 60 ? 15 : depth),
      ridgeFt: stated(ridge === 25 ? width : ridge),
      eaveHeightFt: madeUp(10),
    }
    const { project, house } = houseOf(startingFile({ site: SITE, house: { planes: [plane] }, parts: PART_NAMES }))
    const { findings } = await checkHouse(project, house)
    expect(findings.filter(({ severity, id }) => severity === 'error' && id.endsWith('cannot-run'))).toEqual([])
  })

  it('leave no value of wind, snow, rafters and wiring without a marker', () => {
    const { loaded } = houseOf(startingFile({ site: SITE, parts: PART_NAMES }))
    const marked = new Set(loaded.madeUp)
    const bare = leaves({
      structure: loaded.project.structure,
      electrical: loaded.project.electrical,
      storage: loaded.project.storage,
    }).filter((path) => !path.split('.').some((__, index, steps) => marked.has(steps.slice(0, index + 1).join('.'))))
    // References to equipment that is marked itself, what is planned and not found, and ways of the file.
    expect(bare).toEqual([
      'structure.seismic.dwelling',
      'structure.rail',
      'structure.mount',
      'structure.mount_layout',
      'electrical.trunk',
      'electrical.runs.home.carries.0',
      'electrical.runs.feeder.carries.0',
      'electrical.runs.storage.carries.0',
      'storage.unit',
    ])
  })
})

function leaves(value: unknown, path = ''): string[] {
  if (typeof value !== 'object' || value === null) return [path]
  return Object.entries(value).flatMap(([key, inner]) => leaves(inner, path === '' ? key : `${path}.${key}`))
}

describe('parts that are added to a file', () => {
  const added = (text: string): string => {
    const house = houseOfProject(loadText(text).project)
    return PART_NAMES.reduce((whole, part) => addBlocks(whole, partLines(part, house)), text)
  }

  it('put the way of the storage beside the ways of the person, and take no other', () => {
    const own = {
      carries: ['branches', 'output'],
      segments: { wall: { location: 'outdoor_wall', length_ft: 9, raceway: 'EMT' } },
    }
    const text = STARTER.concat(
      'electrical:\n  panel: { bus_a: 125, main_a: 100 }\n  runs:\n    mine:\n      carries: [branches, output]\n      segments: { wall: { location: outdoor_wall, length_ft: 9, raceway: EMT } }\n',
      'storage:\n  unit: mine13\n  count: 2\n',
    ).replace(
      '  inverters:\n',
      '  storage_units:\n    mine13: { coupling: ac, usable_kwh: 13, charge_kw: 5, discharge_kw: 5 }\n  inverters:\n',
    )
    const house = houseOfProject(loadText(text).project)
    const once = addBlocks(text, partLines('storage', house))
    const { project, madeUp: marked } = loadText(once)
    expect(Object.keys(project.electrical?.runs ?? {})).toEqual(['mine', 'storage'])
    expect(project.electrical?.runs?.['mine']).toEqual(own)
    expect(Object.keys(project.equipment.storage_units ?? {})).toEqual(['mine13'])
    expect(project.storage).toMatchObject({ unit: 'mine13', count: 2 })
    // A power control system counts with its document only, which nobody can make up.
    expect(project.storage?.installation?.power_control).toBeUndefined()
    expect(project.storage?.installation).toMatchObject({ places: { garage: { units: 2 } } })
    expect(project.storage?.backup?.isolating_device_a).toBe(100)
    expect(marked).not.toContain('storage.count')
    expect(marked).toContain('storage.installation.disconnect')
    expect(addBlocks(once, partLines('storage', houseOfProject(project)))).toBe(once)
    const other = text.replace('[branches, output]', '[branches, output, storage]')
    const kept = addBlocks(other, partLines('storage', houseOfProject(loadText(other).project)))
    expect(Object.keys(loadText(kept).project.electrical?.runs ?? {})).toEqual(['mine'])
  })

  it('write a map on one line over several where it takes an entry, each entry letter for letter', () => {
    const text = `title: One (invented)
equipment: { modules: { 'm 1': {pmax_w: 410} }, inverters: {} }   # mine
finance: {years: 25,  money: "real"}
site: { latitude_deg: 40 }
`
    const more = [
      'equipment:',
      '  rails:',
      '    rail40: { weight_lb_per_ft: 0.6 }',
      'site:',
      '  latitude_deg: 41',
      'finance:',
      '  discount_rate_pct: 3',
    ]
    const once = addBlocks(text, more)
    expect(once).toBe(`title: One (invented)
equipment:  # mine
  modules: { 'm 1': {pmax_w: 410} }
  inverters: {}
  rails:
    rail40: { weight_lb_per_ft: 0.6 }
finance:
  years: 25
  money: "real"
  discount_rate_pct: 3
site: { latitude_deg: 40 }
`)
    expect(addBlocks(once, more)).toBe(once)
  })

  it.each([
    ['over several lines', 'equipment: { modules: {},\n  inverters: {} }\n'],
    ['with a tag', 'equipment: !made_up { modules: {} }\n'],
    ['with an anchor', 'equipment: &mine { modules: {} }\n'],
    ['of nothing', 'equipment: {}\n'],
  ])('leave a map in braces as it is %s', (_, text) => {
    expect(addBlocks(text, ['equipment:', '  rails: {}'])).toBe(text)
  })

  it('leave every line of the file as it is, in its order', () => {
    const lines = added(STARTER).split('\n')
    let at = 0
    for (const line of STARTER.split('\n')) {
      const found = lines.indexOf(line, at)
      expect(found, line).toBeGreaterThanOrEqual(at)
      at = found + 1
    }
  })

  it('change no value that is there, and add nothing the second time', () => {
    const once = added(STARTER)
    expect(loadText(once).project).toMatchObject(parse(STARTER))
    expect(added(once)).toBe(once)
  })

  it('go under what is there, with its indentation', () => {
    const text = STARTER.concat(
      'electrical:\n    panel:\n        bus_a: 125  # read on the label\n    power_factor: 1\n',
    )
    const { project, madeUp: marked } = loadText(added(text))
    expect(project.electrical).toMatchObject({ panel: { bus_a: 125, main_a: 200 }, power_factor: 1 })
    expect(marked).toContain('electrical.panel.main_a')
    expect(marked).not.toContain('electrical.panel.bus_a')
  })

  it('go into a map and into the one around it at the same line', () => {
    const { project } = loadText(
      added(STARTER.concat('electrical:\n  panel:\n    bus_a: 125\n    main_a: 100 # read\n')),
    )
    expect(project.electrical?.panel).toMatchObject({ bus_a: 125, main_a: 100, spaces_free: 4 })
    expect(project.electrical?.runs).toHaveProperty('feeder')
  })

  it('leave equipment of the person alone', () => {
    const text = STARTER.replace(
      '  inverters:\n',
      '  rails:\n    mine: { max_span_in: 60, max_cantilever_in: 20, stock_lengths_in: [168] }\n  inverters:\n',
    )
    const { project } = loadText(added(text))
    expect(Object.keys(project.equipment.rails ?? {})).toEqual(['mine'])
    expect(project.structure?.rail).toBe('mine')
  })
})

describe('the made-up site plan', () => {
  const plane = (id: string, azimuth: number, width: number) => ({
    id,
    azimuthDeg: stated(azimuth),
    tilt: stated(7),
    tiltKey: 'pitch_in_12' as const,
    widthFt: stated(width),
    depthFt: stated(15),
    ridgeFt: stated(width),
    eaveHeightFt: stated(18),
  })

  // Whatever lies inside of another plane, or a corner that stands twice, is told by the rules and by the scene.
  test.each([
    ['one plane', [plane('a', 190, 40)]],
    ['both sides of a ridge', [plane('a', 190, 40), plane('b', 10, 40)]],
    ['a leg to the left', [plane('a', 190, 40), plane('b', 280, 24)]],
    ['a leg to the right', [plane('a', 190, 40), plane('b', 100, 24)]],
    ['a leg as wide as the house', [plane('a', 280, 24), plane('b', 190, 40)]],
    ['a leg over all of it', [plane('a', 190, 40), plane('b', 280, 30), plane('c', 100, 30)]],
    ['a plane askew', [plane('a', 190, 40), plane('b', 235, 20)]],
  ])('fits the planes of the house: %s', async (_, planes) => {
    const text = startingFile({ site: SITE, house: { planes }, parts: PART_NAMES })
    const { project, loaded } = houseOf(text)
    const arrays = Object.fromEntries(
      planes.map(({ id }) => [id, { ...project.arrays['a'], roof_plane: id, modules: 4 }]),
    )
    const every = countFitted({ ...loaded.project, arrays: arrays as never })
    const { findings } = await checkHouse(every, runHouse({ ...loaded, project: every }))
    const wrong = findings.filter(
      ({ id, severity }) => severity === 'error' && !id.startsWith('structure.') && !id.startsWith('roof.'),
    )
    expect(wrong.map(({ message }) => message)).toEqual([])
  })
})
