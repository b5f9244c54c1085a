import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { execa } from 'execa'
import { beforeAll, describe, expect, test } from 'vitest'
import { SUBCOMMANDS } from '../../src/cli/subcommands.js'
import { TOPICS } from '../../src/cli/explanations/index.js'
import { ensureBuilt, ROOT } from './binary.js'

beforeAll(ensureBuilt)
const readme = readFileSync(join(ROOT, 'README.md'), 'utf8')

describe('README', () => {
  test('its blocks and its picture are what the program prints; npm run readme writes them anew', async () => {
    const { exitCode, stderr } = await execa(process.execPath, ['tests/readme/run.mjs', '--check'], {
      cwd: ROOT,
      reject: false,
    })
    expect({ exitCode, stderr }).toEqual({ exitCode: 0, stderr: '' })
    expect(readme.match(/^<!-- output: /gmu)?.length).toBe(readme.match(/^<!-- end -->$/gmu)?.length)
  })

  test('is short, and a newcomer finds the cautions, the install, the first file, each subcommand, exit codes and help', () => {
    expect(Buffer.byteLength(readme)).toBeLessThanOrEqual(8192)
    for (const words of [
      'Not legal or engineering advice',
      'npm ci',
      'new-project',
      'Exit codes',
      'gablewatt help',
      ...SUBCOMMANDS.map(({ name, summary }) => `${name.padEnd(17)}  ${summary}`),
    ])
      expect(readme).toContain(words)
  })

  test('the topics that it names are there', () => {
    const named = /the topics (?<names>[^.]+)\./u.exec(readme)?.groups?.['names'] ?? ''
    const topics = [...named.matchAll(/`([a-z-]+)`/gu)].map(([, name = '']) => name)
    expect(topics).toEqual(Object.keys(TOPICS))
  })
})
