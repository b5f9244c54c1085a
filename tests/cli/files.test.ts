import {
  chmodSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest'
import { writeWhole } from '../../src/files/index.js'
import { ensureBuilt, gablewattWarm } from './binary.js'

let folder = ''
beforeAll(ensureBuilt)
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'gablewatt-files-'))
})
afterEach(() => rmSync(folder, { recursive: true }))

describe('--out', () => {
  test('writes what stdout would get, says so on stderr, and leaves nothing else', async () => {
    const out = join(folder, 'sites.json')
    const { stdout: expected } = await gablewattWarm(['list-sites', 'reno', '--json'])
    const { exitCode, stdout, stderr } = await gablewattWarm(['list-sites', 'reno', '--json', '--out', out])
    expect({ exitCode, stdout, stderr }).toEqual({ exitCode: 0, stdout: '', stderr: `wrote ${out}\n` })
    expect(readFileSync(out, 'utf8')).toBe(expected)
    expect(readdirSync(folder)).toEqual(['sites.json'])
  })

  test('- is stdout', async () => {
    expect((await gablewattWarm(['list-sites', 'reno', '--csv', '-o', '-'])).stdout).toContain('RENO')
  })

  test('holds no colour even when colour is forced', async () => {
    const out = join(folder, 'sites.txt')
    await gablewattWarm(['list-sites', 'reno', '-q', '-o', out], { env: { FORCE_COLOR: '1' } })
    expect(readFileSync(out, 'utf8')).not.toContain('\u001B')
  })

  test('does not replace a file without --force', async () => {
    const out = join(folder, 'sites.json')
    writeFileSync(out, 'mine')
    const refused = await gablewattWarm(['list-sites', '--json', '--out', out])
    expect(refused).toMatchObject({ exitCode: 3, stdout: '' })
    expect(refused.stderr).toBe(
      `error: cannot write ${out}: the file exists already (EEXIST); add --force to replace it\n`,
    )
    expect(readFileSync(out, 'utf8')).toBe('mine')
    expect(await gablewattWarm(['list-sites', '--json', '--out', out, '--force', '--quiet'])).toMatchObject({
      exitCode: 0,
      stderr: '',
    })
    expect(JSON.parse(readFileSync(out, 'utf8'))).toMatchObject({ stage: 'sites' })
    expect(readdirSync(folder)).toEqual(['sites.json'])
  })

  test.each([
    ['missing/sites.json', 'no such file or folder (ENOENT)'],
    ['file/sites.json', 'a part of the path is a file, not a folder (ENOTDIR)'],
    ['inner', 'it is a folder, not a file'],
    [`${'x'.repeat(300)}.json`, 'the name is too long (ENAMETOOLONG)'],
  ])('%s: %s', async (name, why) => {
    writeFileSync(join(folder, 'file'), '')
    mkdirSync(join(folder, 'inner'))
    const { exitCode, stdout, stderr } = await gablewattWarm(['list-sites', '--out', join(folder, name)])
    expect({ exitCode, stdout }).toEqual({ exitCode: 3, stdout: '' })
    expect(stderr).toBe(`error: cannot write ${join(folder, name)}: ${why}\n`)
  })

  test('into a folder that takes no files ends with 3', async () => {
    // /proc takes none from anybody; a folder without permission would still take root's.
    const { exitCode, stdout, stderr } = await gablewattWarm(['list-sites', '--out', '/proc/sites.json'])
    expect({ exitCode, stdout }).toEqual({ exitCode: 3, stdout: '' })
    expect(stderr).toMatch(/^error: cannot write \/proc\/sites\.json: .+ \(E[A-Z]+\)\n$/u)
  })

  test('never replaces the project itself', async () => {
    const project = join(folder, 'project.yaml')
    await gablewattWarm(['new-project', '--out', project])
    const before = readFileSync(project, 'utf8')
    const { exitCode, stderr } = await gablewattWarm(['check-project', project, '--out', project, '--force'])
    expect(exitCode).toBe(2)
    expect(stderr).toContain('the project reads this file')
    expect(readFileSync(project, 'utf8')).toBe(before)
  })
})

describe('two files of one run', () => {
  test('are both written or neither', async () => {
    const [project, hours, out] = ['project.yaml', 'hours.csv', 'yield.json'].map((name) => join(folder, name)) as [
      string,
      string,
      string,
    ]
    await gablewattWarm(['new-project', '--out', project])
    const args = ['estimate-yield', project, '--hourly', hours, '--json', '--out']
    const same = await gablewattWarm([...args, hours])
    expect(same.exitCode).toBe(2)
    expect(same.stderr).toContain('two results would be written to')
    writeFileSync(hours, 'mine')
    expect(await gablewattWarm([...args, out])).toMatchObject({ exitCode: 3, stdout: '' })
    expect(readFileSync(hours, 'utf8')).toBe('mine')
    expect(readdirSync(folder).toSorted()).toEqual(['hours.csv', 'project.yaml'])
    expect(await gablewattWarm([...args, out, '--force'])).toMatchObject({ exitCode: 0, stdout: '' })
    expect(readdirSync(folder).toSorted()).toEqual(['hours.csv', 'project.yaml', 'yield.json'])
  })
})

describe('writeWhole', () => {
  test('keeps the permissions of a file that it replaces', () => {
    const path = join(folder, 'secret')
    writeFileSync(path, 'old')
    chmodSync(path, 0o600)
    writeWhole(path, 'new', true)
    expect(statSync(path).mode & 0o777).toBe(0o600)
  })

  test('replaces what a link points at, not the link', () => {
    writeFileSync(join(folder, 'real'), 'old')
    symlinkSync('real', join(folder, 'link'))
    writeWhole(join(folder, 'link'), 'new', true)
    expect(readFileSync(join(folder, 'real'), 'utf8')).toBe('new')
    expect(readdirSync(folder).toSorted()).toEqual(['link', 'real'])
  })

  test('writes straight to a device and leaves it a device', () => {
    writeWhole('/dev/null', 'gone', true)
    expect(statSync('/dev/null').isCharacterDevice()).toBe(true)
  })

  test('leaves nothing behind when the content cannot be written', () => {
    const path = join(folder, 'big')
    expect(() => writeWhole(path, undefined as unknown as string, false)).toThrow(TypeError)
    expect(existsSync(path)).toBe(false)
    expect(readdirSync(folder)).toEqual([])
  })
})
