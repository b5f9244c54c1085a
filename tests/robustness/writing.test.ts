import { spawn } from 'node:child_process'
import { chmodSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { setTimeout as rest } from 'node:timers/promises'
import { execa } from 'execa'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { BINARY, ensureBuilt, gablewatt } from '../cli/binary.js'
import { copyOfHouse, replaced } from './house.js'

const { folder, project } = copyOfHouse()
const place = join(folder, 'out')
const out = join(place, 'yield.json')
const args = ['estimate-yield', project, '--json', '--quiet', '--out', out]
let whole = ''

beforeAll(async () => {
  ensureBuilt()
  whole = (await gablewatt(['estimate-yield', project, '--json'])).stdout
})
beforeEach(() => {
  rmSync(place, { recursive: true, force: true })
  mkdirSync(place)
})
afterAll(() => rmSync(folder, { recursive: true }))

/** Runs the program from a shell, with what only a shell can set up. */
const shell = (line: string) =>
  execa('bash', ['-c', line, process.execPath, BINARY, ...args], { reject: false, stripFinalNewline: false })

describe('no room', () => {
  test('a disk that takes nothing', async () => {
    const { exitCode, stdout, stderr } = await gablewatt([...args.slice(0, -1), '/dev/full'])
    expect({ exitCode, stdout }).toEqual({ exitCode: 3, stdout: '' })
    expect(stderr).toBe('error: cannot write /dev/full: no space left on the disk (ENOSPC)\n')
  })

  test('a disk that is full in the middle of the file leaves nothing', async () => {
    // The limit of the shell on the size of a file stands for the end of the disk.
    const { exitCode, stderr } = await shell('ulimit -f 8; exec "$0" "$@"')
    expect(whole.length).toBeGreaterThan(8 * 1024)
    expect(exitCode).toBe(3)
    expect(stderr).toContain(`error: cannot write ${out}: the file would be too large (EFBIG)`)
    expect(readdirSync(place)).toEqual([])
  })

  test('a file that is replaced stays as it was', async () => {
    writeFileSync(out, 'mine')
    const { exitCode } = await shell('ulimit -f 8; exec "$0" "$@" --force')
    expect(exitCode).toBe(3)
    expect(readFileSync(out, 'utf8')).toBe('mine')
    expect(readdirSync(place)).toEqual(['yield.json'])
  })
})

test('a folder without permission is refused in plain words', async () => {
  chmodSync(place, 0o555)
  chmodSync(folder, 0o755)
  // The superuser writes everywhere, so that the program runs as nobody.
  const nobody = process.getuid?.() === 0 ? { uid: 65_534, gid: 65_534 } : {}
  const { exitCode, stdout, stderr } = await gablewatt(args, nobody)
  chmodSync(place, 0o755)
  expect({ exitCode, stdout }).toEqual({ exitCode: 3, stdout: '' })
  expect(stderr).toBe(`error: cannot write ${out}: no permission (EACCES)\n`)
  expect(readdirSync(place)).toEqual([])
})

test.each([
  ['estimate-yield', ['estimate-yield', project, '--json']],
  ['run-fleet', ['run-fleet', project, '--jsonl']],
])('a named pipe gets the result of %s and stays a pipe, even with --force', async (_name, command) => {
  // As /dev/null does, which a superuser could otherwise replace by a file.
  const pipe = join(place, 'pipe')
  await execa('mkfifo', [pipe])
  const reader = execa('cat', [pipe], { timeout: 20_000, reject: false })
  const { exitCode } = await gablewatt([...command, '--out', pipe, '--force', '--quiet'])
  expect(statSync(pipe).isFIFO()).toBe(true)
  expect(exitCode).toBe(0)
  expect((await reader).stdout.startsWith('{')).toBe(true)
})

describe('closed pipes', () => {
  test('a reader that has seen enough gets no complaint', async () => {
    const { stdout, stderr } = await execa(
      'bash',
      [
        '-c',
        '"$0" "$1" estimate-yield "$2" --json | head -c 20; echo "${PIPESTATUS[0]}"',
        process.execPath,
        BINARY,
        project,
      ],
      { reject: false },
    )
    expect({ stdout, stderr }).toEqual({ stdout: `${whole.slice(0, 20)}0`, stderr: '' })
  })

  test.each(['>&-', '2>&-', '<&-', '>&- 2>&- <&-'])('%s is no crash', async (closed) => {
    const { exitCode, stderr } = await shell(`exec "$0" "$@" --force ${closed}`)
    expect([0, 3]).toContain(exitCode)
    expect(stderr).not.toMatch(/^\s+at /mu)
    expect(readdirSync(place).filter((name) => name.endsWith('.tmp'))).toEqual([])
  })
})

test('Ctrl-C in the middle of writing leaves the old file whole', { timeout: 60_000 }, async () => {
  writeFileSync(out, 'mine')
  const slow = new URL('preload-slow-write.cjs', import.meta.url).pathname
  const run = spawn(process.execPath, ['--require', slow, BINARY, ...args, '--force'], { stdio: 'ignore' })
  const ended = new Promise<NodeJS.Signals | null>((resolve) => {
    run.on('exit', (_code, signal) => resolve(signal))
  })
  const halves = () => readdirSync(place).filter((name) => name.endsWith('.tmp'))
  for (let tries = 0; tries < 200 && halves().length === 0; tries++) await rest(50)
  expect(halves()).toHaveLength(1)
  await rest(100)
  const half = readFileSync(join(place, halves()[0] ?? ''), 'utf8')
  expect(half.length).toBeGreaterThan(0)
  expect(half.length).toBeLessThan(whole.length)
  run.kill('SIGINT')
  expect(await ended).toBe('SIGINT')
  expect(readFileSync(out, 'utf8')).toBe('mine')
})

describe('several runs at once', () => {
  test('one wins the name, the others are told', async () => {
    const runs = await Promise.all(Array.from({ length: 5 }, () => gablewatt(args)))
    expect(runs.map(({ exitCode }) => exitCode).toSorted((a = 0, b = 0) => a - b)).toEqual([0, 3, 3, 3, 3])
    for (const { exitCode, stderr } of runs)
      if (exitCode === 3) expect(stderr).toContain('the file exists already (EEXIST)')
    expect(readFileSync(out, 'utf8')).toBe(whole)
    expect(readdirSync(place)).toEqual(['yield.json'])
  })

  test('with --force the last one wins, and the file is whole at every moment', async () => {
    writeFileSync(out, whole)
    const seen = new Set<number>()
    const watch = setInterval(() => seen.add(readFileSync(out).length), 1)
    const runs = await Promise.all(Array.from({ length: 4 }, () => gablewatt([...args, '--force'])))
    clearInterval(watch)
    expect(runs.map(({ exitCode }) => exitCode)).toEqual([0, 0, 0, 0])
    expect([...seen]).toEqual([Buffer.byteLength(whole)])
    expect(readdirSync(place)).toEqual(['yield.json'])
  })
})

test(
  'a project that changes while it is read is taken in one of its states or refused',
  { timeout: 60_000 },
  async () => {
    const moving = join(folder, 'moving.yaml')
    const text = readFileSync(project, 'utf8')
    const titles = ['First state', 'Second state']
    const states = titles.map((title) => replaced(text, /^title: .*$/mu, `title: ${title}`))
    writeFileSync(moving, states[0] ?? '')
    let turn = 0
    const change = setInterval(() => {
      turn++
      const state = states[turn % 2] ?? ''
      if (turn % 3 === 0) {
        writeFileSync(`${moving}.new`, state)
        renameSync(`${moving}.new`, moving)
      } else writeFileSync(moving, state.slice(0, turn % 3 === 1 ? state.length / 2 : state.length))
    }, 2)
    const runs = []
    for (let round = 0; round < 4; round++) {
      runs.push(...(await Promise.all([1, 2, 3].map(() => gablewatt(['estimate-yield', moving, '--json'])))))
    }
    clearInterval(change)
    expect(turn).toBeGreaterThan(20)
    for (const { exitCode, stdout, stderr } of runs) {
      expect([0, 2]).toContain(exitCode)
      expect(stderr).not.toMatch(/^\s+at |defect/mu)
      if (exitCode === 0) expect(titles).toContain((JSON.parse(stdout) as { project: { title: string } }).project.title)
    }
  },
)
