import { describe, expect, test } from 'vitest'
import { valueAt } from '../../src/project/plain-data.js'
import { loadText, problemsOf, STARTER, starterWith } from './support.js'

describe('--set', () => {
  const GOOD: readonly (readonly [override: string, path: string, value: unknown])[] = [
    ['roof_planes.south.azimuth_deg=195', 'roof_planes.south.azimuth_deg', 195],
    ['roof_planes.south.azimuth_deg= 1.95e2', 'roof_planes.south.azimuth_deg', 195],
    ['title=724940', 'title', '724940'],
    ['title=true', 'title', 'true'],
    ['title=a=b: c # d', 'title', 'a=b: c # d'],
    ['document.invented=false', 'document.invented', false],
    ['document.revision=1', 'document.revision', '1'],
    ['site.climate.station=024940', 'site.climate.station', '024940'],
    ["site.climate={ station: '724940' }", 'site.climate', { station: '724940' }],
    ['site.climate=nearby', 'site.climate', 'nearby'],
    ['losses.dirt_pct=3', 'losses.dirt_pct', 3],
    ['losses.dirt_pct=[1,1,1,1,1,1,1,1,1,1,1,4]', 'losses.dirt_pct.11', 4],
    ['codes.electrical=NEC 2023', 'codes.electrical', 'NEC 2023'],
    ['documents=[a.pdf, b.pdf]', 'documents', ['a.pdf', 'b.pdf']],
    ['documents.0=a.pdf', 'documents', ['a.pdf']],
    ['documents[0]=a.pdf', 'documents', ['a.pdf']],
    [
      'site.obstacles.oak={ bearing_deg: 205, distance_ft: 38, width_ft: 18, height_ft: 14 }',
      'site.obstacles.oak.width_ft',
      18,
    ],
    ['roof_planes.north={ azimuth_deg: 0, tilt_deg: 20 }', 'roof_planes.north.tilt_deg', 20],
  ]
  test.each(GOOD)('%s', (override, path, value) => {
    const loaded = loadText(STARTER, { overrides: [override] })
    expect(valueAt(loaded.project, path.split('.'))).toEqual(value)
    expect(loaded.overrides).toEqual([override])
    expect(loaded.locate(path)).toEqual({ override: `--set ${override}` })
  })

  test('a value that would fill the screen is cut in the message', () => {
    const [said = ''] = problemsOf(STARTER, { overrides: [`site.climate=${'['.repeat(100_000)}`] })
    expect(said.length).toBeLessThan(400)
    expect(said).toContain('site.climate  the value is not readable as YAML: ')
  })

  test('several are applied in order, and lists grow', () => {
    const overrides = ['documents.0=a.pdf', 'documents.1=b.pdf', 'documents.0=c.pdf', 'title=x', 'title=y']
    const { project } = loadText(STARTER, { overrides })
    expect(project.documents).toEqual(['c.pdf', 'b.pdf'])
    expect(project.title).toBe('y')
  })

  const BAD: readonly (readonly [override: string, problem: string])[] = [
    ['title', "not of the form path=value, for example --set title='New roof'"],
    ['=3', "not of the form path=value, for example --set title='New roof'"],
    [
      'roof_planes.south.azimth_deg=3',
      "roof_planes.south.azimth_deg  no key 'azimth_deg' under roof_planes.south; did you mean azimuth_deg?",
    ],
    [
      'rof_planes.south.azimuth_deg=3',
      "rof_planes.south.azimuth_deg  no key 'rof_planes' at the top level; did you mean roof_planes?",
    ],
    [
      'document.colour=red',
      "document.colour  no key 'colour' under document; known there: date, revision, revisions, invented",
    ],
    ['document..date=red', 'document..date  a step of the path is empty'],
    ['title.x=red', 'title.x  nothing can stand under title'],
    [
      'documents.first=a',
      "documents.first  documents is a list; after it comes the number of an entry, counted from 0, not 'first'",
    ],
    ['documents.3=a', 'documents.3  documents has 0 entries, counted from 0; the next new one is 0, not 3'],
    ['roof_planes.__proto__.azimuth_deg=3', 'roof_planes.__proto__.azimuth_deg  nothing can stand under roof_planes'],
    [
      'roof_planes.south.azimuth_deg=south',
      "roof_planes.south.azimuth_deg  found text 'south'; expected a number (0 to 360 deg)",
    ],
    [
      'roof_planes.south.azimuth_deg=',
      'roof_planes.south.azimuth_deg  found empty text; expected a number (0 to 360 deg)',
    ],
    ['roof_planes.south.azimuth_deg=400', 'roof_planes.south.azimuth_deg  400 deg is too high; allowed: 0 to 360 deg'],
    ['arrays.south.roof_plane=soth', "arrays.south.roof_plane  no 'soth' under roof_planes; did you mean south?"],
    ['losses.dirt_pct=[1,', 'losses.dirt_pct  the value is not readable as YAML: Flow sequence must end with a ]'],
    [
      'site.climate={station: 724940}',
      "site.climate.station  found the number 724940; expected text; put it in quotes: '724940'",
    ],
    [
      'site.obstacles.oak.bearing_deg=205',
      "site.obstacles.oak.height_ft  missing; Height of its top, ft: ABOVE THE ARRAYS with bearing_deg, above the ground at its foot with at or corners; for example 'height_ft: 14'",
    ],
    [
      'roof_planes.soth.azimuth_deg=190',
      "roof_planes.soth.tilt_deg  missing; state the slope, for example 'tilt_deg: 26.6' or 'pitch_in_12: 6'; roof_planes.soth is new with this --set; did you mean south?",
    ],
    ['equipment.inverters.micro366.max_dc_power_w=400', ''],
  ]
  test.each(BAD)('%s', (override, problem) => {
    const [first] = problemsOf(STARTER, { overrides: [override] })
    if (problem === '') {
      expect(first).toMatch(/^33:15 {2}arrays\.south\.inverter {2}a module of 410 W is more than the 400 W/)
    } else expect(first).toBe(`--set ${override}  ${problem}`)
  })

  test('a broken override is told together with the problems of the file', () => {
    const said = problemsOf(starterWith('azimuth_deg: 180', 'azimuth_deg: 400'), { overrides: ['titel=3', 'title=  '] })
    expect(said).toEqual([
      '23:18  roof_planes.south.azimuth_deg  400 deg is too high; allowed: 0 to 360 deg',
      "--set titel=3  titel  no key 'titel' at the top level; did you mean title?",
      "--set title=    title  '  ' is blank; write some text",
    ])
  })

  test('an override can mend what the file has wrong', () => {
    const broken = starterWith('azimuth_deg: 180', 'azimuth_deg: 400')
    expect(
      loadText(broken, { overrides: ['roof_planes.south.azimuth_deg=200'] }).project.roof_planes['south']?.azimuth_deg,
    ).toBe(200)
  })
})
