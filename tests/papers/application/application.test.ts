import { Ajv2020 } from 'ajv/dist/2020.js'
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { runHouse } from '../../../src/house/index.js'
import { APPLICATION_FIELDS } from '../../../src/papers/application/fields/index.js'
import { makeSources } from '../../../src/papers/forms/index.js'
import { prepareApplication, type ApplicationField, type ApplicationValues } from '../../../src/papers/index.js'
import { loadProject } from '../../../src/project/index.js'
import { STANDARD_FACTS } from '../../../src/tables/utility/index.js'
import type { Result } from '../../../src/worksheet/index.js'
import { pagesOf } from '../../drawings/pdf-text.js'
import { failureOf } from '../../project/support.js'

const root = new URL('../../../', import.meta.url).pathname
const load = (overrides: readonly string[] = [], file = 'examples/lark-hollow.yaml') =>
  loadProject({ path: `${root}${file}`, overrides: [...overrides] })
const prepare = async (overrides: readonly string[] = [], file?: string) => {
  const loaded = load(overrides, file)
  return await prepareApplication(loaded, runHouse(loaded))
}
const resultOf = async (overrides: readonly string[] = [], file?: string): Promise<Result<ApplicationValues>> =>
  (await prepare(overrides, file)).result
const field = ({ values }: Result<ApplicationValues>, id: string): ApplicationField => {
  const found = values.fields.find((each) => each.id === id)
  if (found === undefined) throw new Error(`no field ${id}`)
  return found
}
const idsOf = ({ findings }: Result<unknown>, severity: string): string[] =>
  findings
    .filter((each) => each.severity === severity && each.id !== 'application.field-missing')
    .map(({ id, where }) => `${id} ${where}`)

// Rows of the list that the federal Attachment 5, New York's form up to 50 kW and a cooperative's form come to together.
describe('what applications ask for', () => {
  test('each of the 33 rows of the list has a field, and ids are unique', () => {
    const rows = new Set(APPLICATION_FIELDS.map(({ row }) => row))
    expect([...rows].toSorted((a, b) => a - b)).toEqual(Array.from({ length: 33 }, (_, at) => at + 1))
    const ids = APPLICATION_FIELDS.map(({ id }) => id)
    expect(new Set(ids).size).toBe(ids.length)
    expect(ids.filter((id) => !/^[a-z][a-z_]*$/u.test(id))).toEqual([])
  })

  test('every key to fill in is a key of the project file', () => {
    const schema = readFileSync(`${root}schemas/project.schema.json`, 'utf8')
    const keys = APPLICATION_FIELDS.flatMap(({ key }) => (typeof key === 'string' && key !== '' ? [key] : []))
    for (const key of keys) {
      const last = key.split('.').at(-1) ?? ''
      expect(schema, key).toContain(`"${last}":`)
    }
  })

  test('the demo house: what is stated and worked out, with where it comes from', async () => {
    const result = await resultOf()
    expect(field(result, 'customer_name')).toMatchObject({
      value: 'A. Lindqvist (invented)',
      from: 'parties.owner.name',
      missing: null,
      state: 'stated',
    })
    // 20 modules of 410 W and 20 inverters of 366 W; meter at 69, 42 and disconnect at 69, 50 of the site plan.
    expect(field(result, 'total_dc_kw')).toMatchObject({ value: 8.2, unit: 'kW dc' })
    expect(field(result, 'total_ac_kw')).toMatchObject({ value: 7.32, unit: 'kW ac' })
    expect(field(result, 'disconnect_distance_ft')).toMatchObject({ value: 8, unit: 'ft' })
    expect(field(result, 'connection_breaker_a')).toMatchObject({ value: '40 A' })
    expect(field(result, 'annual_use_kwh').value).toBe(11_800)
    expect(field(result, 'storage')).toMatchObject({ value: 'none', state: 'none' })
    expect(field(result, 'meter_number')).toMatchObject({
      value: null,
      state: 'missing',
      missing: 'utility_application.meter_number',
    })
  })

  test('signature and its date stay blank', async () => {
    const result = await resultOf()
    for (const id of ['signature', 'signature_date'])
      expect(field(result, id)).toMatchObject({ state: 'blank', value: null, missing: null })
  })

  test('what is missing is a warning at its key, once for each field', async () => {
    const { values, findings } = await resultOf()
    const missing = findings.filter(({ id }) => id === 'application.field-missing')
    expect(missing).toHaveLength(values.missing)
    expect(missing.every(({ severity, where }) => severity === 'warning' && where !== '')).toBe(true)
    expect(missing.map(({ where }) => where)).toContain('utility_application.account_number')
  })

  test('apparent power is real power over the power factor', async () => {
    // 0.366 kW / 0.95 = 0.385 kVA.
    const result = await resultOf(['electrical.power_factor=0.95'])
    expect(field(result, 'inverter_kva').value).toBe('0.385 kVA ac')
  })

  test('the PTC rating is module power at PTC times the weighted efficiency', async () => {
    // 20 x 382.1 W x 97 % = 7.413 kW.
    const result = await resultOf(['equipment.modules.m410.ptc_w=382.1'])
    expect(field(result, 'ptc_kw')).toMatchObject({ value: 7.413, unit: 'kW ac' })
  })

  test('the fault current is never guessed; 1.2 times rated is told beside', async () => {
    const silent = field(await resultOf(), 'max_fault_current')
    expect(silent).toMatchObject({ value: null, missing: 'equipment.inverters.micro366.max_fault_current_a' })
    expect(silent.note).toContain('here 1.84 A')
    const stated = field(await resultOf(['equipment.inverters.micro366.max_fault_current_a=1.8']), 'max_fault_current')
    expect(stated.value).toBe('1.8 A (1.18 x rated)')
  })

  test('storage is asked for in full where there is some', async () => {
    const result = await resultOf(['utility_application.storage={name: Home battery (invented), power_kw: 5}'])
    expect(field(result, 'generator_type').value).toContain('with storage')
    expect(field(result, 'storage_kw')).toMatchObject({ value: 5, unit: 'kW' })
    expect(field(result, 'storage_kwh').missing).toBe('utility_application.storage.usable_kwh')
  })

  test('no setting of voltage, frequency or time is printed, only the name of a profile', async () => {
    const { values } = await resultOf(['utility_application.settings_profile=Sampletown profile (invented)'])
    const words = JSON.stringify(values)
    expect(words).toContain('Sampletown profile (invented)')
    for (const setting of [/\bpu\b/u, /\bp\.u\./u, /\d Hz/u, /\b1\.10\b/u, /0\.88/u]) expect(words).not.toMatch(setting)
    expect(STANDARD_FACTS.every(({ source }) => source.standing.length > 0)).toBe(true)
  })
})

describe('contradictions', () => {
  test('no or limited export without a power control system', async () => {
    const wrong = 'application.no-power-control utility_application.operating_mode'
    expect(idsOf(await resultOf(['utility_application.operating_mode=non_export']), 'error')).toEqual([wrong])
    const control = 'electrical.power_control={setting_a: 160, panels: [panel]}'
    expect(idsOf(await resultOf(['utility_application.operating_mode=non_export', control]), 'error')).toEqual([])
    expect(idsOf(await resultOf(['utility_application.operating_mode=export']), 'error')).toEqual([])
  })

  test('an export limit wants its mode, and limits nothing above the rating', async () => {
    const limit = 'utility_application.export_limit_kw=7.32'
    expect(idsOf(await resultOf([limit]), 'error')).toEqual([
      'application.export-limit-without-mode utility_application.export_limit_kw',
    ])
    const control = 'electrical.power_control={setting_a: 160, panels: [panel]}'
    const limited = ['utility_application.operating_mode=limited_export', control]
    expect(idsOf(await resultOf([...limited, limit]), 'warning')).toContain(
      'application.export-limit-idle utility_application.export_limit_kw',
    )
    expect(idsOf(await resultOf([...limited, 'utility_application.export_limit_kw=5']), 'warning')).toEqual([])
  })

  // Net-metering rules: yearly energy at most 100 to 120 % of the yearly use.
  test('more energy than the use allows: a warning above 120 %, an error above the limit that is stated', async () => {
    const house = 'examples/harbor-point.yaml'
    const { values } = await resultOf([], house)
    const kwh = Number(values.fields.find(({ id }) => id === 'annual_kwh')?.value)
    const use = (share: number) => [`usage.annual_kwh=${(kwh / share).toFixed(0)}`]
    expect(idsOf(await resultOf(use(1.195), house), 'warning')).toEqual([])
    expect(idsOf(await resultOf(use(1.21), house), 'warning')).toEqual([
      'application.energy-above-use usage.annual_kwh',
    ])
    const stated = [...use(1.05), 'utility_application.size_limit_pct=100']
    expect(idsOf(await resultOf(stated, house), 'error')).toEqual([
      'application.energy-above-use utility_application.size_limit_pct',
    ])
  })

  test.each([
    [['stage=new', 'existing_generation_kw=3'], 'stage'],
    [['stage=addition', 'existing_generation_kw=0'], 'existing_generation_kw'],
    [['ownership=owned', 'third_party_owner={name: Lessor (invented)}'], 'third_party_owner'],
    [['installation_date=2026-06-15', 'in_service_date=2026-05-04'], 'in_service_date'],
    [['insurance_limit_usd=90000', 'insurance_required_usd=100000'], 'insurance_limit_usd'],
  ])('%s', async (keys, where) => {
    expect(idsOf(await resultOf(keys.map((key) => `utility_application.${key}`)), 'error')).toEqual([
      `application.contradiction utility_application.${where}`,
    ])
  })

  test('a fault current below the rated one', async () => {
    expect(idsOf(await resultOf(['equipment.inverters.micro366.max_fault_current_a=1.5']), 'error')).toEqual([
      'application.contradiction equipment.inverters.micro366.max_fault_current_a',
    ])
  })

  test('what is just enough is no contradiction', async () => {
    const keys = ['insurance_limit_usd=100000', 'insurance_required_usd=100000', 'installation_date=2026-05-04']
    const enough = [
      ...keys,
      'in_service_date=2026-05-04',
      'ownership=leased',
      'third_party_owner={name: Lessor (invented)}',
    ]
    const rated = load().project.equipment.inverters?.['micro366']?.ac_current_a ?? 0
    expect(rated).toBeGreaterThan(1)
    const result = await resultOf([
      ...enough.map((key) => `utility_application.${key}`),
      `equipment.inverters.micro366.max_fault_current_a=${rated}`,
    ])
    expect(idsOf(result, 'error')).toEqual([])
  })

  test('a category that is not usual for PV is told, normal and abnormal each', async () => {
    const told = async (...keys: readonly string[]) =>
      idsOf(await resultOf(keys.map((key) => `equipment.inverters.micro366.${key}`)), 'note').filter((each) =>
        each.startsWith('application.category-unusual'),
      )
    expect(await told('ieee1547_normal=B', 'ieee1547_abnormal=III')).toEqual([])
    expect(await told('ieee1547_normal=A', 'ieee1547_abnormal=III')).toHaveLength(1)
    expect(await told('ieee1547_normal=B', 'ieee1547_abnormal=II')).toHaveLength(1)
  })

  // UL 1741 Supplement SB is certified to IEEE 1547-2018; SA is the older set.
  test('a listing without Supplement SB is told', async () => {
    const listing = (text: string) => resultOf([`equipment.inverters.micro366.listing=${text}`])
    const told = 'application.listing-not-sb equipment.inverters.micro366.listing'
    expect(idsOf(await listing('UL 1741 SA'), 'warning')).toEqual([told])
    expect(idsOf(await listing('UL 62109'), 'warning')).toEqual([told])
    expect(idsOf(await listing('UL 1741 SB'), 'warning')).toEqual([])
  })

  // Federal small-generator procedures, Attachment 5: 10 kW; New York: 50 kW.
  test('levels of size: 10 and 50 kW, or that of the utility', async () => {
    const ac = (watts: number, more: readonly string[] = []) =>
      resultOf([
        `equipment.inverters.micro366.ac_power_w=${watts}`,
        'equipment.inverters.micro366.max_dc_power_w=9000',
        ...more,
      ])
    const levels = async (result: Promise<Result<unknown>>) =>
      idsOf(await result, 'warning').filter((each) => each.startsWith('application.above-level')).length
    expect(await levels(ac(500))).toBe(0)
    expect(await levels(ac(501))).toBe(1)
    expect(await levels(ac(2501))).toBe(2)
    expect(await levels(ac(501, ['utility_application.size_level_kw=25']))).toBe(0)
    expect(await levels(ac(501, ['utility_application.size_level_kw=10']))).toBe(1)
  })
})

describe('attachments', () => {
  test('what packet and documents have, and what is missing', async () => {
    const { values } = await resultOf([
      'documents=[{id: rafter_letter, file: letter-rafters.pdf, title: Letter (invented), date: 2026-02-20}, {id: agent, file: letter-rafters.pdf, title: Letter of the owner (invented)}, {file: letter-rafters.pdf, title: Sheets (invented), kind: data_sheet, items: [modules.m410]}]',
      'utility_application.authorisation_document=agent',
    ])
    const states = Object.fromEntries(values.attachments.map(({ id, state }) => [id, state]))
    expect(states).toMatchObject({
      one_line: 'packet',
      three_line: 'missing',
      site_plan: 'packet',
      module_sheets: 'documents',
      inverter_sheets: 'missing',
      authorisation: 'documents',
      insurance: 'missing',
      commissioning: 'later',
    })
  })

  test('the times of the federal and the New York procedures', async () => {
    const { values } = await resultOf()
    expect(values.clocks.map((each) => [each.federal_business_days, each.new_york_business_days])).toEqual([
      [3, null],
      [10, 10],
      [15, null],
      [10, null],
      [null, null],
    ])
  })
})

describe('a house that is only half described', () => {
  test('a stage that cannot run is told, and its fields are missing', async () => {
    const { electrical: _, ...project } = load().project
    const { result } = await prepareApplication({ project }, runHouse({ project }))
    expect(idsOf(result, 'warning')).toEqual(['application.stage-missing electrical'])
    expect(field(result, 'connection').missing).toBe('electrical.connection.kind')
    expect(field(result, 'panel_bus_a').missing).toBe('electrical.panel.bus_a')
  })

  test('bad input has its place and says what is allowed', () => {
    const said = (override: string) => failureOf(() => load([`utility_application.${override}`])).message
    expect(said('fee=interconnect')).toContain('no id under materials.fees')
    expect(said('in_service_date=2026-02-30')).toContain('2026-02-30 is no day of the calendar')
    expect(said('in_service_date=June')).toContain('utility_application.in_service_date')
    expect(said('insurance_document=policy')).toContain('no id of a document under documents')
    expect(said('ownership=rented')).toContain('owned')
    expect(said('meter_no=1')).toContain('did you mean meter_number?')
  })
})

describe('the paper', () => {
  test('JSON is of its schema', async () => {
    const schema = JSON.parse(readFileSync(`${root}schemas/values/application.schema.json`, 'utf8')) as object
    const validate = new Ajv2020({ allowUnionTypes: true }).compile(schema)
    expect(validate((await resultOf()).values), JSON.stringify(validate.errors)).toBe(true)
  })

  test('the PDF has every answer and is the same twice, on both papers', async () => {
    const application = await prepare()
    const pdf = await application.pdf('letter')
    expect(Buffer.compare(pdf, await (await prepare()).pdf('letter'))).toBe(0)
    const text = (await pagesOf(pdf))
      .map((page) => page.text)
      .join(' ')
      .replaceAll(/\s+/gu, ' ')
    for (const { label } of application.result.values.fields.filter(({ state }) => state !== 'blank'))
      expect(text).toContain(label)
    expect(text).toContain('MISSING')
    expect(text).toContain('7.32 kW ac')
    expect((await application.pdf('a4')).length).toBeGreaterThan(1000)
  })

  test('names from outside do not become markup', async () => {
    const markdown = (await prepare(['parties.owner.name=<script>*x*</script>'])).markdown()
    expect(markdown).toContain('\\<script\\>\\*x\\*')
  })

  test('a mapping of a form names its fields', async () => {
    const { project } = load(['utility_application.meter_number=M-7 (invented)'])
    const sources = makeSources(project, runHouse({ project }))
    expect(await sources.read('application.fields.meter_number.value')).toEqual({ value: 'M-7 (invented)' })
    expect(await sources.read('application.fields.total_ac_kw.value')).toEqual({ value: 7.32 })
    expect(await sources.read('application.fields.county.value')).toHaveProperty('missing')
    expect(await sources.read('application.fields.meter_nummer.value')).toMatchObject({
      missing: "there is no entry 'meter_nummer' under fields; did you mean meter_number?",
    })
  })
})
