import { execFileSync } from 'node:child_process'
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join, relative } from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { REFERENCES } from '../../src/project/reference.js'
import { ensureBuilt, gablewatt, gablewattWarm, ROOT } from '../cli/binary.js'

const folder = mkdtempSync(join(tmpdir(), 'gablewatt-special-'))
const house = join(folder, 'lark-hollow.yaml')

beforeAll(() => {
  ensureBuilt()
  cpSync(join(ROOT, 'examples'), folder, { recursive: true })
  for (const ending of ['', '.csv', '.yaml']) {
    execFileSync('mkfifo', [join(folder, `pipe${ending}`)])
    writeFileSync(join(folder, `huge${ending}`), '')
    truncateSync(join(folder, `huge${ending}`), 3_000_000_000)
    mkdirSync(join(folder, `folder${ending}`))
  }
  for (const kind of ['pipe', 'huge', 'folder', 'none']) mkdirSync(join(folder, `readings-${kind}`))
  execFileSync('mkfifo', [join(folder, 'readings-pipe/lark-hollow.csv')])
  writeFileSync(join(folder, 'readings-huge/lark-hollow.csv'), '')
  truncateSync(join(folder, 'readings-huge/lark-hollow.csv'), 3_000_000_000)
  mkdirSync(join(folder, 'readings-folder/lark-hollow.csv'))
  for (const kind of ['pipe', 'huge', 'folder'])
    cpSync(join(folder, 'fleet/baseline.json'), join(folder, `signed-${kind}`))
  execFileSync('mkfifo', [join(folder, 'signed-pipe.sig')])
  writeFileSync(join(folder, 'signed-huge.sig'), '')
  truncateSync(join(folder, 'signed-huge.sig'), 3_000_000_000)
  mkdirSync(join(folder, 'signed-folder.sig'))
  writeFileSync(join(folder, 'days.csv'), 'date,kWh\n2026-05-01,20\n2026-05-02,24\n2026-05-03,12\n')
}, 90_000)
afterAll(() => rmSync(folder, { recursive: true }))

/** How a door is given a file, and where in the sources it is read. */
interface Door {
  readonly args: (file: string) => readonly string[]
  /** Where the reader is called. */
  readonly in: string
  /** The path of the project that names it. */
  readonly path?: string
  /** What its files must be called. */
  readonly ending?: '.csv' | '.yaml'
  /** A file that is not there is made, or is no trouble. */
  readonly mayMiss?: true
  /** A folder has a meaning of its own. */
  readonly takesFolder?: true
  /** What is read is a file of that kind beside the one that is named, which bears this name for each kind. */
  readonly beside?: (kind: string) => string
}

const set = (value: string): string[] => ['--allow-outside', '--set', value]
const fleet = (...args: string[]): string[] => ['run-fleet', ...args, '--jobs', '1', '--stages', 'yield']
const mapped = (file: string): string =>
  `usage={interval_csv: {file: ${file}, header_line: 1, stamp_columns: [t], stamp_format: iso, stamps_mark: beginning, clock: standard, interval_min: 60, use_column: k, unit: kwh}}`

/** Every place of the command line and of the project that names a file to read. */
const DOORS: Readonly<Record<string, Door>> = {
  project: { args: (file) => ['check-project', file], in: 'project/read-main.ts' },
  'check-project --rename': { args: (file) => ['check-project', file, '--rename'], in: 'cli/rename-file.ts' },
  'payback --versus': {
    args: (file) => ['payback', house, '--versus', file],
    in: 'project/read-main.ts',
    ending: '.yaml',
  },
  'list-equipment --fits': { args: (file) => ['list-equipment', '--fits', file], in: 'project/read-main.ts' },
  'equipment.file': {
    args: (file) => ['check-project', house, ...set(`equipment.file=${file}`)],
    in: 'project/read-referenced.ts',
    path: 'equipment.file',
  },
  'site.climate.epw': {
    args: (file) => ['estimate-yield', house, ...set(`site.climate={epw: ${file}}`)],
    in: 'project/read-referenced.ts',
    path: 'site.climate.epw',
  },
  'site.climate.file': {
    args: (file) => ['estimate-yield', house, ...set(`site.climate={file: ${file}, kind: tmy3_csv}`)],
    in: 'project/read-referenced.ts',
    path: 'site.climate.file',
  },
  'materials.price_list': {
    args: (file) => ['price-bom', house, ...set(`materials.price_list=${file}`)],
    in: 'project/read-referenced.ts',
    path: 'materials.price_list',
  },
  'permit.authority': {
    args: (file) => ['check-project', house, ...set(`permit.authority=${file}`)],
    in: 'project/read-referenced.ts',
    path: 'permit.authority',
  },
  'proposal.terms_file': {
    args: (file) => ['check-project', house, ...set(`proposal.terms_file=${file}`)],
    in: 'project/read-referenced.ts',
    path: 'proposal.terms_file',
  },
  'usage.green_button': {
    args: (file) => ['check-project', house, ...set(`usage={green_button: ${file}}`)],
    in: 'project/read-referenced.ts',
    path: 'usage.green_button',
  },
  'usage.interval_csv': {
    args: (file) => ['check-project', house, ...set(mapped(file))],
    in: 'project/read-referenced.ts',
    path: 'usage.interval_csv.file',
  },
  documents: {
    args: (file) => [
      'draw-permit',
      house,
      '--draft',
      ...set(`documents=[{ id: rafter_letter, file: ${file}, title: Letter, date: '2026-02-20' }]`),
      '--out',
      join(folder, 'never.pdf'),
    ],
    in: 'packet/read-documents.ts',
  },
  'review-output': { args: (file) => ['review-output', house, file], in: 'cli/commands/review-output.ts' },
  'review-output --weather': {
    args: (file) => ['review-output', house, join(folder, 'days.csv'), '--weather', file],
    in: 'cli/commands/review-output.ts',
  },
  'price-bom --compare': { args: (file) => ['price-bom', house, '--compare', file], in: 'cli/commands/price-bom.ts' },
  'compare-parts --prices': {
    args: (file) => ['compare-parts', house, '--modules', 'm400', '--prices', file],
    in: 'cli/commands/compare-parts.ts',
  },
  '--use': { args: (file) => ['price-bom', house, '--use', file], in: 'cli/earlier-result.ts' },
  'draw-permit --since': {
    args: (file) => ['draw-permit', house, '--draft', '--since', file, '--out', join(folder, 'never.pdf')],
    in: 'packet/read-record.ts',
  },
  'draw-permit --comments': {
    args: (file) => ['draw-permit', house, '--draft', '--comments', file, '--out', join(folder, 'never.pdf')],
    in: 'cli/commands/draw-permit.ts',
  },
  'fill-form --list': { args: (file) => ['fill-form', '--list', file], in: 'cli/commands/fill-form.ts' },
  'fill-form': {
    args: (file) => [
      'fill-form',
      house,
      file,
      join(folder, 'forms/sampletown-mapping.yaml'),
      '--out',
      join(folder, 'never.pdf'),
    ],
    in: 'cli/commands/fill-form.ts',
  },
  'fill-form mapping': {
    args: (file) => [
      'fill-form',
      house,
      join(folder, 'forms/sampletown-application.pdf'),
      file,
      '--out',
      join(folder, 'never.pdf'),
    ],
    in: 'cli/commands/fill-form.ts',
  },
  'write-handover --serials': {
    args: (file) => ['write-handover', house, '--serials', file],
    in: 'cli/commands/write-handover.ts',
  },
  'write-handover --readings': {
    args: (file) => ['write-handover', house, '--readings', file],
    in: 'cli/commands/write-handover.ts',
  },
  'write-proposal --logo': {
    args: (file) => ['write-proposal', house, '--logo', file, '--out', join(folder, 'never.pdf')],
    in: 'cli/commands/write-proposal.ts',
  },
  'import-rate': { args: (file) => ['import-rate', file], in: 'cli/commands/import-rate.ts' },
  'check-bill': { args: (file) => ['check-bill', house, file], in: 'cli/commands/check-bill.ts' },
  'list-equipment': { args: (file) => ['list-equipment', file], in: 'cli/commands/list-equipment.ts' },
  'add-equipment --file': {
    args: (file) => ['add-equipment', '--file', file, '--module', 'm1', '--set', 'pmax_w=400'],
    in: 'cli/commands/add-equipment.ts',
    mayMiss: true,
  },
  'add-equipment --table': {
    args: (file) => ['add-equipment', '--file', join(folder, 'new.yaml'), '--table', file, '--columns', house],
    in: 'cli/commands/add-equipment.ts',
  },
  'add-equipment --columns': {
    args: (file) => [
      'add-equipment',
      '--file',
      join(folder, 'new.yaml'),
      '--table',
      join(folder, 'days.csv'),
      '--columns',
      file,
    ],
    in: 'cli/commands/add-equipment.ts',
  },
  'new-project --add-to': {
    args: (file) => ['new-project', '--add-to', file, '--parts', 'money'],
    in: 'cli/commands/new-project.ts',
  },
  'new-project --answers': {
    args: (file) => ['new-project', '--ask', '--answers', file],
    in: 'cli/commands/ask/answers-file.ts',
  },
  'verify-file': { args: (file) => ['verify-file', file], in: 'cli/commands/verify-file.ts' },
  'verify-file --project': {
    args: (file) => ['verify-file', join(folder, 'fleet/baseline.json'), '--project', file],
    in: 'project/read-main.ts',
  },
  'verify-file --sign': { args: (file) => ['verify-file', house, '--sign', file], in: 'cli/verify/sign.ts' },
  'verify-file --key': { args: (file) => ['verify-file', house, '--key', file], in: 'cli/verify/sign.ts' },
  'the signature beside a file': {
    args: (file) => ['verify-file', file],
    in: 'cli/verify/sign.ts',
    beside: (kind) => `signed-${kind}`,
    mayMiss: true,
  },
  'run-fleet': { args: (file) => fleet(file), in: 'project/read-main.ts', takesFolder: true },
  'run-fleet --table': { args: (file) => fleet(house, '--table', file), in: 'fleet/read-text.ts' },
  'run-fleet of a template': {
    args: (file) => fleet(file, '--table', join(folder, 'fleet/customers.csv')),
    in: 'project/fleet-part.ts',
  },
  'run-fleet --baseline': {
    args: (file) => fleet(house, '--baseline', file),
    in: 'fleet/baseline.ts',
  },
  'run-fleet --journal': {
    args: (file) => fleet(house, '--journal', file, '--resume'),
    in: 'fleet/journal.ts',
    mayMiss: true,
  },
  'run-fleet --merge': { args: (file) => ['run-fleet', '--merge', file], in: 'fleet/merge-parts.ts' },
  'watch-fleet of a table': {
    args: (file) => ['watch-fleet', file, '--production', folder],
    in: 'fleet/watch/watched-houses.ts',
    ending: '.csv',
  },
  'watch-fleet': {
    args: (file) => ['watch-fleet', file, '--production', folder],
    in: 'project/read-main.ts',
    takesFolder: true,
  },
  'watch-fleet --production': {
    args: (file) => ['watch-fleet', house, '--production', file, '--json'],
    in: 'fleet/watch/watch-house.ts',
    beside: (kind) => `readings-${kind}`,
  },
}

/** What a person may name in the place of a file, and what is said of it. */
const KINDS = {
  pipe: /(?:is not a regular file|is no(?:t a)? file)/u,
  '/dev/zero': /is not a regular file/u,
  '/dev/stdin': /is not a regular file/u,
  folder: /is a folder|is not a regular file|EISDIR/u,
  none: /no such file/iu,
  huge: /3000\.0 MB large; at most [\d.]+ MB is read/u,
} as const

const CASES = Object.entries(DOORS).flatMap(([door, { mayMiss, takesFolder, beside }]) =>
  (Object.keys(KINDS) as (keyof typeof KINDS)[])
    .filter((kind) => !(kind === 'none' && mayMiss === true) && !(kind === 'folder' && takesFolder === true))
    .filter((kind) => !(beside !== undefined && kind.startsWith('/')))
    .map((kind) => ({ door, kind })),
)

describe('what is no regular file, not there or too large is refused at once', () => {
  test.each(CASES)(
    '$door: $kind',
    async ({ door, kind }) => {
      const { args, ending = '', beside } = DOORS[door]!
      const file = kind.startsWith('/') ? kind : join(folder, beside?.(kind) ?? `${kind}${ending}`)
      const begun = performance.now()
      const result = await gablewattWarm([...args(file)], { cwd: folder })
      const said = result.stderr + result.stdout
      expect(said).toMatch(kind.startsWith('/') && ending !== '' ? /./u : KINDS[kind])
      expect(said).not.toMatch(/ at .*\.c?js:|NaN|undefined|defect/u)
      expect(result.exitCode, said).toBe(3)
      // A second on a machine of its own; nothing here waits.
      expect(performance.now() - begun).toBeLessThan(10_000)
    },
    20_000,
  )

  test('a document that is a pipe, where it is only looked for', { timeout: 20_000 }, async () => {
    const stated = set(`documents=[{ id: rafter_letter, file: pipe, title: Letter, date: '2026-02-20' }]`)
    const run = await gablewattWarm(['check-project', house, ...stated], { cwd: folder })
    expect(run.stdout + run.stderr).not.toMatch(/defect/u)
    expect([0, 1, 2, 3]).toContain(run.exitCode)
  })

  test('more than 60 MB of production through stdin', async () => {
    const result = await gablewatt(['review-output', house, '-'], {
      cwd: folder,
      stdin: { file: join(folder, 'huge') },
    })
    expect(result.stderr).toContain('cannot read stdin: it gives more than 60 MB')
    expect(result.exitCode).toBe(3)
  }, 60_000)
})

/** Files that call a reader of files and are no door of their own. */
const NO_DOORS: Readonly<Record<string, string>> = {
  'project/read-file.ts': 'the readers themselves',
  'project/named-file.ts': 'the readers with the name of a file in their errors',
  'project/load-project.ts': 'reads through read-main.ts and read-referenced.ts',
  'project/found-documents.ts': 'the first bytes of documents; tested above with a pipe',
  'project/keys/data-at-hand.ts': 'completion of a shell, which says nothing of what it cannot read; tested there',
  'cli/commands/check-watch.ts':
    'whether files that were read have changed; what cannot be read is a content of its own',
  'cli/commands/ask/equipment-file.ts': 'a file beside the new project, where there is none it asks on; tested there',
  'cli/context.ts': 'stdin',
  'cli/commands/plan-work.ts': 'a font of the package',
  'packet/read-fonts.ts': 'fonts of the package',
  'project/schema.ts': 'the schema of the package',
  'fleet/tool-name.ts': 'the name of the package',
  'fleet/read-lines.ts': 'of files that are open',
  'fleet/file-jobs.ts': 'the first bytes of files in a folder; what cannot be opened is told of when its turn comes',
  'fleet/list-jobs.ts': 'the template again, for its digest',
}

const READS =
  /\b(?:readNamedText|readNamedBytes|readBytes|openRegular|readMain|readStdin|readStandardInput|readFileSync|createReadStream|readSync|openSync)\(|\breadFile\(\w*path/u

describe('the list of doors', () => {
  const sources = readdirSync(join(ROOT, 'src'), { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && entry.name.endsWith('.ts'))
    .map((entry) => relative(join(ROOT, 'src'), join(entry.parentPath, entry.name)))
    // What writes files opens them too.
    .filter((file) => !file.startsWith('files/'))

  test('has every file of the sources that reads one', () => {
    const reading = sources.filter((file) =>
      readFileSync(join(ROOT, 'src', file), 'utf8')
        .split('\n')
        .some((line) => READS.test(line) && !/^\s*(?:export )?(?:async )?function\*?\s/u.test(line)),
    )
    const known = new Set([...Object.values(DOORS).map((door) => door.in), ...Object.keys(NO_DOORS)])
    expect(reading.filter((file) => !known.has(file))).toEqual([])
    expect([...known].filter((file) => !reading.includes(file))).toEqual([])
  })

  test('has a row for each call of a reader with a name of a person', () => {
    for (const file of new Set(Object.values(DOORS).map((door) => door.in))) {
      const text = readFileSync(join(ROOT, 'src', file), 'utf8')
      const calls = text.match(/\b(?:readNamedText|readNamedBytes|openRegular)\(/gu)?.length ?? 0
      const rows = Object.values(DOORS).filter((door) => door.in === file).length
      expect(rows, file).toBeGreaterThanOrEqual(calls)
    }
  })

  test('has every path of a project that names a file', () => {
    const rows = new Set(Object.values(DOORS).map((door) => door.path))
    expect(REFERENCES.map(({ segments }) => segments.join('.')).filter((path) => !rows.has(path))).toEqual([])
  })
})
