import { parse } from 'yaml'
import { describe, expect, test } from 'vitest'
import { addEquipment, entriesOfTable, readColumns } from '../../../src/project/index.js'
import { failureOf } from '../support.js'

const COLUMNS = `format: gablewatt-equipment-columns/1
kind_column: Type
id_column: Model
decimal: ','
missing: ['-']
columns:
  name: { column: Model }
  pmax_w: { column: P, unit: kW }
  pmax_temp_coeff_pct_per_c: { column: TkP, unit: '%/K' }
  length_in: { column: L, unit: mm }
  construction: { column: Back, words: { glass: glass_back, foil: polymer_back } }
  kind: { column: Inv }
  ac_power_w: { column: AC }
  weighted_efficiency_pct: { column: Eta }
values:
  sheet: Price sheet 12 (invented)
`
const TABLE = `Type;Model;P;TkP;L;Back;Inv;AC;Eta
Module;A 420/B;0,42;-0,34;1722;glass;-;;
modules;430;0,43;-0,29;1722 mm;foil;;;-
Inverter;S5;;;;;string;5 kW;97,5
`

function added(table: string, columns = COLUMNS) {
  const { entries, problems } = entriesOfTable('sheet.csv', table, readColumns('columns.yaml', columns))
  return addEquipment({ file: 'equipment.yaml', text: '', entries, problems })
}

describe('a table of equipment', () => {
  test('brings modules and inverters in declared units, decimals and words', () => {
    const { text = '' } = added(TABLE)
    const sheet = 'Price sheet 12 (invented)'
    const common = { pmax_temp_coeff_pct_per_c: -0.34, construction: 'glass_back', length_in: 67.795, sheet }
    expect(parse(text)).toEqual({
      modules: {
        'A-420-B': { name: 'A 420/B', pmax_w: 420, ...common },
        m430: { name: '430', pmax_w: 430, ...common, pmax_temp_coeff_pct_per_c: -0.29, construction: 'polymer_back' },
      },
      inverters: { S5: { name: 'S5', kind: 'string', ac_power_w: 5000, weighted_efficiency_pct: 97.5, sheet } },
    })
    expect(text).toContain('pmax_w: 420 # 0.42 kW on the sheet')
  })

  test('is refused as a whole, each cell with its place', () => {
    const wrong = TABLE.replace(';1722;glass', ';tall;brick').replace('string;5 kW', 'strong;5 kg')
    const lines = failureOf(() => added(wrong)).message.split('\n')
    expect(lines).toEqual([
      expect.stringMatching(
        /^sheet\.csv:4:24 {2}equipment\.inverters\.S5\.ac_power_w {2}'kg' is no unit of a value in W/u,
      ),
    ])
    const words = failureOf(() => added(wrong.replace('5 kg', '5 kW'))).message
    expect(words).toMatch(/sheet\.csv:2:32 {2}equipment\.modules\.A-420-B\.construction .*brick/u)
    expect(words).toMatch(/sheet\.csv:2:27 {2}equipment\.modules\.A-420-B\.length_in .*tall/u)
    expect(words).toMatch(/sheet\.csv:4:17 {2}equipment\.inverters\.S5\.kind .*strong/u)
  })

  test('a key that the kind of a row lacks, and a row of another kind', () => {
    expect(failureOf(() => added(TABLE.replace('S5;', 'S5;0,4'))).message).toMatch(
      /sheet\.csv:4:13 {2}equipment\.inverters\.S5\.pmax_w {2}no key 'pmax_w'/u,
    )
    expect(failureOf(() => added(TABLE.replace('Inverter', 'Battery'))).message).toContain(
      "sheet.csv:4:1  'Battery' is no kind of equipment; kinds: module, inverter",
    )
  })

  test('ids that come twice are refused with their differences', () => {
    const { text, findings } = added(TABLE.replace('430;0,43', 'A 420 B;0,43'))
    expect(text).toBeUndefined()
    expect(findings[0]).toMatchObject({ severity: 'error', id: 'equipment.same-id' })
    expect(findings[0]?.message).toContain('pmax_w 420, now 430')
  })

  test('the declaration is checked line by line', () => {
    const wrong = COLUMNS.replace('unit: mm', 'unit: kg').replace('ac_power_w:', 'ac_powr_w:')
    const { message } = failureOf(() => added(TABLE, wrong))
    expect(message).toMatch(/columns\.yaml:10:\d+ {2}columns\.length_in\.unit {2}'kg' cannot be turned into in/u)
    expect(message).toMatch(/columns\.yaml:13:\d+ {2}columns\.ac_powr_w .*did you mean ac_power_w/u)
    const two = failureOf(() => added(TABLE, COLUMNS.replace('kind_column: Type', 'kind: module\nkind_column: Type')))
    expect(two.message).toContain('columns.yaml:2:1  kind  state kind')
    const absent = failureOf(() => added(TABLE, COLUMNS.replace('column: Back', 'column: Bak')))
    expect(absent.message).toMatch(/columns\.yaml:11:\d+ .*no column 'Bak'; did you mean Back\?/u)
  })
})
