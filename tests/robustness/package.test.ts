import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, symlinkSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { execa } from 'execa'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { ensureBuilt, gablewatt, ROOT } from '../cli/binary.js'

const folder = mkdtempSync(join(tmpdir(), 'gablewatt-package-'))
const installed = join(folder, 'node_modules/gablewatt')
const own = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as { dependencies: Record<string, string> }
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
    expect(statSync(tarball).size).toBeLessThan(6_000_000)
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

  test('is a library with types', async () => {
    const script = `import { estimateYield, loadProject } from 'gablewatt'
const { project, files } = loadProject({ path: ${JSON.stringify(join(installed, 'examples/lark-hollow.yaml'))} })
console.log(Math.round(estimateYield(project, files).values.annual.ac_kwh))`
    writeFileSync(join(folder, 'use.mjs'), script)
    const { stdout } = await execa(process.execPath, ['use.mjs'], { cwd: folder })
    expect(Number(stdout)).toBeGreaterThan(1000)
    writeFileSync(
      join(folder, 'use.ts'),
      script.replace('console.log(', 'export const kwh: number = (').replace('import {', 'import {'),
    )
    writeFileSync(
      join(folder, 'tsconfig.json'),
      JSON.stringify({
        compilerOptions: {
          strict: true,
          module: 'nodenext',
          target: 'es2022',
          noEmit: true,
          skipLibCheck: false,
          types: [],
        },
        files: ['use.ts'],
      }),
    )
    const checked = await execa(process.execPath, [join(ROOT, 'node_modules/typescript/bin/tsc'), '-p', folder], {
      reject: false,
    })
    expect(checked.stdout).toBe('')
    expect(checked.exitCode).toBe(0)
  })

  test('its schema can be found by editors', () => {
    expect(existsSync(join(installed, 'schemas/project.schema.json'))).toBe(true)
  })
})
