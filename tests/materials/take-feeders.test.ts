import { describe, expect, test } from 'vitest'
import { sizeWire } from '../../src/electrical/index.js'
import { priceBom } from '../../src/materials/index.js'
import type { DistributionFeeder, Electrical, Project } from '../../src/project/index.js'
import { context } from '../electrical/demo.js'
import { house, inputOf } from './demo.js'

const FEEDER: DistributionFeeder = {
  from: 'main',
  to: 'garage',
  breaker_a: 60,
  breaker_position: 'opposite_end',
  material: 'copper',
  size_awg: '4',
  insulation: 'THWN-2',
  method: 'EMT',
  length_ft: 45,
}

const { size_awg: _, ...NEW_FEEDER } = FEEDER

function treeHouse(feeder: DistributionFeeder, change: Partial<Electrical> = {}): Project {
  const base = house()
  const { panel: __, ...electrical } = base.electrical ?? {}
  return {
    ...base,
    electrical: {
      ...electrical,
      connection: { kind: 'load_side_breaker', at: 'garage', breaker_position: 'opposite_end' },
      distribution: {
        panels: {
          main: { name: 'Main panel', bus_a: 200, main_a: 200, spaces_free: 4 },
          garage: { name: 'Garage panel', bus_a: 125, spaces_free: 4 },
        },
        feeders: { to_garage: feeder },
      },
      ...change,
    },
  }
}

const billOf = (project: Project) => priceBom(inputOf(project))
const lines = (project: Project) => billOf(project).values.lines
const why = (project: Project, item: string): string =>
  lines(project)
    .filter((line) => line.item === item)
    .map((line) => JSON.stringify(line))
    .join()

describe('feeders', () => {
  test('one with a stated size is there already and is not bought', () => {
    const project = treeHouse(FEEDER)
    expect(lines(project).filter((line) => JSON.stringify(line).includes('to_garage'))).toEqual([])
    expect(why(project, 'breaker.2p.60a')).toBe('')
    expect(billOf(project).findings.map(({ id }) => id)).not.toContain('materials.feeder-raceway')
  })

  test('one without a size is new: breaker, two lines, neutral and ground are bought', () => {
    const project = treeHouse(NEW_FEEDER)
    expect(why(project, 'breaker.2p.60a')).toContain('feeder to_garage, which is new')
    const wiring = sizeWire(project, context()).values
    const row = wiring.conductors.find(({ tag }) => tag === 'F1')
    const bought = lines(project).filter((line) => JSON.stringify(line).includes('feeder to_garage'))
    const wires = bought.filter(({ item }) => item.startsWith('wire.'))
    expect(wires.map(({ item }) => item).toSorted()).toEqual(
      [
        `wire.thwn-2.${row?.size_awg}.copper.black`,
        `wire.thwn-2.${row?.size_awg}.copper.red`,
        `wire.thwn-2.${row?.size_awg}.copper.white`,
        `wire.thwn-2.${row?.grounding_awg}.copper.green`,
      ].toSorted(),
    )
    for (const wire of wires) expect(JSON.stringify(wire)).toContain('1 x (45 + 2 x ')
    const raceway = billOf(project).findings.find(({ id }) => id === 'materials.feeder-raceway')
    expect(raceway?.where).toBe('electrical.distribution.feeders.to_garage')
  })

  test('without an insulation nothing is guessed, and it is said', () => {
    const { insulation: __, ...bare } = NEW_FEEDER
    const project = treeHouse(bare)
    expect(billOf(project).findings.map(({ id }) => id)).toContain('materials.feeder-insulation')
    expect(
      lines(project).filter((line) => line.item.startsWith('wire.') && JSON.stringify(line).includes('to_garage')),
    ).toEqual([])
  })
})

describe('where the PV system lands', () => {
  test('its breaker is bought for the panel that takes it', () => {
    const [output] = sizeWire(treeHouse(FEEDER), context()).values.circuits.filter(({ id }) => id === 'output')
    expect(why(treeHouse(FEEDER), `breaker.2p.${output?.breaker_a}a`)).toContain('in Garage panel for circuit output')
  })

  test('the tap that takes it is bought with its connectors, though its size is stated', () => {
    const base = treeHouse(FEEDER)
    const { distribution } = base.electrical ?? {}
    if (distribution === undefined) throw new Error('no tree')
    const tap = { feeder: 'to_garage', material: 'copper', size_awg: '6', insulation: 'THWN-2', length_ft: 8 } as const
    const project = treeHouse(FEEDER, {
      connection: { kind: 'feeder_tap', at: 'pv_tap' },
      distribution: { ...distribution, taps: { pv_tap: tap, other: { ...tap, load_a: 20, end_device_a: 30 } } },
    })
    expect(why(project, 'tap-connector')).toContain('tap pv_tap')
    expect(why(project, 'wire.thwn-2.6.copper.black')).toContain('tap pv_tap')
    expect(lines(project).filter((line) => JSON.stringify(line).includes('tap other'))).toEqual([])
    const [output] = sizeWire(project, context()).values.circuits.filter(({ id }) => id === 'output')
    expect(why(project, `breaker.2p.${output?.breaker_a}a`)).toContain('at the end of tap pv_tap')
  })

  test('fuses of the disconnect at the end of a tap stand in place of a breaker', () => {
    const base = treeHouse(FEEDER)
    const { distribution } = base.electrical ?? {}
    if (distribution === undefined) throw new Error('no tree')
    const project = treeHouse(FEEDER, {
      connection: { kind: 'feeder_tap', at: 'pv_tap' },
      distribution: {
        ...distribution,
        taps: { pv_tap: { feeder: 'to_garage', material: 'copper', insulation: 'THWN-2', length_ft: 8 } },
      },
      disconnects: { pv: { kind: 'pv_system', rating_a: 60, fused: true } },
    })
    const [output] = sizeWire(project, context()).values.circuits.filter(({ id }) => id === 'output')
    expect(why(project, `fuse.${output?.breaker_a}a`)).toContain('2 poles of disconnect pv')
    expect(why(project, `breaker.2p.${output?.breaker_a}a`)).not.toContain('circuit output')
  })
})
