import { describe, expect, it } from 'vitest'
import { boxFill, leastEntryDistanceIn, leastPullIn, smallestBox } from '../../src/electrical/index.js'
import {
  boxAllowances,
  boxConductorSizes,
  boxVolumes,
  coverDistances,
  wiringMethodRows,
  type BoxConductorSize,
  type Edition,
} from '../../src/tables/nec/index.js'
import { cell, readFixture } from '../electrical/read-fixture.js'

/** Shape of the published table by the last word of our id. */
const SHAPES: Readonly<Record<string, string>> = {
  'round/octagonal': 'round',
  square: 'square',
  device: 'device',
  'masonry/gang': 'masonry',
  'single cover/gang': 'single',
  'multiple cover/gang': 'multiple',
}

describe('Table 314.16(A), boxes', () => {
  it('equals the published table, cell by cell', () => {
    expect(boxVolumes).toEqual(
      readFixture('box_volume_314_16').map((row) => ({
        id: `${row['trade_size_in'] ?? ''} ${SHAPES[row['shape'] ?? ''] ?? '?'}`,
        volumeIn3: cell(row['volume_in3']),
        conductors: boxConductorSizes.map((size) => cell(row[`n${size}`])),
      })),
    )
    expect(new Set(boxVolumes.map((row) => row.id)).size).toBe(24)
  })

  it('counts are the volume over the allowance, rounded down; one copy of 2017 prints 5 for 8 AWG in 12.5 in3', () => {
    const wrong = boxVolumes.flatMap((row) =>
      boxConductorSizes.flatMap((size, i) => {
        const worked = Math.floor(row.volumeIn3 / boxAllowances[size] + 1e-9)
        return worked === row.conductors[i] ? [] : [`${row.id} ${size}: ${worked}, printed ${row.conductors[i]}`]
      }),
    )
    expect(wrong).toEqual([])
    expect(boxVolumes[0]?.conductors[5]).toBe(4)
  })
})

/** The words of the published table as our permissions. */
const PERMISSIONS: Readonly<Record<string, string>> = {
  yes: 'yes',
  no: 'no',
  'no (also not damp)': 'no',
  'if marked': 'marked',
  'yes if marked': 'marked',
  'if marked outdoor': 'marked',
  'if jacket marked': 'marked',
  'if marked sunlight resistant': 'marked',
  'interior dry; exterior as 225 Part I': 'yes',
  'only jacketed plus wet-listed conductors, impervious sheath or inner jacket': 'marked',
}

const NAMES: Readonly<Record<string, string>> = { 'NM-B': 'NM', 'UF-B': 'UF', 'SE-R': 'SE', 'PV wire free air': 'none' }

describe('wiring methods', () => {
  const rows = readFixture('wiring_methods').filter((row) => row['method'] !== 'USE-2')

  it.each(rows.map((row) => [row['method'] ?? '', row] as const))('%s equals the published row', (name, row) => {
    const ours = wiringMethodRows.find((candidate) => candidate.method === (NAMES[name] ?? name))
    if (ours === undefined) throw new Error(`no ${name}`)
    expect(ours.article).toBe(row['article'])
    expect(ours.wet).toBe(PERMISSIONS[row['wet_location'] ?? ''])
    expect(ours.sun).toBe(PERMISSIONS[row['outdoor_sun'] ?? ''])
    const limit = row['ampacity_limit_C'] ?? ''
    expect(ours.limitC).toBe(limit === '60' ? 60 : undefined)
    expect(ours.limitInInsulation?.columnC).toBe(/60 (?:for|if)/.test(limit) ? 60 : undefined)
    expect(ours.limitInInsulation?.toSize).toBe(limit.includes('10 AWG and smaller') ? '10' : undefined)
    if (ours.method !== 'RMC') expect(ours.support?.spacingFt).toBe(Number.parseFloat(row['max_support_ft'] ?? ''))
    if (ours.method !== 'RMC' && row['max_from_box_in'] !== '-')
      expect(ours.support?.fromBoxIn).toBe(Number.parseFloat(row['max_from_box_in'] ?? ''))
    // Within the array the question does not arise: exposed wire has a rule of its own.
    if (ours.method !== 'none') expect(ours.pvDcInside).toBe(row['pv_dc_inside_building']?.startsWith('yes'))
    expect(ours.maxSize).toBe(/\(to (\d+)\)/.exec(row['min_size_cu_awg'] ?? '')?.[1])
  })

  it('has a row for each name once', () => {
    expect(new Set(wiringMethodRows.map((row) => row.method)).size).toBe(wiringMethodRows.length)
    expect(wiringMethodRows).toHaveLength(14)
  })
})

describe('published box fills (exam papers and a trade magazine, by their own arithmetic)', () => {
  const nothing = { internalClamps: false, supportFittings: 0, terminalBlocks: 0, devices: [] }
  const wires = (size: BoxConductorSize, count: number, grounding = false) => ({ size, count, grounding })

  it('two 14/2 and one 12/2 NM, internal clamps, a receptacle on 12 AWG: 21.5 in3, too much for 21.0', () => {
    const fill = boxFill(
      {
        ...nothing,
        conductors: [wires('14', 4), wires('12', 2), wires('14', 2, true), wires('12', 1, true)],
        internalClamps: true,
        devices: [{ size: '12', gangs: 1 }],
      },
      'NEC 2017',
    )
    expect(fill.rows.map(({ volumeIn3 }) => volumeIn3)).toEqual([8, 4.5, 2.25, 4.5, 2.25])
    expect(fill.requiredIn3).toBe(21.5)
    const box = boxVolumes.find(({ id }) => id === '4 x 1-1/2 square')
    expect(box?.volumeIn3).toBe(21)
    expect(smallestBox(fill.requiredIn3)).toBe('4 x 2-1/8 round')
  })

  it('nine 12 AWG fill 4 x 1-1/2 square; seven 14 AWG fill 4 x 1-1/2 round', () => {
    const need = (size: BoxConductorSize, count: number) =>
      boxFill({ ...nothing, conductors: [wires(size, count)] }, 'NEC 2017').requiredIn3
    expect(need('12', 9)).toBeLessThanOrEqual(21)
    expect(need('12', 10)).toBeGreaterThan(21)
    expect(need('14', 7)).toBeLessThanOrEqual(15.5)
    expect(need('14', 8)).toBeGreaterThan(15.5)
  })

  it('seven grounds of 12 and 14 AWG: 2.25 in3 up to 2017, 3.94 in3 from 2020 on', () => {
    const grounds = (edition: Edition) =>
      boxFill({ ...nothing, conductors: [wires('12', 4, true), wires('14', 3, true)] }, edition).requiredIn3
    expect([grounds('NEC 2011'), grounds('NEC 2014'), grounds('NEC 2017')]).toEqual([2.25, 2.25, 2.25])
    expect(grounds('NEC 2020')).toBeCloseTo(3.94, 2)
    expect(grounds('NEC 2023')).toBe(2.25 + (3 * 2.25) / 4)
  })

  it('what is left in 42.0 in3 with 12 AWG: 4 insulated, 2 grounds, clamps, two receptacles: 8 more', () => {
    const used = boxFill(
      {
        ...nothing,
        conductors: [wires('12', 4), wires('12', 2, true)],
        internalClamps: true,
        devices: [
          { size: '12', gangs: 1 },
          { size: '12', gangs: 1 },
        ],
      },
      'NEC 2023',
    )
    expect(used.count).toBe(10)
    expect(used.requiredIn3).toBe(22.5)
    expect((42 - used.requiredIn3) / boxAllowances['12']).toBeCloseTo(8.66, 1)
    expect(Math.floor((42 - used.requiredIn3) / boxAllowances['12'])).toBe(8)
  })

  it('support fittings, wide devices and terminal blocks count by the largest conductor', () => {
    const fill = boxFill(
      {
        conductors: [wires('14', 2), wires('10', 1)],
        internalClamps: false,
        supportFittings: 2,
        terminalBlocks: 1,
        devices: [{ gangs: 2 }],
      },
      'NEC 2023',
    )
    expect(fill.requiredIn3).toBe(2 * 2 + 2.5 + 2 * 2.5 + 2.5 + 4 * 2.5)
  })
})

describe('published pull boxes', () => {
  it('3 in straight: 24 in', () => expect(leastPullIn('straight', '3', [])).toBe(24))

  it('3 in at an angle with a 2 in in the same wall: 20 in, and 18 in between entries', () => {
    expect(leastPullIn('angle', '3', ['2'])).toBe(20)
    expect(leastPullIn('angle', '3', [])).toBe(18)
    expect(leastEntryDistanceIn('3')).toBe(18)
  })

  it('3, 2 and 1 in on entry and exit walls: 21 in', () => expect(leastPullIn('splice', '3', ['2', '1'])).toBe(21))

  it('the largest of the row is multiplied, wherever it is named', () => {
    expect(leastPullIn('angle', '1-1/4', ['2'])).toBe(6 * 2 + 1.25)
    expect(leastPullIn('straight', '1', ['2-1/2'])).toBe(8 * 2.5)
  })
})

it('Table 312.6(A), one wire at a terminal, as read', () => {
  expect(coverDistances.map(({ toSize, distanceIn }) => [toSize, distanceIn])).toEqual([
    ['6', 1.5],
    ['3', 2],
    ['2', 2.5],
    ['1', 3],
    ['2/0', 3.5],
    ['4/0', 4],
    ['250 kcmil', 4.5],
  ])
})
