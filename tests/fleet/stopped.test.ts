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
  '--junit',
  `${name}.xml`,
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

/** All that a run left: its lines, its report and the files of each house, by their names without its own. */
function leftBy(name: string): Record<string, string> {
  const files = readdirSync(join(folder, name), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) => join(entry.parentPath, entry.name))
  const read = [join(folder, `${name}.jsonl`), join(folder, `${name}.xml`), ...files].map((path) => [
    path.slice(folder.length).replaceAll(name, ''),
    readFileSync(path, 'utf8'),
  ])
  return Object.fromEntries(read) as Record<string, string>
}

const kills = process.env['NIGHTLY'] === undefined ? 4 : 36
const SIGNALS = ['SIGKILL', 'SIGTERM', 'SIGINT'] as const

// Of six kills each signal meets one worker and two; every third run is killed again while it goes on.
test(`killed ${kills} times at moments drawn by seed, each goes on to the same bytes and leaves nothing behind`, async () => {
  const random = new RandomSource(20)
  const right = leftBy('whole')
  expect(Object.keys(right)).toHaveLength(2 + 2 * COUNT)
  let again = 0
  for (let kill = 0; kill < kills; kill += 1) {
    const name = `kill-${kill}`
    const signal = SIGNALS[kill % SIGNALS.length] ?? 'SIGKILL'
    const jobs = kill % 2 === 0 ? '1' : '2'
    const after = Math.floor(random.uniform() * (COUNT - 4))
    const first = await stop(name, signal, after, jobs)
    expect({ kill, by: first.by }).toEqual({ kill, by: signal })
    let { done } = first
    if (kill % 3 === 1) {
      const more = done + Math.floor(random.uniform() * (COUNT - 2 - done))
      const second = await stop(name, 'SIGKILL', more, jobs, '--resume', '--force')
      expect(second.done).toBeGreaterThanOrEqual(done)
      done = second.done
      again += 1
    }
    const on = await gablewattWarm([...args(name), '--jobs', jobs, '--resume', '--force'], { cwd: folder })
    expect({ after, done, exitCode: on.exitCode }).toEqual({ after, done, exitCode: 0 })
    if (done > 0) expect(on.stderr + on.stdout).not.toContain('begun anew')
    const left = leftBy(name)
    expect(Object.keys(left).filter((path) => left[path] !== right[path])).toEqual([])
    expect(Object.keys(left)).toHaveLength(Object.keys(right).length)
    expect(leftOver()).toEqual([])
    expect(existsSync(join(folder, `.${name}.jsonl.journal`))).toBe(false)
    for (const path of [name, `${name}.jsonl`, `${name}.xml`]) rmSync(join(folder, path), { recursive: true })
  }
  expect(again).toBe(Math.floor((kills + 1) / 3))
}, 1_200_000)

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
