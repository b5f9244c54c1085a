import { describe, expect, it } from 'vitest'
import { sizeWire } from '../../src/electrical/index.js'
import type { Electrical } from '../../src/project/index.js'
import { context, microProject } from './demo.js'
import { garageTree, treeProject } from './tree-house.js'

type Service = NonNullable<Electrical['service']>
type Size = NonNullable<Service['conductor_size']>
type Feeder = NonNullable<NonNullable<Electrical['distribution']>['feeders']>[string]

const wires: Service = {
  rating_a: 200,
  conductor_size: '4/0',
  conductor_material: 'aluminum',
  conductor_insulation: 'XHHW-2',
}
const of = (service: Service, change: Partial<Electrical> = {}) =>
  sizeWire(microProject({ service, ...change }), context(30))
const ids = (...args: Parameters<typeof of>): string[] => of(...args).findings.map(({ id }) => id)
const rule = (service: Service, name: string) =>
  of(service).values.distribution[0]?.rules.find((each) => each.rule === name)

describe('service', () => {
  // NEC Table 310.12(A): 4/0 aluminum or 2/0 copper for a dwelling service of 200 A.
  it('has conductors for 83 percent of its rating', () => {
    expect(rule(wires, 'service conductors')).toMatchObject({ holds: true, sum_a: 166, limit_a: 180 })
    expect(ids({ ...wires, conductor_size: '3/0' })).toContain('wire.service-conductors')
    expect(ids({ ...wires, conductor_size: '2/0', conductor_material: 'copper' })).not.toContain(
      'wire.service-conductors',
    )
    expect(ids({ ...wires, conductor_size: '1/0', conductor_material: 'copper' })).toContain('wire.service-conductors')
  })

  it('is at least 100 A in a one-family dwelling', () => {
    expect(ids({ rating_a: 60 })).toContain('wire.service-small')
    expect(ids({ rating_a: 100 })).not.toContain('wire.service-small')
  })

  it('carries its calculated load', () => {
    const load_calculation = {
      method: 'optional_new' as const,
      floor_area_ft2: 6000,
      small_appliance_circuits: 2,
      laundry_circuits: 1,
      appliances: { range: { kind: 'range' as const, rating_va: 30000 } },
      cooling: { ac: { rating_va: 6000 } },
    }
    const load = (rating: number) =>
      of({ rating_a: rating }, { load_calculation }).values.distribution[0]?.rules.find(
        (each) => each.rule === 'load within service',
      )
    // 18,000 + 4,500 + 30,000 = 52,500: 10,000 + 0.4 x 42,500 = 27,000, and 6,000: 33,000 VA, 137.5 A.
    expect(load(125)).toMatchObject({ holds: false, sum_a: 137.5, limit_a: 125 })
    expect(load(150)?.holds).toBe(true)
  })

  it('has a meter socket that is not below it, and a collar adapter for its source devices', () => {
    expect(ids({ ...wires, meter: { rating_a: 150 } })).toContain('wire.meter-socket-small')
    expect(ids({ ...wires, meter: { rating_a: 200 } })).not.toContain('wire.meter-socket-small')
    const adapter = (rating: number): Service => ({
      ...wires,
      meter: { kind: 'collar_adapter', adapter_rating_a: rating, acceptance_document: 'letter' },
    })
    const supply = { connection: { kind: 'supply_side' as const, overcurrent_device_distance_ft: 5 } }
    expect(ids(adapter(30), supply)).toContain('wire.meter-adapter-rating')
    expect(ids(adapter(40), supply)).not.toContain('wire.meter-adapter-rating')
    expect(ids(adapter(40))).toContain('wire.meter-adapter-unused')
  })
})

describe('service conductors whose insulation is not stated', () => {
  it('stand in the list with their size, are not judged, and that is said', () => {
    const { values, findings } = of({ rating_a: 200, conductor_size: '4/0', conductor_material: 'aluminum' })
    expect(values.conductors.find(({ tag }) => tag === 'S1')).toMatchObject({
      size_awg: '4/0',
      ampacity_a: null,
      ocpd_size_ok: null,
    })
    expect(values.distribution[0]?.rules.map(({ rule: name }) => name)).toEqual(['least service'])
    expect(findings.map(({ id }) => id)).toContain('wire.service-unknown')
  })
})

describe('an ampacity that is stated beside the size of the service conductors', () => {
  const limit = (stated: number) => rule({ ...wires, conductor_ampacity_a: stated }, 'service conductors')?.limit_a

  it('counts no further than the conductors carry', () => {
    expect(limit(400)).toBe(180)
    expect(limit(150)).toBe(150)
    expect(ids({ ...wires, conductor_ampacity_a: 400 })).toContain('wire.service-ampacity')
    expect(ids({ ...wires, conductor_ampacity_a: 180 })).not.toContain('wire.service-ampacity')
    expect(ids({ ...wires, conductor_size: '1/0', conductor_ampacity_a: 400 })).toContain('wire.service-conductors')
  })
})

describe('grounding of the service', () => {
  const electrode = (size: Size, electrodes?: ('rod' | 'concrete_encased' | 'water_pipe')[]) =>
    of({
      rating_a: 400,
      conductor_size: size,
      conductor_material: 'copper',
      conductor_insulation: 'THWN-2',
      bonding: electrodes === undefined ? {} : { electrodes },
    }).values.conductors.find(({ method }) => method === 'electrode conductor')?.size_awg

  // NEC Table 250.66: 2/0 and 3/0 copper 4 AWG, over 350 to 600 kcmil 1/0; (A) 6 AWG to a rod, (B) 4 AWG to a concrete-encased electrode.
  it('follows the service conductors, with the limit of each electrode', () => {
    expect(electrode('2/0')).toBe('4')
    expect(electrode('400 kcmil')).toBe('1/0')
    expect(electrode('400 kcmil', ['rod'])).toBe('6')
    expect(electrode('400 kcmil', ['concrete_encased'])).toBe('4')
    expect(electrode('400 kcmil', ['rod', 'concrete_encased'])).toBe('4')
    expect(electrode('400 kcmil', ['rod', 'water_pipe'])).toBe('1/0')
  })

  it('fails with a smaller conductor, and passes with that size or a larger one', () => {
    const told = (size: Size) =>
      ids({ ...wires, bonding: { electrodes: ['water_pipe'], electrode_conductor_awg: size } })
    expect(told('6')).toContain('wire.electrode-conductor-small')
    expect(told('2')).not.toContain('wire.electrode-conductor-small')
    expect(told('4')).not.toContain('wire.electrode-conductor-small')
  })
})

describe('fault current', () => {
  const panels = (rating: number, available: number) =>
    sizeWire(
      treeProject(
        {
          ...garageTree,
          panels: {
            main: { ...garageTree.panels['main'], bus_a: 100, interrupting_rating_a: 22000 },
            garage: { ...garageTree.panels['garage'], bus_a: 125, interrupting_rating_a: rating },
          },
        },
        { service: { rating_a: 100, available_fault_current_a: available } },
      ),
      context(),
    ).findings.filter(({ id }) => id === 'wire.interrupting-rating')

  it('is less at a panel behind a feeder', () => {
    // 6 AWG copper, C = 2429 (published 2430) over 40 ft: 20,000 A to the neutral become 3,082 A, and 5,340 A from line to line.
    expect(panels(10000, 20000)).toEqual([])
    expect(panels(5000, 20000)[0]?.message).toMatch(/5,?3\d\d A can flow/u)
  })

  it('is interrupted by the device ahead of the service', () => {
    const supply = (rating?: number) =>
      ids(
        { ...wires, available_fault_current_a: 12000 },
        {
          connection: { kind: 'supply_side', overcurrent_device_distance_ft: 5 },
          disconnects: {
            pv: {
              kind: 'pv_system',
              rating_a: 60,
              fused: true,
              service_rated: true,
              ...(rating === undefined ? {} : { interrupting_rating_a: rating }),
            },
          },
        },
      ).filter((id) => id.startsWith('wire.supply-side-interrupting'))
    expect(supply()).toEqual(['wire.supply-side-interrupting-unknown'])
    expect(supply(10000)).toEqual(['wire.supply-side-interrupting'])
    expect(supply(12000)).toEqual([])
  })
})

describe('conductors of a feeder', () => {
  const plain = garageTree.feeders?.['to_garage'] as Feeder
  const row = (change: Partial<Feeder>, markedC: 60 | 75 = 75) => {
    const panels = {
      main: { ...garageTree.panels['main'], bus_a: 100, terminal_temperature_c: 75 as const },
      garage: { ...garageTree.panels['garage'], bus_a: 125, terminal_temperature_c: markedC },
    }
    const project = treeProject({
      ...garageTree,
      panels,
      feeders: { to_garage: { ...plain, ambient_c: 30, ...change } },
    })
    return sizeWire(project, context(30)).values.conductors.find(({ tag }) => tag === 'F1')
  }

  // NEC Table 310.16, copper: 6 AWG 55, 65, 75 A; 2 AWG 95, 115, 130 A; 1/0 125, 150, 170 A.
  it.each([
    ['90 deg C, held to terminals of 75', { size_awg: '2', insulation: 'THWN-2' }, 115],
    ['THHN as where it may get wet', { size_awg: '2', insulation: 'THHN', ambient_c: 45 }, 115 * 0.82],
    ['THWN', { size_awg: '2', insulation: 'THWN', ambient_c: 45 }, 115 * 0.82],
    ['TW', { size_awg: '2', insulation: 'TW' }, 95],
    ['NM cable by the 60 deg C column', { size_awg: '6', insulation: 'THWN-2', method: 'NM' }, 55],
    ['UF cable by the 60 deg C column', { size_awg: '6', insulation: 'THWN-2', method: 'UF' }, 55],
    ['two sets', { size_awg: '1/0', insulation: 'THWN-2', conductor_sets: 2 }, 300],
    ['four conductors in a raceway', { size_awg: '2', insulation: 'THWN-2', current_carrying: 4 }, 104],
  ] as const)('%s', (_, change, ampacityA) => {
    expect(row(change)?.ampacity_a).toBeCloseTo(ampacityA, 9)
  })

  it('terminals of either end that are not marked 75 deg C hold them to 60', () => {
    expect(row({ size_awg: '2', insulation: 'THWN-2' }, 60)?.ampacity_a).toBe(95)
  })

  it('insulation that is not stated counts as 60 deg C', () => {
    const { insulation: _, ...bare } = plain
    const project = treeProject({ ...garageTree, feeders: { to_garage: { ...bare, ambient_c: 30 } } })
    expect(sizeWire(project, context(30)).values.conductors.find(({ tag }) => tag === 'F1')?.ampacity_a).toBe(55)
  })

  it('parallel sets begin at 1/0', () => {
    expect(() => row({ size_awg: '2', conductor_sets: 2 })).toThrow('1/0 is the smallest')
  })

  it('a size is chosen where none is stated: for the device, and small ones by their own limit', () => {
    const chosen = (change: Partial<Feeder>, markedC?: 60 | 75) => {
      const { size_awg: _, ...feeder } = { ...plain, ...change }
      const panels = {
        main: { ...garageTree.panels['main'], bus_a: 100, terminal_temperature_c: 75 as const },
        garage: { bus_a: 125, breakers_a: [20], terminal_temperature_c: markedC ?? (75 as const) },
      }
      const project = treeProject({ panels, feeders: { to_garage: { ...feeder, ambient_c: 30 } }, sources: {} }, {}, 6)
      return sizeWire(project, context(30)).values.conductors.find(({ tag }) => tag === 'F1')
    }
    expect(chosen({ breaker_a: 60 })).toMatchObject({
      size_awg: '6',
      ampacity_a: 65,
      ocpd_size_ok: true,
      grounding_awg: '10',
    })
    expect(chosen({ breaker_a: 60 }, 60)?.size_awg).toBe('4')
    // 240.4(D): 20 A on 12 AWG, 30 A on 10 AWG, although the table has 20 A for 14 AWG.
    expect(chosen({ breaker_a: 20 })?.size_awg).toBe('12')
    expect(chosen({ breaker_a: 30 })?.size_awg).toBe('10')
  })

  it('a device above the ampacity is told in the list too', () => {
    expect(row({ size_awg: '10', insulation: 'THWN-2' })?.ocpd_size_ok).toBe(false)
  })
})

describe('breakers that are fed from their load side', () => {
  it.each(['gfci', 'afci', 'gfci_afci'] as const)('%s is refused unless it is marked for backfeed', (type) => {
    const told = (marked: boolean) =>
      sizeWire(
        microProject({
          connection: {
            kind: 'load_side_breaker',
            breaker_position: 'opposite_end',
            breaker_type: type,
            breaker_marked_for_backfeed: marked,
          },
        }),
        context(),
      ).findings.some(({ id }) => id === 'wire.breaker-gfci-backfed')
    expect(told(false)).toBe(true)
    expect(told(true)).toBe(false)
  })
})

describe('the place of breakers that carry current backwards', () => {
  it('is asked for where a busbar has one, of a feeder and of an older system too', () => {
    const without = <T extends object>(whole: T, key: keyof T): T => {
      const { [key]: _, ...rest } = whole
      return rest as T
    }
    const feeder = garageTree.feeders?.['to_garage'] as Feeder
    const old = garageTree.sources?.['old_pv'] as NonNullable<typeof garageTree.sources>[string]
    const places = (project: ReturnType<typeof treeProject>): string[] =>
      sizeWire(project, context()).findings.flatMap(({ id, where }) => (id === 'wire.breaker-position' ? [where] : []))
    expect(places(treeProject())).toEqual([])
    expect(
      places(
        treeProject(
          {
            ...garageTree,
            feeders: { to_garage: without(feeder, 'breaker_position') },
            sources: { old_pv: without(old, 'breaker_position') },
          },
          { connection: { kind: 'load_side_breaker', at: 'garage' } },
        ),
      ).toSorted(),
    ).toEqual([
      'electrical.connection.breaker_position',
      'electrical.distribution.feeders.to_garage.breaker_position',
      'electrical.distribution.sources.old_pv.breaker_position',
    ])
  })
})
