import { describe, expect, test } from 'vitest'
import type { Project, WiringBox, WiringSegment } from '../../src/project/index.js'
import type { BoxValues } from '../../src/electrical/index.js'
import { takeBoxes } from '../../src/materials/take-off/take-boxes.js'
import { billOf, house, inputOf, lineOf } from './demo.js'

const wall: WiringSegment = { location: 'outdoor_wall', length_ft: 12, raceway: 'EMT' }
const roof: WiringSegment = { location: 'roof', height_above_roof_in: 1, length_ft: 20, raceway: 'EMT' }

function houseWith(
  segments: Record<string, WiringSegment>,
  change: { first_box?: WiringBox; neutral?: boolean } = {},
): Project {
  const project = house()
  return {
    ...project,
    electrical: {
      ...project.electrical,
      runs: { ...project.electrical?.runs, home: { carries: ['branches'], segments, ...change } },
    },
  }
}

const itemsOf = (project: Project): Record<string, number> =>
  Object.fromEntries(billOf(project).values.lines.map(({ item, quantity }) => [item, quantity]))

describe('cables in the bill', () => {
  const attic: WiringSegment = { location: 'attic', ambient_c: 50, length_ft: 30, raceway: 'NM' }

  test('a cable is bought by its length with slack at both ends, not wire by wire', () => {
    const { values } = billOf(houseWith({ roof, attic }))
    const cable = lineOf(values, 'cable.nm-b-14-2-with-ground.copper')
    expect(cable).toMatchObject({ name: 'Cable NM-B 14/2 with ground', unit: 'ft', group: 'wire' })
    expect(cable.quantity).toBeGreaterThanOrEqual(30)
    expect(cable.why).toContain('in home.attic for circuit south_1 (wire: values.raceways)')
    // Wire is bought for the roof and for the way to the panel only.
    const black = lineOf(values, 'wire.thwn-2.14.copper.black')
    expect(black.why).toContain('in home.roof')
    expect(black.why).not.toContain('home.attic')
    const items = values.lines.map(({ item }) => item)
    expect(items.filter((item) => /nm/.test(item))).toEqual([
      'cable.nm-b-14-2-with-ground.copper',
      'cable-support.nm',
      'cable-connector.nm',
    ])
  })

  test('staples at the computed places and two connectors; no sticks, couplings or straps', () => {
    const items = itemsOf(houseWith({ roof, attic }))
    // 28 ft between the first and the last, 4.5 ft apart: 8 staples.
    expect(items['cable-support.nm']).toBe(8)
    expect(items['cable-connector.nm']).toBe(2)
    expect(Object.keys(items).filter((item) => /raceway\.nm|strap\.nm|coupling\.nm/.test(item))).toEqual([])
  })

  test('each of two cables is held and ends in two connectors', () => {
    const project = houseWith({ roof, attic })
    const branches = { b1: { modules: { south: 3 } }, b2: { modules: { south: 3 } } }
    const items = itemsOf({ ...project, electrical: { ...project.electrical, branches } })
    expect(items['cable-support.nm']).toBe(16)
    expect(items['cable-connector.nm']).toBe(4)
  })

  test('a neutral makes it a cable of three wires', () => {
    const items = Object.keys(itemsOf(houseWith({ attic }, { neutral: true })))
    expect(items).toContain('cable.nm-b-14-3-with-ground.copper')
  })

  test('flexible metal conduit comes by the foot', () => {
    const items = itemsOf(houseWith({ a: { location: 'indoors', length_ft: 5, raceway: 'FMC', trade_size: '3/4' } }))
    expect(items['raceway.fmc.3/4']).toBe(5)
    expect(items['connector.fmc.3/4']).toBe(2)
  })
})

describe('boxes in the bill', () => {
  test('without a stated box one at the array and one at each joint, as ever', () => {
    const items = itemsOf(houseWith({ roof, wall }))
    expect([items['box.array'], items['box.pull']]).toEqual([1, 1])
  })

  test('stated boxes stand in for those', () => {
    const items = itemsOf(
      houseWith(
        {
          roof: { ...roof, box: { kind: 'box', splice: true, standard_box: '4 x 2-1/8 square' } },
          wall: { ...wall, box: { kind: 'conduit_body', area_in2: 1 } },
          rest: wall,
        },
        { first_box: { kind: 'box', volume_in3: 40 } },
      ),
    )
    expect(items['box.array']).toBeUndefined()
    expect(items['box.pull']).toBeUndefined()
    expect(items['box.4-x-2-1-8-square']).toBe(1)
    expect(items['box.marked-40']).toBe(1)
    expect(items['conduit-body']).toBe(1)
  })

  test('a box whose size is open is counted as before', () => {
    expect(itemsOf(houseWith({ roof: { ...roof, box: { kind: 'box' } }, wall }))['box.pull']).toBe(1)
  })

  test('a box stated where the leads of the array end is the one at the array', () => {
    const wiring = inputOf(house()).wire?.values
    const [way] = wiring?.raceways ?? []
    if (wiring === undefined || way === undefined) throw new Error('no wiring')
    const leads = { ...way, id: `${way.run}.leads`, type: 'none', form: 'open' } as const
    const stated = {
      id: 'b',
      run: way.run,
      after_segment: leads.id,
      kind: 'box',
      standard_box: null,
      spliced: true,
      volume_in3: 30,
      required_in3: 20,
      count: 9,
      length_in: null,
      required_length_in: null,
      complies: true,
      section: '',
    } as const
    const items = (boxes: readonly BoxValues[]) =>
      takeBoxes({ ...wiring, raceways: [leads, way], boxes })
        .filter(({ quantity }) => quantity > 0)
        .map(({ item }) => item)
    expect(items([])).toEqual(['box.array'])
    expect(items([stated])).toEqual(['box.marked-30'])
  })
})
