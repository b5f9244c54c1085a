import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { execa } from 'execa'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { ensureBuilt, gablewatt, ROOT } from '../cli/binary.js'

const folder = mkdtempSync(join(tmpdir(), 'gablewatt-package-'))
const installed = join(folder, 'node_modules/gablewatt')
const own = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as {
  readonly version: string
  readonly dependencies: Record<string, string>
}
let files: string[] = []
let tarball = ''

beforeAll(async () => {
  ensureBuilt()
  const { stdout } = await execa('npm', ['pack', '--json', '--ignore-scripts', '--pack-destination', folder], {
    cwd: ROOT,
  })
  const [packed] = JSON.parse(stdout) as { filename: string; files: { path: string }[] }[]
  files = packed?.files.map(({ path }) => path) ?? []
  tarball = join(folder, packed?.filename ?? '')
  mkdirSync(installed, { recursive: true })
  await execa('tar', ['-xzf', tarball, '-C', installed, '--strip-components=1'])
  // As an install lays them: only what the package asks for, beside it.
  for (const name of Object.keys(own.dependencies)) {
    mkdirSync(join(folder, 'node_modules', name, '..'), { recursive: true })
    symlinkSync(join(ROOT, 'node_modules', name), join(folder, 'node_modules', name))
  }
}, 120_000)
afterAll(() => rmSync(folder, { recursive: true }))

/** The program of the package, from an empty folder. */
const packaged = (args: readonly string[]) =>
  execa(process.execPath, [join(installed, 'bin/gablewatt.js'), ...args], {
    cwd: folder,
    reject: false,
    stripFinalNewline: false,
    env: { NODE_PATH: '' },
  })

const DAYS = 'date,kWh\n2026-05-01,20\n2026-05-02,24\n2026-05-03,12\n'

/** What the script below says. */
interface Told {
  readonly kwh: number
  readonly labels: number
  readonly pages: number
  readonly draft: boolean
  readonly bytes: readonly number[]
  readonly rows: readonly object[]
}

/** A number as results carry it. */
const rounded = (_key: string, value: unknown): unknown =>
  typeof value === 'number' ? Number(value.toPrecision(10)) : value

describe('npm pack', () => {
  test('holds what runs, its types, schemas and examples, and nothing else', () => {
    expect(files).toEqual(
      expect.arrayContaining([
        'package.json',
        'README.md',
        'bin/gablewatt.js',
        'dist/index.js',
        'dist/index.d.ts',
        'dist/program/main.cjs',
        'dist/program/rest.cjs',
        'dist/program/LICENSES.txt',
        'schemas/CHANGELOG.md',
        'schemas/fleet-line.schema.json',
        'schemas/project.schema.json',
        'examples/lark-hollow.yaml',
      ]),
    )
    const licences = readFileSync(join(installed, 'dist/program/LICENSES.txt'), 'utf8')
    // What is inside the bundle, and the fonts that packets embed.
    for (const name of ['commander', 'yaml', 'chalk', 'suncalc', 'big.js', 'fast-xml-parser', 'dejavu-fonts-ttf'])
      expect(licences).toMatch(new RegExp(`^${name} [\\d.]+ \\(.+\\)$`, 'mu'))
    expect(licences).toContain('Bitstream Vera')
    // npm takes licence and change log along wherever they are.
    expect(
      files.filter(
        (path) =>
          !/^(?:bin|dist|schemas|examples)\/|^(?:package\.json|README\.md|CHANGELOG\.md|LICENSE.*)$/u.test(path),
      ),
    ).toEqual([])
    expect(files.filter((path) => /\.test\.|node_modules|\.tsbuildinfo|~$/u.test(path))).toEqual([])
    expect(statSync(tarball).size).toBeLessThan(7_500_000)
  })

  test('runs from an empty folder', async () => {
    expect((await packaged(['--version'])).stdout).toMatch(/^gablewatt \d+\.\d+\.\d+\n$/u)
    const house = join(installed, 'examples/lark-hollow.yaml')
    const [there, here] = await Promise.all([
      packaged(['estimate-yield', house, '--json']),
      gablewatt(['estimate-yield', join(ROOT, 'examples/lark-hollow.yaml'), '--json']),
    ])
    expect(there).toMatchObject({ exitCode: 0, stdout: here.stdout })
    const packet = await packaged(['draw-permit', house, '--draft', '--out', 'packet.pdf'])
    expect([0, 1], packet.stderr).toContain(packet.exitCode)
    expect(readFileSync(join(folder, 'packet.pdf')).subarray(0, 5).toString()).toBe('%PDF-')
  })

  test('is a library with types that does the whole job in ten lines', async () => {
    const house = 'examples/lark-hollow.yaml'
    const path = JSON.stringify(join(installed, house))
    const job = `import { checkHouse, loadProject, preparePacket, runFleet, runHouse } from 'gablewatt'
const loaded = loadProject({ path: ${path} })
const house = runHouse(loaded)
const check = await checkHouse(loaded.project, house)
const [energy, wiring, mounts] = [await house.yield(), await house.wire(), await house.mounts()]
const [labels, bill, plan, payback] = [await house.labels(), await house.bom(), await house.work(), await house.payback()]
const packet = await preparePacket(loaded, house, { size: '11x17', tool: 'gablewatt ${own.version}' })
const { pdf, sheets } = await packet.draw(packet.errors.length > 0)
const review = await house.output({ table: { name: 'days.csv', text: ${JSON.stringify(DAYS)} } })
const fleet = await runFleet({ projects: [${path}] })`
    const told = `{
  check: check.values, kwh: energy.values.annual.ac_kwh, circuits: wiring.values.circuits, counts: mounts.values.counts,
  labels: labels.length, lines: bill.values.lines, steps: plan.values.steps, npv: payback.values.npv_usd,
  expected: review.values.expected, pages: sheets.length, draft: packet.errors.length > 0, bytes: Array.from(pdf),
  rows: fleet.projects,
}`
    const many = JSON.stringify({
      projects: [join(installed, 'examples/fleet')],
      stages: ['yield'],
      shard: { part: 1, of: 2 },
    })
    writeFileSync(join(folder, 'use.mjs'), `${job}\nconsole.log(JSON.stringify(${told}))`)
    const { stdout } = await execa(process.execPath, ['use.mjs'], { cwd: folder })
    const { bytes, labels, pages, draft, rows, ...values } = JSON.parse(stdout) as Told
    // What the subcommands say of the same house, to the digits that they print.
    const file = join(installed, house)
    // The library does not know how a person calls the file.
    const called = (text: string): string => text.replaceAll(file, 'project.yaml')
    const said = async (...args: string[]): Promise<Record<string, unknown>> => {
      const { stdout: json } = await packaged([...args, '--json'])
      return (JSON.parse(called(json)) as { values: Record<string, unknown> }).values
    }
    writeFileSync(join(folder, 'days.csv'), DAYS)
    const energy = (await said('estimate-yield', file)) as { annual: { ac_kwh: number } }
    expect(JSON.parse(JSON.stringify(values), rounded)).toEqual({
      check: await said('check-project', file),
      kwh: energy.annual.ac_kwh,
      circuits: (await said('size-wire', file))['circuits'],
      counts: (await said('space-mounts', file))['counts'],
      lines: (await said('price-bom', file))['lines'],
      steps: (await said('plan-work', file))['steps'],
      npv: (await said('payback', file))['npv_usd'],
      expected: (await said('review-output', file, join(folder, 'days.csv')))['expected'],
    })
    expect(labels).toBeGreaterThan(5)
    expect(pages).toBeGreaterThan(5)
    await packaged(['draw-permit', file, ...(draft ? ['--draft'] : []), '--out', 'job.pdf'])
    expect(Buffer.from(bytes).equals(readFileSync(join(folder, 'job.pdf')))).toBe(true)
    expect(rows).toMatchObject([
      { name: 'lark-hollow', status: 'ok', figures: { 'yield.annual.ac_kwh': Number(values.kwh.toPrecision(6)) } },
    ])
    // As many workers as are asked for, and none: the same.
    writeFileSync(
      join(folder, 'many.mjs'),
      `import { runFleet } from 'gablewatt'
for (const workers of [1, 2]) console.log(JSON.stringify(await runFleet({ ...${many}, workers })))`,
    )
    const [alone = '', together] = (await execa(process.execPath, ['many.mjs'], { cwd: folder })).stdout.split('\n')
    const { worst, projects } = JSON.parse(alone) as { worst: number; projects: object[] }
    expect(worst).toBe(0)
    expect(projects.length).toBeGreaterThan(10)
    expect(together).toBe(alone)
    writeFileSync(join(folder, 'use.mts'), `${job}\nexport const told: Readonly<Record<string, unknown>> = ${told}\n`)
    writeFileSync(
      join(folder, 'tsconfig.json'),
      JSON.stringify({
        compilerOptions: {
          strict: true,
          module: 'nodenext',
          target: 'es2022',
          lib: ['es2022'],
          noEmit: true,
          skipLibCheck: false,
          types: [],
        },
        files: ['use.mts'],
      }),
    )
    const checked = await execa(process.execPath, [join(ROOT, 'node_modules/typescript/bin/tsc'), '-p', folder], {
      reject: false,
    })
    expect(checked.stdout).toBe('')
    expect(checked.exitCode).toBe(0)
  }, 120_000)

  test('its schema can be found by editors', () => {
    expect(existsSync(join(installed, 'schemas/project.schema.json'))).toBe(true)
  })
})
