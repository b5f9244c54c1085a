import { describe, expect, test } from 'vitest'
import { takeDcDevices } from '../../src/materials/take-off/take-dc-devices.js'
import { stringLengths } from '../../src/money/house/string-lengths.js'
import type { Project } from '../../src/project/index.js'
import { Worksheet } from '../../src/worksheet/index.js'
import { combinerHouse, need, optimiserHouse, size, stringHouse } from '../electrical/devices-demo.js'

const counted = (project: Project): Record<string, number> => {
  const arrangement = { values: { modules: [], planes: {}, roofCoverageShare: undefined } }
  const job = { project, arrangement: arrangement.values, materials: {}, worksheet: new Worksheet() }
  return Object.fromEntries(
    takeDcDevices(job as never, size(project).values).map(({ item, quantity }) => [item, quantity]),
  )
}

describe('devices on the DC side that are bought', () => {
  test('converters by unit, nothing for plain strings', () => {
    expect(counted(stringHouse())).toEqual({})
    expect(counted(optimiserHouse())).toEqual({ 'optimiser.o450': 12 })
    const pairs = { modules_per_unit: 2, input_max_v: 120, max_input_power_w: 900, min_per_string: 6 }
    expect(counted(optimiserHouse({ optimiser: pairs }))).toEqual({ 'optimiser.o450': 6 })
  })

  test('shutdown units for the modules that they take, rounded up in each string', () => {
    const equipment = { modules_per_unit: 2, transmitters: 2 }
    const project = stringHouse({
      strings: [
        { modules: 11, input: 1 },
        { modules: 12, input: 2 },
      ],
      electrical: { rapid_shutdown: { inside_boundary: 'module_level', equipment } },
    })
    expect(counted(project)).toEqual({ 'shutdown-unit': 12, 'shutdown-transmitter': 2 })
  })

  test('fuses for one pole or both of every string', () => {
    expect(counted(combinerHouse(3))).toEqual({ 'dc-combiner': 1, 'fuse.pv.25a': 6 })
    const one = { poles_fused: 'one', fused_pole: 'positive' } as const
    expect(counted(combinerHouse(3, one))).toEqual({ 'dc-combiner': 1, 'fuse.pv.25a': 3 })
    expect(counted(combinerHouse(2, { poles_fused: 'none' }))).toEqual({ 'dc-combiner': 1 })
  })
})

describe('sizes with converters', () => {
  const lengths = (project: Project) => stringLengths(project, need(project.arrays['south']))

  test('are those that the maker allows, not those of the window of a plain string', () => {
    // 6000 W / 410 W are 14 modules; at least 8 units.
    expect(lengths(optimiserHouse())).toEqual({ leastModules: 8, mostModules: 14 })
    const loose = {
      max_string_power_w: undefined,
      max_per_string: undefined,
      regulated_string_v: undefined,
      output_max_v: 40,
    }
    // 600 V / 40 V.
    expect(lengths(optimiserHouse({ optimiser: loose as never }))?.mostModules).toBe(15)
  })
})
