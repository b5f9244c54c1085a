import { copyFileSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { execa } from 'execa'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { pathTrouble } from '../../src/project/index.js'
import { SUBCOMMANDS } from '../../src/cli/subcommands.js'
import { candidates, wordsOfBash } from '../../src/cli/commands/completion/candidates.js'
import { BINARY, ensureBuilt, gablewattWarm, gablewattWarmOnce, ROOT } from '../cli/binary.js'

const folder = mkdtempSync(join(tmpdir(), 'gablewatt-completion-'))
const names = SUBCOMMANDS.map(({ name }) => name)
beforeAll(async () => {
  ensureBuilt()
  writeFileSync(join(folder, 'script'), (await gablewattWarmOnce(['complete-shell', 'bash'])).stdout)
  writeFileSync(join(folder, 'house one.yaml'), '')
  copyFileSync(join(ROOT, 'examples/lark-hollow.yaml'), join(folder, 'lark.yaml'))
  copyFileSync(join(ROOT, 'examples/equipment.yaml'), join(folder, 'equipment.yaml'))
})
afterAll(() => rmSync(folder, { recursive: true }))

/** What bash offers behind these words; the last one is being typed. */
async function offered(...words: readonly string[]): Promise<string[]> {
  const drive = `source ./script
gablewatt() { "${process.execPath}" "${BINARY}" "$@"; }
COMP_WORDS=(gablewatt "$@"); COMP_CWORD=$#; _gablewatt; printf '%s\\n' "\${COMPREPLY[@]}"`
  const { stdout } = await execa('bash', ['-c', drive, 'bash', ...words], { cwd: folder })
  return stdout.split('\n').filter((line) => line !== '')
}

describe('bash', () => {
  test('completes subcommands', async () => {
    expect(await offered('')).toEqual([...names, 'help'])
    expect(await offered('estim')).toEqual(['estimate-yield'])
    expect(await offered('-q', 'list')).toEqual(['list-sites', 'list-equipment'])
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

describe('what the program is asked for, through bash', () => {
  test.each([
    [['size-wire', 'lark.yaml', '--set', 'arr'], ['arrays.']],
    [
      ['size-wire', 'lark.yaml', '--set', 'arrays.'],
      ['arrays.south.', 'arrays.west.'],
    ],
    [['size-wire', 'lark.yaml', '--set', 'arrays.south.stand'], ['arrays.south.standoff_in=']],
    // bash parts words at an equals sign, and wants only what stands behind it.
    [['size-wire', 'lark.yaml', '--set', 'arrays.south.mounting', '=', 'near'], ['near_roof']],
    [['size-wire', 'lark.yaml', '--set', 'arrays.south.module', '='], ['m410']],
    [['size-wire', 'lark.yaml', '--set', '=', 'roof_planes.w'], ['roof_planes.west.']],
    [['size-wire', 'lark.yaml', '--set', '=', 'arrays.west.roof_plane', '=', 'w'], ['west']],
    [
      ['estimate-yield', 'lark.yaml', '--array', ''],
      ['south', 'west'],
    ],
    [
      ['size-wire', 'lark.yaml', '--codes', 'NEC\\ 202'],
      ['NEC 2020', 'NEC 2023', 'NEC 2026'],
    ],
    [['explain', 'wire.panel-b'], ['wire.panel-busbar']],
    [['explain', 'electrical.panel.bu'], ['electrical.panel.bus_a']],
    [['new-project', '--site', 'Phoenix\\ S'], ['PHOENIX SKY HARBOR INTL AP, AZ']],
    [
      ['add-equipment', '--module', 'm', '--set', 'voc_t'],
      ['voc_temp_coeff_pct_per_c=', 'voc_temp_coeff_v_per_c='],
    ],
  ])('%j', async (words, expected) => {
    expect(await offered(...words)).toEqual(expected)
  })
})

describe('candidates', () => {
  const offers = (...words: readonly string[]) => candidates(words, folder)

  test('without a project, or with one that cannot be read, ids are a star', async () => {
    expect(await offers('size-wire', '--set', 'arrays.')).toEqual(['arrays.*.'])
    expect(await offers('size-wire', 'no-such.yaml', '--set', 'arrays.')).toEqual(['arrays.*.'])
    expect(await offers('size-wire', 'house one.yaml', '--set', 'arrays.')).toEqual(['arrays.*.'])
    expect(await offers('explain', 'arrays.*.standoff')).toEqual(['arrays.*.standoff_in'])
  })

  test('each one begins with what was typed, and is right as far as it goes', async () => {
    for (const begun of ['', 's', 'site.', 'site.c', 'equipment.modules.m410.', 'structure.framing.south.']) {
      const found = await offers('size-wire', 'lark.yaml', '--set', begun)
      expect(found.length).toBeGreaterThan(0)
      for (const one of found) {
        expect(one.startsWith(begun)).toBe(true)
        expect(pathTrouble(one.slice(0, -1))).toBeUndefined()
      }
    }
  })

  test('ids called like parts of objects, and lists', async () => {
    const text = 'format: gablewatt/2\narrays: { constructor: { strings: [{}, {}] } }\n'
    writeFileSync(join(folder, 'odd.yaml'), text)
    expect(await offers('size-wire', 'odd.yaml', '--set', 'arrays.')).toEqual(['arrays.constructor.'])
    expect(await offers('size-wire', 'odd.yaml', '--set', 'arrays.constructor.strings.')).toEqual([
      'arrays.constructor.strings.0.',
      'arrays.constructor.strings.1.',
    ])
    expect(await offers('size-wire', 'odd.yaml', '--set', '__proto__.')).toEqual([])
  })

  test('several editions stand with commas between', async () => {
    expect(await offers('size-wire', '--codes', 'NEC 2014,NEC 201')).toEqual([
      'NEC 2014,NEC 2011',
      'NEC 2014,NEC 2014',
      'NEC 2014,NEC 2017',
    ])
  })

  test('nothing where nothing is known', async () => {
    expect(await offers('size-wire', 'lark.yaml', '--spacing', '')).toEqual([])
    expect(await offers('')).toEqual([])
    expect(await offers('explain', 'wire.panel-busbar', '')).toEqual([])
  })

  test('words of bash', () => {
    expect(wordsOfBash(['a', '--set', 'x', '=', 'y'])).toEqual({ words: ['a', '--set', 'x=y'], cut: 2 })
    expect(wordsOfBash(['a', '--set', '=', 'x', '='])).toEqual({ words: ['a', '--set=x='], cut: 8 })
    expect(wordsOfBash(['"NEC 20'])).toEqual({ words: ['NEC 20'], cut: 0 })
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
