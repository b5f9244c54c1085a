import { describe, expect, it } from 'vitest'
import { readTable } from '../structure/read-table.js'
import {
  allowableBendingKsi,
  combinedCapacityLb,
  lagCapacity,
  lateralReferenceLb,
  penetrationShare,
  prescriptiveSpanFt,
  threadInRafterIn,
  withdrawalPerInchLb,
  type MountStrength,
} from '../../src/structure/index.js'
import { ALLOYS, type Alloy } from '../../src/tables/aluminium/index.js'
import {
  LAG_SCREWS,
  LOAD_DURATION,
  SIDE_PLATES,
  SPECIFIC_GRAVITY,
  TEMPERATURE,
  type LagSize,
} from '../../src/tables/nds/index.js'

describe('lag screw withdrawal', () => {
  // NDS 2018 table 12.2A, 66 cells as printed (whole pounds).
  const cells = readTable('lag_withdrawal_W').flatMap((row) =>
    (
      [
        ['1/4', 'W_1/4in_lb_per_in'],
        ['5/16', 'W_5/16in'],
        ['3/8', 'W_3/8in'],
      ] as const
    ).map(([size, column]) => ({ g: Number(row['G']), size, printed: Number(row[column]) })),
  )
  it.each(cells)('G $g, $size in is $printed lb/in', ({ g, size, printed }) => {
    expect(Math.round(withdrawalPerInchLb(g, LAG_SCREWS[size].diameterIn))).toBe(printed)
  })

  // AWC solved problem E2.3: 1/2 x 4 in lag in Southern Pine (G 0.55): thread 2.5 - 0.3125 in, W 436.6 lb/in, 955 lb.
  it('follows the solved problem of the American Wood Council', () => {
    const thread = Math.min(6, 4 / 2 + 0.5) - 0.3125
    expect(thread).toBe(2.1875)
    expect(withdrawalPerInchLb(0.55, 0.5)).toBeCloseTo(436.6, 1)
    expect(withdrawalPerInchLb(0.55, 0.5) * thread).toBeCloseTo(955, 0)
  })

  // NDS 2018 table L2: thread less tip.
  it.each(readTable('lag_dimensions'))('$size x $length_L_in has its thread', (row) => {
    const size = row['size'] as LagSize
    const free = {
      size,
      lengthIn: Number(row['length_L_in']),
      threadLengthIn: undefined,
      aboveRafterIn: 0,
      rafterDepthIn: 12,
    }
    expect(Math.abs(threadInRafterIn(free) - Number(row['thread_less_tip_T-E_in']))).toBeLessThan(0.0001)
    expect(LAG_SCREWS[size].rootDiameterIn).toBe(Number(row['root_Dr_in']))
    expect(LAG_SCREWS[size].diameterIn).toBe(Number(row['D_in']))
  })

  it('does not count thread above the rafter or past its depth', () => {
    const lag = { size: '5/16', lengthIn: 4, threadLengthIn: undefined, aboveRafterIn: 1, rafterDepthIn: 5.5 } as const
    expect(threadInRafterIn(lag)).toBeCloseTo(2.3125, 9)
    expect(threadInRafterIn({ ...lag, aboveRafterIn: 2 })).toBeCloseTo(1.8125, 9)
    expect(threadInRafterIn({ ...lag, lengthIn: 8, aboveRafterIn: 0, rafterDepthIn: 3.5 })).toBe(3.5)
    expect(threadInRafterIn({ ...lag, aboveRafterIn: 4 })).toBe(0)
    expect(threadInRafterIn({ ...lag, lengthIn: 6, threadLengthIn: 5.5, aboveRafterIn: 1 })).toBeCloseTo(4.8125, 9)
  })

  // Permit calculations in city records: 266 x 2.5 in = 665 lb and 2 x 1.6 x 665 = 2128 lb (2025); 266 x 3.25 x 1.6 x 0.8 x 2 = 2213.12 lb (2023); 532.0 and 851.2 lb for 2 in.
  it.each([
    [2.5, 2, 1, 2128],
    [3.25, 2, 0.8, 2213.12],
    [2.0, 1, 1, 851.2],
  ])('%s in of thread, %s screws, Ct %s: %s lb', (threadIn, count, temperatureFactor, printed) => {
    const tip = LAG_SCREWS['5/16'].tipIn
    const mount: MountStrength = {
      upliftLb: 1,
      downLb: 1,
      lateralLb: undefined,
      lagCount: count,
      lag: { size: '5/16', lengthIn: 9, threadLengthIn: threadIn + tip, aboveRafterIn: 0, rafterDepthIn: 9 },
      specificGravity: 0.5,
      plate: 'steel_10_ga',
      wetFactor: 1,
      temperatureFactor,
    }
    // The printed W is rounded to whole pounds.
    expect(lagCapacity(mount, LOAD_DURATION.wind).withdrawalLb / printed).toBeCloseTo(1, 3)
  })
})

describe('lag screw lateral values', () => {
  // NDS 2018 table 12K as read (14, 12 and 10 gage; tens of pounds) and an independent calculation for 1/4 in plates.
  const plates = {
    '14 ga': 'steel_14_ga',
    '12 ga': 'steel_12_ga',
    '10 ga': 'steel_10_ga',
    '1/4 in': 'steel_quarter_inch',
  } as const
  const rows = readTable('lag_lateral_Z_steel_side')
  it('covers every plate that is held', () => {
    for (const thickness of new Set(rows.map((r) => Number(r['ts_in'])))) {
      expect(Object.values(SIDE_PLATES).some((plate) => plate.thicknessIn === thickness)).toBe(true)
    }
  })
  it.each(rows)('$side_plate, $lag in, G $G', (row) => {
    const thickness = Number(row['ts_in'])
    const plate = Object.values(plates).find((name) => SIDE_PLATES[name].thicknessIn === thickness)
    if (plate === undefined) throw new Error(`no plate of ${thickness} in`)
    const parallel = lateralReferenceLb(Number(row['G']), row['lag'] as LagSize, plate, 'parallel')
    const across = lateralReferenceLb(Number(row['G']), row['lag'] as LagSize, plate, 'perpendicular')
    expect(Math.abs(parallel - Number(row['Z_par_unrounded']))).toBeLessThan(0.06)
    expect(Math.abs(across - Number(row['Z_perp_unrounded']))).toBeLessThan(0.06)
    // A few cells lie on the border between two tens.
    expect(Math.abs(parallel - Number(row['Z_par_lb']))).toBeLessThan(5.1)
    expect(Math.abs(across - Number(row['Z_perp_lb']))).toBeLessThan(5.1)
  })

  it('scales with the penetration between 4 and 8 diameters', () => {
    expect(penetrationShare(2.5, '5/16')).toBe(1)
    expect(penetrationShare(1.875, '5/16')).toBeCloseTo(0.75, 9)
    expect(penetrationShare(1.24, '5/16')).toBe(0)
  })

  // NDS 2018 eq. 12.4-1 at its two ends: straight out is W'p, along the surface is Z'.
  it('combines withdrawal and lateral load', () => {
    expect(combinedCapacityLb(1000, 300, 90)).toBeCloseTo(1000, 6)
    expect(combinedCapacityLb(1000, 300, 0)).toBeCloseTo(300, 6)
    expect(combinedCapacityLb(1000, 300, 45)).toBeCloseTo(600_000 / 1300, 6)
  })
})

describe('wood and alloy tables', () => {
  const known = readTable('specific_gravity').map(
    (r) => [r['species_combination'] ?? '', Number(r['G_NDS2018_12.3.3A'])] as const,
  )
  it.each(known)('%s has G %s', (species, g) => {
    expect(Object.entries(SPECIFIC_GRAVITY).find(([name]) => name === species)?.[1]).toBe(g)
  })

  it('holds the adjustment factors of NDS 2018', () => {
    const value = (text: string): string =>
      readTable('nds_factors').find((r) => r['case']?.includes(text) === true)?.['value'] ?? ''
    expect(LOAD_DURATION.dead).toBe(Number(value('dead (permanent)')))
    expect(LOAD_DURATION.snow).toBe(Number(readTable('nds_factors').find((r) => r['case'] === 'snow')?.['value']))
    expect(LOAD_DURATION.wind).toBe(Number(value('wind or seismic')))
    expect(LOAD_DURATION.roofLive).toBe(Number(value('roof live')))
    expect(`${TEMPERATURE.up_to_125_f.dry} / ${TEMPERATURE.up_to_125_f.wet}`).toBe(value('100<T<=125F'))
    expect(`${TEMPERATURE.up_to_150_f.dry} / ${TEMPERATURE.up_to_150_f.wet}`).toBe(value('125<T<=150F'))
    expect(LAG_SCREWS['1/4'].bendingYieldPsi).toBe(Number(value('lag D=1/4')))
    expect(LAG_SCREWS['5/16'].bendingYieldPsi).toBe(Number(value('lag D=5/16')))
    expect(LAG_SCREWS['3/8'].bendingYieldPsi).toBe(Number(value('lag D>=3/8')))
  })

  it.each(readTable('aluminium_min_strength'))('$alloy_temper is held on the safe side', (row) => {
    const names = (row['alloy_temper'] ?? '').split(' / ') as Alloy[]
    for (const name of names) {
      expect(ALLOYS[name].yieldKsi).toBeLessThanOrEqual(Number(row['Fty_ksi']))
      expect(ALLOYS[name].ultimateKsi).toBeLessThanOrEqual(Number(row['Ftu_ksi']))
    }
  })

  // Allowable stresses by the safety factors 1.65 and 1.95 (from memory): 18.8 ksi for 6005A-T5, 19.5 ksi for 6061-T6.
  it('gives the allowable bending stress', () => {
    expect(allowableBendingKsi('6005A-T5')).toBeCloseTo(18.8, 1)
    expect(allowableBendingKsi('6061-T6')).toBeCloseTo(19.5, 1)
  })
})

describe('rafter span table', () => {
  // IBC 2018 table 2308.7.2(2), twin of IRC 2018 R802.4.1(2), 36 cells.
  const species = {
    DFL: 'Douglas Fir-Larch',
    'Hem-Fir': 'Hem-Fir',
    'Southern Pine': 'Southern Pine',
    SPF: 'Spruce-Pine-Fir',
  } as const
  const cells = readTable('rafter_spans_LL20_ceiling_attached').flatMap((row) =>
    ([10, 20] as const).flatMap((dead) =>
      (['2x4', '2x6', '2x8'] as const).map((size) => ({
        spacing: Number(row['spacing_in']),
        wood: row['species_grade'] ?? '',
        dead,
        size,
        printed: row[`DL${dead}_${size}`] ?? '',
      })),
    ),
  )
  it.each(cells)('$wood $size @ $spacing in, dead $dead psf: $printed', ({ spacing, wood, dead, size, printed }) => {
    const [name, number] = wood.split(' #') as [keyof typeof species, string]
    const [ft, inches] = printed.split('-').map(Number)
    const found = prescriptiveSpanFt(
      { nominalSize: size, species: species[name], grade: `No. ${number}`, spacingIn: spacing },
      dead,
    )
    expect(found?.spanFt).toBeCloseTo((ft ?? 0) + (inches ?? 0) / 12, 9)
  })

  // Douglas Fir-Larch No. 2, 2x6 at 16 in: live-load deflection span / 240 with E 1.6e6 psi gives 14.05 ft against the printed 14-1.
  it('agrees with the deflection formula where deflection governs', () => {
    const [E, I, w] = [1.6e6, (1.5 * 5.5 ** 3) / 12, (20 * (16 / 12)) / 12]
    const span = ((384 * E * I) / (5 * w * 240)) ** (1 / 3) / 12
    const table = prescriptiveSpanFt(
      { nominalSize: '2x6', species: 'Douglas Fir-Larch', grade: 'No. 2', spacingIn: 16 },
      10,
    )
    expect(Math.abs(span - (table?.spanFt ?? 0))).toBeLessThan(1 / 12)
  })

  it('does not reach beyond the table', () => {
    const row = { nominalSize: '2x6', species: 'Douglas Fir-Larch', grade: 'No. 2', spacingIn: 16 } as const
    expect(prescriptiveSpanFt(row, 20.1)).toBeUndefined()
    expect(prescriptiveSpanFt({ ...row, spacingIn: 24 }, 10)).toBeUndefined()
    expect(prescriptiveSpanFt({ ...row, nominalSize: '2x10' }, 10)).toBeUndefined()
    expect(prescriptiveSpanFt({ ...row, species: undefined }, 10)).toBeUndefined()
  })
})
