import { describe, expect, test } from 'vitest'
import { tryEquipment } from '../../src/house/index.js'
import { loadProject, type Candidate } from '../../src/project/index.js'

const EXAMPLES = new URL('../../examples/', import.meta.url).pathname
const micro = loadProject({ path: `${EXAMPLES}lark-hollow.yaml` })
const strings = loadProject({ path: `${EXAMPLES}harbor-point.yaml` })
const m410 = micro.project.equipment.modules?.['m410']
const micro366 = micro.project.equipment.inverters?.['micro366']
const s6000 = strings.project.equipment.inverters?.['s6000']
if (m410 === undefined || micro366 === undefined || s6000 === undefined) throw new Error('the examples changed')

const module = (id: string, change: object): Candidate => ({ kind: 'module', id, values: { ...m410, ...change } })
const inverter = (id: string, values: NonNullable<typeof micro366>, change: object): Candidate => ({
  kind: 'inverter',
  id,
  values: { ...values, ...change },
})

describe('a house with module-level inverters', async () => {
  const { fit, failing } = await tryEquipment(micro)

  test('holds as it stands, and with what it has', async () => {
    expect(failing).toEqual([])
    expect(await fit(module('m410', {}))).toEqual({ fits: true, reasons: [], modules: 20, powerW: 8200 })
    expect(await fit(inverter('micro366', micro366, {}))).toMatchObject({ fits: true, powerW: 8200 })
  })

  test.each([
    ['a module with more power', module('a', { pmax_w: 420 }), []],
    ['more power than the inverter may take (540 W)', module('a', { pmax_w: 541 }), ['max_dc_power_w']],
    // 20 modules of twice the width do not find their places: the blocks are placed by hand.
    ['a module that is too large for the roof', module('a', { length_in: 100, width_in: 66 }), ['roof.']],
    // 1.25 x 16.1 A is above the 20 A of the inverter.
    ['more short-circuit current', module('a', { isc_a: 21 }), ['wire.input-short-circuit']],
    ['a module that is too weak for the wind', module('a', { design_load_up_psf: 5 }), ['structure.module-up']],
    ['a module whose weight nobody states', module('a', { weight_lb: undefined }), ['[mounts.cannot-run]']],
    ['an inverter with a small input', inverter('b', micro366, { max_dc_voltage_v: 38 }), ['wire.']],
    ['a string inverter', inverter('b', s6000, {}), ['this is a string inverter']],
    ['an inverter that is wrong by itself', inverter('b', micro366, { mppt_min_v: 60 }), ['mppt_min_v']],
  ])('%s', async (_, candidate, expected) => {
    const { fits, reasons } = await fit(candidate)
    expect(fits).toBe(expected.length === 0)
    for (const words of expected) expect(reasons.join('\n')).toContain(words)
  })

  test('an AC module takes the place of module and inverter', async () => {
    const side = { ac_power_w: 366, ac_current_a: 1.53, ac_voltage_v: 240, frequency_hz: 60, max_branch_ocpd_a: 20 }
    const acModule = { ...side, max_per_branch: 10, max_ac_rise_pct: 2, weighted_efficiency_pct: 97, needs_egc: false }
    const { reasons, powerW } = await fit(module('ac', { ac_module: acModule }))
    expect(powerW).toBe(8200)
    expect(reasons.filter((reason) => reason.includes('has its own inverter'))).toEqual([])
  })
})

describe('a house with strings', async () => {
  const { fit } = await tryEquipment(strings)

  test.each([
    ['its own inverter', inverter('s6000', s6000, {}), []],
    ['one with less voltage', inverter('b', s6000, { max_dc_voltage_v: 300 }), ['wire.']],
    ['a module-level inverter', inverter('b', micro366, {}), ['this is a module-level inverter']],
    ['a module with more voltage', module('a', { voc_v: 80, vmp_v: 70, imp_a: 5.86, isc_a: 6.2 }), ['wire.']],
    ['an AC module', module('a', { ac_module: {} }), ['this is an AC module']],
  ])('%s', async (_, candidate, expected) => {
    const { fits, reasons } = await fit(candidate)
    expect(fits).toBe(expected.length === 0)
    for (const words of expected) expect(reasons.join('\n')).toContain(words)
  })
})

test('what a project fails already is not held against equipment', async () => {
  const path = `${EXAMPLES}lark-hollow.yaml`
  const small = loadProject({ path, overrides: ['electrical.panel.bus_a=100', 'electrical.panel.main_a=100'] })
  const { failing, fit } = await tryEquipment(small)
  expect(failing.join('\n')).toContain('[wire.')
  expect(await fit(inverter('micro366', micro366, {}))).toMatchObject({ fits: true })
  expect(await fit(module('a', { pmax_w: 541 }))).toMatchObject({ fits: false })
})

test('arrays that are fitted are counted anew for each module', async () => {
  const loaded = loadProject({ path: `${EXAMPLES}fleet/columbus-chimney.yaml` })
  const open = Object.entries(loaded.project.arrays).map(([id, { modules: _, strings: __, ...array }]) => [
    id,
    { ...array, arrangement: 'fit' },
  ])
  const project = { ...loaded.project, arrays: Object.fromEntries(open) as typeof loaded.project.arrays }
  const { fit } = await tryEquipment({ ...loaded, project })
  const [normal, large] = [await fit(module('a', {})), await fit(module('b', { length_in: 90, width_in: 50 }))]
  expect(large.modules ?? 0).toBeGreaterThan(0)
  expect(normal.modules ?? 0).toBeGreaterThan(large.modules ?? 0)
})
