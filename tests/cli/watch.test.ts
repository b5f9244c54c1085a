import { spawn } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, utimesSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { setTimeout as wait } from 'node:timers/promises'
import { afterAll, expect, test, vi } from 'vitest'
import { startingFile } from '../../src/project/index.js'
import { BINARY, ensureBuilt, gablewattWarm } from './binary.js'

vi.setConfig({ testTimeout: 240_000 })

const folder = mkdtempSync(join(tmpdir(), 'watch-'))
afterAll(() => rmSync(folder, { recursive: true, force: true }))

test('check-project --watch checks again when the content changes, and ends at Ctrl-C', async () => {
  ensureBuilt()
  const path = join(folder, 'project.yaml')
  writeFileSync(path, startingFile())
  const child = spawn(process.execPath, [BINARY, 'check-project', path, '--watch', '--no-color'], {
    stdio: ['ignore', 'pipe', 'pipe'],
  })
  let said = ''
  child.stderr.on('data', (data: Buffer) => (said += data.toString()))
  child.stdout.resume()
  const ended = new Promise<number | null>((resolve) => child.on('exit', resolve))
  const rounds = async (count: number): Promise<void> => {
    const until = Date.now() + 100_000
    while (said.split('watching').length - 1 < count && Date.now() < until) await wait(50)
    expect(said.split('watching').length - 1).toBe(count)
  }
  await rounds(1)
  utimesSync(path, new Date(), new Date())
  await wait(1500)
  await rounds(1)
  writeFileSync(path, readFileSync(path, 'utf8').replace('pitch_in_12: !made_up 6', 'pitch_in_12: steep'))
  await rounds(2)
  expect(said).toContain("found text 'steep'")
  writeFileSync(path, startingFile())
  await rounds(3)
  child.kill('SIGINT')
  expect(await ended).toBe(0)
})

test.each([['--json'], ['--csv'], ['--markdown'], ['--rename'], ['--out', 'x']])(
  '--watch does not go with %s',
  async (...option) => {
    const run = await gablewattWarm(['check-project', 'p.yaml', '--watch', ...option])
    expect(run.exitCode).toBe(2)
    expect(run.stderr).toContain('cannot be used with')
  },
)
