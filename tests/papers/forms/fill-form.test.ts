import { existsSync, mkdtempSync, readFileSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { Ajv2020 } from 'ajv/dist/2020.js'
import { beforeAll, describe, expect, test } from 'vitest'
import { TOPICS } from '../../../src/cli/explanations/index.js'
import { runHouse } from '../../../src/house/index.js'
import { makeSources, TOTALS } from '../../../src/papers/forms/index.js'
import { listFormFields, prepareForm } from '../../../src/papers/index.js'
import { loadProject } from '../../../src/project/index.js'
import { ensureBuilt, gablewattWarm, gablewattWarmOnce, ROOT } from '../../cli/binary.js'
import { pagesOf } from '../../drawings/pdf-text.js'
import { widgetsOf } from './filled.js'

const FORM = 'examples/forms/sampletown-application.pdf'
const MAPPING = 'examples/forms/sampletown-mapping.yaml'
const HOUSE = 'examples/lark-hollow.yaml'
const folder = mkdtempSync(join(tmpdir(), 'forms-'))
const into = (name: string) => join(folder, name)
const read = (path: string) => new Uint8Array(readFileSync(path))

beforeAll(ensureBuilt, 240_000)

describe('fill-form on the invented form', () => {
  test('fills every mapped field from project, totals and stages; signatures stay empty', async () => {
    const run = await gablewattWarm(['fill-form', HOUSE, FORM, MAPPING, '--out', into('a.pdf')])
    expect([run.exitCode, run.stdout]).toEqual([0, ''])
    expect(run.stderr).toContain('left to the person who signs: owner.date, declaration, owner.signature')
    const year = JSON.parse((await gablewattWarmOnce(['estimate-yield', HOUSE, '--json'])).stdout) as {
      readonly values: { readonly annual: { readonly ac_kwh: number } }
    }
    const seen = new Map((await widgetsOf(read(into('a.pdf')))).map((one) => [one.fieldName, one.fieldValue]))
    expect(Object.fromEntries(seen)).toMatchObject({
      'owner.name': 'A. Lindqvist (invented)',
      'owner.phone': '',
      'site.zip': '00000',
      // 20 modules of 410 W, 20 inverters of 366 W.
      'system.dc': '8.20',
      'system.ac': '7.32',
      'system.modules': '20',
      'system.energy': year.values.annual.ac_kwh.toLocaleString('en-US', { maximumFractionDigits: 0 }),
      'system.place': '0',
      'codes.electrical': ['2020'],
      'work.kinds': ['Roof', 'Wiring'],
      'owner.does_the_work': 'Owner',
      battery: 'Off',
      declaration: 'Off',
      'owner.date': '',
      'office.fee': '',
    })
  })

  test('twice gives the same bytes; flat has the same words and no fields', async () => {
    await gablewattWarm(['fill-form', HOUSE, FORM, MAPPING, '--out', into('b.pdf')])
    await gablewattWarm(['fill-form', HOUSE, FORM, MAPPING, '--out', into('c.pdf')])
    expect(Buffer.compare(read(into('b.pdf')), read(into('c.pdf')))).toBe(0)
    const flat = await gablewattWarm(['fill-form', HOUSE, FORM, MAPPING, '--flatten', '--out', into('flat.pdf')])
    expect(flat.stderr).toContain('without --flatten these stay to be signed: owner.signature')
    expect(await widgetsOf(read(into('flat.pdf')))).toEqual([])
    const words = (await pagesOf(read(into('flat.pdf'))))[0]?.text ?? ''
    for (const word of ['A. Lindqvist (invented)', '8.20', '7.32', '20 x Invented M410', 'loads ≤ the limits']) {
      expect(words).toContain(word)
    }
  })

  test('--list and --preview as text, JSON by the schema of results, and CSV', async () => {
    const schema = JSON.parse(readFileSync(join(ROOT, 'schemas/result.schema.json'), 'utf8')) as object
    const fits = new Ajv2020({ strict: false }).compile(schema)
    const runs = [
      ['fill-form', '--list', FORM],
      ['fill-form', HOUSE, FORM, MAPPING, '--preview'],
    ]
    for (const args of runs) {
      const [text, json, csv] = await Promise.all(
        [[], ['--json'], ['--csv']].map((way) => gablewattWarm([...args, ...way])),
      )
      expect([text?.exitCode, json?.exitCode, csv?.exitCode]).toEqual([0, 0, 0])
      expect(text?.stdout).toContain('system.energy')
      const result = JSON.parse(json?.stdout ?? '') as unknown
      expect(fits(result), JSON.stringify(fits.errors)).toBe(true)
      expect(csv?.stdout.split('\r\n').filter((line) => line.startsWith('owner.name,')).length).toBe(1)
    }
    const preview = await gablewattWarm(['fill-form', HOUSE, FORM, MAPPING, '--preview'])
    expect(preview.stdout).toMatch(/system\.ac +7\.32 +totals\.total_ac_kw +1/u)
  })

  test('--starter prints a mapping of the same form that fills what is taken into use', async () => {
    const { stdout } = await gablewattWarm(['fill-form', '--starter', FORM])
    expect(stdout).toContain('# Never filled, left to the person who signs:\n#   owner.date\n#   declaration')
    const used = stdout
      .replace('#  - field: owner.name\n#    from: project.', '  - field: owner.name\n    from: project.title')
      .replace('#  - field: battery\n#    on: On', '  - field: battery\n    on: On')
    writeFileSync(into('starter.yaml'), used)
    const blank = await gablewattWarm(['fill-form', HOUSE, FORM, into('starter.yaml'), '--out', into('s.pdf')])
    expect([blank.exitCode, existsSync(into('s.pdf'))]).toEqual([1, false])
    expect(blank.stderr).toContain("'system.dc' is required by the form, and the mapping has no entry for it")
    writeFileSync(into('starter.yaml'), used.replace('# by_hand: [owner.name, ', 'by_hand: ['))
    const run = await gablewattWarm(['fill-form', HOUSE, FORM, into('starter.yaml'), '--out', into('s.pdf')])
    expect(run.exitCode).toBe(0)
    const seen = new Map((await widgetsOf(read(into('s.pdf')))).map((one) => [one.fieldName, one.fieldValue]))
    expect([seen.get('owner.name'), seen.get('battery')]).toEqual(['Lark Hollow demo house (invented)', 'On'])
    expect(run.stderr).toContain('left to be filled in by hand: site.address')
  })

  test('takes an earlier result, and refuses one of another project', async () => {
    await gablewattWarm(['estimate-yield', HOUSE, '--json', '--out', into('yield.json')])
    const taken = ['fill-form', HOUSE, FORM, MAPPING, '--use', into('yield.json'), '--out', into('u.pdf')]
    expect((await gablewattWarm(taken)).exitCode).toBe(0)
    const other = await gablewattWarm([...taken, '--set', 'title=Other', '--force'])
    expect([other.exitCode, other.stderr]).toEqual([2, expect.stringContaining('made from another project')])
  })
})

describe('what fill-form refuses', () => {
  const mapping = (fields: string): string => {
    const path = into(`m${Math.abs(fields.length)}.yaml`)
    writeFileSync(path, `format: gablewatt-form-mapping/1\nfields:\n${fields}`)
    return path
  }
  const refused = async (args: readonly string[]) => {
    const out = into(`none-${args.length}.pdf`)
    const run = await gablewattWarm(['fill-form', ...args, '--out', out])
    expect(existsSync(out)).toBe(false)
    return run
  }

  test('a bad mapping: exit 2, every place with line and column, nothing written', async () => {
    const path = mapping('  - { field: owner.nme, text: x }\n  - { field: owner.signature, text: A. Lindqvist }\n')
    const { exitCode, stderr } = await refused([HOUSE, FORM, path])
    expect(exitCode).toBe(2)
    expect(stderr).toContain(
      `${path}:3:14  fields.0.field  the form has no field 'owner.nme'; did you mean owner.name?`,
    )
    expect(stderr).toContain(`${path}:4:14  fields.1.field  'owner.signature' is never filled`)
    expect(stderr).toContain('2 problems')
  })

  test('a value that fails: exit 1, its field and a way out, nothing written', async () => {
    const { exitCode, stderr } = await refused([HOUSE, FORM, mapping('  - { field: site.zip, text: "123456" }\n')])
    expect(exitCode).toBe(1)
    expect(stderr).toContain("'site.zip' takes 5 characters, and '123456' has 6")
    expect(stderr).toContain('fix: State a shorter text')
  })

  test('what is no form, is not there, or is half said', async () => {
    expect((await refused([HOUSE, HOUSE, MAPPING])).stderr).toContain(`form '${HOUSE}' is not a PDF`)
    expect((await refused([HOUSE, 'no.pdf', MAPPING])).exitCode).toBe(3)
    expect((await refused([HOUSE, FORM])).stderr).toContain('state project, form and mapping')
    expect((await refused([HOUSE, '--list', FORM])).stderr).toContain('take a form alone')
    expect((await refused([HOUSE, FORM, MAPPING, '--json'])).stderr).toContain('--json goes with --list or --preview')
  })

  test('to write over the form or the mapping', async () => {
    writeFileSync(into('own.pdf'), read(join(ROOT, FORM)))
    const run = await gablewattWarm(['fill-form', HOUSE, into('own.pdf'), MAPPING, '--out', into('own.pdf'), '--force'])
    expect([run.exitCode, run.stderr]).toEqual([2, expect.stringContaining('the form is filled from this file')])
    expect(Buffer.compare(read(into('own.pdf')), read(join(ROOT, FORM)))).toBe(0)
  })
})

describe('the library', () => {
  test('fills as the program does, and lists the fields', async () => {
    const loaded = loadProject({ path: join(ROOT, HOUSE) })
    const form = { path: FORM, bytes: read(join(ROOT, FORM)) }
    const mapping = { path: MAPPING, text: readFileSync(join(ROOT, MAPPING), 'utf8') }
    const prepared = await prepareForm(loaded, runHouse(loaded), form, mapping)
    expect(prepared.findings.map(({ severity }) => severity)).toEqual(['note', 'note'])
    expect(prepared.fields.find(({ field }) => field === 'system.ac')).toEqual({
      field: 'system.ac',
      kind: 'text',
      value: '7.32',
      from: 'totals.total_ac_kw',
      pages: [1],
    })
    const { pdf } = await prepared.draw(false)
    await gablewattWarm(['fill-form', HOUSE, FORM, MAPPING, '--out', into('lib.pdf')])
    expect(Buffer.compare(pdf, read(into('lib.pdf')))).toBe(0)
    const listed = await listFormFields(form)
    expect([listed.pages, listed.fields.length, listed.notes]).toEqual([1, 22, []])
  })
})

describe('where values come from', () => {
  test('explain forms lists every total', () => {
    expect(TOPICS['forms']?.table?.rows).toEqual(Object.entries(TOTALS).map(([name, { says }]) => [name, says]))
  })

  const sourcesFor = (path: string) => {
    const loaded = loadProject({ path: join(ROOT, path) })
    return { sources: makeSources(loaded.project, runHouse(loaded)), loaded }
  }

  test('totals are those of the trades', async () => {
    for (const path of [HOUSE, 'examples/harbor-point.yaml']) {
      const { sources } = sourcesFor(path)
      const value = async (from: string) => {
        const found = await sources.read(from)
        return 'value' in found ? found.value : found.missing
      }
      expect(await value('totals.total_dc_kw')).toBeCloseTo(Number(await value('yield.rated_kw')), 9)
      expect(Number(await value('totals.total_ac_kw'))).toBeGreaterThan(1)
      expect(String(await value('totals.module_list'))).toMatch(/^\d+ x /u)
    }
  })

  test('entries of lists go by id or number; what is not there is told with what is near', async () => {
    const { sources } = sourcesFor(HOUSE)
    const first = await sources.read('wire.circuits.0.id')
    const id = 'value' in first ? String(first.value) : ''
    expect(await sources.read(`wire.circuits.${id}.id`)).toEqual({ value: id })
    expect(await sources.read('wire.circuits[0].id')).toEqual({ value: id })
    expect(await sources.read('wire.panel.bus')).toMatchObject({
      missing: expect.stringContaining("no 'bus' under panel"),
    })
    expect(await sources.read('wire.constructor')).toMatchObject({
      missing: expect.stringContaining("no 'constructor'"),
    })
    expect(await sources.read('project.title.length')).toEqual({ missing: 'nothing stands under title' })
    expect(await sources.read('project.arrays.south.strings')).toMatchObject({ missing: expect.any(String) })
    expect(await sources.failing()).toEqual(new Map())
  })

  test('a stage that cannot run says why; one that fails is counted', async () => {
    const loaded = loadProject({ path: join(ROOT, HOUSE), overrides: ['electrical.panel.bus_a=100'] })
    const sources = makeSources(loaded.project, runHouse(loaded))
    await sources.read('wire.panel.bus_a')
    expect([...(await sources.failing()).keys()]).toEqual(['wire'])
    const { electrical: _, ...without } = loaded.project
    const bare = makeSources(without, runHouse({ project: without }))
    expect(await bare.read('wire.panel.bus_a')).toMatchObject({
      missing: expect.stringContaining('the stage cannot run'),
    })
  })
})

describe('values that are made up', () => {
  const loaded = loadProject({ path: HOUSE })
  const filledOn = async (madeUp: readonly string[]) => {
    const input = { ...loaded, madeUp }
    const form = { path: FORM, bytes: read(FORM) }
    const filled = await prepareForm(input, runHouse(input), form, {
      path: MAPPING,
      text: readFileSync(MAPPING, 'utf8'),
    })
    return filled.findings
      .filter(({ id }) => id.startsWith('project.made-up'))
      .map(({ id, where, message }) => [id, where, message])
  }

  test('are told where a field holds them, or a stage that a field asks for rests on them', async () => {
    const told = await filledOn(['parties.owner.name', 'losses.soiling_pct', 'codes.electrical', 'arrays.south.module'])
    expect(told.map(([, where]) => where)).toEqual(expect.arrayContaining(['codes', '']))
    expect(told.find(([, where]) => where === 'codes')).toEqual([
      'project.made-up-safety',
      'codes',
      'made up and not confirmed: electrical NEC 2020',
    ])
    const [, , rest = ''] = told.find(([, where]) => where === '') ?? []
    expect(rest).toContain('parties.owner.name')
  })

  test('are not told where no field rests on them, nor once they are confirmed', async () => {
    // The form asks for nothing of a loan.
    expect(await filledOn(['finance.loan.rate_pct'])).toEqual([])
    expect(await filledOn([])).toEqual([])
  })

  test('stand on the terminal beside the filled form, which is written', async () => {
    const path = into('made-up.yaml')
    const text = readFileSync(HOUSE, 'utf8')
      .replace(/^( {2}electrical: )(NEC 2020)/mu, '$1!made_up $2')
      .replaceAll(
        /(?<key>file: |price_list: )(?<name>[\w./-]+\.(?:pdf|yaml))/gu,
        `$<key>${join(ROOT, 'examples')}/$<name>`,
      )
    expect(text).toContain('!made_up NEC 2020')
    writeFileSync(path, text)
    const run = await gablewattWarm(['fill-form', path, FORM, MAPPING, '--allow-outside', '--out', into('made-up.pdf')])
    expect(run.stderr).toContain('codes: made up and not confirmed: electrical NEC 2020')
    expect(existsSync(into('made-up.pdf'))).toBe(true)
  })
})
