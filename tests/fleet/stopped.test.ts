import { spawn } from 'node:child_process'
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  utimesSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { growingFile, removeLeftOversBelow, writeWhole } from '../../src/files/index.js'
import { BINARY, ensureBuilt, gablewattWarm, ROOT } from '../cli/binary.js'
import { RandomSource } from '../../src/values/index.js'

const folder = mkdtempSync(join(tmpdir(), 'gablewatt-stopped-'))
const template = join(ROOT, 'examples/fleet/template.yaml')
const COUNT = 24
const table = join(folder, 'many.csv')
const args = (name: string): string[] => [
  'run-fleet',
  template,
  '--table',
  table,
  '--stages',
  'yield,wire',
  '--jsonl',
  '--out',
  `${name}.jsonl`,
  '--out-dir',
  name,
]
const leftOver = (place = folder): string[] =>
  readdirSync(place, { recursive: true, encoding: 'utf8' }).filter((name) => name.endsWith('.tmp'))
const linesIn = (path: string): number => (existsSync(path) ? readFileSync(path, 'utf8').split('\n').length - 1 : 0)

/** Starts a run and sends it a signal once so many houses are in its journal. */
async function stop(name: string, signal: NodeJS.Signals, after: number, jobs: string, ...more: string[]) {
  const child = spawn(process.execPath, [BINARY, ...args(name), '--jobs', jobs, ...more], { cwd: folder })
  let told = ''
  child.stderr.on('data', (chunk: Buffer) => (told += chunk.toString()))
  const ended = new Promise<NodeJS.Signals | null>((resolve) => {
    child.once('close', (_code, by) => resolve(by))
  })
  const journal = join(folder, `.${name}.jsonl.journal`)
  while (linesIn(journal) < after && child.exitCode === null) await new Promise((resolve) => setTimeout(resolve, 3))
  child.kill(signal)
  return { by: await ended, told, done: linesIn(journal) }
}

let whole = ''
beforeAll(async () => {
  ensureBuilt()
  const rows = Array.from({ length: COUNT }, (_, i) => `h${i},${(33 + i / 5).toFixed(1)}`)
  writeFileSync(table, ['id,site.latitude_deg', ...rows, ''].join('\n'))
  await gablewattWarm([...args('whole'), '--jobs', '1'], { cwd: folder })
  whole = readFileSync(join(folder, 'whole.jsonl'), 'utf8')
}, 120_000)
afterAll(() => rmSync(folder, { recursive: true }))

describe('Ctrl-C', () => {
  test.each(['1', '2'])(
    'with %s workers tells how to go on, and leaves no half file',
    async (jobs) => {
      const name = `ctrl-${jobs}`
      const { by, told, done } = await stop(name, 'SIGINT', 3, jobs)
      expect(by).toBe('SIGINT')
      expect(told).toMatch(
        new RegExp(String.raw`^stopped: \d+ of ${COUNT} houses were done; the same command with --resume goes on`, 'u'),
      )
      expect(done).toBeLessThan(COUNT)
      expect(existsSync(join(folder, `${name}.jsonl`))).toBe(false)
      const on = await gablewattWarm([...args(name), '--jobs', '1', '--resume'], { cwd: folder })
      expect(on.exitCode).toBe(0)
      expect(readFileSync(join(folder, `${name}.jsonl`), 'utf8')).toBe(whole)
      expect(leftOver()).toEqual([])
    },
    60_000,
  )
})

const kills = process.env['NIGHTLY'] === undefined ? 4 : 36

test(`killed ${kills} times at moments drawn by seed, each goes on to the same bytes and leaves nothing behind`, async () => {
  const random = new RandomSource(20)
  for (let kill = 0; kill < kills; kill += 1) {
    const name = `kill-${kill}`
    const after = Math.floor(random.uniform() * (COUNT - 4))
    const { done } = await stop(name, 'SIGKILL', after, kill % 2 === 0 ? '1' : '2')
    const on = await gablewattWarm([...args(name), '--jobs', '1', '--resume', '--force'], { cwd: folder })
    expect({ after, done, exitCode: on.exitCode }).toEqual({ after, done, exitCode: 0 })
    expect(readFileSync(join(folder, `${name}.jsonl`), 'utf8')).toBe(whole)
    expect(leftOver()).toEqual([])
    for (const house of ['h0', `h${COUNT - 1}`]) {
      expect(readFileSync(join(folder, name, house, 'yield.json'), 'utf8')).toBe(
        readFileSync(join(folder, 'whole', house, 'yield.json'), 'utf8'),
      )
    }
  }
}, 600_000)

describe('temporary files of runs that are gone', () => {
  // No process has this number: it is beyond what systems give.
  const DEAD = 4_194_305
  const touch = (path: string, ageHours = 0): void => {
    writeFileSync(path, 'half')
    const time = new Date(Date.now() - ageHours * 3.6e6)
    utimesSync(path, time, time)
  }

  test('go with the next writing of the same file; those of live runs, other files and names of others stay', () => {
    const place = join(folder, 'left')
    mkdirSync(place)
    const parent = process.ppid
    touch(join(place, `.yield.json.${DEAD}.tmp`))
    touch(join(place, `.yield.json.${parent}.tmp`))
    touch(join(place, `.other.json.${DEAD}.tmp`))
    touch(join(place, `.yield.json.backup.tmp`))
    writeWhole(join(place, 'yield.json'), 'whole', false)
    expect(readdirSync(place).toSorted()).toEqual(
      [`.other.json.${DEAD}.tmp`, `.yield.json.${parent}.tmp`, '.yield.json.backup.tmp', 'yield.json'].toSorted(),
    )
    // A number that lives again in another process, and our own of an earlier process.
    touch(join(place, `.yield.json.${parent}.tmp`), 25)
    touch(join(place, `.yield.json.${process.pid}.tmp`), 24)
    writeWhole(join(place, 'yield.json'), 'again', true)
    const lines = growingFile(join(place, 'lines.jsonl'), false)
    lines.write('x\n')
    removeLeftOversBelow(folder, new Set(['lines.jsonl', 'yield.json']))
    lines.finish()
    expect(readFileSync(join(place, 'lines.jsonl'), 'utf8')).toBe('x\n')
    expect(leftOver(place).toSorted()).toEqual([`.other.json.${DEAD}.tmp`, '.yield.json.backup.tmp'].toSorted())
    rmSync(place, { recursive: true })
  })

  test('the next start of a fleet clears its folder, whatever houses it has', async () => {
    mkdirSync(join(folder, 'cleared/gone'), { recursive: true })
    touch(join(folder, `cleared/gone/.packet.pdf.${DEAD}.tmp`))
    touch(join(folder, `cleared/gone/.mine.txt.${DEAD}.tmp`))
    const one = join(folder, 'one.csv')
    writeFileSync(one, 'id\na\n')
    await gablewattWarm(['run-fleet', template, '--table', one, '--stages', 'yield', '--out-dir', 'cleared'], {
      cwd: folder,
    })
    expect(leftOver(join(folder, 'cleared'))).toEqual([`gone/.mine.txt.${DEAD}.tmp`])
    rmSync(join(folder, 'cleared'), { recursive: true })
  })
})
