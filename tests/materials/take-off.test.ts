import { describe, expect, test } from 'vitest'
import { priceBom, type BomValues } from '../../src/materials/index.js'
import { sizeWire } from '../../src/electrical/index.js'
import type { Project } from '../../src/project/index.js'
import { arrangeModules } from '../../src/roof/index.js'
import { context, microProject, stringProject } from '../electrical/demo.js'
import { billOf, house, inputOf, lineOf } from './demo.js'

/** Sum of the quantities of all items whose id begins so. */
const sumOf = (values: BomValues, start: string): number =>
  values.lines.filter((line) => line.item.startsWith(start)).reduce((sum, line) => sum + line.quantity, 0)

const rowOf = (columns: number) => billOf(house(columns)).values

describe('quantities of one row of six modules, counted by hand', () => {
  const { values } = billOf(house(6))
  const quantity = (item: string): number => lineOf(values, item).quantity

  test.each([
    ['module.m410', 6],
    ['inverter.micro', 6],
    ['inverter-fastener', 6],
    // 6 x 4 ft from the fed end, a drop every 4 ft.
    ['trunk.trunk12', 6],
    ['trunk-end-cap.trunk12', 1],
    // Two rails with five gaps and two ends each.
    ['clamp.mid.1.38in', 10],
    ['clamp.end.1.38in', 4],
    ['ground-lug.6', 2],
    // Two leads for each of six modules.
    ['cable-clip', 12],
    // 20 ft on the roof are two sticks; 15 ft inside are one and a half, and no half is left over.
    ['raceway.emt.1/2', 4],
    ['raceway.pvc-40.1/2', 2],
    // EMT within 3 ft of each end and every 10 ft: 20 ft take 3, 15 ft take 2 (NEC 358.30).
    ['strap.emt.1/2', 5],
    // PVC of 1/2 in every 3 ft: at 3, 6 and 9 of 12 ft (NEC 352.30).
    ['strap.pvc-40.1/2', 3],
    ['coupling.emt.1/2', 2],
    ['coupling.pvc-40.1/2', 1],
    ['connector.emt.1/2', 4],
    ['bonding-bushing', 1],
    ['box.array', 1],
    ['box.pull', 1],
    ['cord-grip', 1],
    // The branch and the combined output both carry 7.5 A x 1.25.
    ['breaker.2p.15a', 2],
    ['combiner.125a', 1],
    ['disconnect.pv_system.60a', 1],
    ['label.DIRECTORY', 2],
  ])('%s: %i', (item, expected) => {
    expect(quantity(item)).toBe(expected)
  })

  test('wire is length and slack at both ends of every segment, by colour', () => {
    // Way down of 20 and 12 ft, and 15 ft to the panel, each with 2 ft at both ends.
    expect(quantity('wire.thwn-2.14.copper.black')).toBe(24 + 16 + 19)
    expect(quantity('wire.thwn-2.14.copper.red')).toBe(24 + 16 + 19)
    expect(quantity('wire.thwn-2.14.copper.green')).toBe(24 + 16 + 19)
    // Only the output brings a neutral.
    expect(quantity('wire.thwn-2.14.copper.white')).toBe(19)
  })

  test('mounts, screws and rails are those of the mounts stage', () => {
    const { mounts } = inputOf(house(6))
    expect(quantity('mount.foot')).toBe(mounts?.values.mounts.length)
    expect(quantity('flashing.foot')).toBe(mounts?.values.mounts.length)
    expect(quantity('lag.5/16x5')).toBe(mounts?.values.counts.lag_screws)
    expect(quantity('splice.rail40')).toBe(mounts?.values.counts.splices)
    const cut = values.cut_list
      .filter((stick) => stick.item.startsWith('rail.'))
      .flatMap((stick) => stick.cuts.map((piece) => piece.length_in))
    const asked = mounts?.values.rails.flatMap((rail) => rail.pieces_in) ?? []
    expect(cut.toSorted((a, b) => a - b)).toEqual(asked.toSorted((a, b) => a - b))
    expect(sumOf(values, 'rail.')).toBe(values.cut_list.filter((stick) => stick.item.startsWith('rail.')).length)
  })

  test('every line says which result its quantity comes from', () => {
    for (const line of values.lines)
      expect(line.why).toMatch(/\((roof|mounts|wire): values\.|\(electrical\.|\(labels of the permit packet\)/)
  })

  test('every quantity stands on the worksheet with its parts', () => {
    const { worksheet } = billOf(house(6))
    const step = worksheet.find((each) => each.id === 'materials.wire.thwn-2.14.copper.black.ft')
    expect(step?.inputs.map((input) => input.value)).toEqual([24, 16, 19])
    expect(step?.result.value).toBe(59)
  })

  test('no number is left undefined', () => {
    expect(JSON.stringify(values)).not.toMatch(/NaN|undefined|Infinity/)
  })
})

describe('what the project can say', () => {
  test('a gap too wide for a mid clamp takes two end clamps', () => {
    const project = house(6)
    const { arrangement } = project.arrays['south'] ?? {}
    if (typeof arrangement !== 'object' || !('blocks' in arrangement)) throw new Error('no blocks')
    const main = arrangement.blocks['main']
    if (main === undefined) throw new Error('no block')
    arrangement.blocks['main'] = { ...main, gap_in: 3 }
    const { values } = billOf(project)
    expect(values.lines.some((line) => line.item.startsWith('clamp.mid'))).toBe(false)
    expect(lineOf(values, 'clamp.end.1.38in').quantity).toBe(2 * (2 + 2 * 5))
  })

  test('spares are added and rounded up; rails stay with their cut list', () => {
    const { values } = billOf(house(6, 1, { spares_pct: { racking: 5 } }))
    expect(lineOf(values, 'clamp.mid.1.38in').quantity).toBe(11)
    expect(lineOf(values, 'clamp.end.1.38in').quantity).toBe(5)
    expect(lineOf(values, 'rail.rail40.168in').quantity).toBe(
      lineOf(billOf(house(6)).values, 'rail.rail40.168in').quantity,
    )
    expect(lineOf(values, 'clamp.mid.1.38in').why).toContain('5 % spares')
  })

  test('slack, sealant and clips follow the project', () => {
    const { values, assumptions } = billOf(
      house(6, 1, { wire_slack_ft: 3, mounts_per_sealant_tube: 4, cable_clips_per_module: 4 }),
    )
    expect(lineOf(values, 'wire.thwn-2.14.copper.white').quantity).toBe(15 + 6)
    expect(lineOf(values, 'sealant').quantity).toBe(Math.ceil(lineOf(values, 'mount.foot').quantity / 4))
    expect(lineOf(values, 'cable-clip').quantity).toBe(24)
    expect(assumptions.map((each) => each.path)).not.toContain('materials.wire_slack_ft')
    expect(assumptions.map((each) => each.path)).toContain('materials.kerf_in')
  })

  test('extra items and tools that are not owned are bought; rented tools are not', () => {
    const { values, findings } = billOf(
      house(6, 1, {
        extra_items: { snow_guard: { quantity: 4, why: 'over the door' } },
        tools_owned: ['drill', 'hammer'],
        rentals: { ladder: { name: 'Ladder', usd: 60 } },
      }),
    )
    expect(lineOf(values, 'snow_guard')).toMatchObject({ quantity: 4, group: 'extra' })
    const tools = values.lines.filter((line) => line.group === 'tools').map((line) => line.item)
    expect(tools).toContain('tool.emt-bender')
    expect(tools).toContain('tool.pvc-heater')
    expect(tools).not.toContain('tool.drill')
    expect(tools).not.toContain('tool.ladder')
    // Nothing here has strings.
    expect(tools).not.toContain('tool.connector-crimper')
    expect(findings.find((finding) => finding.id === 'materials.unknown-tool')?.message).toContain('hammer')
  })

  test('without a list of tools none is counted, and a note says so', () => {
    const { values, findings } = billOf(house(6))
    expect(values.lines.filter((line) => line.group === 'tools')).toEqual([])
    expect(findings.some((finding) => finding.id === 'materials.tools-not-counted')).toBe(true)
  })
})

describe('other ways to connect', () => {
  const bill = (project: Project) =>
    priceBom({ project, arrangement: arrangeModules(project), wire: sizeWire(project, context()), labels: [] }).values
  const items = (values: BomValues) => Object.fromEntries(values.lines.map((line) => [line.item, line.quantity]))

  test('strings: connectors and strain reliefs for each, wire red and black, no trunk', () => {
    const found = items(
      bill(
        stringProject({}, [
          { modules: 10, input: 1 },
          { modules: 9, input: 2 },
        ]),
      ),
    )
    expect(found).toMatchObject({
      'module.m410': 19,
      'inverter.s5000': 1,
      'dc-connector-pair': 2,
      'cord-grip': 2,
    })
    // Exposed in the array 25 ft with 2 ft at both ends, for each string; the size is the wiring's.
    for (const colour of ['red', 'black'])
      expect(
        Object.entries(found).find(([item]) => item.startsWith('wire.pv-wire.') && item.endsWith(colour))?.[1],
      ).toBe(58)
    expect(Object.keys(found).filter((item) => item.startsWith('trunk') || item === 'inverter-fastener')).toEqual([])
  })

  test('a trunk fed in its centre has two ends and two ways into the box', () => {
    const found = items(bill(microProject({ branches: { b1: { modules: { south: 10 }, feed: 'centre' } } }, 10)))
    expect(found).toMatchObject({ 'trunk.trunk12': 10, 'trunk-end-cap.trunk12': 2, 'cord-grip': 2 })
    expect(found['trunk-drop-cap.trunk12']).toBeUndefined()
  })

  test('drops of a longer trunk that carry no inverter are capped', () => {
    const branches = { b1: { modules: { south: 10 }, feed: 'end' as const, trunk_length_ft: 50 } }
    // 50 ft with a drop every 4 ft.
    expect(items(bill(microProject({ branches }, 10)))).toMatchObject({
      'trunk.trunk12': 13,
      'trunk-drop-cap.trunk12': 3,
    })
  })

  const supplySide = (fused: boolean) =>
    microProject({
      connection: { kind: 'supply_side', overcurrent_device_distance_ft: 8 },
      disconnects: { pv: { kind: 'pv_system', rating_a: 60, fused, service_rated: true } },
    })

  test('supply side: taps, and fuses of the rating that the wiring asks for', () => {
    const found = items(bill(supplySide(true)))
    // 24 inverters of 1.25 A, times 1.25 is 37.5 A.
    expect(found).toMatchObject({ 'tap-connector': 3, 'disconnect.pv_system.60a.fused': 1, 'fuse.40a': 2 })
    expect(found['service-overcurrent.40a']).toBeUndefined()
    expect(items(bill(supplySide(false)))).toMatchObject({ 'tap-connector': 3, 'service-overcurrent.40a': 1 })
  })

  test('supply side: wire and raceway from the taps to the device', () => {
    const of = (lengthFt: number) => {
      const project = supplySide(true)
      const connection = { kind: 'supply_side', overcurrent_device_distance_ft: lengthFt } as const
      return items(bill({ ...project, electrical: { ...project.electrical, connection } }))
    }
    const [near, far] = [of(4), of(9)]
    // 6 AWG is used nowhere else in this house: two lines and a neutral, 5 ft longer each.
    for (const colour of ['black', 'red', 'white']) {
      const item = `wire.thwn-2.6.copper.${colour}`
      expect((far[item] ?? 0) - (near[item] ?? 0), item).toBeCloseTo(5, 9)
    }
    expect(near['wire.thwn-2.6.copper.green']).toBeUndefined()
  })

  test('an extra item with an id of the bill adds to its quantity', () => {
    const project = {
      ...microProject(),
      materials: { extra_items: { 'cord-grip': { quantity: 3, why: 'spare holes' } } },
    }
    expect(items(bill(project))['cord-grip']).toBe((items(bill(microProject()))['cord-grip'] ?? 0) + 3)
  })
})

describe('when modules are added at the end of a row', () => {
  const counts = [1, 2, 3, 4, 5, 6, 7, 8, 9]
  const bills = counts.map(rowOf)

  test.each([
    'module.',
    'inverter',
    'trunk.',
    'trunk-end-cap',
    'clamp.',
    'clamp.mid',
    'clamp.end',
    'mount.',
    'flashing.',
    'lag.',
    'sealant',
    'rail-bolt',
    'splice.',
    'ground-lug',
    'cable-clip',
    'wire.',
    'raceway.',
    'strap.',
    'connector.',
    'coupling.',
    'breaker.',
    'label.',
  ])('%s never falls', (start) => {
    const sums = bills.map((bill) => sumOf(bill, start))
    expect(sums).toEqual(sums.toSorted((a, b) => a - b))
  })

  test('the stock that rails are cut from never shrinks', () => {
    const stock = bills.map((bill) =>
      bill.cut_summaries.filter((cut) => cut.material.startsWith('rail.')).reduce((sum, cut) => sum + cut.stock_in, 0),
    )
    expect(stock).toEqual(stock.toSorted((a, b) => a - b))
    expect(new Set(stock).size).toBeGreaterThan(4)
  })
})

describe('parts that are missing', () => {
  test('make the bill a lower bound that says so', () => {
    const input = inputOf(house(6))
    const { values, findings } = priceBom({ project: input.project, arrangement: input.arrangement })
    expect(values.complete).toBe(false)
    expect(values.totals.gross_usd).toBeNull()
    expect(values.lines.map((line) => line.item)).toEqual([
      'module.m410',
      'inverter.micro',
      'inverter-fastener',
      'cable-clip',
    ])
    const missing = findings.filter((finding) => finding.id === 'materials.part-missing')
    expect(missing.map((finding) => finding.where)).toEqual(['structure', 'electrical'])
  })

  test('labels that were not handed over are missed', () => {
    const { labels: _, ...input } = inputOf(house(6))
    expect(priceBom(input).values.complete).toBe(false)
  })

  test('mounts of another layout are refused', () => {
    const other = inputOf(house(3, 2))
    const input = inputOf(house(3))
    expect(() => priceBom({ ...input, mounts: other.mounts })).toThrow(/carries no module/)
  })
})
