import { describe, expect, it } from 'vitest'
import { boxAllowances, boxConductorSizes, boxVolumes, wiringMethodRows } from '../../src/tables/nec/index.js'
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
