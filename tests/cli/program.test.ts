import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { execa } from 'execa'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { SUBCOMMANDS } from '../../src/cli/subcommands.js'
import { BINARY, ensureBuilt, gablewatt, gablewattWarm } from './binary.js'

const folder = mkdtempSync(join(tmpdir(), 'gablewatt-program-'))
const project = join(folder, 'project.yaml')

beforeAll(async () => {
  ensureBuilt()
  const { stdout } = await gablewattWarm(['new-project', '--site', 'Reno, NV'])
  writeFileSync(project, stdout)
})
afterAll(() => rmSync(folder, { recursive: true }))

describe('help', () => {
  test.each([['help'], ['-h'], ['--help']])('%s is short, on stdout, and names every subcommand', async (arg) => {
    const { exitCode, stdout, stderr } = await gablewattWarm([arg])
    expect({ exitCode, stderr }).toEqual({ exitCode: 0, stderr: '' })
    for (const { name, summary } of SUBCOMMANDS) expect(stdout).toMatch(new RegExp(`^  ${name} +${summary}`, 'mu'))
    expect(stdout.split('\n').length).toBeLessThan(48)
  })

  test('without arguments comes on stderr and is no success', async () => {
    const { exitCode, stdout, stderr } = await gablewattWarm([])
    expect({ exitCode, stdout }).toEqual({ exitCode: 2, stdout: '' })
    expect(stderr).toContain('Usage: gablewatt')
  })

  test.each(SUBCOMMANDS.map(({ name }) => name))('of %s has two examples that begin with its name', async (name) => {
    const [asked, option] = await Promise.all([gablewattWarm(['help', name]), gablewattWarm([name, '--help'])])
    expect(asked).toMatchObject({ exitCode: 0, stderr: '', stdout: option.stdout })
    expect(asked.stdout.match(new RegExp(`^  gablewatt ${name}\\b`, 'gmu'))?.length).toBeGreaterThanOrEqual(2)
    expect(asked.stdout).toContain('--no-color')
  })
})

describe('wrong usage ends with 2, says why on stderr, and prints nothing on stdout', () => {
  test.each([
    [['list-site'], "error: unknown command 'list-site'\n(Did you mean list-sites?)"],
    [['help', 'no-such-thing'], "error: unknown command 'no-such-thing'"],
    [['list-sites', '--limt', '3'], "error: unknown option '--limt'\n(Did you mean --limit?)"],
    [['list-sites', '--json', '--csv'], "error: option '--json' cannot be used with option '--csv'"],
    [['list-sites', '--markdown', '--json'], "error: option '--json' cannot be used with option '--markdown'"],
    [['list-sites', '--limit', '0'], 'It must be a whole number from 1'],
    [['list-sites', '--near', '99,1'], 'It must be a number from -90 to 90'],
    [['list-sites', '--near', '39.5'], 'It must be latitude,longitude'],
    [['check-project'], "error: missing required argument 'project.yaml'"],
    [['check-project', 'a.yaml', 'b.yaml'], 'error: too many arguments'],
    [['new-project', '--title', ' '], 'A title is one line of text'],
    [['new-project', '--lat', '3'], 'error: --lat and --lon go together'],
    [['new-project', '--site', 'Nowhereville, ZZ'], "error: no one weather site is 'Nowhereville, ZZ'"],
    [['new-project', '--site', 'Sprngfield, IL'], 'did you mean SPRINGFIELD'],
  ])('%j', async (args, message) => {
    const { exitCode, stdout, stderr } = await gablewattWarm(args)
    expect({ exitCode, stdout }).toEqual({ exitCode: 2, stdout: '' })
    expect(stderr).toContain(message)
  })

  test('and does not echo escape sequences', async () => {
    const { stderr } = await gablewattWarm(['list-sites', '--\u001B[31mred'])
    expect(stderr).toContain("unknown option '--red'")
    expect(stderr).not.toContain('\u001B')
  })
})

describe('check-project', () => {
  test('says ok with counts', async () => {
    const { exitCode, stdout, stderr } = await gablewattWarm(['check-project', project])
    expect({ exitCode, stderr }).toEqual({ exitCode: 0, stderr: '' })
    expect(stdout).toMatch(/^not finished: 1 roof plane, 1 array, 12 modules; /mu)
  })

  test('reads stdin', async () => {
    const { stdout: text } = await gablewattWarm(['new-project'])
    expect(await gablewatt(['check-project', '-'], { stdin: 'pipe', input: text })).toMatchObject({ exitCode: 0 })
    const broken = await gablewatt(['check-project', '-'], {
      stdin: 'pipe',
      input: text.replace('pitch_in_12', 'pich_in_12'),
    })
    expect(broken).toMatchObject({ exitCode: 2, stdout: '' })
    expect(broken.stderr).toMatch(/<stdin>:\d+:\d+ .*did you mean pitch_in_12\?/u)
  })

  test('tells all problems at once and ends with 2', async () => {
    const { exitCode, stdout, stderr } = await gablewattWarm([
      'check-project',
      project,
      '--set',
      'site.latitude_degg=3',
      '--set',
      'arrays.south.modules=-1',
    ])
    expect({ exitCode, stdout }).toEqual({ exitCode: 2, stdout: '' })
    expect(stderr).toContain('did you mean latitude_deg?')
    expect(stderr).toContain('arrays.south.modules')
    expect(stderr).toContain('error: 2 problems')
  })

  test('ends with 3 when the file cannot be read', async () => {
    const { exitCode, stdout, stderr } = await gablewattWarm(['check-project', join(folder, 'missing.yaml')])
    expect({ exitCode, stdout }).toEqual({ exitCode: 3, stdout: '' })
    expect(stderr).toContain('no such file')
  })

  test('strips escape sequences from the names of a project', async () => {
    const hostile = join(folder, 'hostile.yaml')
    const text = readFileSync(project, 'utf8').replace(/^title: .*$/mu, String.raw`title: "\e]0;owned\aRoof\e[31m"`)
    writeFileSync(hostile, text)
    const { exitCode, stdout, stderr } = await gablewattWarm(['check-project', hostile])
    expect({ exitCode, stderr }).toEqual({ exitCode: 0, stderr: '' })
    expect(stdout.split('\n')[0]).toBe('Roof')
    expect(stdout).not.toContain('\u001B')
  })

  test('JSON is byte-identical on two runs and holds the project', async () => {
    const [first, second] = await Promise.all([1, 2].map(() => gablewattWarm(['check-project', project, '--json'])))
    expect(first?.stdout).toBe(second?.stdout)
    const parsed = JSON.parse(first?.stdout ?? '') as { project: { digest: string }; values: { ok: boolean } }
    expect(parsed.values.ok).toBe(true)
    expect(parsed.project.digest).toMatch(/^[0-9a-f]{64}$/u)
    const changed = await gablewattWarm(['check-project', project, '--json', '--set', 'arrays.south.modules=11'])
    expect((JSON.parse(changed.stdout) as typeof parsed).project.digest).not.toBe(parsed.project.digest)
  })
})

describe('list-sites', () => {
  test('nearest first with distances', async () => {
    const { stdout } = await gablewattWarm(['list-sites', '--near', '39.5,-119.8', '--limit', '3', '--csv'])
    const rows = stdout
      .trimEnd()
      .split('\r\n')
      .map((line) => line.split(','))
    expect(rows[0]?.at(-1)).toBe('distance_km')
    const distances = rows.slice(1).map((row) => Number(row.at(-1)))
    expect(distances).toHaveLength(3)
    expect(distances).toEqual(distances.toSorted((a, b) => a - b))
    expect(rows[1]?.[1]).toContain('RENO')
  })

  test('that finds nothing prints a header on stdout and the warning on stderr, unless quiet', async () => {
    const told = await gablewattWarm(['list-sites', 'zzzz', '--csv'])
    expect(told.stdout.trimEnd().split('\n')).toHaveLength(1)
    expect(told.stderr).toContain('warning: no built-in weather site')
    expect(await gablewattWarm(['list-sites', 'zzzz', '--csv', '--quiet'])).toMatchObject({ exitCode: 0, stderr: '' })
  })

  test('has no colour in a pipe, colour when forced, and none when --no-color or NO_COLOR say so', async () => {
    const esc = '\u001B['
    expect((await gablewattWarm(['list-sites', 'reno'])).stdout).not.toContain(esc)
    expect((await gablewattWarm(['list-sites', 'reno'], { env: { FORCE_COLOR: '1' } })).stdout).toContain(esc)
    expect(
      (await gablewattWarm(['list-sites', 'reno', '--no-color'], { env: { FORCE_COLOR: '1' } })).stdout,
    ).not.toContain(esc)
    expect(
      (await gablewattWarm(['--no-color', 'list-sites', 'reno'], { env: { FORCE_COLOR: '1' } })).stdout,
    ).not.toContain(esc)
    expect(
      (await gablewattWarm(['list-sites', 'reno'], { env: { FORCE_COLOR: '1', NO_COLOR: '1' } })).stdout,
    ).not.toContain(esc)
  })

  test.each([40, 80, 140])('keeps to %i columns', async (width) => {
    const { stdout } = await gablewattWarm(['list-sites', 'ca', '--limit', '100'], { env: { COLUMNS: String(width) } })
    const widths = stdout.split('\n').map((line) => line.length)
    expect(Math.max(...widths)).toBeLessThanOrEqual(width)
    expect(stdout).toContain('LOS ANGELES')
  })
})

describe('streams', () => {
  test('a reader that has seen enough is no error', async () => {
    const pipe = '"$0" "$1" list-sites --limit 5000 --json | head -1; echo "${PIPESTATUS[0]}"'
    const { stdout, stderr } = await execa('bash', ['-c', pipe, process.execPath, BINARY])
    expect(stderr).toBe('')
    expect(stdout).toBe('{\n0')
  })

  test('a full disk behind stdout ends with 3', async () => {
    const { exitCode, stderr } = await execa(
      'bash',
      ['-c', '"$0" "$1" list-sites > /dev/full', process.execPath, BINARY],
      { reject: false },
    )
    expect(exitCode).toBe(3)
    expect(stderr).toBe('error: cannot write to stdout: no space left on the disk (ENOSPC)')
  })

  test('Ctrl-C ends it at once and quietly', async () => {
    const run = gablewatt(['check-project', '-'], { stdin: 'pipe', timeout: 10_000 }) as ReturnType<typeof execa>
    setTimeout(() => run.kill('SIGINT'), 400)
    expect(await run).toMatchObject({ signal: 'SIGINT', stdout: '', stderr: '', timedOut: false })
  })
})
