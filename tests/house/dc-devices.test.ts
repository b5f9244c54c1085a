import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, describe, expect, it } from 'vitest'
import { drawPacket } from '../../src/drawings/index.js'
import { runHouse } from '../../src/house/index.js'
import { loadProject, ProjectError } from '../../src/project/index.js'

const folder = mkdtempSync(join(tmpdir(), 'devices-'))
afterAll(() => rmSync(folder, { recursive: true }))

const FLEET = new URL('../../examples/fleet/', import.meta.url).pathname
const plain = readFileSync(join(FLEET, 'albuquerque-strings.yaml'), 'utf8')
const catalogue = readFileSync(join(FLEET, 'equipment.yaml'), 'utf8')

/** The sample house with strings, with texts of its file or of its equipment file replaced. */
function load(...changes: readonly (readonly [from: string, to: string])[]) {
  const texts = [plain, catalogue]
  for (const [from, to] of changes) {
    const at = texts.findIndex((text) => text.includes(from))
    if (at < 0) throw new Error(`the sample house has no '${from}'`)
    texts[at] = (texts[at] ?? '').replace(from, to)
  }
  const path = join(folder, 'house.yaml')
  writeFileSync(path, texts[0] ?? '')
  writeFileSync(join(folder, 'equipment.yaml'), texts[1] ?? '')
  return loadProject({ path })
}

/** The words of all sheets. */
async function sheetTexts(house: ReturnType<typeof runHouse>): Promise<string> {
  const texts: string[] = []
  const walk = (value: unknown): void => {
    if (typeof value === 'string') texts.push(value)
    else if (typeof value === 'object' && value !== null) Object.values(value).forEach(walk)
  }
  walk(drawPacket({ ...(await house.packet({ size: '11x17', documents: [] })), draft: true }))
  return texts.join(' ').replaceAll(/\s+/gu, ' ')
}

const MODULE = '    name: Invented M410\n'
const INVERTER =
  '    name: Invented string 6000\n    kind: string\n    ac_power_w: 6000\n    ac_current_a: 25\n    ac_voltage_v: 240\n'
const EQUIPMENT = 'equipment: { file: equipment.yaml }'
const STRINGS =
  'strings: [{ modules: 9, inverter_unit: wall, input: 1 }, { modules: 9, inverter_unit: wall, input: 2 }]'
const optimisers = [
  [STRINGS, `${STRINGS}\n    optimiser: o450`],
  [
    EQUIPMENT,
    `equipment:
  file: equipment.yaml
  optimisers:
    o450:
      { name: Invented O450, input_max_v: 60, max_isc_a: 20, output_max_a: 15, regulated_string_v: 380, shutdown_v: 1, min_per_string: 8, max_per_string: 25, max_string_power_w: 6000, works_with: [s6000], rapid_shutdown: true, weight_lb: 1.5 }`,
  ],
] as const

describe('a house with devices on the DC side', () => {
  it('converters: yield as before, units counted, plan and packet without readings of strings', async () => {
    const [before, after] = [runHouse(load()), runHouse(load(...optimisers))]
    const kwh = async (house: typeof before) => (await house.yield()).values
    expect((await kwh(after)).annual.ac_kwh).toBe((await kwh(before)).annual.ac_kwh)
    const bom = await after.bom()
    expect(bom.values.lines.find(({ item }) => item === 'optimiser.o450')?.quantity).toBe(18)
    const work = await after.work()
    expect(work.findings.map(({ id }) => id)).toContain('work.converter-strings')
    expect(work.values.readings.filter(({ modules }) => modules > 1)).toEqual([])
    expect([work.values.insulation, work.values.currents]).toEqual([[], []])
    const sheets = await sheetTexts(after)
    expect(sheets.includes('Invented O450')).toBe(true)
    expect(sheets.includes('9 converters')).toBe(true)
  })

  it('strings on one input in a DC combiner: its fuses are bought, its circuit drawn', async () => {
    const house = runHouse(
      load(
        ['inverter_unit: wall, input: 2', 'inverter_unit: wall, input: 1'],
        [
          '  runs:\n',
          '  dc_combiners:\n    box: { inputs: [main_s1, main_s2], poles_fused: both, fuse_a: 25, fuses_listed_for_pv: true, max_voltage_v: 600, max_current_a: 60, listed_for_dc: true, disconnect: true }\n  runs:\n    box_out: { carries: [box], segments: { inside: { location: indoors, length_ft: 6, raceway: EMT } } }\n',
        ],
      ),
    )
    const { lines } = (await house.bom()).values
    expect(lines.find(({ item }) => item === 'fuse.pv.25a')?.quantity).toBe(4)
    expect(lines.find(({ item }) => item === 'dc-combiner')?.quantity).toBe(1)
    // A DC circuit has no breaker in the bill.
    expect(lines.filter(({ item }) => item.startsWith('breaker.'))).toHaveLength(1)
    expect((await sheetTexts(house)).includes('through DC combiner box, fused 25 A')).toBe(true)
  })

  it('AC modules: one thing to buy, energy and AC circuits of module-level inverters', async () => {
    const side =
      '{ ac_power_w: 366, ac_current_a: 1.525, ac_voltage_v: 240, frequency_hz: 60, max_branch_ocpd_a: 20, weighted_efficiency_pct: 97, needs_egc: false }'
    const loaded = load(
      [`    ${STRINGS}\n`, ''],
      ['inverter_units:\n  wall: { inverter: s6000 }\n', ''],
      ['carries: [strings]', 'carries: [branches]'],
      ['carries: [inverter_outputs]', 'carries: [output]'],
      [
        '  terminal_temperature_c: 75\n',
        '  terminal_temperature_c: 75\n  combiner: { bus_a: 125, spaces_total: 8, terminal_temperature_c: 75 }\n',
      ],
      [MODULE, `${MODULE}    ac_module: ${side}\n`],
    )
    const house = runHouse(loaded)
    expect((await house.yield()).values.annual.ac_kwh).toBeGreaterThan(1000)
    const { lines } = (await house.bom()).values
    expect(lines.filter(({ group }) => group === 'inverters')).toEqual([])
    const wire = await house.wire()
    expect(wire.values.circuits.filter(({ kind }) => kind === 'ac_branch').length).toBeGreaterThan(1)
    expect(wire.values.strings).toEqual([])
    const sheets = await sheetTexts(house)
    expect(sheets.includes('AC module, 366 W')).toBe(true)
  })

  it('208Y/120 V: breakers of three poles, sheets with the voltage of the service', async () => {
    const house = runHouse(
      load(
        ['service: { rating_a: 200,', 'service: { rating_a: 200, voltage_v: 208, phases: 3, system: wye,'],
        [
          INVERTER,
          INVERTER.replace('240', '208').replace('25', '16.7') + '    phases: 3\n    stops_on_lost_phase: true\n',
        ],
      ),
    )
    const { lines } = (await house.bom()).values
    expect(lines.filter(({ item }) => item.startsWith('breaker.')).map(({ item }) => item)).toEqual(['breaker.3p.25a'])
    expect(lines.some(({ item }) => item.startsWith('wire.thwn-2') && item.endsWith('.blue'))).toBe(true)
    const sheets = await sheetTexts(house)
    expect(sheets.includes('208Y/120 V, three phases')).toBe(true)
    expect(sheets.includes('NOMINAL AC VOLTAGE 208 V')).toBe(true)
    expect(/240 V/u.test(sheets)).toBe(false)
    expect(sheets.includes('25 A, 3-pole')).toBe(true)
    expect((await house.work()).values.ac_voltage.nominal_v).toBe(208)
  })
})

describe('what the project file refuses', () => {
  const problems = (...changes: readonly (readonly [string, string])[]): string => {
    try {
      load(...changes)
    } catch (error) {
      if (error instanceof ProjectError)
        return error.problems.map(({ path, message }) => `${path}: ${message}`).join('\n')
      throw error
    }
    return 'nothing'
  }

  it('ids that are not there, and keys that do not belong together', () => {
    expect(problems([STRINGS, `${STRINGS}\n    optimiser: none`])).toContain("arrays.main.optimiser: no 'none'")
    const [first] = optimisers
    const other = optimisers[1][1].replace('works_with: [s6000]', 'works_with: [s9999]')
    expect(problems(first, [EQUIPMENT, other])).toContain('works_with.0')
    expect(problems([MODULE, `${MODULE}    isc_bsi_a: 10\n`])).toContain('isc_bsi_a')
    const ac =
      'ac_module: { ac_power_w: 366, ac_current_a: 1.5, ac_voltage_v: 240, frequency_hz: 50, max_branch_ocpd_a: 20 }'
    const text = problems([MODULE, `${MODULE}    ${ac}\n`])
    expect(text).toContain('arrays.main.strings')
    expect(text).toContain('50 Hz')
    expect(text).toContain('weighted_efficiency_pct')
    expect(problems([INVERTER, `${INVERTER}    stops_on_lost_phase: true\n`])).toContain('stops_on_lost_phase')
    const unit = { from: 'max_isc_a: 20,', to: 'max_isc_a: 20, modules_wired: series, input_min_v: 61, ' }
    const odd = optimisers[1][1].replace(unit.from, unit.to).replace('min_per_string: 8', 'min_per_string: 30')
    const found = problems(first, [EQUIPMENT, odd])
    for (const key of ['modules_wired', 'input_min_v', 'min_per_string']) expect(found).toContain(key)
    const box =
      '  dc_combiners:\n    box: { inputs: [main_s1, main_s2], poles_fused: none, fuse_a: 20, fused_pole: positive }\n  runs:\n'
    const boxed = problems(['  runs:\n', box])
    expect(boxed).toContain('fused_pole')
    expect(boxed).toContain('fuse_a')
  })
})
