import { describe, expect, it } from 'vitest'
import { sizeWire } from '../../src/electrical/index.js'
import type { Electrical } from '../../src/project/index.js'
import { editions } from '../../src/tables/nec/index.js'
import { context, microProject } from './demo.js'

const found = (change: Partial<Electrical>, edition = 'NEC 2020') =>
  sizeWire(microProject(change), { ...context(), edition })
const panel = { bus_a: 200, main_a: 200, spaces_free: 4, terminal_temperature_c: 75 } as const
const opposite = { kind: 'load_side_breaker', breaker_position: 'opposite_end' } as const

describe('ratings of breakers and fuses', () => {
  // NEC 240.6(A).
  it.each<[string, Partial<Electrical>, string, string]>([
    ['main', { panel: { ...panel, main_a: 185 } }, 'electrical.panel.main_a', '175 A and 200 A'],
    ['load breaker', { panel: { ...panel, breakers_a: [20, 17] } }, 'electrical.panel.breakers_a[1]', '15 A and 20 A'],
    [
      'device of the connection',
      { connection: { ...opposite, breaker_a: 42 } },
      'electrical.connection.breaker_a',
      '40 A and 45 A',
    ],
    [
      'branch breaker',
      { branches: { a: { modules: { south: 12 }, breaker_a: 22 }, b: { modules: { south: 12 } } } },
      'electrical.branches.a.breaker_a',
      '20 A and 25 A',
    ],
    [
      'breaker in the combiner',
      { combiner: { bus_a: 125, spaces_total: 8, other_breakers_a: [12] } },
      'electrical.combiner.other_breakers_a[0]',
      'the smallest is 15 A',
    ],
    [
      'device in feed-through conductors',
      { panel: { ...panel, feed_through: { conductor_ampacity_a: 200, overcurrent_device_a: 130 } } },
      'electrical.panel.feed_through.overcurrent_device_a',
      '125 A and 150 A',
    ],
    [
      'fused disconnect',
      { disconnects: { pv: { kind: 'pv_system', rating_a: 65, fused: true, lockable: true } } },
      'electrical.disconnects.pv.rating_a',
      '60 A and 70 A',
    ],
    [
      'breaker in an enclosure',
      { disconnects: { pv: { kind: 'pv_system', rating_a: 59, breaker: true, lockable: true } } },
      'electrical.disconnects.pv.rating_a',
      '50 A and 60 A',
    ],
  ])('%s: one that is not made is refused with its neighbours', (_, change, where, neighbours) => {
    const findings = found(change).findings.filter(({ id }) => id === 'wire.rating-not-standard')
    expect(findings).toEqual([expect.objectContaining({ severity: 'error', where })])
    expect(findings[0]?.message).toContain(neighbours)
  })

  it('standard ratings pass, those above 600 A too, and a switch without fuses is none', () => {
    const change: Partial<Electrical> = {
      panel: { ...panel, bus_a: 1200, main_a: 800, breakers_a: [15, 20, 110, 225] },
      disconnects: { pv: { kind: 'pv_system', rating_a: 65, lockable: true } },
    }
    expect(found(change).findings.map(({ id }) => id)).not.toContain('wire.rating-not-standard')
  })

  it('a breaker of 10 A is standard since 2023', () => {
    const ids = (edition: string) =>
      found({ panel: { ...panel, breakers_a: [10] } }, edition).findings.map(({ id }) => id)
    expect(ids('NEC 2020')).toContain('wire.rating-not-standard')
    expect(ids('NEC 2023')).not.toContain('wire.rating-not-standard')
  })
})

it('a device of the connection that several circuits have no use for is told', () => {
  const { combiner: _, runs: __, ...electrical } = microProject().electrical ?? {}
  const project = microProject()
  const branches = {
    home: { carries: ['branches'], segments: { wall: { location: 'indoors', length_ft: 9, raceway: 'EMT' } } },
  }
  const result = sizeWire(
    {
      ...project,
      electrical: { ...electrical, connection: { ...opposite, breaker_a: 40 }, runs: branches } as Electrical,
    },
    context(),
  )
  expect(result.findings.map(({ id }) => id)).toContain('wire.connection-breaker-unused')
  expect(found({ connection: { ...opposite, breaker_a: 40 } }).findings.map(({ id }) => id)).not.toContain(
    'wire.connection-breaker-unused',
  )
})

describe('main above its busbar', () => {
  // NEC 408.36, all editions.
  it.each(editions)('%s: no rule holds', (edition) => {
    for (const connection of [opposite, { kind: 'load_side_breaker', breaker_position: 'other' } as const]) {
      const result = found({ connection, panel: { ...panel, bus_a: 200, main_a: 225, breakers_a: [20] } }, edition)
      expect(result.findings).toContainEqual(
        expect.objectContaining({
          severity: 'error',
          id: 'wire.main-above-busbar',
          where: 'electrical.panel.main_a',
        }),
      )
      expect(result.values.panel).toMatchObject({ complies: false, max_inverter_a: 0 })
    }
  })

  it('also where the PV system joins ahead of it', () => {
    const result = found({
      connection: { kind: 'supply_side', overcurrent_device_distance_ft: 5 },
      panel: { ...panel, main_a: 225 },
    })
    expect(result.findings.map(({ id }) => id)).toContain('wire.main-above-busbar')
  })

  it('and in the combiner panel; equal ratings pass', () => {
    const ids = (busA: number) =>
      found({ combiner: { bus_a: busA, spaces_total: 8, terminal_temperature_c: 75 } }).findings.map(({ id }) => id)
    expect(ids(35)).toContain('wire.main-above-busbar')
    expect(ids(40)).not.toContain('wire.main-above-busbar')
    expect(found({}).findings.map(({ id }) => id)).not.toContain('wire.main-above-busbar')
  })
})
