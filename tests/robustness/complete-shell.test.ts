import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { execa } from 'execa'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { SUBCOMMANDS } from '../../src/cli/subcommands.js'
import { ensureBuilt, gablewattWarm, gablewattWarmOnce } from '../cli/binary.js'

const folder = mkdtempSync(join(tmpdir(), 'gablewatt-completion-'))
const names = SUBCOMMANDS.map(({ name }) => name)
beforeAll(async () => {
  ensureBuilt()
  writeFileSync(join(folder, 'script'), (await gablewattWarmOnce(['complete-shell', 'bash'])).stdout)
  writeFileSync(join(folder, 'house one.yaml'), '')
})
afterAll(() => rmSync(folder, { recursive: true }))

/** What bash offers behind these words; the last one is being typed. */
async function offered(...words: readonly string[]): Promise<string[]> {
  const drive = `source ./script
COMP_WORDS=(gablewatt "$@"); COMP_CWORD=$#; _gablewatt; printf '%s\\n' "\${COMPREPLY[@]}"`
  const { stdout } = await execa('bash', ['-c', drive, 'bash', ...words], { cwd: folder })
  return stdout.split('\n').filter((line) => line !== '')
}

describe('bash', () => {
  test('completes subcommands', async () => {
    expect(await offered('')).toEqual([...names, 'help'])
    expect(await offered('estim')).toEqual(['estimate-yield'])
    expect(await offered('-q', 'list')).toEqual(['list-sites'])
    expect(await offered('help', 'size')).toEqual(['size-wire'])
    expect(await offered('nonsense', '')).toEqual([])
  })

  test('completes the options of the subcommand and the common ones', async () => {
    expect(await offered('estimate-yield', '--sw')).toEqual(['--sweep'])
    expect(await offered('list-sites', '--sw')).toEqual([])
    expect(await offered('list-sites', '--qui')).toEqual(['--quiet'])
  })

  test('completes values: one of a list, a file, nothing', async () => {
    expect(await offered('review-output', 'a.yaml', '--unit', '')).toEqual(['kwh', 'wh', 'kw', 'w'])
    expect(await offered('complete-shell', '')).toEqual(['bash', 'zsh', 'fish'])
    expect(await offered('size-wire', 'hou')).toEqual(['house one.yaml'])
    expect(await offered('size-wire', 'a.yaml', '--out', 'hou')).toEqual(['house one.yaml'])
    expect(await offered('list-sites', '--near', '')).toEqual([])
  })
})

describe('every shell', () => {
  test.each(['bash', 'zsh', 'fish'])('%s knows each subcommand and each of its options', async (shell) => {
    const { exitCode, stdout, stderr } = await gablewattWarmOnce(['complete-shell', shell])
    expect({ exitCode, stderr }).toEqual({ exitCode: 0, stderr: '' })
    for (const name of names) {
      expect(stdout).toContain(name)
      const help = (await gablewattWarmOnce(['help', name])).stdout
      for (const [, option = ''] of help.matchAll(/^ {2}(?:-\w, )?--([a-z-]+)/gmu)) {
        if (option !== 'version') expect(stdout).toContain(shell === 'fish' ? ` -l ${option}` : `--${option}`)
      }
    }
  })

  test('quotes in descriptions do not end a word', async () => {
    // Descriptions hold apostrophes and colons; each script must still be balanced.
    const scripts = await Promise.all(['bash', 'zsh'].map((shell) => gablewattWarmOnce(['complete-shell', shell])))
    for (const { stdout } of scripts) {
      const checked = await execa('bash', ['-n'], { input: stdout.replace('#compdef', '#'), reject: false })
      expect(checked.stderr).toBe('')
    }
  })

  test('another shell is refused', async () => {
    const { exitCode, stderr } = await gablewattWarm(['complete-shell', 'tcsh'])
    expect(exitCode).toBe(2)
    expect(stderr).toContain('Allowed choices are bash, zsh, fish')
  })
})
