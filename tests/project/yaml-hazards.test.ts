import { describe, expect, test } from 'vitest'
import { failureOf, loadText, problemsOf, STARTER, starterWith } from './support.js'

const nested = (levels: number) => `${STARTER}model: ${'['.repeat(levels)}${']'.repeat(levels)}\n`
const bomb = [
  'a: &a [1, 1, 1, 1, 1, 1, 1, 1, 1, 1]',
  ...'bcdefgh'
    .split('')
    .map((c, i) => `${c}: &${c} [${Array.from({ length: 10 }, () => `*${'abcdefg'[i] ?? ''}`).join(', ')}]`),
].join('\n')

const EMPTY = "is empty; 'gablewatt new-project' writes a file to start from"

const CASES: readonly (readonly [name: string, text: string, problems: readonly string[]])[] = [
  ['empty file', '', [`  ${EMPTY}`]],
  ['blank file', ' \n\n', [`  ${EMPTY}`]],
  ['only comments', '# nothing\n', [`  ${EMPTY}`]],
  ['only a document mark', '---\n', [`  ${EMPTY}`]],
  ['list at the root', '- a\n- b\n', ["1:1  a project file is a map of 'key: value' lines; found a list of 2"]],
  ['text at the root', 'hello\n', ["1:1  a project file is a map of 'key: value' lines; found text 'hello'"]],
  [
    'duplicate key',
    starterWith('    azimuth_deg: 180', '    azimuth_deg: 180\n    azimuth_deg: 190'),
    ['24:5  roof_planes.south.azimuth_deg  this key stands twice in the same map; keep one of them'],
  ],
  [
    'duplicate key in a flow map',
    starterWith('width_ft: 40', 'width_ft: 40, width_ft: 41'),
    ['26:48  roof_planes.south.outline.width_ft  this key stands twice in the same map; keep one of them'],
  ],
  [
    'tab',
    'format: gablewatt/2\nsite:\n\tlatitude_deg: 3\n',
    ['3:1  a tab indents this line; YAML allows spaces only: replace the tab by spaces'],
  ],
  [
    'several documents',
    `${STARTER}---\ntitle: Another\n`,
    ["64:1  a second document starts here; a project file holds one: remove the '---' line or split the file"],
  ],
  [
    'alias bomb',
    bomb,
    ['5:16  e.2  aliases (*name) make this file stand for far more than it holds; write the values out'],
  ],
  [
    'far too many values',
    `documents: [${'a, '.repeat(40_001)}b]`,
    ['1:120007  documents.39998  holds more than 40000 values; a project has a few hundred'],
  ],
  [
    'nothing but brackets',
    `a: ${'[}'.repeat(300_000)}`,
    [
      '1:199999  holds more than 200000 marks of YAML (brackets, colons, breaks of lines); a whole job has about 5000: split it or take out what is not of this house',
    ],
  ],
  ['alias inside itself', 'title: &a [*a]\n', ['1:12  title.0  alias *a lies inside itself']],
  ['alias of nothing', 'title: *a\n', ['1:8  title  no anchor &a stands before this alias']],
  ['tag', 'title: !shout hello\n', ['1:8  tags (!name) are not used in project files; remove it']],
  [
    'older YAML',
    '%YAML 1.1\n---\ntitle: no\n',
    ['1:1  YAML 1.1 is asked for; this file is read as YAML 1.2: remove the %YAML line'],
  ],
  ['a key that is a list', '? [a, b]\n: c\n', ['1:3  a key must be plain text']],
  ['a key that is missing', ': c\n', ['1:1  a key must be plain text']],
  ['very deep lists', nested(100), ['64:47  nested more than 40 levels deep; a project file needs about 8']],
  ['hostile depth', nested(50_000), ['64:47  nested more than 40 levels deep; a project file needs about 8']],
  [
    'hostile depth of maps',
    '{a: '.repeat(50_000),
    ['1:158  nested more than 40 levels deep; a project file needs about 8'],
  ],
  [
    'hostile depth of dashes',
    '- '.repeat(50_000),
    ['1:80  nested more than 40 levels deep; a project file needs about 8'],
  ],
  ['NUL', 'title: a\0b\n', ['  holds NUL characters; it is not a text file']],
  ['more than 2 MB', `title: ${'x'.repeat(2_000_000)}`, ['  is 2.1 MB large; at most 2.0 MB is read']],
  [
    'two values on a line',
    'title: a: b\n',
    ["1:8  two 'key: value' on one line; start a new line, or put a value that holds ': ' in quotes"],
  ],
  [
    'open quotes',
    'title: "abc\n',
    ['2:1  not readable as YAML: missing closing "quote; close the quotes or the bracket that was opened'],
  ],
  [
    'a value that starts with @',
    'title: @home\n',
    ['1:8  not readable as YAML: plain value cannot start with reserved character @; put the value in quotes'],
  ],
]

describe('what YAML allows and a project file does not', () => {
  test.each(CASES)('%s', (_name, text, problems) => {
    expect(problemsOf(text)).toEqual(problems)
    expect(failureOf(() => loadText(text)).exitCode).toBe(2)
  })

  const VALUES: readonly (readonly [name: string, from: string, to: string, problem: string])[] = [
    [
      'not a number',
      'pmax_w: 410',
      'pmax_w: .nan',
      '42:15  equipment.modules.m410.pmax_w  not a number (.nan); expected a number (above 0, at most 1000 W)',
    ],
    [
      'infinite',
      'pmax_w: 410',
      'pmax_w: -.inf',
      '42:15  equipment.modules.m410.pmax_w  an infinite number; expected a number (above 0, at most 1000 W)',
    ],
    [
      'too many digits for a number',
      'pmax_w: 410',
      'pmax_w: 1e999',
      '42:15  equipment.modules.m410.pmax_w  an infinite number; expected a number (above 0, at most 1000 W)',
    ],
    [
      'number in quotes',
      'pmax_w: 410',
      "pmax_w: '410'",
      "42:15  equipment.modules.m410.pmax_w  found text '410'; expected a number (above 0, at most 1000 W); remove the quotes",
    ],
    [
      'number with a unit',
      'standoff_in: 4',
      'standoff_in: 4 in',
      "35:18  arrays.south.standoff_in  found text '4 in'; expected a number (0 to 120 in); write 4 alone: the key says that it is in in",
    ],
    [
      'number with a thousands separator',
      'max_dc_power_w: 540',
      'max_dc_power_w: 1,540',
      "61:23  equipment.inverters.micro366.max_dc_power_w  found text '1,540'; expected a number (above 0, at most 200000 W); write 1540",
    ],
    [
      'station number without quotes',
      'climate: nearby',
      'climate: { station: 024940 }',
      "19:23  site.climate.station  found the number 24940; expected text; put it in quotes: '024940'",
    ],
    [
      'empty value',
      'standoff_in: 4',
      'standoff_in:',
      '35:5  arrays.south.standoff_in  nothing stands here; expected a number (0 to 120 in); write a value, or delete the line',
    ],
    [
      'merge key',
      '    pitch_in_12: 6',
      '    <<: { tilt_deg: 20 }\n    pitch_in_12: 6',
      '24:5  roof_planes.south.<<  merge keys (<<) are not part of YAML 1.2 and are not followed; write the values out',
    ],
    [
      'merge key among ids',
      '  south:  # the',
      '  <<: {}\n  south:  # the',
      '22:3  roof_planes.<<  merge keys (<<) are not part of YAML 1.2 and are not followed; write the values out',
    ],
    ['prototype', 'document:', '__proto__: { a: 1 }\ndocument:', '10:1  __proto__  this key is not allowed'],
    [
      'prototype as an id',
      '  south:  # the',
      '  __proto__: { azimuth_deg: 3 }\n  south:  # the',
      '22:3  roof_planes.__proto__  this key is not allowed',
    ],
    [
      'inherited name as a reference',
      'roof_plane: south',
      'roof_plane: constructor',
      "30:17  arrays.south.roof_plane  no 'constructor' under roof_planes; known there: south",
    ],
    [
      'yes for true',
      'invented: true',
      'invented: yes',
      "11:13  document.invented  found text 'yes'; expected true or false; write true",
    ],
  ]
  test.each(VALUES)('%s', (_name, from, to, problem) => {
    expect(problemsOf(starterWith(from, to))).toEqual([problem])
  })

  test('byte-order mark, CRLF and aliases are accepted', () => {
    const { project } = loadText(`\uFEFF${STARTER.replaceAll('\n', '\r\n')}`)
    expect(project).toEqual(loadText(STARTER).project)
    const shared = starterWith(
      '{ shape: rectangle, width_ft: 40, depth_ft: 16 }',
      '&o { shape: rectangle, width_ft: 40, depth_ft: 16 }',
    )
    const twice = shared.replace('\narrays:', '  north: { azimuth_deg: 0, tilt_deg: 20, outline: *o }\n\narrays:')
    const loaded = loadText(twice, { overrides: ['roof_planes.north.outline.width_ft=30'] })
    expect(loaded.project.roof_planes['north']?.outline?.width_ft).toBe(30)
    expect(loaded.project.roof_planes['south']?.outline?.width_ft).toBe(40)
  })

  test('a problem inside an alias points at the anchor', () => {
    const shared = starterWith(
      '{ shape: rectangle, width_ft: 40, depth_ft: 16 }',
      '&o { shape: rectangle, width_ft: -40, depth_ft: 16 }',
    )
    const twice = shared.replace('\narrays:', '  north: { azimuth_deg: 0, tilt_deg: 20, outline: *o }\n\narrays:')
    expect(problemsOf(twice).map((line) => line.split('  ').slice(0, 2))).toEqual([
      ['26:47', 'roof_planes.south.outline.width_ft'],
      ['26:47', 'roof_planes.north.outline.width_ft'],
    ])
  })

  test('many keys in one map take little time', () => {
    const text = Array.from({ length: 28_000 }, (_, i) => `k${i}: 1`).join('\n')
    const start = performance.now()
    expect(problemsOf(text)).toHaveLength(201)
    expect(performance.now() - start).toBeLessThan(10_000)
  })
})
