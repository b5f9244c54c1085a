/* oxlint-disable unicorn/no-thenable -- 'then' is a keyword of JSON Schema */
import { describe, expect, test } from 'vitest'
import type { Complaint } from '../../src/project/explain/complaint.js'
import { explain } from '../../src/project/explain/explain.js'
import { projectSchema, type Schema } from '../../src/project/schema.js'
import { failureOf, loadText, problemsOf, STARTER, starterWith } from './support.js'

const MONTHS = '[0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0]'

describe('what is said about a value that the schema refuses', () => {
  const CASES: readonly (readonly [name: string, from: string, to: string, problem: string])[] = [
    [
      'one name too many for a stamp',
      'equipment:  # from',
      'production: { time_columns: [date, time, zone] }\nequipment:  # from',
      '38:29  production.time_columns  3 entries; at most 2 allowed',
    ],
    [
      'misspelt key',
      '    azimuth_deg',
      '    azimth_deg',
      '23:5  roof_planes.south.azimth_deg  unknown key; did you mean azimuth_deg?',
    ],
    [
      'key without its unit',
      '    azimuth_deg',
      '    azimuth',
      '23:5  roof_planes.south.azimuth  unknown key; did you mean azimuth_deg?',
    ],
    [
      'key in another unit',
      '    pitch_in_12: 6',
      '    tilt_rad: 0.4',
      '24:5  roof_planes.south.tilt_rad  unknown key; did you mean tilt_deg?',
    ],
    [
      'unknown key',
      '  invented: true',
      '  invented: true\n  colour: red',
      '12:3  document.colour  unknown key; known here: date, revision, revisions, invented',
    ],
    [
      'missing key',
      '      pmax_w: 410  # <- yours\n',
      '',
      "40:5  equipment.modules.m410.pmax_w  missing; Rated power, W; for example 'pmax_w: 410'",
    ],
    [
      'missing part',
      'format: gablewatt/2\n',
      '',
      "7:1  format  missing; Version of this file format; for example 'format: gablewatt/2'",
    ],
    ['other format', 'gablewatt/2', 'gablewatt/3', "7:9  format  found text 'gablewatt/3'; expected gablewatt/2"],
    [
      'too high',
      'azimuth_deg: 180',
      'azimuth_deg: 400',
      '23:18  roof_planes.south.azimuth_deg  400 deg is too high; allowed: 0 to 360 deg',
    ],
    [
      'too low, limit not included',
      'pmax_w: 410',
      'pmax_w: 0',
      '42:15  equipment.modules.m410.pmax_w  0 W is too low; allowed: above 0, at most 1000 W',
    ],
    [
      'fraction',
      'modules: 12',
      'modules: 12.5',
      '32:14  arrays.south.modules  found the number 12.5; expected a whole number (1 to 2000); write it without a fraction',
    ],
    [
      'word not in the list',
      'mounting: near_roof',
      'mounting: neer_roof',
      "34:15  arrays.south.mounting  found text 'neer_roof'; expected one of: free_rack, near_roof, laid_on_roof; did you mean near_roof?",
    ],
    [
      'several editions of a code',
      'document:',
      'codes: { electrical: [NEC 2020, NEC 2023] }\ndocument:',
      '10:22  codes.electrical  found a list of 2; expected one of: NEC 2011, NEC 2014, NEC 2017, NEC 2020, NEC 2023, NEC 2026; one edition of each code',
    ],
    [
      'eleven months',
      'climate: nearby',
      `monthly_snowfall_in: ${MONTHS}`,
      '19:24  site.monthly_snowfall_in  11 entries; exactly 12 are needed, January first',
    ],
    [
      'too few entries',
      'climate: nearby',
      'horizon: [{ azimuth_deg: 3, elevation_deg: 2 }]',
      '19:12  site.horizon  1 entry; at least 2 needed',
    ],
    [
      'text with nothing in it',
      "title: 'My roof at Sampletown (invented)'",
      "title: ' '",
      "8:8  title  ' ' is blank; write some text",
    ],
    [
      'number as a title',
      "title: 'My roof at Sampletown (invented)'",
      'title: 2026',
      "8:8  title  found the number 2026; expected text; put it in quotes: '2026'",
    ],
    [
      'bad id',
      '  south:  # the',
      '  1south:  # the',
      "22:3  roof_planes.1south  '1south' is no id: an id starts with a letter and holds only letters, digits, _ and -",
    ],
    [
      'bad date',
      'invented: true',
      'date: 3/2/2026',
      "11:9  document.date  '3/2/2026' is no date: write year-month-day, for example 2026-03-02",
    ],
    [
      'no roof planes',
      /roof_planes:\n(.*\n)*?\narrays/.exec(STARTER)?.[0] ?? '-',
      'roof_planes: {}\narrays',
      '21:14  roof_planes  a map with 0 entries; at least 1 needed',
    ],
    [
      'map instead of a number',
      'standoff_in: 4',
      'standoff_in: { a: 1 }',
      '35:18  arrays.south.standoff_in  found a map; expected a number (0 to 120 in)',
    ],
    [
      'alternatives: misspelt word',
      'climate: nearby',
      'climate: neaby',
      "19:12  site.climate  found text 'neaby'; expected one of: nearby; a map with station; a map with epw; a map with file, kind; did you mean nearby?",
    ],
    [
      'alternatives: the map that is meant',
      'climate: nearby',
      "climate: { station: '72' }",
      "19:23  site.climate.station  '72' is no station number: six digits in quotes, for example '724940'",
    ],
    [
      'alternatives: two maps at once',
      'climate: nearby',
      "climate: { station: '724940', epw: a.epw }",
      '19:12  site.climate  found a map with station, epw; expected one of: nearby; a map with station; a map with epw; a map with file, kind',
    ],
    [
      'alternatives: no map fits',
      'climate: nearby',
      'climate: { folder: a.epw }',
      '19:12  site.climate  found a map with folder; expected one of: nearby; a map with station; a map with epw; a map with file, kind',
    ],
    [
      'alternatives: number out of range',
      'climate: nearby',
      'albedo: 1.2',
      '19:11  site.albedo  1.2 is too high; allowed: 0 to 1',
    ],
    [
      'alternatives: entry of the list out of range',
      'climate: nearby',
      'albedo: [0, 0, 0, 0, 0, 2, 0, 0, 0, 0, 0, 0]',
      '19:27  site.albedo.5  2 is too high; allowed: 0 to 1',
    ],
    [
      'alternatives: wrong type',
      'climate: nearby',
      'albedo: true',
      '19:11  site.albedo  found true; expected a number (0 to 1), or a list of 12 numbers (0 to 1)',
    ],
    [
      'alternatives: number in quotes',
      'climate: nearby',
      "albedo: '0.2'",
      "19:11  site.albedo  found text '0.2'; expected a number (0 to 1), or a list of 12 numbers (0 to 1); remove the quotes",
    ],
  ]
  test.each(CASES)('%s', (_name, from, to, problem) => {
    expect(problemsOf(starterWith(from, to))).toContainEqual(problem)
  })

  test('all problems at once, from top to bottom', () => {
    const text = STARTER.replace('standoff_in: 4', 'standoff_in: -1')
      .replace('invented: true', 'invented: 1')
      .replace('kind: module_level', 'kind: micro')
      .replace('    azimuth_deg', '    azimth_deg')
    const lines = problemsOf(text).map((line) => line.split('  ')[0])
    expect(lines).toEqual(['11:13', '23:5', '35:18', '56:13'])
  })

  test('a file name stands before the line', () => {
    const error = failureOf(() => loadText(starterWith('azimuth_deg: 180', 'azimuth_deg: 400')))
    expect(error.message).toBe(
      '<stdin>:23:18  roof_planes.south.azimuth_deg  400 deg is too high; allowed: 0 to 360 deg',
    )
    expect(error.problems).toEqual([
      {
        file: '<stdin>',
        line: 23,
        column: 18,
        length: 3,
        path: 'roof_planes.south.azimuth_deg',
        message: '400 deg is too high; allowed: 0 to 360 deg',
      },
    ])
  })
})

describe('keywords that the schema may use', () => {
  const say = (schema: Schema, value: unknown): string[] =>
    explain(schema, value, ['x_ft'], { root: schema, sourceAt: () => undefined }).map(
      ({ segments, message }: Complaint) => `${segments.join('.')}: ${message}`,
    )
  const CASES: readonly (readonly [name: string, schema: Schema, value: unknown, said: readonly string[]])[] = [
    ['multipleOf', { type: 'number', multipleOf: 0.5 }, 1.3, ['x_ft: 1.3 ft is not a multiple of 0.5 ft']],
    ['exclusiveMaximum', { type: 'number', exclusiveMaximum: 5 }, 5, ['x_ft: 5 ft is too high; allowed: below 5 ft']],
    ['minLength', { type: 'string', minLength: 3 }, 'ab', ["x_ft: 'ab' is too short; at least 3 characters"]],
    ['maxLength', { type: 'string', maxLength: 3 }, 'abcd', ["x_ft: 'abcd' is too long; at most 3 characters"]],
    [
      'pattern',
      { type: 'string', pattern: '^r$', examples: ['r'] },
      'x',
      ["x_ft: 'x' does not have the right form; for example 'r'"],
    ],
    ['maxItems', { type: 'array', maxItems: 1 }, [1, 2], ['x_ft: 2 entries; at most 1 allowed']],
    ['uniqueItems', { type: 'array', uniqueItems: true }, [1, 1], ['x_ft: the same entry stands twice']],
    [
      'maxProperties',
      { type: 'object', maxProperties: 1 },
      { a: 1, b: 2 },
      ['x_ft: a map with 2 entries; at most 1 allowed'],
    ],
    [
      'dependentRequired',
      { type: 'object', properties: { b: { description: 'The b.' } }, dependentRequired: { a: ['b'] } },
      { a: 1 },
      ['x_ft.b: missing (needed with a); The b'],
    ],
    [
      'if, then',
      {
        type: 'object',
        properties: { kind: { enum: ['p', 'q'] }, size_ft: { type: 'number', description: 'Size.', examples: [3] } },
        if: { properties: { kind: { const: 'p' } } },
        then: { required: ['size_ft'] },
      },
      { kind: 'p' },
      ["x_ft.size_ft: missing; Size; for example 'size_ft: 3'"],
    ],
    ['else', { type: 'object', if: { required: ['a'] }, then: {}, else: { required: ['b'] } }, {}, ['x_ft.b: missing']],
    [
      'allOf',
      {
        allOf: [
          { type: 'number', minimum: 3 },
          { type: 'number', maximum: 1 },
        ],
      },
      2,
      ['x_ft: 2 ft is too low; allowed: at least 3 ft', 'x_ft: 2 ft is too high; allowed: at most 1 ft'],
    ],
    [
      'not',
      { not: { required: ['a', 'b'], description: 'a and b exclude each other' } },
      { a: 1, b: 1 },
      ['x_ft: this combination is not allowed; a and b exclude each other'],
    ],
    [
      'oneOf, several fit',
      { oneOf: [{ required: ['a'] }, { required: ['b'] }] },
      { a: 1, b: 1 },
      ['x_ft: fits several of: a map with a; a map with b; give one of them'],
    ],
    [
      'anyOf, none of the keys',
      { type: 'object', anyOf: [{ required: ['a'] }, { required: ['b'] }] },
      {},
      ['x_ft: found a map with no keys; expected one of: a map with a; a map with b'],
    ],
    [
      'anyOf told apart by a word',
      {
        anyOf: [
          { type: 'object', properties: { kind: { const: 'net' } } },
          { type: 'object', properties: { kind: { const: 'gross' } } },
        ],
      },
      { kind: 'nett' },
      ["x_ft.kind: found text 'nett'; expected one of: net, gross; did you mean net?"],
    ],
    [
      'anyOf, the branch with the word',
      {
        anyOf: [
          { type: 'object', required: ['a'], properties: { kind: { const: 'net' } } },
          { type: 'object', required: ['b'], properties: { kind: { const: 'gross' }, a: {} } },
        ],
      },
      { kind: 'net' },
      ['x_ft.a: missing'],
    ],
  ]
  test.each(CASES)('%s', (_name, schema, value, said) => {
    expect(say(schema, value)).toEqual(said)
  })

  test('the project schema uses no keyword that is not explained', () => {
    const explained = new Set(
      (
        '$schema $id $defs $ref title description examples type const enum minimum maximum exclusiveMinimum ' +
        'exclusiveMaximum multipleOf pattern minLength maxLength items minItems maxItems uniqueItems properties required ' +
        'additionalProperties propertyNames minProperties maxProperties dependentRequired anyOf oneOf allOf not if then else'
      ).split(' '),
    )
    const unknown: string[] = []
    const walk = (schema: unknown, path: string): void => {
      if (typeof schema !== 'object' || schema === null) return
      for (const [key, inner] of Object.entries(schema)) {
        if (!explained.has(key)) unknown.push(`${path}/${key}`)
        if (key === 'properties' || key === '$defs') {
          for (const [name, property] of Object.entries(inner as object)) walk(property, `${path}/${key}/${name}`)
        } else if (Array.isArray(inner) && ['anyOf', 'oneOf', 'allOf'].includes(key))
          inner.forEach((each, i) => walk(each, `${path}/${key}/${i}`))
        else if (['items', 'additionalProperties', 'propertyNames', 'not', 'if', 'then', 'else'].includes(key))
          walk(inner, `${path}/${key}`)
      }
    }
    walk(projectSchema(), '')
    expect(unknown).toEqual([])
  })
})
