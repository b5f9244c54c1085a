import { describe, expect, it } from 'vitest'
import { EACH_PLACE_KWH, storageLimits } from '../../src/tables/storage/index.js'
import { storageDisconnectRules, storagePlace } from '../../src/tables/nec/index.js'
import { readFixture } from '../electrical/read-fixture.js'

// Copy of a table that was compiled from officials' quotations, course summaries and code text (its own column says which).
const fixture = readFixture('storage_limits')

describe('limits for storage, against the table that they were taken from', () => {
  it.each(fixture)('$rule: safe value, unit, standing', (row) => {
    const limit = Object.entries(storageLimits).find(([id]) => id === row['rule'])?.[1]
    expect(limit?.value).toBe(Number(row['safe_value']))
    expect(limit?.unit).toBe(row['unit'])
    expect(limit?.source.standing).toBe(row['standing'])
  })

  it('has no other rows', () => {
    expect(new Set(Object.keys(storageLimits))).toEqual(new Set(fixture.map((row) => row['rule'])))
  })

  it('both readings of the whole property: 80 kWh, or 40 + 80 + 80 + 80', () => {
    const whole = fixture.find(({ rule }) => rule === 'aggregate_whole_dwelling')
    expect(whole?.['value']).toContain(String(EACH_PLACE_KWH))
    expect(EACH_PLACE_KWH).toBe(40 + 80 + 80 + 80)
    expect(storageLimits.aggregate_whole_dwelling.value).toBe(80)
  })
})

// 2017 read; 2020 to 2026 from course summaries: distances and what stands outside.
describe('disconnect of storage by edition', () => {
  it('10 ft since 2020, none before; outside a disconnect in 2020, a shutdown function since 2023', () => {
    expect(
      Object.entries(storageDisconnectRules).map(([edition, { withinFt, outside, seen }]) => [
        edition,
        withinFt,
        outside,
        seen,
      ]),
    ).toEqual([
      ['NEC 2017', undefined, 'none', 'within sight'],
      ['NEC 2020', 10, 'disconnect', 'within sight'],
      ['NEC 2023', 10, 'shutdown_function', 'within sight'],
      ['NEC 2026', 10, 'shutdown_function', 'visible'],
    ])
  })

  it('sections moved between 2017 and 2020', () => {
    expect(storagePlace('NEC 2017', 'ratedCurrent')).toEqual({ place: '706.20(A)', standing: 'read' })
    expect(storagePlace('NEC 2020', 'ratedCurrent')).toEqual({ place: '706.30(A)', standing: 'secondary' })
    expect(storagePlace('NEC 2017', 'conductor')?.place).toBe('706.20(B)')
    expect(storagePlace('NEC 2023', 'conductor')?.place).toBe('706.30(B)')
    expect(storagePlace('NEC 2017', 'overcurrent')?.place).toBe('706.21(B)')
    expect(storagePlace('NEC 2023', 'overcurrent')?.place).toBe('706.31')
    expect(storagePlace('NEC 2017', 'disconnect')?.place).toBe('706.7')
    expect(storagePlace('NEC 2026', 'disconnect')?.place).toBe('706.15')
    expect(storagePlace('NEC 2017', 'outside')).toBeUndefined()
    expect(storagePlace('NEC 2014', 'conductor')).toBeUndefined()
    expect(storagePlace('NEC 2017', 'backupCapacity')).toEqual({ place: '702.4(B)', standing: 'read' })
    expect(storagePlace('NEC 2026', 'standAlone')?.place).toBe('702.4')
  })
})
