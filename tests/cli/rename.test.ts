import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { ensureBuilt, gablewatt, gablewattWarm } from './binary.js'

const folder = mkdtempSync(join(tmpdir(), 'rename-'))
const OLD = 'format: gablewatt/1 # kept\nlosses: { soiling_pct: 2 }\n'
const NEW = 'format: gablewatt/2 # kept\nlosses: { dirt_pct: 2 }\n'
beforeAll(ensureBuilt)
afterAll(() => rmSync(folder, { recursive: true, force: true }))

function put(name: string, text = OLD): string {
  writeFileSync(join(folder, name), text)
  return join(folder, name)
}

describe('check-project --rename', () => {
  it('prints the file with the new names and leaves the old one alone', async () => {
    const path = put('a.yaml')
    const { exitCode, stdout, stderr } = await gablewattWarm(['check-project', path, '--rename'])
    expect([exitCode, stdout, stderr]).toEqual([0, NEW, 'note: 2 name(s) replaced\n'])
    expect(readFileSync(path, 'utf8')).toBe(OLD)
  })

  it('writes to --out, and there only over a file with --force', async () => {
    const [path, out] = [put('b.yaml'), put('c.yaml', 'mine\n')]
    const refused = await gablewattWarm(['check-project', path, '--rename', '--out', out])
    expect(refused.exitCode).not.toBe(0)
    expect(readFileSync(out, 'utf8')).toBe('mine\n')
    expect((await gablewattWarm(['check-project', path, '--rename', '--out', out, '--force'])).exitCode).toBe(0)
    expect([readFileSync(path, 'utf8'), readFileSync(out, 'utf8')]).toEqual([OLD, NEW])
  })

  it('with --force alone rewrites the file in place, once', async () => {
    const path = put('d.yaml')
    const first = await gablewattWarm(['check-project', path, '--rename', '--force'])
    expect([first.exitCode, first.stdout, readFileSync(path, 'utf8')]).toEqual([0, '', NEW])
    const again = await gablewattWarm(['check-project', path, '--rename', '--force'])
    expect([again.exitCode, again.stderr]).toEqual([0, 'note: no old name in it\n'])
  })

  it('writes nothing when the file is no YAML, or options would mean nothing', async () => {
    const path = put('e.yaml', `${OLD}  - broken: [\n`)
    const { exitCode, stderr } = await gablewattWarm(['check-project', path, '--rename', '--force'])
    expect([exitCode, readFileSync(path, 'utf8')]).toEqual([2, `${OLD}  - broken: [\n`])
    expect(stderr).toContain('e.yaml:3:')
    const more = await gablewattWarm(['check-project', path, '--rename', '--set', 'title=x'])
    expect([more.exitCode, more.stdout]).toEqual([2, ''])
    const stdin = await gablewatt(['check-project', '-', '--rename', '--force'], {
      input: OLD,
      stdin: undefined as never,
    })
    expect(stdin.exitCode).toBe(2)
  })
})
