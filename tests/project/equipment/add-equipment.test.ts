import { readFileSync } from 'node:fs'
import { parse } from 'yaml'
import { describe, expect, test } from 'vitest'
import {
  addEquipment,
  entryOfSettings,
  EQUIPMENT_GROUPS,
  EQUIPMENT_KINDS,
  readSettings,
  type EquipmentKind,
} from '../../../src/project/index.js'
import { groupsOfSchema } from '../../../src/project/equipment/groups.js'
import { failureOf } from '../support.js'

const EXAMPLE = readFileSync(new URL('../../../examples/equipment.yaml', import.meta.url), 'utf8')

/** An invented module whose values fit together. */
const M420 = {
  name: 'Invented M420',
  pmax_w: '420',
  voc_v: '38',
  isc_a: '13.95',
  vmp_v: '31.9',
  imp_a: '13.17',
  pmax_temp_coeff_pct_per_c: '-0.34',
  voc_temp_coeff_pct_per_c: '-0.27 %/°C',
  isc_temp_coeff_pct_per_c: '0.05',
  noct_c: '45',
  max_series_fuse_a: '25',
  max_system_voltage_v: '1000',
  length_in: '1722 mm',
  width_in: '1134 mm',
  thickness_in: '30 mm',
  weight_lb: '21.5 kg',
  design_load_down_psf: '5400 Pa',
  sheet: 'M420 sheet rev 1 (invented)',
}

function add(
  kind: EquipmentKind,
  id: string,
  values: Readonly<Record<string, string>>,
  { text = '', replace = false }: { readonly text?: string; readonly replace?: boolean } = {},
) {
  const { stated } = readSettings(Object.entries(values).map(([key, value]) => `${key}=${value}`))
  const { entry, problems } = entryOfSettings({ kind, id }, stated, { file: `--${kind} ${id}` })
  return addEquipment({ file: 'equipment.yaml', text, entries: [entry], problems, replace })
}

const ids = (findings: readonly { readonly severity: string; readonly id: string }[]) =>
  findings.map(({ severity, id }) => `${severity} ${id}`)

describe('writing', () => {
  test('every kind of the schema has its word', () => {
    expect(Object.values(EQUIPMENT_GROUPS)).toEqual(groupsOfSchema())
  })

  test('a module in the units of its sheet stands in those of the keys', () => {
    const { text = '', findings } = add('module', 'm420', M420)
    expect(ids(findings)).toEqual([])
    // By hand: 1722 / 25.4 = 67.795; 21.5 / 0.45359237 = 47.399; 5400 Pa x 0.0208854 psf/Pa (NIST SP 811, B.8) = 112.78.
    expect(parse(text)).toEqual({
      modules: {
        m420: {
          name: 'Invented M420',
          pmax_w: 420,
          pmax_temp_coeff_pct_per_c: -0.34,
          noct_c: 45,
          voc_v: 38,
          isc_a: 13.95,
          vmp_v: 31.9,
          imp_a: 13.17,
          voc_temp_coeff_pct_per_c: -0.27,
          isc_temp_coeff_pct_per_c: 0.05,
          max_series_fuse_a: 25,
          max_system_voltage_v: 1000,
          length_in: 67.795,
          width_in: 44.646,
          thickness_in: 1.1811,
          weight_lb: 47.399,
          design_load_down_psf: 112.78,
          sheet: 'M420 sheet rev 1 (invented)',
        },
      },
    })
    expect(text).toContain('length_in: 67.795 # 1722 mm on the sheet\n')
  })

  test('every other character of the file stays', () => {
    const { text = '' } = add('module', 'm420', M420, { text: EXAMPLE })
    const fresh = /\n {2}m420:\n(?: {4}.*\n)+/u.exec(text)?.[0] ?? ''
    expect(fresh.split('\n').length).toBe(Object.keys(M420).length + 3)
    expect(text.replace(fresh, '\n')).toBe(EXAMPLE)
    expect(text.indexOf('m420:')).toBeGreaterThan(text.indexOf('M410 sheet rev 2'))
    expect(text.indexOf('m420:')).toBeLessThan(text.indexOf('inverters:'))
  })

  test.each([
    ['a comment of the last entry', 'modules:\n  a:\n    pmax_w: 1\n    # of a\n# of inverters\ninverters: {}\n'],
    ['no end of line', 'modules:\n  a:\n    pmax_w: 1'],
    ['another indent', 'modules:\n    a:\n        pmax_w: 1\n'],
    ['a flow map', 'modules: { a: { pmax_w: 1 } } # keep\n'],
    ['an empty group', '# top\nmodules:\nrails:\n  r: {}\n'],
    ['a group that says null', 'modules: null # none\nrails: {}\n'],
    ['comments alone', '# nothing yet\n'],
    ['no such group', 'rails:\n  r:\n    name: |\n      two\n      lines\n'],
    ['a project file', 'format: gablewatt/2\nequipment:\n  modules:\n    a:\n      pmax_w: 1\ntitle: x\n'],
    ['an alias', 'rails:\n  r: &r { name: x }\n  s: *r\n'],
  ])('into a file with %s', (_, text) => {
    const before = (parse(text) ?? {}) as { equipment?: Record<string, unknown> }
    const { text: after = '' } = add('module', 'b', M420, { text })
    const data = parse(after) as { equipment?: Record<string, unknown> }
    const [old, fresh] = text.includes('format') ? [before.equipment ?? {}, data.equipment ?? {}] : [before, data]
    const modules = { ...(old as { modules?: object }).modules, b: (fresh as { modules: { b: object } }).modules.b }
    expect(fresh).toEqual({ ...old, modules })
    for (const [comment] of text.matchAll(/#.*/gu)) expect(after).toContain(comment)
    if (!text.includes('{ a') && !text.includes('null')) expect(after.startsWith(text.split('\n')[0] ?? '')).toBe(true)
    if (text.includes('# of a')) expect(after.indexOf('# of a')).toBeLessThan(after.indexOf('  b:'))
  })

  test('line ends of the file are kept', () => {
    const { text = '' } = add('module', 'b', M420, { text: 'modules:\r\n  a:\r\n    pmax_w: 1\r\n' })
    expect(text.replaceAll('\r\n', '').includes('\n')).toBe(false)
  })

  test('what replaces keeps comments of keys that stay, and what stands round it', () => {
    const { text = '', findings } = add('module', 'm410', { ...M420, fire_type: '1' }, { text: EXAMPLE, replace: true })
    expect(ids(findings)).toEqual(['warning equipment.replaced'])
    expect(text).toContain('    fire_type: 1 # invented\n')
    expect(text.slice(text.indexOf('inverters:'))).toBe(EXAMPLE.slice(EXAMPLE.indexOf('inverters:')))
  })
})

describe('what is there already', () => {
  test('the same id with other values is refused, with the differences', () => {
    const { text, findings } = add('module', 'm410', M420, { text: EXAMPLE })
    expect(text).toBeUndefined()
    expect(ids(findings)).toEqual(['error equipment.same-id'])
    expect(findings[0]?.message).toContain("name 'Invented M410', now 'Invented M420'; pmax_w 410, now 420")
  })

  test('the same values change nothing', () => {
    const { text = '' } = add('module', 'm420', M420)
    const again = add('module', 'm420', M420, { text })
    expect(again.text).toBeUndefined()
    expect(ids(again.findings)).toEqual(['note equipment.unchanged'])
  })

  test('the same product under another id is told, with the differences', () => {
    const { text = '' } = add('module', 'm420', M420)
    const other = add('module', 'other', { ...M420, name: 'invented  m420', isc_a: '13.9' }, { text })
    expect(other.text).toBeDefined()
    expect(ids(other.findings)).toEqual(['warning equipment.same-product'])
    expect(other.findings[0]?.message).toContain('isc_a 13.95, now 13.9')
  })
})

describe('what is wrong is told at its place', () => {
  test.each([
    [{ ...M420, pmax_temp_coeff_pct_per_c: '0.34' }, '--set pmax_temp_coeff_pct_per_c=0.34', 'too high'],
    [{ ...M420, length_in: '21.5 kg' }, '--set length_in=21.5 kg', "'kg' is no unit of a value in in; units: in, mm"],
    [{ ...M420, pmaxw: '420' }, '--set pmaxw=420', 'did you mean pmax_w?'],
    [{ ...M420, voc_v: '31' }, '--set vmp_v=31.9', 'is not below voc_v 31 V'],
    [{ name: 'x' }, '--module m', 'missing; Rated power, W'],
  ])('%#', (values, file, words) => {
    const { problems, exitCode } = failureOf(() => add('module', 'm', values))
    expect(exitCode).toBe(2)
    const found = problems.find((problem) => problem.file === file)
    expect(found?.message).toContain(words)
  })

  test('an id that the file could not hold', () => {
    expect(failureOf(() => add('module', '4x', M420)).message).toContain("'4x' is no id")
  })

  test('text without a key', () => {
    expect(readSettings(['pmax_w']).problems[0]?.message).toContain('not of the form key=value')
  })
})

describe('the example equipment is plausible', () => {
  const equipment = parse(EXAMPLE) as Readonly<Record<string, Readonly<Record<string, Record<string, unknown>>>>>
  test.each(EQUIPMENT_KINDS.filter((kind) => equipment[EQUIPMENT_GROUPS[kind]] !== undefined))('%s', (kind) => {
    for (const [id, values] of Object.entries(equipment[EQUIPMENT_GROUPS[kind]] ?? {})) {
      const entry = { kind, id, values, sheetWords: new Map(), placeOf: () => ({ file: 'x' }) }
      const { findings } = addEquipment({ file: 'e', text: '', entries: [entry], problems: [] })
      expect(findings).toEqual([])
    }
  })
})
