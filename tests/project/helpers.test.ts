import { describe, expect, test } from 'vitest'
import {
  formatCodeFrame,
  formatProblem,
  listModuleGroups,
  moduleCountOf,
  nearest,
  startingFile,
  tiltDegOf,
} from '../../src/project/index.js'
import { editDistance } from '../../src/values/index.js'
import { unitOfPath } from '../../src/project/key-unit.js'
import { failureOf, loadText, STARTER, starterWith } from './support.js'

describe('the starting file', () => {
  test('is a valid project of twelve modules on one plane', () => {
    const { project } = loadText(startingFile())
    expect(Object.keys(project.roof_planes)).toEqual(['south'])
    const [group, ...others] = listModuleGroups(project)
    expect(others).toEqual([])
    expect(group).toMatchObject({ id: 'south', modules: 12, azimuthDeg: 180, conversion: { kind: 'module_level' } })
  })

  test('takes a site and the place of the schema', () => {
    const site = {
      name: "O'Hare: a #1 [place]\nin two lines",
      lat: 41.98,
      lon: -87.9,
      elevationFt: 660,
      utcOffsetH: -6,
    }
    const text = startingFile({ site, schema: '../schemas/project.schema.json' })
    expect(text.split('\n')[0]).toBe('# yaml-language-server: $schema=../schemas/project.schema.json')
    expect(loadText(text).project.site).toEqual({
      address: "O'Hare: a #1 [place] in two lines",
      latitude_deg: 41.98,
      longitude_deg: -87.9,
      elevation_ft: 660,
      utc_offset_h: -6,
      climate: 'nearby',
    })
    expect(loadText(startingFile({ site: { name: 'x', lat: 1, lon: 2 } })).project.site).not.toHaveProperty(
      'elevation_ft',
    )
  })

  test('marks every value that a person has to replace', () => {
    const { madeUp } = loadText(startingFile())
    expect(madeUp).toContain('roof_planes.south.pitch_in_12')
    expect(madeUp).toContain('equipment.modules.m410')
    const unmarked = startingFile()
      .split('\n')
      .filter((line) => /^ {2,4}[a-z_0-9]+: -?[\d.]+( |$)/.test(line))
    expect(unmarked.map((line) => line.trim().split(':')[0])).toEqual(['edge_clearance_in'])
  })
})

describe('helpers', () => {
  test('tilt from a pitch: 12 in 12 is 45 deg, 6 in 12 is atan(1/2)', () => {
    expect(tiltDegOf({ pitch_in_12: 12 })).toBeCloseTo(45, 12)
    expect(tiltDegOf({ pitch_in_12: 6 })).toBeCloseTo(26.56505117707799, 12)
    expect(tiltDegOf({ tilt_deg: 0 })).toBe(0)
    expect(() => tiltDegOf({})).toThrow('not stated')
  })

  test('number of modules: blocks before modules before strings', () => {
    const array = { roof_plane: 'a', module: 'm', mounting: 'near_roof', standoff_in: 4 } as const
    const block = {
      orientation: 'portrait',
      rows: 2,
      columns: 3,
      x_ft: 0,
      y_ft: 0,
      omit: ['r1c1', 'r01c1', 'r2c3'],
    } as const
    expect(
      moduleCountOf({ ...array, modules: 9, arrangement: { blocks: { a: { ...block, omit: [...block.omit] } } } }),
    ).toBe(4)
    expect(
      moduleCountOf({ ...array, modules: 9, arrangement: 'fit', strings: [{ modules: 4, inverter_unit: 'a' }] }),
    ).toBe(9)
    expect(moduleCountOf({ ...array, strings: [4, 5].map((modules) => ({ modules, inverter_unit: 'a' })) })).toBe(9)
    expect(() => moduleCountOf(array)).toThrow('without a number of modules')
  })

  test('groups follow racks and strings', () => {
    const text = starterWith(
      '    inverter: micro366  # one behind every module\n',
      '    strings: [{ modules: 12, inverter_unit: garage, input: 1 }]\n    module_tilt_deg: 30\n    module_azimuth_deg: 170\n',
    )
      .replace('kind: module_level', 'kind: string')
      .replace('max_dc_power_w: 540', 'max_dc_power_w: 5400')
      .replace('equipment:  #', 'inverter_units: { garage: { inverter: micro366 } }\nequipment:  #')
    const [group] = listModuleGroups(loadText(text).project)
    expect(group).toMatchObject({ tiltDeg: 30, azimuthDeg: 170 })
    expect(group?.conversion).toMatchObject({
      kind: 'string',
      strings: [{ modules: 12, unitId: 'garage', inverterId: 'micro366', input: 1, inverter: { ac_power_w: 366 } }],
    })
  })

  test('locating a value that is not there gives the map around it', () => {
    const { locate } = loadText(STARTER)
    expect(locate('site.latitude_deg')).toMatchObject({ file: '<stdin>', line: 15, column: 17 })
    expect(locate('electrical.panel.bus_rating_a')).toMatchObject({ file: '<stdin>', line: 7 })
    expect(locate('roof_planes.south.rafters')).toMatchObject({ line: 22, column: 3 })
    expect(locate('')).toMatchObject({ file: '<stdin>', line: 7, column: 1 })
  })

  test('edit distance counts a swap as one', () => {
    const pairs = [
      ['', 'abc', 3],
      ['abc', 'abc', 0],
      ['abc', 'acb', 1],
      ['kitten', 'sitting', 3],
      ['azimth_deg', 'azimuth_deg', 1],
    ] as const
    for (const [a, b, distance] of pairs) expect(editDistance(a, b)).toBe(distance)
  })

  test('nothing far away is suggested', () => {
    expect(nearest('colour', ['date', 'revision', 'invented'])).toBeUndefined()
    expect(nearest('tilt', ['azimuth_deg', 'tilt_deg'])).toBe('tilt_deg')
    expect(nearest('SOUTH', ['north', 'south'])).toBe('south')
    expect(nearest('', ['a'])).toBeUndefined()
  })

  test('units come from the ending of the key, also for entries of a list', () => {
    const units = [
      ['pitch_in_12', 'in per 12 in'],
      ['pmax_temp_coeff_pct_per_c', '% per deg C'],
      ['voc_v', 'V'],
      ['modules', ''],
      ['solar_constant_w_m2', 'W/m2'],
      ['degradation_pct_per_year', '% per year'],
      ['voc_temp_coeff_v_per_c', 'V per deg C'],
      ['upkeep_usd_per_kwh', 'USD per kWh'],
      ['rebate_usd_per_w', 'USD per W'],
      ['trunk_usd_per_ft', 'USD per ft'],
      ['study_years', 'years'],
      ['annual_kwh', 'kWh'],
      ['speed_mph', 'mph'],
      ['ground_snow_psf', 'psf'],
      ['fb_psi', 'psi'],
      ['pull_lbf', 'lbf'],
      ['roof_sqft', 'sq ft'],
      ['cap_usd', 'USD'],
      ['azimuth_deg', 'deg'],
      ['dirt_pct', '%'],
      ['span_ft', 'ft'],
      ['spacing_in', 'in'],
      ['size_kw', 'kW'],
      ['transformer_kva', 'kVA'],
      ['rating_va', 'VA'],
      ['weight_lb', 'lb'],
      ['noct_c', 'deg C'],
      ['pmax_w', 'W'],
      ['isc_a', 'A'],
      ['utc_offset_h', 'h'],
    ] as const
    for (const [key, unit] of units) expect(unitOfPath([key])).toBe(unit)
    expect(unitOfPath(['monthly_snowfall_in', 3])).toBe('in')
  })
})

describe('code frames', () => {
  test('two lines before, a caret under the span', () => {
    const error = failureOf(() => loadText(starterWith('azimuth_deg: 180', 'azimuth_deg: 400')))
    expect(error.format({ frames: true }).split('\n').slice(1)).toEqual([
      '  21 | roof_planes:',
      '  22 |   south:  # the names of planes, arrays and equipment are your own',
      '  23 |     azimuth_deg: 400  # <- yours: the direction that the plane faces, downhill',
      '     |                  ^^^',
    ])
  })

  test('long lines are cut round the span, control characters are not printed', () => {
    const text = `${'x'.repeat(300)}\u001B[31mred`
    const frame = formatCodeFrame(text, { file: 'a', line: 1, column: 301, length: 999, path: '', message: '' })
    expect(frame?.split('\n').map((line) => line.length)).toEqual([93, 93])
    expect(frame).not.toContain('\u001B')
    expect(formatProblem({ file: 'a', path: 'b\u001B[2J', message: 'c\nd' })).toBe('a  b\uFFFD  c\uFFFDd')
    expect(formatCodeFrame('a', { file: 'a', path: '', message: '' })).toBeUndefined()
    expect(formatCodeFrame('a', { file: 'a', line: 9, path: '', message: '' })).toBeUndefined()
  })
})
