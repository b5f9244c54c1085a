import { readFileSync, rmSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { ensureBuilt, gablewatt, gablewattOnce, ROOT } from '../cli/binary.js'
import { copyOfHouse, reportingSubcommands } from './house.js'

const { folder, project } = copyOfHouse()
let subcommands: string[] = []
beforeAll(async () => {
  ensureBuilt()
  subcommands = await reportingSubcommands()
})
afterAll(() => rmSync(folder, { recursive: true }))

const valuesOf = (json: string) => (JSON.parse(json) as { values: unknown }).values

test('the reporting subcommands are known', () => {
  expect(subcommands).toEqual(expect.arrayContaining(['check-project', 'estimate-yield', 'size-wire', 'space-mounts']))
})

describe('environment', () => {
  test.each([
    ['no HOME', { HOME: undefined }],
    ['nothing at all', { HOME: undefined, PATH: undefined }],
    ['a C locale', { LC_ALL: 'C', LANG: 'C' }],
    ['another language and time zone', { LC_ALL: 'de_DE.UTF-8', LANG: 'de_DE', TZ: 'Asia/Tokyo' }],
    ['a home that is no folder', { HOME: '/dev/null', XDG_CONFIG_HOME: '/dev/null', TMPDIR: '/nonexistent' }],
  ])('%s changes nothing', async (_name, env) => {
    const [plain, other] = await Promise.all([
      gablewattOnce(['estimate-yield', project]),
      gablewatt(['estimate-yield', project], { env }),
    ])
    expect(plain.exitCode).toBe(0)
    expect(other).toMatchObject({ exitCode: 0, stdout: plain.stdout, stderr: plain.stderr })
  })
})

describe('files from other systems', () => {
  const files = ['lark-hollow.yaml', 'equipment.yaml']

  test.each([
    ['Windows line ends', (text: string) => text.replaceAll('\n', '\r\n')],
    ['a byte-order mark', (text: string) => `\uFEFF${text}`],
    ['both', (text: string) => `\uFEFF${text.replaceAll('\n', '\r\n')}`],
    ['no line end at the end', (text: string) => text.trimEnd()],
  ])('%s', async (_name, change) => {
    const copy = copyOfHouse()
    for (const file of files) writeFileSync(join(copy.folder, file), change(readFileSync(join(folder, file), 'utf8')))
    const [plain, other] = await Promise.all(
      [project, copy.project].map((path) => gablewattOnce(['estimate-yield', path, '--json'])),
    )
    expect(other?.exitCode).toBe(0)
    expect(valuesOf(other?.stdout ?? '')).toEqual(valuesOf(plain?.stdout ?? ''))
    rmSync(copy.folder, { recursive: true })
  })
})

describe('no network', () => {
  const guard = new URL('preload-no-network.cjs', import.meta.url).pathname

  test(
    'no subcommand reaches for it, and a terminal of 40 columns gets lines of 40',
    { timeout: 120_000 },
    async () => {
      const reports = [
        ...subcommands.map((name) => [name, project]),
        ['check-bill', project, join(ROOT, 'examples/lark-hollow-bills.csv')],
        ['draw-permit', project, '--audit'],
        ['explain'],
      ]
      const others = [
        ['list-sites', 'reno'],
        ['new-project'],
        ['complete-shell', 'bash'],
        ['draw-permit', project, '--draft', '--out', join(folder, 'packet.pdf')],
      ]
      for (const args of [...reports, ...others]) {
        const env = { NODE_OPTIONS: `--require ${guard}`, COLUMNS: '40' }
        const { exitCode, stdout, stderr } = await gablewatt(args, { env })
        expect(stderr).not.toContain('NETWORK USED')
        expect([0, 1], `${args.join(' ')}: ${stderr}`).toContain(exitCode)
        if (!reports.includes(args)) continue
        // A word that is longer than the line cannot be broken without harm: paths, ids, formulas.
        const wide = stdout.split('\n').filter((line) => line.length > 40 && /\S\s+\S/u.test(line.trim().slice(0, 40)))
        expect(wide.map((line) => `${args[0]}: ${line}`)).toEqual([])
      }
    },
  )

  test('and the guard would see it', async () => {
    const { spawnSync } = await import('node:child_process')
    for (const line of [
      "fetch('http://127.0.0.1:9')",
      "require('http').get('http://127.0.0.1:9')",
      "require('net').connect(9)",
      "require('dns').lookup('localhost', () => {})",
    ]) {
      const run = spawnSync(process.execPath, ['--require', guard, '-e', line], { encoding: 'utf8' })
      expect(run.stderr).toContain('NETWORK USED')
    }
  })
})
