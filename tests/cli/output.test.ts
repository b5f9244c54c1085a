import { assert as holdsForAll, double, integer, property, string } from '../fast-check.js'
import { describe, expect, test } from 'vitest'
import {
  displayWidth,
  FILE_STYLE,
  plotXY,
  renderMarkdown,
  renderText,
  streamStyle,
  workLines,
  wrapText,
} from '../../src/cli/output/index.js'
import {
  cleanJson,
  cleanLine,
  cleanText,
  columnKey,
  formatNumber,
  formatSignificant,
  renderCsv,
  renderJson,
  roundForMachines,
  type Report,
  type ReportContext,
  type TableData,
} from '../../src/report/index.js'
import { renderTable } from '../../src/cli/output/table.js'
import type { Step } from '../../src/worksheet/index.js'

const stated = { document: 'project.yaml', standing: 'project file' } as const

const step: Step = {
  id: 'wire.main.current',
  says: 'Continuous current of the circuit',
  formula: 'I_max = N * I_out * F',
  inputs: [
    { symbol: 'N', value: 7, unit: 'modules', from: 'arrays.main.modules' },
    { symbol: 'I_out', value: 1.21, unit: 'A', from: 'equipment.inverters.micro.output_a' },
    { symbol: 'F', value: -1.25, unit: '', from: 'invented for this test' },
  ],
  result: { symbol: 'I_max', value: 10.5875, unit: 'A' },
  check: { relation: '<=', limit: 16, pass: true },
  source: stated,
}

const report: Report = {
  title: 'Invented house',
  stage: 'trial',
  sections: [
    {
      kind: 'table',
      heading: 'By month',
      columns: [{ heading: 'Month' }, { heading: 'Energy', unit: 'kWh', decimals: 1 }, { heading: 'Note' }],
      rows: [
        ['January', 1234.56, 'snow'],
        ['February', null, { value: 'none', tone: 'bad' }],
      ],
      total: ['Year', 1234.56, ''],
    },
    { kind: 'facts', facts: [{ label: 'Yield', value: 9312.4, unit: 'kWh' }] },
    { kind: 'paragraph', text: 'One sentence.' },
    { kind: 'list', items: ['first', 'second'] },
    {
      kind: 'bars',
      unit: 'kWh',
      bars: [
        { label: 'Jan', value: 50 },
        { label: 'Jul', value: 100 },
      ],
    },
    {
      kind: 'plot',
      x: { label: 'Tilt', unit: 'deg' },
      y: { label: 'Energy', unit: 'kWh' },
      series: [
        {
          name: 'south',
          points: [
            [0, 80],
            [30, 100],
            [60, 70],
          ],
        },
      ],
    },
  ],
  result: {
    values: { annual_kwh: 9312.4 },
    worksheet: [step],
    findings: [
      { severity: 'note', id: 'trial.note', message: 'a note', where: '' },
      {
        severity: 'error',
        id: 'trial.error',
        message: 'too thin',
        where: 'site.x',
        source: stated,
        fix: 'take a thicker one',
      },
    ],
    assumptions: [{ path: 'losses.unequal_modules_pct', value: 1, unit: '%', why: 'not stated', source: stated }],
  },
  cautions: ['height', 'authority'],
}

const context: ReportContext = {
  tool: 'gablewatt 0.0.0',
  project: { title: 'Invented house', digest: 'abc' },
  locate: (path) => (path === 'site.x' ? 'project.yaml:3:5' : undefined),
  showWork: true,
}

describe('numbers', () => {
  test.each([
    [1234567.891, 2, '1,234,567.89'],
    [999, 0, '999'],
    [1000, 0, '1,000'],
    [-0.004, 2, '0.00'],
    [-0, 0, '0'],
    [-1234.5, 1, '-1,234.5'],
  ])('%f with %i decimals is %s', (value, decimals, text) => {
    expect(formatNumber(value, decimals)).toBe(text)
  })

  test.each([Number.NaN, Number.POSITIVE_INFINITY])('%f never reaches output', (value) => {
    expect(() => formatNumber(value)).toThrow('a number in the output')
    expect(() => formatSignificant(value)).toThrow('a number in the output')
    expect(() => roundForMachines(value)).toThrow('a number in the output')
  })

  test('read back without separators, a formatted number is within half a unit of the last place', () => {
    holdsForAll(
      property(double({ min: -1e9, max: 1e9, noNaN: true }), integer({ min: 0, max: 6 }), (value, decimals) => {
        const back = Number(formatNumber(value, decimals).replaceAll(',', ''))
        expect(Math.abs(back - value)).toBeLessThanOrEqual(0.5 * 10 ** -decimals * (1 + 1e-6) + Math.abs(value) * 1e-15)
        expect(Object.is(back, -0)).toBe(false)
      }),
      { numRuns: 200 },
    )
  })

  test('machines get 10 significant digits', () => {
    expect(roundForMachines(0.1 + 0.2)).toBe(0.3)
    expect(roundForMachines(1234567.00049)).toBe(1234567)
    expect(Object.is(roundForMachines(-0), 0)).toBe(true)
  })
})

describe('text of a stranger', () => {
  const nasty = 'a\u001B[31mb\u001B]0;title\u0007c\u009B2Jd\u202Ee\u0000f\rg\u001BPq\u001B\\h'

  test('loses every escape sequence and control character', () => {
    expect(cleanText(nasty)).toBe('abcdef\ngh')
    expect(cleanLine('two\nlines\tand a tab')).toBe('two lines and a tab')
  })

  test('of any kind holds nothing that steers a terminal', () => {
    holdsForAll(
      property(string({ unit: 'binary' }), (text) => {
        // oxlint-disable-next-line no-control-regex
        expect(cleanLine(text)).not.toMatch(/[\u0000-\u001F\u007F-\u009F\u202A-\u202E\u2066-\u2069]/u)
      }),
    )
  })

  test('is unchanged in JSON and yet harmless', () => {
    const json = cleanJson(JSON.stringify({ nasty }))
    expect(JSON.parse(json)).toEqual({ nasty })
    // oxlint-disable-next-line no-control-regex
    expect(json).not.toMatch(/[\u0000-\u001F\u007F-\u009F\u202A-\u202E]/u)
  })

  test('does not reach any of the four formats', async () => {
    const hostile: Report = {
      ...report,
      title: nasty,
      sections: [
        { kind: 'table', heading: nasty, columns: [{ heading: nasty, unit: nasty }], rows: [[nasty]] },
        { kind: 'facts', facts: [{ label: nasty, value: nasty, unit: nasty }] },
        { kind: 'paragraph', text: nasty },
        { kind: 'list', items: [nasty] },
        { kind: 'bars', unit: nasty, bars: [{ label: nasty, value: 1 }] },
        { kind: 'plot', x: { label: nasty }, y: { label: nasty }, series: [{ name: nasty, points: [[0, 0]] }] },
      ],
      result: {
        values: { [nasty]: nasty },
        worksheet: [{ ...step, says: nasty, formula: nasty, result: { symbol: nasty, value: nasty, unit: nasty } }],
        findings: [{ severity: 'error', id: 'trial.x', message: nasty, where: nasty, fix: nasty }],
        assumptions: [{ path: nasty, value: nasty, unit: nasty, why: nasty, source: stated }],
      },
    }
    const around = { ...context, locate: () => nasty }
    const texts = [
      await renderText(hostile, around, FILE_STYLE),
      renderMarkdown(hostile, around),
      renderCsv({ columns: [{ heading: nasty, key: nasty }], rows: [[nasty]] }).replaceAll('\r\n', '\n'),
      renderJson(hostile, around),
    ]
    // oxlint-disable-next-line no-control-regex
    for (const text of texts) expect(text).not.toMatch(/[\u0000-\u0009\u000B-\u001F\u007F-\u009F\u202A-\u202E]/u)
  })
})

describe('wrapping', () => {
  test('fits the width and loses no letter', () => {
    holdsForAll(
      property(string({ unit: 'grapheme', maxLength: 120 }), integer({ min: 2, max: 40 }), (raw, width) => {
        const text = cleanLine(raw)
        const lines = wrapText(text, width)
        for (const line of lines) expect(displayWidth(line)).toBeLessThanOrEqual(width)
        expect(lines.join('').replaceAll(' ', '')).toBe(text.replaceAll(' ', ''))
      }),
    )
  })
})

describe('a table', () => {
  const table: TableData = {
    columns: [{ heading: 'Path' }, { heading: 'Value', unit: 'ft', decimals: 2 }, { heading: 'Why' }],
    rows: [
      ['roof_planes.south.azimuth_deg', 1234.5, 'because a long reason needs more than one line to be told in full'],
      ['site', 2, 'short'],
    ],
    total: ['all', 1236.5, ''],
  }

  test('is light, with numbers right under their heading', () => {
    expect(
      renderTable({ columns: table.columns, rows: [['site', 2, 'short']], total: ['all', 1236.5, ''] }, FILE_STYLE),
    ).toEqual([
      'Path  Value (ft)  Why',
      '----  ----------  -----',
      'site        2.00  short',
      '----  ----------  -----',
      'all     1,236.50',
    ])
  })

  test.each([40, 60, 80, 140, 200])('fits %i columns and keeps every word', (width) => {
    const lines = renderTable(table, { ...FILE_STYLE, width })
    for (const line of lines) expect(displayWidth(line)).toBeLessThanOrEqual(width)
    const squeezed = lines.join('').replaceAll(/\s/gu, '')
    for (const number of ['1,234.50', '2.00', '1,236.50']) expect(squeezed).toContain(number)
    for (const word of ['reason', 'full', 'short']) expect(lines.join(' ')).toContain(word)
  })

  test('loses no letter of any script', () => {
    holdsForAll(
      property(string({ unit: 'grapheme', maxLength: 60 }), integer({ min: 40, max: 100 }), (raw, width) => {
        const text = cleanLine(raw)
        const lines = renderTable(
          { columns: [{ heading: 'N' }, { heading: 'Text' }], rows: [[1, text]] },
          { ...FILE_STYLE, width },
        )
        const shown = lines.slice(2).join('').replaceAll(/\s/gu, '')
        expect(shown).toBe(`1${text.replaceAll(/\s/gu, '')}`)
      }),
    )
  })

  test('of many rows has every row once, under the same columns', () => {
    const rows = Array.from({ length: 50 }, (_, index) => [`row ${index}`, index === 20 ? 1_000_000 : index])
    const lines = renderTable({ columns: [{ heading: 'Name' }, { heading: 'Value' }], rows }, FILE_STYLE)
    const shown = (value: number): string => (value === 20 ? '1,000,000' : String(value)).padStart(9)
    expect(lines).toEqual([
      'Name        Value',
      '------  ---------',
      ...rows.map(([name], index) => `${String(name).padEnd(6)}  ${shown(index)}`),
    ])
  })

  test('becomes blocks when even the numbers do not fit beside each other', () => {
    const columns = Array.from({ length: 12 }, (_, index) => ({ heading: `M${index}` }))
    const lines = renderTable({ columns, rows: [columns.map(() => 1_000_000)] }, { ...FILE_STYLE, width: 40 })
    expect(lines[0]).toBe('M0: 1,000,000')
    expect(lines).toHaveLength(12)
  })

  test('with a row of the wrong length is a defect', () => {
    expect(() => renderTable({ columns: [{ heading: 'A' }], rows: [[1, 2]] }, FILE_STYLE)).toThrow(
      '2 cells for 1 column',
    )
  })
})

describe('a plot', () => {
  const lines = plotXY(
    { label: 'Tilt', unit: 'deg' },
    { label: 'Energy', unit: 'kWh' },
    [
      {
        name: 'a',
        points: [
          [0, 0],
          [50, 1100],
          [100, 0],
        ],
      },
    ],
    {
      ...FILE_STYLE,
      width: 60,
    },
  )

  test('has its highest point in the top row, the others in the bottom row, and labelled ends', () => {
    expect(lines[0]).toBe('Energy (kWh)')
    expect(lines[1]).toMatch(/^1,100 \| +\.*\*\.*$/u)
    expect(lines[12]).toMatch(/^ +0 \|\*\.* +\.*\*$/u)
    expect(lines[14]).toMatch(/^ +0 +100$/u)
    expect(lines.at(-1)?.trim()).toBe('Tilt (deg)')
  })

  test('of a constant still draws', () => {
    expect(plotXY({ label: 'x' }, { label: 'y' }, [{ name: 'a', points: [[1, 5]] }], FILE_STYLE).join('\n')).toContain(
      '*',
    )
  })
})

describe('a worksheet step', () => {
  test('shows the formula with the numbers put in', () => {
    expect(workLines(step)).toMatchObject({
      written: ['I_max = N * I_out * F = 7 modules x 1.21 A x (-1.25) = 10.5875 A'],
      numbers: '7 modules x 1.21 A x (-1.25)',
      result: 'I_max = 10.5875 A',
      check: '10.5875 <= 16 A: holds',
      inputs: [
        'N = 7 modules (arrays.main.modules)',
        'I_out = 1.21 A (equipment.inverters.micro.output_a)',
        'F = -1.25 (invented for this test)',
      ],
    })
  })

  test('does not mistake a letter inside another symbol', () => {
    const [n] = step.inputs
    if (n === undefined) throw new Error('no input')
    const other = { ...n, symbol: 'N_max', value: 9 }
    expect(workLines({ ...step, formula: 'y = N_max + N', inputs: [n, other] }).numbers).toBe('9 modules + 7 modules')
    expect(workLines({ ...step, formula: 'y = N_max + N', inputs: [n] })).toMatchObject({
      numbers: undefined,
      written: ['y = N_max + N', 'I_max = 10.5875 A'],
    })
  })

  test.each([
    ['words', 'I_max = sum of N outputs', undefined],
    ['words that are symbols only in part', 'I_max = N for I_out', undefined],
    ['two formulas', 'I_max = N * I_out, N = 7', undefined],
    ['a comparison of a result', 'I_max = N * I_out >= F', undefined],
    ['an operator without its operand', 'I_max = N * ', undefined],
    ['a bracket without its other', 'I_max = (N * I_out', undefined],
    ['a list outside a function', 'I_max = (N, I_out)', undefined],
    ['factors beside each other', 'I_max = 2 N (I_out + 1)', '2 x 7 modules x (1.21 A + 1)'],
    ['functions', 'I_max = max(N, I_out^2)', 'max(7 modules, (1.21 A)^2)'],
    ['a sign', 'I_max = -N x F', '-7 modules x (-1.25)'],
    ['a comparison', 'I_max <= 2 x N', '10.5875 A <= 2 x 7 modules'],
  ] as const)('%s', (_, formula, numbers) => {
    expect(workLines({ ...step, formula }).numbers).toBe(numbers)
  })

  test('a comparison stands beside its numbers, the result on a line of its own', () => {
    expect(workLines({ ...step, formula: 'I_max <= 2 x N' }).written).toEqual([
      'I_max <= 2 x N: 10.5875 A <= 2 x 7 modules',
      'I_max = 10.5875 A',
    ])
    expect(workLines({ ...step, formula: 'P = N x 2' }).written).toEqual([
      'P = N x 2 = 7 modules x 2',
      'I_max = 10.5875 A',
    ])
  })
})

describe('the four formats', () => {
  test('text', async () => {
    expect(await renderText(report, context, FILE_STYLE)).toMatchSnapshot()
  })
  test('Markdown', () => {
    expect(renderMarkdown(report, context)).toMatchSnapshot()
  })
  test('JSON', () => {
    expect(renderJson(report, context)).toMatchSnapshot()
  })
  test('text without colour is the text with colour less its escapes', async () => {
    const style = await streamStyle({ isTTY: false, columns: 100 }, { FORCE_COLOR: '1' }, true)
    const coloured = await renderText(report, context, style)
    expect(coloured).toContain('\u001B[')
    // oxlint-disable-next-line no-control-regex
    expect(coloured.replaceAll(/\u001B\[\d+m/gu, '')).toBe(await renderText(report, context, FILE_STYLE))
  })
})

describe('Markdown', () => {
  test('of a name is neither link nor HTML nor a table cell too many', () => {
    const text = renderMarkdown(
      { ...report, title: '[x](http://a.invalid) <b>|`', sections: [] },
      { ...context, showWork: false },
    )
    expect(text.split('\n')[0]).toBe('# \\[x\\](http://a.invalid) \\<b\\>\\|\\`')
  })
})

describe('CSV', () => {
  test('quotes as RFC 4180 says and keeps numbers as numbers', () => {
    const table: TableData = {
      columns: [{ heading: 'Name' }, { heading: 'Share', unit: '%' }],
      rows: [
        ['a "b", c\nd', 0.1 + 0.2],
        [null, -5],
      ],
    }
    expect(renderCsv(table)).toBe('name,share_pct\r\n"a ""b"", c\nd",0.3\r\n,-5\r\n')
  })

  test.each(['=1+1', '+cmd', '-x', '@sum', '\t=1', '-1+1', ' =1'])('defuses %j', (text) => {
    const cell = renderCsv({ columns: [{ heading: 'A' }], rows: [[text]] }).split('\r\n')[1] ?? ''
    expect(cell.replaceAll('"', '').startsWith("'")).toBe(true)
  })

  test.each(['-12.5', '+3', '1e3', 'plain'])('leaves %j alone', (text) => {
    expect(renderCsv({ columns: [{ heading: 'A' }], rows: [[text]] })).toBe(`a\r\n${text}\r\n`)
  })

  test('heading', () => {
    expect(columnKey({ heading: 'Irradiation', unit: 'kWh/m2' })).toBe('irradiation_kwh_per_m2')
  })
})

describe('JSON', () => {
  test.each([{ a: Number.NaN }, { a: [undefined] }, { a: new Map() }, { a: () => 1 }])('refuses %j', (values) => {
    expect(() => renderJson({ ...report, result: { ...report.result, values } }, context)).toThrow('result /values/a')
  })
})

async function isColoured(
  stream: { isTTY?: boolean },
  env: Record<string, string>,
  allowed: boolean,
): Promise<boolean> {
  const { paint } = await streamStyle(stream, env, allowed)
  return paint('bad', 'x') !== 'x'
}

describe('colour and width', () => {
  const tty = { isTTY: true, columns: 80 }
  test.each([
    ['a terminal', tty, {}, true, true],
    ['a pipe', {}, {}, true, false],
    ['NO_COLOR', tty, { NO_COLOR: '1' }, true, false],
    ['an empty NO_COLOR', tty, { NO_COLOR: '' }, true, true],
    ['a dumb terminal', tty, { TERM: 'dumb' }, true, false],
    ['--no-color', tty, {}, false, false],
    ['FORCE_COLOR on a pipe', {}, { FORCE_COLOR: '1' }, true, true],
    ['FORCE_COLOR=0', tty, { FORCE_COLOR: '0' }, true, false],
    ['NO_COLOR before FORCE_COLOR', tty, { NO_COLOR: '1', FORCE_COLOR: '1' }, true, false],
  ])('%s', async (_name, stream, env, allowed, expected) => {
    expect(await isColoured(stream, env, allowed)).toBe(expected)
  })

  test.each([
    [{ columns: 80 }, { COLUMNS: '120' }, 80],
    [{}, { COLUMNS: '120' }, 120],
    [{}, {}, 100],
    [{ columns: 10 }, {}, 40],
    [{ columns: 900 }, {}, 200],
    [{}, { COLUMNS: 'wide' }, 100],
  ])('width %#', async (stream, env, width) => {
    const style = await streamStyle(stream, env, true)
    expect(style.width).toBe(width)
  })
})
