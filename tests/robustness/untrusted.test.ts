import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readFileSync,
  realpathSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { execa } from 'execa'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { ensureBuilt, gablewatt, ROOT } from '../cli/binary.js'
import { BOMBS } from '../fuzz/hostile-pdf.mjs'

const base = realpathSync(mkdtempSync(join(tmpdir(), 'gablewatt-untrusted-')))
const folder = join(base, 'quote')
const house = join(folder, 'house.yaml')
const outside = join(base, 'outside.yaml')

beforeAll(() => {
  ensureBuilt()
  mkdirSync(folder)
  copyFileSync(join(ROOT, 'tests/bench/plain-house.yaml'), house)
  copyFileSync(house, outside)
  symlinkSync(outside, join(folder, 'link.yaml'))
  symlinkSync(outside, join(folder, 'planted.json'))
  symlinkSync(base, join(folder, 'up'))
})
afterAll(() => rmSync(base, { recursive: true }))

const untrusted = (...args: string[]) => gablewatt([...args, '--untrusted'], { cwd: folder })

describe('--untrusted', () => {
  test('gives the figures of any other run, and writes what --out names', async () => {
    const free = await gablewatt(['estimate-yield', house, '--json'])
    const confined = await untrusted('estimate-yield', house, '--json', '--out', 'out.json')
    expect({ exitCode: confined.exitCode, stderr: confined.stderr }).toEqual({
      exitCode: 0,
      stderr: 'wrote out.json\n',
    })
    expect(readFileSync(join(folder, 'out.json'), 'utf8')).toBe(free.stdout)
    expect(free.stdout).toContain('"ac_kwh"')
  })

  test.each([
    ['an earlier result elsewhere', ['payback', house, '--use', outside], 3, 'outside the folder of the project'],
    ['a project that is a link to elsewhere', ['estimate-yield', 'link.yaml'], 3, 'leads out of its folder'],
    [
      'a file of the project that is a link',
      ['check-project', house, '--set', 'equipment.file=link.yaml'],
      2,
      'lies outside',
    ],
    [
      'a file of the project elsewhere',
      ['check-project', house, '--set', `equipment.file=${outside}`],
      2,
      'lies outside',
    ],
    ['stdin', ['estimate-yield', '-'], 2, 'stdin is not read'],
    ['an option before the file', ['estimate-yield', '--json', house], 2, 'then the file, then the options'],
    ['many houses', ['run-fleet', house], 2, 'one by one'],
    ['--allow-outside', ['estimate-yield', house, '--allow-outside'], 2, 'contradict each other'],
    ['a file that is not there', ['estimate-yield', 'none.yaml'], 3, 'no such file'],
    ['a folder', ['estimate-yield', base], 3, 'not a regular file'],
    ['a place that the engine would widen', ['estimate-yield', house, '--out', '*'], 2, "no path with '*'"],
    ['--out elsewhere', ['estimate-yield', house, '--out', join(base, 'a.txt')], 2, 'in the folder of the project'],
    ['a folder as --out', ['estimate-yield', house, '--out', '.', '--force'], 2, 'is a folder'],
    ['the folder above as --out', ['estimate-yield', house, '--out', '..', '--force'], 2, 'is a folder'],
    ['a link to a folder as --out', ['estimate-yield', house, '--out', 'up', '--force'], 2, 'is a folder'],
    ['-o elsewhere', ['estimate-yield', house, `-o${join(base, 'a.txt')}`], 2, 'in the folder of the project'],
    [
      'another file written',
      ['estimate-yield', house, '--shade-chart', 'a.svg', '--array', 'south'],
      3,
      '--untrusted forbids it',
    ],
    [
      'a planted link as --out',
      ['estimate-yield', house, '--out', 'planted.json', '--force'],
      3,
      '--untrusted forbids it',
    ],
  ])('refuses %s', async (_name, args, exitCode, says) => {
    const before = readFileSync(outside, 'utf8')
    const run = await untrusted(...args)
    expect(run.stderr).toContain(says)
    expect(run.stderr).not.toMatch(/ at .*\.c?js:/u)
    expect(run.exitCode).toBe(exitCode)
    expect(['a.txt', 'a.svg'].filter((name) => existsSync(join(base, name)) || existsSync(join(folder, name)))).toEqual(
      [],
    )
    expect(readFileSync(outside, 'utf8')).toBe(before)
  })

  test('reads a quarter of what is read otherwise', async () => {
    const large = join(folder, 'large.yaml')
    writeFileSync(
      large,
      `${readFileSync(house, 'utf8')}${'# '.padEnd(99)}\n`.concat(`#${' '.repeat(98)}\n`.repeat(5000)),
    )
    expect((await gablewatt(['estimate-yield', large])).exitCode).toBe(0)
    const confined = await untrusted('estimate-yield', large)
    expect(confined).toMatchObject({ exitCode: 3, stdout: '' })
    expect(confined.stderr).toMatch(/is 0\.6 MB large; at most 0\.5 MB is read/u)
  })
})

describe.skipIf(process.platform !== 'linux')('hostile PDF files, where no thread has limits of its own', () => {
  // By night all of them; by day those that would take most, and a sound end beside them.
  const BY_DAY = new Set(['an object stream that unpacks to a gigabyte', 'run lengths over a bomb', 'lists in lists'])
  const names = Object.keys(BOMBS).filter((name) => BY_DAY.has(name) || process.env['NIGHTLY'] !== undefined)

  /** The largest that the confined child was, kB, as long as it lives. */
  const peakBelow = (pid: number): number => {
    try {
      const children = readFileSync(`/proc/${pid}/task/${pid}/children`, 'utf8').trim().split(' ')
      const peaks = children.map(
        (child) => /VmHWM:\s+(\d+)/u.exec(readFileSync(`/proc/${child}/status`, 'utf8'))?.[1] ?? '0',
      )
      return Math.max(...peaks.map(Number))
    } catch {
      return 0
    }
  }

  test.each(names)('%s', { timeout: 120_000 }, async (name) => {
    writeFileSync(join(folder, 'paper.pdf'), BOMBS[name as keyof typeof BOMBS](0.15))
    writeFileSync(
      join(folder, 'mapping.yaml'),
      'format: gablewatt-form-mapping/1\nfields:\n  - { field: name, text: x }\n',
    )
    const run = untrusted('fill-form', house, 'paper.pdf', 'mapping.yaml', '--out', 'filled.pdf', '--force')
    let peak = 0
    const { pid } = run as unknown as { readonly pid: number }
    const poll = setInterval(() => (peak = Math.max(peak, peakBelow(pid))), 20)
    const { exitCode, stderr } = await run
    clearInterval(poll)
    expect([0, 2], stderr).toContain(exitCode)
    expect(stderr).toMatch(
      /^(?:wrote filled\.pdf|error: form 'paper\.pdf' .+|gablewatt: stopped (?:after 60 s|at 512 MB).+)$/mu,
    )
    expect(stderr).not.toMatch(/ at .*\.c?js:|NaN|undefined/u)
    expect(peak).toBeGreaterThan(30_000)
    expect(peak).toBeLessThan(800_000)
  })
})

describe('what is run in the place of the program', () => {
  const stage = join(base, 'program')

  /** Runs other code as the program would be run, with bounds of its own. */
  const confined = async (
    code: string,
    bounds: { memoryMb: number; seconds: number },
    env: Record<string, string> = {},
  ) => {
    rmSync(stage, { recursive: true, force: true })
    for (const name of ['bin', 'node_modules']) mkdirSync(join(stage, name), { recursive: true })
    copyFileSync(join(ROOT, 'bin/run-untrusted.js'), join(stage, 'bin/run-untrusted.js'))
    copyFileSync(join(ROOT, 'bin/package.json'), join(stage, 'bin/package.json'))
    writeFileSync(join(stage, 'bin/gablewatt.js'), code)
    const start = `require(${JSON.stringify(join(stage, 'bin/run-untrusted.js'))}).runUntrusted(['x', ${JSON.stringify(house)}, '--out', ${JSON.stringify(join(folder, 'new.txt'))}], ${JSON.stringify(bounds)}).then((code) => (process.exitCode = code))`
    return execa(process.execPath, ['-e', start], { reject: false, env })
  }

  const PROBE = `
    const fs = require('node:fs')
    const tell = {}
    const tries = {
      process: () => require('node:child_process').spawnSync('true'),
      thread: () => new (require('node:worker_threads').Worker)('1', { eval: true }),
      read: () => fs.readFileSync(${JSON.stringify(outside)}),
      list: () => fs.readdirSync(${JSON.stringify(base)}),
      write: () => fs.writeFileSync(${JSON.stringify(join(folder, 'other.txt'))}, ''),
      beside: () => fs.writeFileSync(${JSON.stringify(`${folder}-beside`)}, ''),
      own: () => fs.readFileSync(${JSON.stringify(house)}),
      out: () => fs.writeFileSync(${JSON.stringify(join(folder, 'new.txt'))}, 'x'),
      draft: () => fs.writeFileSync(${JSON.stringify(join(folder, '.new.txt.12.tmp'))}, 'x'),
    }
    for (const [name, attempt] of Object.entries(tries)) {
      try { attempt(); tell[name] = 'done' } catch (error) { tell[name] = error.code }
    }
    console.log(JSON.stringify({ tell, env: Object.keys(process.env), args: process.argv.slice(2) }))`

  test('starts no process and no thread, reads and writes nowhere else, and knows nothing of its surroundings', async () => {
    const { stdout, exitCode } = await confined(
      PROBE,
      { memoryMb: 512, seconds: 60 },
      { SECRET: 'x', NODE_OPTIONS: '' },
    )
    const { tell, env, args } = JSON.parse(stdout) as {
      readonly tell: Readonly<Record<string, string>>
      readonly env: readonly string[]
      readonly args: readonly string[]
    }
    const denied = 'ERR_ACCESS_DENIED'
    expect(tell).toEqual({
      process: denied,
      thread: denied,
      read: denied,
      list: denied,
      write: denied,
      beside: denied,
      own: 'done',
      out: 'done',
      draft: 'done',
    })
    expect(env.filter((name) => !['TERM', 'COLUMNS', 'NO_COLOR', 'LANG', 'TZ'].includes(name))).toEqual([
      'GABLEWATT_UNTRUSTED',
    ])
    expect(args).toEqual(['x', house, '--out', join(folder, 'new.txt')])
    expect(exitCode).toBe(0)
  })

  test('is stopped at the bound of time', async () => {
    const { stderr, exitCode } = await confined('for (;;) {}', { memoryMb: 512, seconds: 1 })
    expect({ stderr, exitCode }).toEqual({
      stderr: 'gablewatt: stopped after 1 s, the bound of --untrusted',
      exitCode: 2,
    })
  })

  test('is stopped at the bound of memory', async () => {
    const code = 'const all = []; for (;;) all.push(Array.from({ length: 1000 }, (_, i) => ({ i })))'
    const { stderr, exitCode } = await confined(code, { memoryMb: 64, seconds: 60 })
    expect({ stderr, exitCode }).toEqual({
      stderr: 'gablewatt: stopped at 64 MB of memory, the bound of --untrusted',
      exitCode: 2,
    })
  })

  test('what it says and its exit code come through', async () => {
    const { stderr, exitCode } = await confined("process.stderr.write('a word'); process.exitCode = 1", {
      memoryMb: 512,
      seconds: 60,
    })
    expect({ stderr, exitCode }).toEqual({ stderr: 'a word', exitCode: 1 })
  })
})
