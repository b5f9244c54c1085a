import { mkdtempSync, readFileSync, rmSync, writeFileSync, existsSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { execa } from 'execa'
import { afterAll, describe, expect, test } from 'vitest'
import { askAll, type Lines } from '../../src/cli/commands/ask/ask-all.js'
import { pipedLines } from '../../src/cli/commands/ask/piped-lines.js'
import { QUESTIONS } from '../../src/cli/commands/ask/questions.js'
import { schemaFor } from '../../src/cli/commands/new-project-schema.js'
import { loadProject } from '../../src/project/index.js'
import { BINARY, gablewatt, gablewattWarm, ROOT } from './binary.js'

const folder = mkdtempSync(join(tmpdir(), 'new-project-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

/** Answers one line after the other, and keeps what was said and asked. */
function scripted(answers: readonly string[]): Lines & { readonly said: string[]; readonly asked: string[] } {
  const left = [...answers]
  const said: string[] = []
  const asked: string[] = []
  return {
    said,
    asked,
    say: (text) => void said.push(text),
    next: (prompt) => {
      asked.push(prompt)
      return Promise.resolve(left.shift())
    },
  }
}

describe('the questions of a new project', () => {
  test('are about a dozen, each with help and its default said', () => {
    expect(QUESTIONS.length).toBeLessThanOrEqual(15)
    for (const { help, text } of QUESTIONS) {
      expect(help.length).toBeGreaterThan(20)
      expect(text).toMatch(/\?|\)|drawings|longitude/u)
    }
  })

  test('a wrong answer is asked again with its reason, ? explains, Enter takes the default', async () => {
    const lines = scripted(['Atlantis', '39.7, -105', '', '400', '?', '185', 'steep', '8'])
    await expect(askAll(QUESTIONS.slice(0, 5), lines)).rejects.toThrow('the input ends at question 5/5 (eave_ft)')
    const text = lines.said.join('\n')
    expect(text).toContain("no one weather site is 'Atlantis'")
    expect(text).toContain('400 is out of range; allowed: 0 to 360 deg')
    expect(text).toContain('90 is east, 180 south')
    expect(text).toContain("'steep' is not a number")
    expect(lines.asked.filter((each) => each.startsWith('3/5'))).toHaveLength(3)
    expect(lines.asked[2]).toContain('[later]')
  })

  test('a place is needed', async () => {
    const lines = scripted(['', '', '12, 200', '39.7, -105'])
    expect(await askAll(QUESTIONS.slice(0, 1), lines)).toEqual({ place: '39.7, -105' })
    expect(lines.said.join('\n')).toContain('longitude 200 is out of range')
  })

  test('a long answer is asked again, not cut short', async () => {
    const lines = scripted(['39.7, -105', 'x'.repeat(501), 'x'.repeat(500)])
    const { address } = await askAll(
      QUESTIONS.filter(({ key }) => key === 'place' || key === 'address'),
      lines,
    )
    expect(lines.said.join('\n')).toContain('an answer has at most 500 characters; this one has 501')
    expect(address).toBe('x'.repeat(500))
  })

  test('lines without end that answer nothing end after a thousand', async () => {
    const [place] = QUESTIONS.filter(({ key }) => key === 'place')
    const after = async (count: number): Promise<unknown> => {
      const lines = scripted([...Array.from({ length: count }, () => 'Atlantis'), '39.7, -105'])
      return await askAll([place!], lines).catch((error: unknown) => (error as Error).message)
    }
    expect(await after(999)).toEqual({ place: '39.7, -105' })
    expect(await after(1000)).toBe(
      'more than 1000 lines answered no question to its end, and nothing was written; use --answers FILE',
    )
  })

  test('lines of a pipe are whole wherever it is cut, and none is longer than 100 kB', async () => {
    const bytes = Buffer.from('one\r\nzw\u00f6lf\n\nlast')
    for (const size of [1, 3, 7, 100]) {
      const pipe = async function* (): AsyncGenerator<Uint8Array> {
        for (let at = 0; at < bytes.length; at += size) yield await Promise.resolve(bytes.subarray(at, at + size))
      }
      const lines: string[] = []
      for await (const line of pipedLines(pipe())) lines.push(line.trim())
      expect(lines).toEqual(['one', 'zw\u00f6lf', '', 'last'])
    }
    const longest = async (length: number, end = ''): Promise<number | string> => {
      let asked = 0
      const pipe = async function* (): AsyncGenerator<Uint8Array> {
        for (let left = length; left > 0; left -= 1000) {
          asked += 1
          yield await Promise.resolve(Buffer.alloc(Math.min(left, 1000), 'x'))
        }
        yield Buffer.from(end)
      }
      const first = pipedLines(pipe()).next()
      const said = await first
        .then(({ value }) => value?.length ?? 0)
        .catch((error: unknown) => (error as Error).message)
      expect(asked).toBeLessThanOrEqual(101)
      return said
    }
    expect(await longest(100_000, '\n')).toBe(100_000)
    expect(await longest(100_000)).toBe(100_000)
    expect(await longest(50_000_000)).toBe(
      'cannot read the answers from stdin: it gives a line of more than 100 kB; an answer stands on a line of its own',
    )
  })

  test.skipIf(process.platform === 'win32').each([
    ['of lines', 'yes Atlantis', 'more than 1000 lines answered no question'],
    ['of one line', 'cat /dev/zero', 'it gives a line of more than 100 kB'],
  ])('a pipe without end, %s, ends with one message', { timeout: 30_000 }, async (_name, endless, says) => {
    const out = join(folder, 'endless.yaml')
    const run = await execa(
      'bash',
      ['-c', `${endless} | "$0" "$1" new-project --answers - --out "$2"`, process.execPath, BINARY, out],
      { reject: false, timeout: 20_000 },
    )
    expect(run.timedOut).toBe(false)
    const told = run.stderr.split('\n').filter((line) => line.startsWith('error: '))
    expect(told).toEqual([expect.stringContaining(says)])
    expect(run.exitCode).toBe(says.startsWith('more') ? 2 : 3)
    expect(existsSync(out)).toBe(false)
  })

  test.skipIf(process.platform === 'win32')(
    'a pipe that goes on after the last answer is not waited for',
    async () => {
      const run = await execa(
        'bash',
        ['-c', `(echo 39.7, -105; yes '') | "$0" "$1" new-project --answers -`, process.execPath, BINARY],
        { reject: false, timeout: 20_000 },
      )
      expect(run.timedOut).toBe(false)
      expect(run.exitCode).toBe(0)
      expect(run.stdout).toContain('latitude_deg: 39.7')
    },
    30_000,
  )

  test('from a pipe: what is answered stands unmarked, what is not is marked or left out', async () => {
    const out = join(folder, 'piped.yaml')
    const answers = ['39.7, -105', '12 Elm Lane', '170', '', '44', '20', '', '', '', '', '9,600', '0.16', '', '200', '']
    const run = await gablewatt(['new-project', '--ask', '--out', out], {
      input: `${answers.join('\n')}\n`,
      stdin: 'pipe',
    })
    expect(run.exitCode).toBe(0)
    expect(run.stdout).toBe('')
    const { project, madeUp } = loadProject({ path: out })
    expect(project.site).toMatchObject({ address: '12 Elm Lane', latitude_deg: 39.7, longitude_deg: -105 })
    expect(project.roof_planes['south']).toMatchObject({
      azimuth_deg: 170,
      pitch_in_12: 6,
      outline: { shape: 'hip', width_ft: 44, ridge_ft: 20 },
    })
    expect(project).toMatchObject({ usage: { annual_kwh: 9600 }, electrical: { panel: { bus_a: 200 } } })
    expect(project.structure).toBeUndefined()
    expect(madeUp).toEqual(expect.arrayContaining(['roof_planes.south.pitch_in_12', 'electrical.panel.main_a']))
    for (const path of [
      'roof_planes.south.azimuth_deg',
      'electrical.panel.bus_a',
      'usage.annual_kwh',
      'site.latitude_deg',
    ])
      expect(madeUp).not.toContain(path)
    expect(readFileSync(out, 'utf8')).toContain(`# Next: gablewatt check-project ${out}`)
  })

  test('input that ends leaves nothing behind', async () => {
    const out = join(folder, 'ends.yaml')
    const run = await gablewatt(['new-project', '--ask', '--out', out], { input: 'Denver, CO\n', stdin: 'pipe' })
    expect(run.exitCode).toBe(2)
    expect(run.stderr).toContain('nothing was written')
    expect(existsSync(out)).toBe(false)
  })

  test('a file of answers gives the same file; what is wrong in it is told at its line', async () => {
    const path = join(folder, 'answers.yaml')
    writeFileSync(path, 'place: Denver, CO\nazimuth_deg: 200\nmodules: 10\n')
    const good = await gablewattWarm(['new-project', '--answers', path])
    expect(good.exitCode).toBe(0)
    const { project, madeUp } = loadProject({ path: '-', text: good.stdout })
    expect(project.arrays['south']?.modules).toBe(10)
    expect(madeUp).toContain('site.elevation_ft')
    writeFileSync(path, 'place: Denver, CO\nazimuth: 200\nmodules: 0\npitch_in_12: [1]\n')
    const bad = await gablewattWarm(['new-project', '--answers', path])
    expect(bad.exitCode).toBe(2)
    expect(bad.stderr).toContain('answers.yaml:2:1  azimuth  unknown key; did you mean azimuth_deg?')
  })
})

describe('parts', () => {
  test('are added in place with --force alone, and only once', async () => {
    const path = join(folder, 'parts.yaml')
    await gablewattWarm(['new-project', '--site', 'Denver, CO', '--out', path])
    const before = readFileSync(path, 'utf8')
    expect((await gablewattWarm(['new-project', '--parts', 'wire', '--add-to', path])).stdout).toContain('electrical:')
    expect(readFileSync(path, 'utf8')).toBe(before)
    await gablewattWarm([
      'new-project',
      '--parts',
      'wire,mounts,permit,money,yield,storage',
      '--add-to',
      path,
      '--force',
    ])
    const after = readFileSync(path, 'utf8')
    const { values } = JSON.parse((await gablewattWarm(['check-project', path, '--json'])).stdout) as {
      values: { ok: boolean; stages: { missing: unknown[]; state: string }[] }
    }
    expect(values.ok).toBe(true)
    expect(values.stages.map(({ state }) => state)).toEqual(['made_up', 'made_up', 'made_up', 'made_up', 'made_up'])
    const again = await gablewattWarm(['new-project', '--parts', 'wire', '--add-to', path, '--force'])
    expect(again.stderr).toContain('nothing to add')
    expect(readFileSync(path, 'utf8')).toBe(after)
  })

  test.each([
    [['--parts', 'roof'], "'roof' is no part; allowed: yield, wire, mounts, permit, money, storage"],
    [['--add-to', 'p.yaml'], '--add-to wants --parts'],
    [['--add-to', 'p.yaml', '--parts', 'wire'], 'p.yaml'],
    [['--add-to', 'p.yaml', '--ask'], 'cannot be used with'],
  ])('%j is refused', async (options, message) => {
    const run = await gablewattWarm(['new-project', ...options])
    expect([2, 3]).toContain(run.exitCode)
    expect(run.stderr).toContain(message)
  })

  test('a stage that misses its part names the command that writes it', async () => {
    const path = join(folder, 'fresh.yaml')
    await gablewattWarm(['new-project', '--site', 'Denver, CO', '--out', path])
    for (const [command, part] of [
      ['size-wire', 'wire'],
      ['space-mounts', 'mounts'],
      ['draw-permit', 'permit'],
      ['payback', 'money'],
      ['choose-size', 'money'],
    ] as const) {
      const { stderr, exitCode } = await gablewattWarm([command, path])
      expect(exitCode).toBe(2)
      expect(stderr).toContain(`next: gablewatt new-project --parts ${part} --add-to ${path} --force`)
    }
    const lacking = await gablewattWarm([
      'size-wire',
      path,
      '--set',
      'codes.electrical=NEC 2020',
      '--set',
      'electrical.panel.bus_a=200',
    ])
    expect(lacking.stderr).toMatch(/next: gablewatt explain electrical\.\w+/u)
  })
})

describe('the line that names the schema', () => {
  test('is a path from the file to the schema, or not there', async () => {
    const installed = join(folder, 'node_modules/gablewatt/schemas')
    expect(schemaFor(undefined)).toBeUndefined()
    expect(schemaFor('-')).toBeUndefined()
    const { mkdirSync } = await import('node:fs')
    mkdirSync(installed, { recursive: true })
    mkdirSync(join(folder, 'houses'), { recursive: true })
    writeFileSync(join(installed, 'project.schema.json'), '{}')
    expect(schemaFor(join(folder, 'houses/a.yaml'))).toBe('../node_modules/gablewatt/schemas/project.schema.json')
    const out = join(tmpdir(), `schema-line-${process.pid}.yaml`)
    await gablewatt(['new-project', '--out', out, '--force'])
    const named = /\$schema=(.*)/u.exec(readFileSync(out, 'utf8'))?.[1] ?? ''
    expect(join(tmpdir(), named)).toBe(join(ROOT, 'schemas/project.schema.json'))
    rmSync(out)
    expect((await gablewattWarm(['new-project'])).stdout).not.toContain('$schema')
  })
})
