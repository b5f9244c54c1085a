import { describe, expect, it } from 'vitest'
import { sizeWire } from '../../src/electrical/index.js'
import type { Electrical } from '../../src/project/index.js'
import { context, microProject } from './demo.js'
import { garageTree, treeProject } from './tree-house.js'

type Distribution = NonNullable<Electrical['distribution']>
type Feeder = NonNullable<Distribution['feeders']>[string]
type Tap = NonNullable<Distribution['taps']>[string]

const feeder = garageTree.feeders?.['to_garage'] as Feeder
const marked = { terminal_temperature_c: 75 as const }

describe('what a 120 percent rule asks besides', () => {
  const told = (load?: number) =>
    sizeWire(
      microProject({
        panel: {
          bus_a: 200,
          main_a: 200,
          main_position: 'end',
          spaces_free: 4,
          ...marked,
          ...(load === undefined ? {} : { load_a: load }),
        },
      }),
      context(),
    ).findings.map(({ id }) => id)

  it('a busbar for its loads: told when it was not checked, failing when it is too small', () => {
    expect(told()).toContain('wire.busbar-load-unknown')
    expect(told(120)).not.toContain('wire.busbar-load-unknown')
    expect(told(120)).not.toContain('wire.load-above-busbar')
    expect(told(201)).toContain('wire.load-above-busbar')
  })
})

describe('sizes that are chosen', () => {
  const { size_awg: _, ...unsized } = feeder
  const tapped = (change: Partial<Tap>, edition = 'NEC 2020') =>
    sizeWire(
      treeProject(
        {
          panels: {
            main: { bus_a: 200, main_a: 200, main_position: 'end', ...marked },
            garage: { bus_a: 200, ...marked },
          },
          feeders: { to_garage: { ...unsized, breaker_a: 100, ambient_c: 30 } },
          taps: {
            array: {
              feeder: 'to_garage',
              material: 'copper',
              insulation: 'THWN-2',
              ambient_c: 30,
              length_ft: 15,
              method: 'EMT',
              ...change,
            },
          },
        },
        {
          service: { rating_a: 200, conductor_ampacity_a: 200 },
          connection: { kind: 'feeder_tap', at: 'array' },
        },
      ),
      { ...context(30), edition },
    ).values

  it('the feeder beyond a source along it carries device and sources together', () => {
    // 100 + 1.25 x 30 = 137.5 A: 1/0 copper, 150 A at 75 deg C.
    const { conductors, distribution } = tapped({})
    expect(conductors.find(({ tag }) => tag === 'F1')?.size_awg).toBe('1/0')
    expect(distribution.find(({ id }) => id === 'to_garage')?.complies).toBe(true)
    // At its far end it needs the device alone: 3 AWG, 100 A.
    expect(tapped({ position: 'far_end' }).conductors.find(({ tag }) => tag === 'F1')?.size_awg).toBe('3')
  })

  it('a tap of 25 ft has a third of device and sources, one of 10 ft a tenth and its own device', () => {
    // (100 + 37.5) / 3 = 45.8 A: 8 AWG, 50 A; a 40 A device within 10 ft: 8 AWG too, 50 A; 60 A of load: 6 AWG.
    const long = tapped({}).conductors.find(({ tag }) => tag === 'T1')
    expect(long?.size_awg).toBe('8')
    expect(long?.required_a).toBeCloseTo(137.5 / 3, 9)
    expect(tapped({ length_ft: 8 }).conductors.find(({ tag }) => tag === 'T1')).toMatchObject({ required_a: 40 })
    expect(tapped({ load_a: 60 }).conductors.find(({ tag }) => tag === 'T1')?.size_awg).toBe('6')
    expect(tapped({}).distribution.find(({ id }) => id === 'array')?.complies).toBe(true)
  })
})

describe('the list of conductors', () => {
  const { conductors } = sizeWire(treeProject(), context()).values

  it('has every tag once, and the ground of each circuit', () => {
    const tags = conductors.map(({ tag }) => tag)
    expect(new Set(tags).size).toBe(tags.length)
    expect(tags).toEqual(expect.arrayContaining(['1a', '1b', '2a', '2b', 'F1', 'S1', 'G1']))
    expect(conductors.find(({ tag }) => tag === '2a')?.grounding_awg).toBe('12')
    expect(conductors.find(({ tag }) => tag === 'F1')).toMatchObject({
      from: 'main',
      to: 'garage',
      required_a: 37.5,
      ocpd_a: 60,
      grounding_awg: '10',
    })
  })

  it('goes from box to box without a gap', () => {
    const way = conductors.filter(({ circuits }) => circuits.includes('south_1'))
    for (const [i, { to }] of way.slice(0, -1).entries()) expect(way[i + 1]?.from).toBe(to)
    expect(way.at(-1)?.to).toBe('combiner')
  })
})
