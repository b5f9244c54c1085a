// What steers a terminal, a reader or a spreadsheet, through everything that writes a text: none of it comes out, and the rest of
// the text is whole.
import { describe, expect, test } from 'vitest'
import { explainFailure } from '../../src/cli/failure.js'
import { DesignError, UsageError } from '../../src/cli/errors.js'
import { FILE_STYLE, renderMarkdown, renderText } from '../../src/cli/output/index.js'
import { checkTexts } from '../../src/drawings/index.js'
import { planMarkdown } from '../../src/fieldwork/index.js'
import { FileError } from '../../src/files/index.js'
import { jsonLine, junitXml } from '../../src/fleet/index.js'
import { tariffYaml } from '../../src/money/rates/tariff-yaml.js'
import { paperHtml, paperMarkdown, type Paper } from '../../src/papers/pages/index.js'
import { formatProblem, ProjectError } from '../../src/project/index.js'
import { formatCodeFrame } from '../../src/project/code-frame.js'
import {
  cleanJson,
  cleanLine,
  cleanText,
  markdownLine,
  markedLine,
  renderCsv,
  renderJson,
  type Report,
  type ReportContext,
} from '../../src/report/index.js'
import { StageError } from '../../src/worksheet/index.js'

const [ESC, BEL, ST] = ['\u001B', '\u0007', '\u001B\\']

/** A text, and what is left of it on one line. */
const TEXTS: readonly (readonly [name: string, text: string, left: string])[] = [
  ['a colour', `ab${ESC}[1;31mcd`, 'abcd'],
  ['a clearing of the screen', `ab${ESC}[2Jcd`, 'abcd'],
  ['another screen', `ab${ESC}[?1049hcd`, 'abcd'],
  ['a control sequence of one byte', 'ab\u009B2Jcd', 'abcd'],
  ['a control sequence without end', `abcd${ESC}[31`, 'abcd'],
  ['a link, ended by ST', `ab${ESC}]8;;http://x.invalid${ST}cd${ESC}]8;;${ST}ef`, 'abcdef'],
  ['a link, ended by BEL', `ab${ESC}]8;;http://x.invalid${BEL}cd${ESC}]8;;${BEL}ef`, 'abcdef'],
  ['a title, ended by BEL', `ab${ESC}]0;0wn3d${BEL}cd`, 'abcd'],
  ['a title, ended by ST', `ab${ESC}]2;0wn3d${ST}cd`, 'abcd'],
  ['a title of one byte', 'ab\u009D0;0wn3d\u009Ccd', 'abcd'],
  ['a clipboard', `ab${ESC}]52;c;MHduM2Q=${BEL}cd`, 'abcd'],
  ['a title without end', `ab${ESC}]0;0wn3d`, 'ab'],
  ['a title cut off', `ab${ESC}]0;0wn3d\u0018cd`, 'abcd'],
  ['a title cut off by a colour', `ab${ESC}]0;0wn3d${ESC}[31mcd`, 'abcd'],
  ['a device control string', `ab${ESC}P1$r0wn3d${ST}cd`, 'abcd'],
  ['a device control string of one byte', 'ab\u0090q0wn3d\u009Ccd', 'abcd'],
  ['a program command', `ab${ESC}_G0wn3d${ST}cd`, 'abcd'],
  ['a private message', `ab${ESC}^0wn3d${ST}cd`, 'abcd'],
  ['a start of string', `ab${ESC}X0wn3d${ST}cd`, 'abcd'],
  ['another set of letters', `ab${ESC}(0cd`, 'abcd'],
  ['a reset', `ab${ESC}ccd`, 'abcd'],
  ['a lone escape', `abcd${ESC}`, 'abcd'],
  ['escapes in a row', `ab${ESC}${ESC}[31mcd`, 'abcd'],
  ['an escape put together from what is left', `ab${ESC}${ESC}[0m[31mcd`, 'ab[31mcd'],
  ['an overwriting return', 'ab\rcd', 'ab cd'],
  ['backspaces', 'ab\b\bcd', 'abcd'],
  ['a bell and a zero', `ab${BEL}\u0000cd`, 'abcd'],
  ['a line of another kind', 'ab\u0085cd\u2028ef', 'ab cd ef'],
  ['a turned direction', 'ab\u202Ecd\u202C', 'abcd'],
  ['isolates', 'ab\u2067cd\u2069', 'abcd'],
  ['marks of direction', 'ab\u200E\u200F\u061Ccd', 'abcd'],
  ['what is not seen', 'ab\u200B\u2060\u2064\uFEFFcd', 'abcd'],
  ['notes between lines', 'ab\uFFF9cd\uFFFA\uFFFB', 'abcd'],
  ['a title cut off by a substitute', `ab${ESC}]0;0wn3d\u001Acd`, 'abcd'],
  ['a start of string of one byte', 'ab\u00980wn3d\u009Ccd', 'abcd'],
  ['a private message of one byte', 'ab\u009E0wn3d\u009Ccd', 'abcd'],
  ['a program command of one byte', 'ab\u009F0wn3d\u009Ccd', 'abcd'],
  ['a deletion', 'ab\u007Fcd', 'abcd'],
  ['directions set and forced', 'ab\u202Acd\u202Bef\u202Dgh', 'abcdefgh'],
  ['old signs of shaping', 'ab\u206A\u206Fcd', 'abcd'],
]

const STEERS =
  // oxlint-disable-next-line no-control-regex
  /[\u0000-\u0009\u000B-\u001F\u007F-\u009F\u061C\u200B\u200E\u200F\u2028-\u202E\u2060-\u206F\uFEFF\uFFF9-\uFFFB]|0wn3d|x\.invalid/u

const CONTEXT: ReportContext = {
  tool: 'gablewatt 0.0.0',
  project: undefined,
  locate: () => undefined,
  showWork: true,
}

const reportOf = (text: string): Report => ({
  stage: 'trial',
  title: text,
  sections: [
    { kind: 'table', heading: text, columns: [{ heading: text, unit: text }, { heading: 'n' }], rows: [[text, 1]] },
    { kind: 'facts', facts: [{ label: text, value: text, unit: text }] },
    { kind: 'paragraph', text },
    { kind: 'list', items: [text] },
    { kind: 'bars', unit: text, bars: [{ label: text, value: 1 }] },
    { kind: 'plot', x: { label: text }, y: { label: text }, series: [{ name: text, points: [[0, 0]] }] },
  ],
  cautions: [],
  result: {
    values: { [text]: text },
    worksheet: [],
    findings: [{ severity: 'error', id: 'trial.x', message: text, where: text, fix: text }],
    assumptions: [
      { path: text, value: text, unit: text, why: text, source: { document: text, standing: 'from memory' } },
    ],
  },
})

const paperOf = (text: string): Paper => ({
  title: text,
  language: 'en',
  author: text,
  subject: text,
  date: '2026-03-02',
  stamp: text,
  foot: text,
  pageWords: (page, pages) => `${page}/${pages}`,
  blocks: [
    { kind: 'title', text, below: text },
    { kind: 'heading', text },
    { kind: 'text', text },
    { kind: 'list', items: [text] },
    { kind: 'facts', facts: [[text, text]] },
    { kind: 'table', columns: [{ heading: text, share: 1 }], rows: [[text]] },
    { kind: 'figure', says: text, caption: text, heightPt: 9, draw: () => [] },
    { kind: 'box', title: text, lines: [text] },
  ],
})

const failureOf = (error: unknown, text: string): string => explainFailure(error, () => text, text).text

/** Everything that writes a text for a person; what is in the text is told on the same line. */
const WRITERS: Readonly<Record<string, (text: string) => string | Promise<string>>> = {
  text: async (text) => await renderText(reportOf(text), CONTEXT, FILE_STYLE),
  Markdown: (text) => renderMarkdown(reportOf(text), CONTEXT),
  CSV: (text) => renderCsv({ columns: [{ heading: text, key: text }], rows: [[text]] }).replaceAll('\r\n', '\n'),
  'JUnit XML': (text) =>
    junitXml([{ name: text, stages: [text], problems: [text], errors: [{ stage: text, message: text }] }], []),
  'a web page': (text) => paperHtml(paperOf(text)),
  'Markdown of a paper': (text) => paperMarkdown(paperOf(text)),
  'Markdown of the work plan': (text) =>
    planMarkdown(
      text,
      {
        steps: [],
        first_week: [],
        mounts: [{ mount: text, plane: text, rail: text, rafter: 1, stands_on: 'seam', x_in: 1, y_in: 1 }],
      } as unknown as Parameters<typeof planMarkdown>[1],
      [text],
      [text],
    ),
  'a tariff': (text) =>
    tariffYaml({ name: text } as unknown as Parameters<typeof tariffYaml>[0], [text], { name: text }),
  'progress and notes': cleanLine,
  'an error of use': (text) => failureOf(new UsageError(text, [text]), text),
  'an error of the design': (text) => failureOf(new DesignError(text), text),
  'an error of a file': (text) => failureOf(new FileError(text), text),
  'an error of a stage': (text) => failureOf(new StageError(text, text, text), text),
  'a defect': (text) => failureOf(new Error(text), text),
}

describe.each(TEXTS)('%s', (_, text, left) => {
  test.each(Object.entries(WRITERS))('does not come out of %s, and the rest does', async (__, write) => {
    const written = await write(text)
    expect(written).not.toMatch(STEERS)
    const plain = written.replaceAll('\\', '')
    // Where lines may be broken they stay lines.
    const kept = left.includes(' ') ? left.split(' ') : [left]
    for (const part of kept) expect(plain).toContain(part)
  })

  test('stands in JSON as it is, by its numbers', () => {
    const printed = renderJson(reportOf(text), CONTEXT)
    expect(printed.replaceAll(/0wn3d|x\.invalid/gu, '')).not.toMatch(STEERS)
    expect((JSON.parse(printed) as { values: object }).values).toEqual({ [text]: text })
    const line = jsonLine(
      {
        index: 0,
        name: text,
        from: text,
        title: text,
        digest: null,
        extra: { [text]: text },
        status: 'ok',
        problems: [],
        stages: {},
        findings: [],
        files: [],
        inputs: [],
      },
      { tool: 'gablewatt 0.0.0', fleet: text, rows: 1 },
    )
    expect(line.replaceAll(/0wn3d|x\.invalid/gu, '').slice(0, -1)).not.toMatch(STEERS)
    expect(JSON.stringify(JSON.parse(line))).toContain(JSON.stringify(text).slice(1, -1))
    expect(JSON.parse(cleanJson(JSON.stringify(text)))).toBe(text)
  })

  test('is marked once where an error names it, and place by place where a line of the file is shown', () => {
    const said = formatProblem({ file: text, line: 1, column: 1, path: text, message: text })
    expect(said).not.toMatch(STEERS)
    expect(said).toContain('\uFFFD')
    const told = new ProjectError([{ file: text, path: text, message: text }], 2).format({ frames: true })
    expect(cleanText(told)).not.toMatch(STEERS)
    for (const part of left.split(' ')) expect(said.replaceAll('\uFFFD', '')).toContain(part)
    expect(formatCodeFrame(text, { file: 'f', line: 1, column: 1, path: '', message: '' })).not.toMatch(STEERS)
    expect(markedLine(text, true)).toHaveLength(text.length)
  })

  test('is not drawn: the sheets refuse it, or print a space', () => {
    const isSpaceOnly = /^[a-f\s]*$/u.test(text)
    const check = (): void => {
      checkTexts({ name: text }, 'parties')
    }
    if (isSpaceOnly && !text.includes('\u0085')) expect(check).not.toThrow()
    else {
      expect(check).toThrow(StageError)
      try {
        check()
      } catch (error) {
        expect(failureOf(error, '')).not.toMatch(STEERS)
      }
    }
  })
})

describe('a text that a spreadsheet would run', () => {
  test.each([
    '=1+1',
    '+1+1',
    '-1+1',
    '@SUM(1)',
    '\t=1',
    '\r=1',
    '\n=1',
    ' =1',
    '\u200B=1',
    '\u001B[m=1',
    '＝1+1',
    '＠SUM(1)',
  ])('is none in CSV, in a cell or a heading: %j', (text) => {
    const csv = renderCsv({ columns: [{ heading: 'x', key: text }], rows: [[text]] })
    const fields = csv.split('\r\n').slice(0, 2)
    for (const field of fields) expect(field.replace(/^"/u, '')).toMatch(/^'/u)
  })

  test('is no number', () => {
    expect(renderCsv({ columns: [{ heading: 'x' }], rows: [['-1.5'], ['+2e3'], [-3]] })).toBe(
      'x\r\n-1.5\r\n+2e3\r\n-3\r\n',
    )
  })
})

describe('a text at the beginning of a line of Markdown', () => {
  test.each([
    ['# a', String.raw`\# a`],
    ['- a', String.raw`\- a`],
    ['+ a', String.raw`\+ a`],
    ['~~~', String.raw`\~~~`],
    ['---', String.raw`\---`],
    ['1. a', String.raw`1\. a`],
    ['12) a', String.raw`12\) a`],
    ['12.', String.raw`12\.`],
    ['> a', String.raw`\> a`],
  ])('makes no heading, list, fence or rule: %j', (text, written) => {
    expect(markdownLine(text)).toBe(written)
  })

  test.each(['12.5 kWh', '3.', '1,234.5', 'a # b', 'main_panel'])('%j is printed as it is', (text) => {
    expect(markdownLine(text).replaceAll('\\', '')).toBe(text)
    if (text !== '3.') expect(markdownLine(text)).toBe(text)
  })
})
