import { readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { parse, stringify } from 'yaml'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { EpwHourOrder } from '../../src/climate/epw-hour-order.js'
import { readGreenButton, readUsage } from '../../src/money/index.js'
import { ensureBuilt, ROOT, gablewattWarm } from '../cli/binary.js'
import { copyOfHouse, reportingSubcommands } from './house.js'

const BILLS = join(ROOT, 'examples/lark-hollow-bills.csv')
let subcommands: string[] = []
const folders: string[] = []
beforeAll(async () => {
  ensureBuilt()
  subcommands = await reportingSubcommands()
})
afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true })
})

/** Puts texts, one after the other, in front of every free text of the project and its equipment. Codes and file names stay. */
function houseWith(...hostile: readonly string[]): string {
  const { folder, project } = copyOfHouse()
  folders.push(folder)
  let turn = 0
  for (const path of [project, join(folder, 'equipment.yaml')]) {
    const data: unknown = parse(readFileSync(path, 'utf8'))
    writeFileSync(path, stringify(spoil(data, () => hostile[turn++ % hostile.length] ?? '')))
  }
  return project
}

const FREE = new Set(['title', 'name', 'address', 'sheet', 'listing', 'phone', 'license', 'waiver_note', 'source'])

function spoil(node: unknown, hostile: () => string): unknown {
  if (Array.isArray(node)) return node.map((item) => spoil(item, hostile))
  if (typeof node !== 'object' || node === null) return node
  return Object.fromEntries(
    Object.entries(node).map(([key, value]) => [
      key,
      FREE.has(key) && typeof value === 'string' ? `${hostile()}${value}` : spoil(value, hostile),
    ]),
  )
}

describe('names of a project', () => {
  const ESCAPES = '\u001B[31m\u001B]0;0wn3d\u0007\u009B2J\u202E\u0008\r'

  test('never steer the terminal', { timeout: 120_000 }, async () => {
    const project = houseWith(ESCAPES)
    for (const name of [...subcommands, 'check-bill']) {
      // The renderers are the same for all: the text of each, and every other form once.
      const more = name === 'size-wire' ? [['--markdown'], ['--show-work'], ['--csv'], ['--json']] : []
      for (const form of [[], ...more]) {
        const { exitCode, stdout, stderr } = await gablewattWarm(
          [name, project, ...(name === 'check-bill' ? [BILLS] : []), ...form],
          {
            env: { COLUMNS: '60' },
          },
        )
        expect([0, 1], `${name} ${form.join('')}: ${stderr}`).toContain(exitCode)
        // oxlint-disable-next-line no-control-regex
        const found = /[\u0000-\u0008\u000B\u000C\u000E-\u001F\u007F-\u009F\u202A-\u202E]|\r(?!\n)|0wn3d/u.exec(
          stdout.replaceAll(String.raw`\u001b]0;0wn3d\u0007`, '') + stderr,
        )
        expect(found, `${name} ${form.join('')}`).toBeNull()
      }
    }
  })

  test('are no formulas for a spreadsheet', { timeout: 120_000 }, async () => {
    const project = houseWith('=HYPERLINK("http://x")', '@SUM(1)', '+1+1', '-1+1', '\t=1', ' =1')
    let reached = 0
    for (const name of subcommands) {
      const { exitCode, stdout } = await gablewattWarm([name, project, '--csv'])
      if (exitCode === 2) continue
      if (/'(?:=HYPERLINK|@SUM|\+1\+1|-1\+1)/u.test(stdout)) reached += 1
      const fields = stdout.split('\r\n').flatMap(fieldsOf)
      const formulas = fields.filter(
        (field) => /^\s*[=+\-@]/u.test(field) && !/^[+-]?[\d.]+(?:e[+-]?\d+)?$/iu.test(field),
      )
      expect(formulas.map((field) => `${name}: ${field}`)).toEqual([])
    }
    // Names really reach the outputs that were looked at.
    expect(reached).toBeGreaterThan(0)
  })

  test('stand as they are in a text', async () => {
    const { stdout } = await gablewattWarm(['estimate-yield', houseWith('=SPOILT ')])
    expect(stdout).toContain('=SPOILT')
  })
})

/** Fields of one line of CSV. */
function fieldsOf(line: string): string[] {
  return [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^,]*))/gu)].map(([, quoted, plain]) =>
    (quoted ?? plain ?? '').replaceAll('""', '"'),
  )
}

describe('XML of a meter', () => {
  const sample = readFileSync(join(ROOT, 'tests/published/fixtures/espi-hourly-32days.xml'), 'utf8')
  const head = sample.indexOf('<feed')
  const withDoctype = (doctype: string, from: string | RegExp, to: string): string => {
    const body = sample.slice(head).replace(from, () => to)
    expect(body).not.toBe(sample.slice(head))
    return `<?xml version="1.0"?>\n${doctype}\n${body}`
  }

  /** Sum of what was read, or why nothing was. */
  function sumOf(xml: string): number | string {
    try {
      return readGreenButton(xml).readings.reduce((sum, reading) => sum + reading.importWh, 0)
    } catch (error) {
      return (error as Error).message
    }
  }

  test('an entity is not expanded, inside or outside of the file', () => {
    const plain = sumOf(sample)
    expect(plain).toBeGreaterThan(0)
    const value = /<(espi:)?value>\d+<\/(espi:)?value>/u
    const found = value.exec(sample.slice(head))?.[0] ?? ''
    const entity = found.replace(/\d+/u, '&big;')
    for (const doctype of [
      '<!DOCTYPE feed [<!ENTITY big "999999999">]>',
      '<!DOCTYPE feed [<!ENTITY big SYSTEM "file:///etc/passwd">]>',
    ]) {
      const result = sumOf(withDoctype(doctype, value, entity))
      // Refused, or read without that value: never the value of the entity or the words of the other file.
      if (typeof result === 'number') expect(result).toBeLessThanOrEqual(plain as number)
      else expect(result).not.toMatch(/999999999|root:/u)
    }
  })

  test('a bomb of entities costs nothing', () => {
    const bomb = [
      '<!DOCTYPE feed [<!ENTITY a0 "ha">',
      ...Array.from({ length: 30 }, (_, i) => `<!ENTITY a${i + 1} "${`&a${i};`.repeat(10)}">`),
      ']>',
    ].join('\n')
    const before = process.cpuUsage()
    sumOf(withDoctype(bomb, '<title>', '<title>&a30;'))
    const { user, system } = process.cpuUsage(before)
    expect((user + system) / 1e6).toBeLessThan(5)
  })

  test.each([
    ['deep', '<a>'.repeat(200) + '</a>'.repeat(200)],
    ['very deep', '<a>'.repeat(100_000) + '</a>'.repeat(100_000)],
    ['never closed', '<feed>'.repeat(1000)],
  ])('that is %s is refused in plain words', async (_name, xml) => {
    const { folder, project } = copyOfHouse()
    folders.push(folder)
    const data = { ...(parse(readFileSync(project, 'utf8')) as object), usage: { green_button: 'meter.xml' } }
    writeFileSync(project, stringify(data))
    writeFileSync(join(folder, 'meter.xml'), xml)
    const { exitCode, stderr } = await gablewattWarm(['payback', project])
    expect(stderr).toContain('the file is no ESPI feed')
    expect(exitCode).toBe(2)
  })

  test.each(['1299506400000', '9299506400000000'])(
    'a time stamp of %s s is refused before room is made for all hours up to it',
    (stamp) => {
      const starts = [...sample.matchAll(/<start>\d+<\/start>/gu)]
      const { index = 0, 0: old = '' } = starts[20] ?? {}
      const xml = `${sample.slice(0, index)}<start>${stamp}</start>${sample.slice(index + old.length)}`
      const before = process.memoryUsage().rss
      expect(() => readUsage({ green_button: 'meter.xml' }, { fileText: xml, utcOffsetH: -5 })).toThrow(
        expect.objectContaining({ name: 'StageError' }) as Error,
      )
      expect((process.memoryUsage().rss - before) / 1e6).toBeLessThan(500)
    },
  )
})

test('a weather file with a word for the month is refused without NaN', () => {
  expect(() => new EpwHourOrder().check(Number.NaN, 1, 1, 9)).toThrow(
    'month (no number), day 1, hour 1 found where month 1',
  )
})
