import { describe, expect, it } from 'vitest'
import { sizeWire } from '../../src/electrical/index.js'
import type { Project } from '../../src/project/index.js'
import { context, microProject } from './demo.js'
import { garageTree, treeProject } from './tree-house.js'

const remediesOf = (project: Project, edition = 'NEC 2020') =>
  sizeWire(project, { ...context(), edition }).values.remedies

const starting = (project: Project, words: string, edition?: string) =>
  remediesOf(project, edition).find(({ what }) => what.startsWith(words))

describe('ways out when no rule holds', () => {
  // 24 x 1.25 A and 12 A of an older system: 100 + 1.25 x 42 = 152.5 A against 120 A on a busbar of 100 A.
  it('are listed in the order of an electrician, each with what it reaches', () => {
    expect(remediesOf(treeProject()).map(({ what }) => what.split(' ').slice(0, 3).join(' '))).toEqual([
      'Bring the inverters',
      'Smaller main breaker',
      'Move load breakers',
      'Listed power control',
      'Connect ahead of',
      'Land the PV',
      'New panel with',
      'Study of fault',
      'Replace the main',
    ])
  })

  it('there are none while everything on the way complies', () => {
    const wide = { ...garageTree, panels: { ...garageTree.panels, main: { ...garageTree.panels['main'], bus_a: 200 } } }
    expect(remediesOf(treeProject(wide))).toEqual([])
  })

  it('a breaker at the wrong end is moved first, and reaches what 120 percent allow beside the older system', () => {
    const moved = starting(
      treeProject({
        ...garageTree,
        sources: { old_pv: { ...garageTree.sources?.['old_pv'], breaker_position: 'other' } as never },
      }),
      'Move every breaker',
    )
    // (1.2 x 100 - 100) / 1.25 - 12 = 4 A
    expect(moved?.reaches_a).toBeCloseTo(4, 9)
    expect(moved?.passes).toBe(false)
  })

  it('inverters: what is left of 16 A beside the 12 A that are there', () => {
    const fewer = starting(treeProject(), 'Bring the inverters')
    // The sum of breakers takes none: 15 + 60 A beside loads of 70 A on 100 A, however few inverters there are.
    expect(fewer?.reaches_a).toBeCloseTo(4, 9)
  })

  it('a main of 100 A is the smallest for a house, whatever its load', () => {
    expect(starting(treeProject(), 'Smaller main')).toMatchObject({ passes: false })
  })

  it('what may stay by the sum of breakers counts the breaker of a new panel', () => {
    // 100 A of busbar, 15 A of the older system and 60 A of the feeder.
    expect(starting(treeProject(), 'Move load breakers')?.why).toContain('load breakers of 25 A may stay, with the one')
  })

  it('power control: 0.8 x 100 A less the 15 A breaker that it does not control; unknown to older editions', () => {
    expect(starting(treeProject(), 'Listed power control')).toMatchObject({
      reaches_a: 65,
      passes: true,
      section: '705.13',
    })
    expect(starting(treeProject(), 'Listed power control', 'NEC 2017')).toBeUndefined()
  })

  it('supply side: ampacity of the service conductors by current from 2020 on, its rating by devices before', () => {
    // 4 AWG copper, 75 deg C: 85 A; the older system hangs behind the main and does not count there.
    expect(starting(treeProject(), 'Connect ahead')).toMatchObject({ reaches_a: 85, passes: true, section: '705.11' })
    expect(starting(treeProject(), 'Connect ahead', 'NEC 2017')).toMatchObject({ reaches_a: 80, passes: true })
  })

  it('a new panel of 225 A with the main that is there', () => {
    // (1.2 x 225 - 100) / 1.25 - 12 = 124 A on the busbar; the feeder of 60 A carries 48 A.
    expect(starting(treeProject(), 'Replace the main')).toMatchObject({ reaches_a: 48, passes: true })
    expect(starting(treeProject(), 'New panel with')).toMatchObject({ reaches_a: 124, passes: true })
  })

  it('the main of a new panel stays as small as the one that is there', () => {
    const inMain = treeProject(garageTree, {
      connection: { kind: 'load_side_breaker', at: 'main', breaker_position: 'opposite_end' },
    })
    // (1.2 x 225 - 100) / 1.25 - 12 = 124 A; with a main of 200 A it would be 44 A.
    expect(starting(inMain, 'Replace the main')?.reaches_a).toBeCloseTo(124, 9)
  })

  it('the breaker of a feeder is moved too', () => {
    const feeder = garageTree.feeders?.['to_garage']
    if (feeder === undefined) throw new Error('no feeder')
    const wrongEnd = {
      ...garageTree,
      feeders: { to_garage: { ...feeder, breaker_position: 'other' as const } },
      sources: {},
    }
    // 100 + 1.25 x 15 = 118.75 A of 120 A once it stands at the other end.
    const moved = remediesOf(treeProject(wrongEnd, {}, 12)).find(({ what }) => what.startsWith('Move every breaker'))
    expect(moved).toMatchObject({ passes: true, reaches_a: 16 })
  })

  it('prices are those that the person states', () => {
    const priced = treeProject(garageTree, { remedy_costs_usd: { supply_side: 900 } })
    expect(starting(priced, 'Connect ahead')?.cost_usd).toBe(900)
    expect(starting(priced, 'Bring the inverters')?.cost_usd).toBeNull()
  })
})

describe('a supply-side connection that is too much for the service', () => {
  it('reaches the ampacity of the service conductors with fewer inverters', () => {
    const { values } = sizeWire(
      microProject({
        service: { rating_a: 100, conductor_ampacity_a: 20 },
        connection: { kind: 'supply_side', overcurrent_device_distance_ft: 8 },
      }),
      context(),
    )
    expect(values.remedies[0]).toMatchObject({ reaches_a: 20, passes: true })
    expect(JSON.stringify(values)).not.toContain('Infinity')
  })
})

describe('a smaller main', () => {
  // A 200 A house with a 200 A busbar: (240 - 200) / 1.25 = 32 A. NEC annex D example D2(a), optional method: 89.5 A of load.
  const house = (load: boolean) =>
    microProject(
      {
        service: { rating_a: 200, conductor_ampacity_a: 200 },
        ...(load
          ? {
              load_calculation: {
                method: 'optional_new',
                floor_area_ft2: 1500,
                small_appliance_circuits: 2,
                laundry_circuits: 1,
                appliances: {
                  range: { kind: 'range', rating_va: 12000 },
                  heater: { kind: 'water_heater', rating_va: 2500 },
                  dishwasher: { kind: 'fixed', rating_va: 1200 },
                  dryer: { kind: 'dryer', rating_va: 5000 },
                },
                cooling: { room: { current_a: 6, voltage_v: 230 } },
                heating: { rooms: { kind: 'resistance', rating_va: 9000, separately_controlled_units: 5 } },
              },
            }
          : {}),
      },
      48,
    )

  it('is the largest one that lets the system in, not below the load and not below 100 A', () => {
    // 60 A of inverters: M <= 240 - 75 = 165 A, of which 150 A is the largest that is made.
    const result = sizeWire(house(true), context())
    expect(result.values.service_load_a).toBeCloseTo(89.5, 1)
    const smaller = result.values.remedies.find(({ what }) => what.startsWith('Main breaker of'))
    expect(smaller?.what).toContain('Main breaker of 150 A')
    expect(smaller).toMatchObject({ passes: true, reaches_a: 72 })
  })

  it('is not offered without the calculation', () => {
    const result = sizeWire(house(false), context())
    expect(result.values.service_load_a).toBeNull()
    const smaller = result.values.remedies.find(({ what }) => what.startsWith('Smaller main'))
    expect(smaller).toMatchObject({ reaches_a: null, passes: null })
    expect(smaller?.why).toContain('electrical.load_calculation')
  })
})
