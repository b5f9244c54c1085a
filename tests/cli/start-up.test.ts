import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync } from 'node:fs'
import { dirname, join, resolve } from 'node:path'
import { beforeAll, describe, expect, test } from 'vitest'
import { BINARY, ensureBuilt, gablewatt, ROOT } from './binary.js'

beforeAll(ensureBuilt)

/** Everything that loading a file loads with it: static imports only, as dynamic ones wait until they are needed. */
function loadedWith(entry: string): Set<string> {
  const seen = new Set<string>()
  const visit = (file: string): void => {
    if (seen.has(file)) return
    seen.add(file)
    const text = readFileSync(file, 'utf8')
    const imports = text.matchAll(/^(?:import|export)\b(?:[\w*{},$\s]*?\sfrom)?\s*['"]([^'"]+)['"]/gmu)
    const requires = text.matchAll(/^(?:const .+ = )?require\('([^']+)'\)/gmu)
    for (const [, name = ''] of [...imports, ...requires]) {
      if (name.startsWith('.')) visit(resolve(dirname(file), name))
      else seen.add(name)
    }
  }
  visit(entry)
  return seen
}

const packagesOf = (entry: string): string[] =>
  [...loadedWith(entry)].filter((name) => !name.startsWith('/') && !name.startsWith('node:')).sort()
const dist = (name: string): string => join(ROOT, 'dist/cli', name)

describe('what is loaded', () => {
  test('--version loads no file of ours and no package', () => {
    expect(packagesOf(BINARY)).toEqual([])
    expect([...loadedWith(BINARY)].filter((name) => name.startsWith(join(ROOT, 'dist')))).toEqual([])
  })

  test('--help loads commander only, and no subcommand, trade or table', () => {
    expect(packagesOf(dist('main.js'))).toEqual(['commander'])
    const ours = [...loadedWith(dist('main.js'))]
      .filter((name) => name.startsWith('/'))
      .map((name) => name.slice(join(ROOT, 'dist/').length))
    expect(
      ours.filter(
        (name) => !/^(?:cli|cli\/output|report|files|seal|worksheet)\/[a-z-]+(?:\.generated)?\.js$/u.test(name),
      ),
    ).toEqual([])
  })

  test('list-sites loads neither YAML nor PDF nor the table drawer', () => {
    expect(packagesOf(dist('commands/list-sites.js')).filter((name) => name !== 'commander')).toEqual(['suncalc'])
  })

  test('no renderer of text, JSON or CSV needs a package before there is a table to draw or a colour', () => {
    expect(packagesOf(join(ROOT, 'dist/report/json.js'))).toEqual([])
    expect(packagesOf(join(ROOT, 'dist/report/csv.js'))).toEqual([])
    expect(packagesOf(dist('output/text.js'))).toEqual([])
    expect(packagesOf(dist('output/style.js'))).toEqual([])
    expect(packagesOf(dist('output/table.js'))).toEqual(['cli-table3'])
  })
})

describe('what a run loads', () => {
  const preload = join(ROOT, 'tests/cli/preload-tell-packages.cjs')
  const loadedBy = (...args: string[]): string[] => {
    const run = spawnSync(process.execPath, ['-r', preload, BINARY, ...args], { cwd: ROOT, encoding: 'utf8' })
    expect([0, 1]).toContain(run.status)
    return [...run.stderr.matchAll(/^package (.*)$/gmu)].map(([, name = '']) => name)
  }

  test.each(['estimate-yield', 'size-wire', 'space-mounts', 'price-bom', 'payback', 'check-project'])(
    '%s of a house with documents takes no package',
    (command) => expect(loadedBy(command, 'examples/lark-hollow.yaml')).toEqual([]),
  )

  test('nor does the reader of PDF files', () => {
    expect(loadedBy('fill-form', '--list', 'examples/forms/sampletown-application.pdf')).toEqual([])
  })
})

describe('the launcher', () => {
  test.each(['--version', '-V'])('%s', async (option) => {
    const { version } = JSON.parse(readFileSync(join(ROOT, 'package.json'), 'utf8')) as { version: string }
    expect(await gablewatt([option])).toMatchObject({ exitCode: 0, stdout: `gablewatt ${version}\n`, stderr: '' })
  })

  test('says what to do when the program is not built', () => {
    const folder = join(process.env['TMPDIR'] ?? '/tmp', `gablewatt-unbuilt-${process.pid}`)
    spawnSync('mkdir', ['-p', join(folder, 'bin')])
    spawnSync('cp', [BINARY, join(ROOT, 'bin/load-program.js'), join(ROOT, 'bin/package.json'), join(folder, 'bin')])
    spawnSync('cp', [join(ROOT, 'package.json'), folder])
    const run = spawnSync(process.execPath, [join(folder, 'bin/gablewatt.js'), 'help'], { encoding: 'utf8' })
    spawnSync('rm', ['-r', folder])
    expect(existsSync(folder)).toBe(false)
    expect(run).toMatchObject({ status: 70, stdout: '' })
    expect(run.stderr).toBe('gablewatt: the program is not built: run `npm run build` in its folder\n')
  })
})
