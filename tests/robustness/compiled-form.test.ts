import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, symlinkSync, writeFileSync } from 'node:fs'
import { createRequire } from 'node:module'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { execa } from 'execa'
import { afterAll, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { ensureBuilt, ROOT } from '../cli/binary.js'

const folder = mkdtempSync(join(tmpdir(), 'gablewatt-compiled-'))
const program = join(folder, 'dist/program/main.cjs')
const compiled = join(folder, 'dist/program/main.cache')
/** What no quick command needs, which is read when it is asked for. */
const REST = ['rest.cjs', 'rest.cache']
const house = join(ROOT, 'tests/bench/plain-house.yaml')

interface Loader {
  readonly compiledForm: (file: string, text: Buffer) => Buffer | undefined
  readonly settingsOf: (v8: string) => readonly string[]
}
let loader: Loader
let whole = { program: Buffer.alloc(0), compiled: Buffer.alloc(0) }
let right = ''

const start = (args: readonly string[]) =>
  execa(process.execPath, [join(folder, 'bin/gablewatt.js'), ...args], { reject: false, stripFinalNewline: false })
const estimate = () => start(['estimate-yield', house, '--json'])

/** A copy of the built program that may be damaged. */
beforeAll(async () => {
  ensureBuilt()
  cpSync(join(ROOT, 'bin'), join(folder, 'bin'), { recursive: true })
  cpSync(join(ROOT, 'package.json'), join(folder, 'package.json'))
  mkdirSync(join(folder, 'dist/program'), { recursive: true })
  for (const name of ['examples', 'node_modules']) symlinkSync(join(ROOT, name), join(folder, name))
  const from = join(ROOT, 'dist/program')
  whole = { program: readFileSync(join(from, 'main.cjs')), compiled: readFileSync(join(from, 'main.cache')) }
  for (const name of REST) cpSync(join(from, name), join(folder, 'dist/program', name))
  loader = createRequire(import.meta.url)(join(folder, 'bin/load-program.js')) as Loader
  lay(whole.program, whole.compiled)
  const { exitCode, stdout, stderr } = await estimate()
  if (exitCode !== 0) throw new Error(stderr)
  right = stdout
})
beforeEach(() => lay(whole.program, whole.compiled))
afterAll(() => rmSync(folder, { recursive: true }))

const used = (text: Buffer): Buffer | undefined => loader.compiledForm('main.cjs', text)

function lay(text: Buffer, form: Buffer): void {
  writeFileSync(program, text)
  writeFileSync(compiled, form)
}

/** Seeded places: a multiplier of Knuth's over the whole length, and each of the eight bits in turn. */
function flipped(bytes: Buffer, index: number): Buffer {
  const changed = Buffer.from(bytes)
  const at = (index * 2_654_435_761) % bytes.length
  changed[at] = (changed[at] ?? 0) ^ (1 << (index % 8))
  return changed
}

/** The program with one text changed for another of the same length. */
function edited(from: string, to: string): Buffer {
  const text = whole.program.toString('latin1')
  // Of the text itself nothing is printed: it is two million characters.
  expect({ from, sameLength: from.length === to.length, found: text.includes(from) }).toEqual({
    from,
    sameLength: true,
    found: true,
  })
  return Buffer.from(text.replaceAll(from, to), 'latin1')
}

describe('the compiled form of the program', () => {
  test('is used as the build made it', () => {
    const seal = whole.compiled.indexOf('\n') + 1
    expect(whole.compiled.toString('latin1', 0, seal)).toMatch(/^v\d+\.\d+\.\d+ \w+ \w+(?: \d+){4}\n$/u)
    expect(used(whole.program)).toEqual(whole.compiled.subarray(seal))
  })

  // Versions of the engine in Node 20, 22 and 24, as `process.versions.v8` tells them.
  test.each([
    ['11.3.244.8-node.36', ['--interrupt-budget=400000']],
    ['12.4.254.21-node.33', []],
    ['13.6.233.17-node.41', []],
  ])('is made under settings that engine %s knows', (v8, settings) => {
    expect(loader.settingsOf(v8)).toEqual(settings)
  })

  test('of the rest is used too', () => {
    const [text = '', form = ''] = REST.map((name) => join(folder, 'dist/program', name))
    const kept = readFileSync(form)
    expect(loader.compiledForm('rest.cjs', readFileSync(text))).toEqual(kept.subarray(kept.indexOf('\n') + 1))
  })

  test('is not used when one bit of it is another, at any of 200 places', () => {
    const forms = Array.from({ length: 200 }, (_, index) => {
      writeFileSync(compiled, flipped(whole.compiled, index))
      return used(whole.program)
    })
    expect(forms.filter((form) => form !== undefined)).toEqual([])
  })

  test.each([0, 36])('a start with flipped bit %i gives the right figures', async (index) => {
    writeFileSync(compiled, flipped(whole.compiled, index))
    const { exitCode, stdout, stderr } = await estimate()
    expect({ exitCode, stderr }).toEqual({ exitCode: 0, stderr: '' })
    expect(stdout).toBe(right)
  })

  test.each([
    ['cut short', (bytes: Buffer) => bytes.subarray(0, 1_000_000)],
    ['empty', () => Buffer.alloc(0)],
    ['another file', () => Buffer.from('not compiled')],
  ])('that is %s is not used', async (_name, change) => {
    writeFileSync(compiled, change(whole.compiled))
    expect(await estimate()).toMatchObject({ exitCode: 0, stderr: '', stdout: right })
  })

  test.each([
    ['a text', 'Energy estimate', 'Energy estimatE', []],
    ['the name of a key', 'performance_ratio', 'performance_rati0', ['--json']],
  ])('an edit of %s of the same length runs as edited', async (_name, from, to, format) => {
    lay(edited(from, to), whole.compiled)
    const { exitCode, stdout } = await start(['estimate-yield', house, ...format])
    expect(exitCode).toBe(0)
    expect(stdout).toContain(to)
    expect(stdout).not.toContain(from)
  })

  test('files of two builds are not run together', async () => {
    const [rest = ''] = REST.map((name) => join(folder, 'dist/program', name))
    const kept = readFileSync(rest, 'latin1')
    writeFileSync(rest, kept.replace(/build:'[\da-f]{16}'/u, "build:'0123456789abcdef'"))
    const { exitCode, stdout, stderr } = await start(['payback', join(ROOT, 'examples/lark-hollow.yaml')])
    writeFileSync(rest, kept, 'latin1')
    expect({ exitCode, stdout }).toEqual({ exitCode: 70, stdout: '' })
    expect(stderr).toContain('files of two builds: run `npm run build`')
  })

  test('compiling anew keeps the edited program, not the older compiled form', { timeout: 60_000 }, async () => {
    const bundle = edited('performance_ratio', 'performance_rati0').toString('latin1')
    // The build puts its name into the place for it; another text has another name.
    const [, build = ''] = /'([\da-f]{16})'/u.exec(readFileSync(join(ROOT, 'dist/seal/build-id.js'), 'utf8')) ?? []
    const named = bundle.indexOf(build)
    const unnamed = (text: string): Buffer => Buffer.from(text.replaceAll(build, 'gablewatt-build-goes-here'), 'latin1')
    lay(unnamed(bundle), whole.compiled)
    const [rest = ''] = REST.map((name) => join(folder, 'dist/program', name))
    writeFileSync(rest, unnamed(readFileSync(rest, 'latin1')))
    await execa(process.execPath, [join(folder, 'bin/compile-program.js')])
    const anew = readFileSync(program, 'latin1')
    const other = anew.slice(named, named + build.length)
    expect(other).toMatch(/^[\da-f]{16}$/u)
    expect(other).not.toBe(build)
    expect(anew.replaceAll(other, build) === bundle).toBe(true)
    expect(used(readFileSync(program))).toBeDefined()
    const { stdout } = await estimate()
    expect(stdout).toContain('"performance_rati0"')
    expect(stdout).not.toContain('"performance_ratio"')
  })
})
