import { execFileSync } from 'node:child_process'
import { cpSync, mkdtempSync, rmSync, truncateSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { ensureBuilt, gablewatt, ROOT } from '../cli/binary.js'

const folder = mkdtempSync(join(tmpdir(), 'gablewatt-special-'))
const house = join(folder, 'lark-hollow.yaml')

beforeAll(() => {
  ensureBuilt()
  cpSync(join(ROOT, 'examples'), folder, { recursive: true })
  execFileSync('mkfifo', [join(folder, 'pipe')])
  writeFileSync(join(folder, 'huge'), '')
  truncateSync(join(folder, 'huge'), 3_000_000_000)
}, 90_000)
afterAll(() => rmSync(folder, { recursive: true }))

/** Every place of the command line and of the project that names a file to read. */
const PLACES: readonly (readonly [place: string, args: (file: string) => readonly string[]])[] = [
  ['project', (file) => ['check-project', file]],
  ['equipment.file', (file) => ['check-project', house, '--allow-outside', '--set', `equipment.file=${file}`]],
  ['site.climate.epw', (file) => ['estimate-yield', house, '--allow-outside', '--set', `site.climate={epw: ${file}}`]],
  ['materials.price_list', (file) => ['price-bom', house, '--allow-outside', '--set', `materials.price_list=${file}`]],
  [
    'usage.green_button',
    (file) => ['check-project', house, '--allow-outside', '--set', `usage={green_button: ${file}}`],
  ],
  [
    'documents',
    (file) => [
      'draw-permit',
      house,
      '--draft',
      '--allow-outside',
      '--set',
      `documents=[{ id: rafter_letter, file: ${file}, title: Letter, date: '2026-02-20' }]`,
    ],
  ],
  ['production.csv', (file) => ['review-output', house, file]],
  ['--weather', (file) => ['review-output', house, join(folder, 'days.csv'), '--weather', file]],
  ['--compare', (file) => ['price-bom', house, '--compare', file]],
  ['--use', (file) => ['price-bom', house, '--use', file]],
  ['--baseline', (file) => ['run-fleet', house, '--stages', 'yield', '--jobs', '1', '--baseline', file]],
  ['run-fleet', (file) => ['run-fleet', file, '--jobs', '1']],
  ['run-fleet --table', (file) => ['run-fleet', house, '--table', file]],
]

/** A device is no regular file as a pipe is none: these places by day, all by night. */
const WITH_DEVICE = new Set(['project', '--use', '--baseline'])
const CASES = PLACES.flatMap(([place, args]) =>
  ['pipe', '/dev/zero', 'huge']
    .filter((file) => file !== '/dev/zero' || WITH_DEVICE.has(place) || process.env['NIGHTLY'] !== undefined)
    .map((file) => ({ place, file, args })),
)

describe('what is no regular file, or too large, is refused at once', () => {
  test.each(CASES)(
    '$place: $file',
    async ({ file, args }) => {
      writeFileSync(join(folder, 'days.csv'), 'date,kWh\n2026-05-01,20\n2026-05-02,24\n2026-05-03,12\n')
      const result = await gablewatt([...args(file.startsWith('/') ? file : join(folder, file))], {
        cwd: folder,
        timeout: 20_000,
      })
      const said = result.stderr + result.stdout
      expect(said).toMatch(file === 'huge' ? /3000\.0 MB large; at most [\d.]+ MB is read/u : /is not a regular file/u)
      expect(result.exitCode).toBe(3)
    },
    60_000,
  )

  test.each(PLACES.filter(([place]) => WITH_DEVICE.has(place)))(
    '%s: a folder',
    async (_place, args) => {
      const result = await gablewatt([...args(join(folder, 'fleet'))], { cwd: folder, timeout: 20_000 })
      expect(result.stderr + result.stdout).toContain('is a folder, not a file')
      expect(result.exitCode).toBe(3)
    },
    60_000,
  )

  test('more than 60 MB of production through stdin', async () => {
    const result = await gablewatt(['review-output', house, '-'], {
      cwd: folder,
      stdin: { file: join(folder, 'huge') },
    })
    expect(result.stderr).toContain('cannot read stdin: it gives more than 60 MB')
    expect(result.exitCode).toBe(3)
  }, 60_000)
})
