import { describe, expect, test } from 'vitest'
import { readReadings, readSerials } from '../../../src/papers/handover/read-tables.js'
import { ProjectError } from '../../../src/project/index.js'

const UNITS = { module: ['south.m1', 'south.m2'], inverter: ['garage'] }
const serials = (text: string) => readSerials({ name: 'serials.csv', text }, UNITS)
const readings = (text: string) => readReadings({ name: 'strings.csv', text }, ['south_s1', 'west_s1'])

function problemsOf(call: () => unknown): string[] {
  try {
    call()
  } catch (error) {
    if (error instanceof ProjectError) {
      expect(error.exitCode).toBe(2)
      return error.message.split('\n')
    }
    throw error
  }
  throw new Error('the call succeeded')
}

describe('serial numbers', () => {
  test('are read with their kind', () => {
    expect(serials('kind,unit,serial\nmodule,south.m1,A-1\ninverter,garage,00012\nother,gateway,"G, 7"\n')).toEqual([
      { kind: 'module', unit: 'south.m1', serial: 'A-1' },
      { kind: 'inverter', unit: 'garage', serial: '00012' },
      { kind: 'other', unit: 'gateway', serial: 'G, 7' },
    ])
  })

  test('every problem is told at its place', () => {
    const text =
      'kind,unit,serial\nmodule,south.m1,A-1\nmodule,south.m2,A-1\nmodul,south.m2,A-2\nmodule,south.m3,A-3\ninverter,garage,\nmodule,south.m1,A-4\n'
    expect(problemsOf(() => serials(text))).toEqual([
      "serials.csv:3:17  serial number 'A-1' stands there already (line 2)",
      "serials.csv:4:1  'modul' is no kind; allowed: module, inverter, other; did you mean module?",
      "serials.csv:5:8  there is no module 'south.m3' in this project; named as in estimate-yield --json, the first is south.m1; did you mean south.m1?",
      'serials.csv:6:17  the serial number is empty; take the row out until it is known',
      "serials.csv:7:8  module 'south.m1' has a row already (line 2)",
    ])
  })

  test('columns have to be there and be known', () => {
    expect(problemsOf(() => serials('kind,module,serial\nmodule,a,b\n'))).toEqual([
      "serials.csv:1:6  there is no column 'module'; known: kind, unit, serial",
      'serials.csv:1:1  the table has no column unit; its first line names the columns: kind,unit,serial',
    ])
    expect(problemsOf(() => serials('no table at all'))[0]).toContain('the table has no column kind, unit, serial')
    expect(problemsOf(() => serials(''))[0]).toContain('the table has no column')
    expect(problemsOf(() => serials('kind,unit,serial\n'))).toEqual(['serials.csv:1:1  the table has no rows'])
  })
})

describe('readings of strings', () => {
  test('are read by the names of their keys', () => {
    expect(readings('string,voc_v,cell_c,polarity\nsouth_s1,315.2,48,right\nwest_s1,,47,\n')).toEqual({
      south_s1: { voc_v: 315.2, cell_c: 48, polarity: 'right' },
      west_s1: { cell_c: 47 },
    })
  })

  test('every problem is told at its place', () => {
    const text =
      'string,voc_v,cell_c,polarity\nsouth_s1,315 V,48,right\nnorth_s1,300,120,turned\nsouth_s1,300,-51,right\n'
    expect(problemsOf(() => readings(text))).toEqual([
      "strings.csv:2:10  '315 V' is no reading for voc_v; allowed: a number from 0 to 2000",
      "strings.csv:3:1  there is no string 'north_s1'; strings of this project: south_s1, west_s1; did you mean south_s1?",
      "strings.csv:3:14  '120' is no reading for cell_c; allowed: a number from -50 to 100",
      "strings.csv:3:18  'turned' is no polarity; allowed: right, reversed",
      "strings.csv:4:1  string 'south_s1' has a row already (line 2)",
      "strings.csv:4:14  '-51' is no reading for cell_c; allowed: a number from -50 to 100",
    ])
  })

  test('a column that is not known is told with a near one', () => {
    expect(problemsOf(() => readings('string,voc\nsouth_s1,300\n'))[0]).toContain("there is no column 'voc'")
  })
})

describe('what a table of readings may hold', () => {
  test('every column at its own limits', () => {
    // The limits of the same keys of the project file.
    const limits = {
      voc_v: 2000,
      isc_a: 200,
      operating_a: 200,
      irradiance_w_m2: 1600,
      cell_c: 100,
      insulation_test_v: 5000,
      insulation_negative_mohm: 1e6,
      insulation_positive_mohm: 1e6,
      insulation_both_mohm: 1e6,
    }
    for (const [key, most] of Object.entries(limits)) {
      expect(readings(`string,${key}\nsouth_s1,${most}\n`)).toEqual({ south_s1: { [key]: most } })
      expect(problemsOf(() => readings(`string,${key}\nsouth_s1,${most + 1}\n`))[0]).toContain(`to ${most}`)
    }
  })

  test('polarity and photo', () => {
    expect(readings('string,polarity,photo\nsouth_s1,reversed,a.jpg\n')).toEqual({
      south_s1: { polarity: 'reversed', photo: 'a.jpg' },
    })
  })

  test('no column twice', () => {
    expect(problemsOf(() => readings('string,voc_v,VOC_V\nsouth_s1,1,2\n'))).toEqual([
      'strings.csv:1:14  the column voc_v stands there already',
    ])
  })
})
