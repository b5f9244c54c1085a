import { describe, expect, it } from 'vitest'
import { deviceSections } from '../../src/cli/commands/device-sections.js'
import { combinerHouse, optimiserHouse, size, stringHouse, wyeUnits } from '../electrical/devices-demo.js'

const rowsOf = (project: ReturnType<typeof stringHouse>) =>
  deviceSections(size(project).values).flatMap((section) => (section.kind === 'table' ? section.rows : []))

describe('what size-wire prints of devices', () => {
  it('nothing where there are none', () => {
    expect(deviceSections(size(stringHouse()).values)).toEqual([])
  })

  it('lines with their currents', () => {
    const unit = (phases: 'AB' | 'CA') => ({ inverter: 's5000', phases })
    const single = { ac_power_w: 4160, ac_current_a: 20, max_branch_ocpd_a: 30 }
    expect(rowsOf(wyeUnits({ one: unit('AB'), two: unit('CA') }, single))).toEqual([
      ['one', 'AB', 20, 20, 0],
      ['two', 'CA', 20, 0, 20],
      ['all inverters', 'ABC', expect.closeTo(20 * Math.sqrt(3), 6), 20, 20],
    ])
  })

  it('converters and boxes', () => {
    expect(rowsOf(optimiserHouse())).toEqual([['south_s1', 'o450', 12, expect.closeTo(40.31, 2), 13.9, 4920, 12]])
    expect(rowsOf(combinerHouse(3))).toEqual([
      [
        'box',
        'south_s1, south_s2, south_s3',
        '25 A in both poles',
        34.75,
        52.125,
        expect.closeTo(483.8, 1),
        { value: 'passes', tone: 'good' },
      ],
    ])
    expect(rowsOf(combinerHouse(3, { poles_fused: 'none' }))[0]?.[2]).toBe('none, needed')
  })
})
