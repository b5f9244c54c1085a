import { Ajv2020 } from 'ajv/dist/2020.js'
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import { runHouse } from '../../../src/house/index.js'
import { cellFromAir, prepareHandover, type HandoverValues, type HandoverWishes } from '../../../src/papers/index.js'
import { loadProject, ProjectError } from '../../../src/project/index.js'
import { StageError, type Result } from '../../../src/worksheet/index.js'
import { pagesOf } from '../../drawings/pdf-text.js'
import { failureOf } from '../../project/support.js'

const root = new URL('../../../', import.meta.url).pathname
const STRINGS = 'examples/harbor-point.yaml'
const UNITS = 'examples/lark-hollow.yaml'
const load = (file: string, overrides: readonly string[] = []) =>
  loadProject({ path: `${root}${file}`, overrides: overrides.map((each) => `commissioning.${each}`) })
const prepare = async (file: string, overrides: readonly string[] = [], wishes: HandoverWishes = {}) => {
  const loaded = load(file, overrides)
  return await prepareHandover(loaded, runHouse(loaded, { wishes: { cellC: wishes.cellC } }), wishes)
}
const resultOf = async (...args: Parameters<typeof prepare>): Promise<Result<HandoverValues>> =>
  (await prepare(...args)).result
const testOf = ({ values }: Result<HandoverValues>, id: string) => {
  const found = values.tests.find((each) => each.id === id)
  if (found === undefined) throw new Error(`no test ${id}`)
  return found
}
const own = ({ findings }: Result<unknown>, severity: string): string[] =>
  findings
    .filter(({ id, severity: each }) => id.startsWith('handover.') && each === severity)
    .map(({ id, where }) => `${id} ${where}`)

describe('the record', () => {
  test('has the tests in their order; insulation before the inverter is connected', async () => {
    const { values } = await resultOf(STRINGS)
    expect(values.tests.map(({ number }) => number)).toEqual('0 1 2 3 4 5 6 7 8 8a 9 10'.split(' '))
    expect(values.tests.filter(({ left_out: why }) => why !== null).map(({ id }) => id)).toEqual([
      'combiner',
      'unit_voltage',
    ])
    expect(values.tests.every(({ left_out: why, tasks, rows }) => why !== null || tasks.length + rows.length > 1)).toBe(
      true,
    )
    expect(values.counts).toMatchObject({ pass: 0, fail: 0, look: 0 })
    expect(values.counts.open).toBeGreaterThan(20)
  })

  test('expected values at the temperature of the day, or for several temperatures', async () => {
    // 9 modules of 37.4 V, -0.27 %/C: 336.6 V x (1 - 0.0027 x 23) = 315.7 V at 48 C.
    const today = await resultOf(STRINGS, [], { cellC: 48 })
    expect(testOf(today, 'voc').rows[0]?.expected).toBe('315.7 V (9 modules, cells 48 C)')
    expect(today.values.voc_table).toEqual([])
    const any = await resultOf(STRINGS)
    expect(testOf(any, 'voc').rows[0]?.expected).toBe('by the table of temperatures')
    expect(any.values.voc_table.map(({ cell_c: cell }) => cell)).toEqual([
      -10, 0, 10, 25, 40, 55, -10, 0, 10, 25, 40, 55,
    ])
    expect(any.values.voc_table.find(({ cell_c: cell }) => cell === 25)?.voc_v).toBeCloseTo(336.6, 9)
  })

  // Definition of NOCT: cells at NOCT in 800 W/m2 and 20 C air.
  test('the cells follow from air and light by the NOCT as installed', () => {
    const { project } = load(STRINGS)
    const noctC = cellFromAir(project, 20, 800)
    expect(noctC).toBeGreaterThanOrEqual(45)
    expect(noctC).toBeLessThan(60)
    expect(cellFromAir(project, 30, 0)).toBe(30)
    expect(cellFromAir(project, 30, 400)).toBeCloseTo(30 + (noctC - 20) / 2, 0)
  })

  test('today’s light gives the current to expect', async () => {
    // 13.87 A x 0.6 x (1 + 0.0005 x 15) = 8.38 A.
    const result = await resultOf(STRINGS, [], { cellC: 40, irradianceWM2: 600 })
    expect(testOf(result, 'isc').rows[0]).toMatchObject({
      expected: '8.38 A at 600 W/m2, cells 40 C',
      verdict: 'open',
    })
  })

  test('module-level inverters have no DC string tests', async () => {
    const result = await resultOf(UNITS)
    for (const id of ['polarity', 'combiner', 'voc', 'isc', 'insulation'])
      expect(testOf(result, id).left_out, id).toContain('no DC string tests')
    expect(testOf(result, 'unit_voltage').left_out).toBeNull()
    expect(testOf(result, 'rapid_shutdown').rows).toHaveLength(2)
    expect(result.values.energising.join(' ')).not.toMatch(/\bDC\b/u)
  })

  test('readings are judged; one that fails is an error at its key', async () => {
    const day = ['cell_c=48', 'irradiance_w_m2=820', 'date=2026-05-06']
    const result = await resultOf(STRINGS, [
      ...day,
      'strings.south_s1={voc_v: 310, isc_a: 11.4, polarity: right, insulation_both_mohm: 40, insulation_test_v: 500}',
      'strings.west_s1={voc_v: 245, polarity: reversed}',
    ])
    expect(own(result, 'error')).toEqual([
      'handover.reading-fails commissioning.strings.west_s1.polarity',
      'handover.reading-fails commissioning.strings.west_s1.voc_v',
    ])
    // 13.87 A x 0.82 x (1 + 0.0005 x 23) = 11.50 A.
    expect(testOf(result, 'isc').rows[0]).toMatchObject({
      expected: '11.50 A at 820 W/m2, cells 48 C',
      verdict: 'pass',
    })
    expect(testOf(result, 'voc').rows[1]?.why).toContain('like one module short')
    expect(testOf(result, 'insulation').rows[0]?.verdict).toBe('pass')
    expect(result.values.counts).toMatchObject({ pass: 4, fail: 2 })
  })

  test('readings of a table win over those of the project', async () => {
    const readings = { name: 'strings.csv', text: 'string,voc_v,cell_c\nsouth_s1,315.7,48\n' }
    const result = await resultOf(STRINGS, ['strings.south_s1={voc_v: 100, polarity: right}'], { readings })
    expect(testOf(result, 'voc').rows[0]).toMatchObject({ measured: '315.7 V', verdict: 'pass' })
    expect(testOf(result, 'polarity').rows[0]?.verdict).toBe('pass')
  })

  test('instruments: calibrated before the tests, and not too long before', async () => {
    const of = async (calibrated: string, due = '') =>
      await resultOf(STRINGS, [
        'date=2026-05-06',
        `instruments.meter={name: Meter (invented)${calibrated === '' ? '' : `, calibrated: '${calibrated}'`}${due === '' ? '' : `, due: '${due}'`}}`,
      ])
    const told = 'handover.calibration commissioning.instruments.meter'
    expect(own(await of('2026-05-07'), 'error')).toEqual([told])
    expect(own(await of('2025-05-01', '2026-05-05'), 'error')).toEqual([told])
    expect(own(await of('2025-05-04'), 'warning')).toContain(told)
    expect(own(await of('2025-05-05'), 'warning')).not.toContain(told)
    expect(own(await of(''), 'warning')).toContain(told)
  })
})

describe('serial numbers', () => {
  test('missing ones are counted, units are those of the house', async () => {
    const serials = {
      name: 's.csv',
      text: 'kind,unit,serial\ninverter,garage,I-1\nmodule,south.m1,M-1\nother,gateway,G-1\n',
    }
    const result = await resultOf(STRINGS, [], { serials })
    expect(own(result, 'warning')).toContain('handover.serial-missing commissioning.serials.modules')
    expect(own(result, 'warning')).not.toContain('handover.serial-missing commissioning.serials.inverters')
    expect(result.values.serials).toHaveLength(19)
    expect(result.values.serials.find(({ unit }) => unit === 'south.m1')?.serial).toBe('M-1')
  })

  test('a unit that is not there', async () => {
    await expect(resultOf(STRINGS, ['serials.inverters={shed: I-1}'])).rejects.toThrow(StageError)
    const serials = { name: 's.csv', text: 'kind,unit,serial\ninverter,shed,I-1\n' }
    await expect(resultOf(STRINGS, [], { serials })).rejects.toThrow(ProjectError)
  })
})

describe('bad input', () => {
  const said = (override: string) => failureOf(() => load(STRINGS, [override])).message

  test('has its place and says what is allowed', () => {
    expect(said('strings.north_s1={voc_v: 300}')).toContain('strings of this project: south_s1, west_s1')
    expect(said('serials.modules={south.m1: A, south.m2: A}')).toContain("'A' is the serial number of 'south.m1' too")
    expect(said('date=2026-02-30')).toContain('2026-02-30 is no day of the calendar')
    expect(said('date=6 May 2026')).toContain('commissioning.date')
    expect(said('strings.south_s1={voc: 300}')).toContain('did you mean voc_v?')
    expect(said('strings.south_s1={voc_v: -3}')).toContain('0 to 2000 V')
    expect(said('instruments.m={name: M, calibrated: 2026-13-01}')).toContain('no day of the calendar')
  })
})

describe('what is kept', () => {
  test('the fire service: what turns it off and what stays live, by edition and system', async () => {
    const strings = (await resultOf(STRINGS)).values.emergency
    expect(strings.shut_down[0]).toBe('turn off the PV disconnect, outside, within reach')
    // Cold open voltage of the longer string; the hazard control system leaves the conductors within the array as they are.
    expect(strings.stays_live.join('\n')).toMatch(
      /conductors within the array, up to \d+ V, also after rapid shutdown/u,
    )
    const old = loadProject({ path: `${root}examples/fleet/tampa-nec-2011.yaml` })
    const { result } = await prepareHandover(old, runHouse(old))
    expect(result.values.emergency.shut_down[0]).toBe('no rapid shutdown by NEC 2011')
    const units = (await resultOf(UNITS)).values.emergency
    expect(units.stays_live.join('\n')).toContain('the DC leads from each module to the inverter behind it')
  })

  test('the owner: energy is rounded down and adds up', async () => {
    const { values } = await resultOf(UNITS)
    const { months, year_kwh: year } = values.owner
    const loaded = load(UNITS)
    const energy = (await runHouse(loaded).yield()).values
    for (const [at, { expected_kwh: kwh }] of months.entries())
      expect(kwh).toBe(Math.floor(energy.monthly[at]?.ac_kwh ?? 0))
    expect(months.reduce((sum, { expected_kwh: kwh }) => sum + kwh, 0)).toBe(year)
    expect(year).toBeLessThanOrEqual(energy.annual.ac_kwh)
  })

  test('every figure of safe work has its source', async () => {
    const { values } = await resultOf(STRINGS)
    expect(values.safety.length).toBeGreaterThan(12)
    expect(values.safety.filter(({ source }) => source === '')).toEqual([])
    expect(values.maintenance.filter(({ source }) => source === '')).toEqual([])
    const words = values.safety.map(({ says }) => says).join('\n')
    // Mounting PV is no roofing work: Bergelectric v. Secretary of Labor, 9th Cir. 2019.
    expect(words).not.toMatch(/warning line|safety monitor/u)
    expect(words).toContain('a module rail or its foot is none')
  })

  test('as built: every conductor of size-wire once', async () => {
    const { values } = await resultOf(STRINGS)
    const wire = (await runHouse(load(STRINGS)).wire()).values
    expect(values.as_built.conductors.rows.map(([tag]) => tag)).toEqual(wire.conductors.map(({ tag }) => tag))
    expect(values.as_built.strings.rows.map(([id]) => id)).toEqual(['string south_s1', 'string west_s1'])
  })
})

describe('the paper', () => {
  test('JSON is of its schema', async () => {
    const schema = JSON.parse(readFileSync(`${root}schemas/values/handover.schema.json`, 'utf8')) as object
    const validate = new Ajv2020({ allowUnionTypes: true, strictTuples: false }).compile(schema)
    for (const file of [STRINGS, UNITS]) {
      const { values } = await resultOf(file)
      expect(validate(JSON.parse(JSON.stringify(values))), JSON.stringify(validate.errors)).toBe(true)
    }
  })

  test('emergency sheet and page of the owner are one page each; the same bytes twice', async () => {
    for (const file of [STRINGS, UNITS, 'examples/fleet/springfield-whole-job.yaml']) {
      const handover = await prepare(file)
      for (const size of ['letter', 'a4'] as const) {
        const pdf = await handover.pdf(size)
        const heads = (await pagesOf(pdf)).map(({ text }) => text.replaceAll(/\s+/gu, ' '))
        expect(heads[0], file).toContain('Fire service: solar power here')
        expect(heads[1], file).toContain('For the owner')
        expect(heads[1], file).toContain('Do not switch on before')
        expect(heads[2], file).toContain('Record of the tests')
      }
    }
    const [first, second] = [await (await prepare(STRINGS)).pdf('letter'), await (await prepare(STRINGS)).pdf('letter')]
    expect(Buffer.compare(first, second)).toBe(0)
  }, 60_000)
})
