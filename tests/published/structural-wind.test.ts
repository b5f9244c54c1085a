import { describe, expect, it } from 'vitest'
import { readTable } from '../structure/read-table.js'
import {
  exposureCoefficient,
  gravityChangePct,
  pressureCoefficient,
  solarEqualisation,
  velocityPressurePsf,
  windPressurePsf,
  type RoofShape,
} from '../../src/structure/index.js'
import { PRESSURE_COEFFICIENTS, type LoadEdition } from '../../src/tables/asce7/index.js'

const site = (edition: LoadEdition, exposure: 'B' | 'C' | 'D', meanRoofHeightFt: number, speedMph: number) => ({
  edition,
  exposure,
  meanRoofHeightFt,
  speedMph,
  groundElevationFt: 0,
  keepExposureBFloor: false,
})

/** Difference of a computed from a printed value as a share of the printed one. */
const off = (value: number, printed: number): number => Math.abs(value - printed) / Math.abs(printed)

describe('velocity pressure exposure coefficient', () => {
  // ASCE 7-16 table 26.10-1, printed to two decimals; the formula of its note 1 differs by at most 0.006.
  const printed = readTable('kz').filter((row) => row['Kz_table_ASCE7-16_26.10-1'] !== '')
  it.each(printed)('is the printed value at $z_ft ft in exposure $exposure', (row) => {
    const kz = exposureCoefficient(site('ASCE 7-16', row['exposure'] as 'B', Number(row['z_ft']), 100))
    expect(Math.abs(kz - Number(row['Kz_table_ASCE7-16_26.10-1']))).toBeLessThan(0.0061)
  })

  // The same constants tabulated to three decimals by an independent calculation.
  it.each(readTable('kz'))('follows the formula at $z_ft ft in exposure $exposure', (row) => {
    const at = site('ASCE 7-16', row['exposure'] as 'B', Number(row['z_ft']), 100)
    const column = Number(row['Kz_formula_7-10_7-16(2.01,zg,alpha)'])
    expect(exposureCoefficient(at)).toBeCloseTo(column, 3)
    const later = Number(row['Kz_formula_7-22_constants_memory_unverified'])
    expect(exposureCoefficient({ ...at, edition: 'ASCE 7-22' })).toBeCloseTo(Math.max(column, later), 3)
  })

  it('keeps 0.70 in exposure B below 30 ft in 7-10, and in later editions only when asked', () => {
    expect(exposureCoefficient(site('ASCE 7-10', 'B', 15, 100))).toBe(0.7)
    expect(exposureCoefficient(site('ASCE 7-16', 'B', 15, 100))).toBeCloseTo(0.575, 3)
    expect(exposureCoefficient({ ...site('ASCE 7-16', 'B', 15, 100), keepExposureBFloor: true })).toBe(0.7)
  })

  // IRC 2012 to 2018 table R301.2(3), height and exposure factors = Kz / 0.70; two decimals, 1 % for the table's own rounding.
  const factors = readTable('irc_height_exposure').filter(
    (r) => r['IRC2012-2018_R301.2(3)_value_inferred_from_a_read_table'] !== '',
  )
  it.each(factors)('gives the factor of $exposure at $mean_roof_height_ft ft', (row) => {
    const kz = exposureCoefficient(site('ASCE 7-10', row['exposure'] as 'B', Number(row['mean_roof_height_ft']), 100))
    expect(off(kz / 0.7, Number(row['IRC2012-2018_R301.2(3)_value_inferred_from_a_read_table']))).toBeLessThanOrEqual(
      0.006,
    )
  })
})

describe('pressure coefficient tables', () => {
  const rows = readTable('gcp')
  it('holds every row of the reference', () => expect(PRESSURE_COEFFICIENTS).toHaveLength(rows.length))

  it.each(rows.map((row, index) => ({ row, index })))('row $index has its end points', ({ row, index }) => {
    const held = PRESSURE_COEFFICIENTS[index]
    expect(held).toMatchObject({
      edition: `ASCE ${row['edition']}`,
      slopeOverDeg: Number(row['slope_gt_deg']),
      slopeToDeg: Number(row['slope_le_deg']),
      lowAreaFt2: Number(row['A_low_ft2']),
      lowCoefficient: Number(row['GCp_low']),
      highAreaFt2: Number(row['A_high_ft2']),
      highCoefficient: Number(row['GCp_high']),
      direction: row['sign'] === 'neg' ? 'uplift' : 'down',
    })
    expect(held?.zones).toEqual(row['zones'] === 'all' ? 'all' : row['zones']?.split(';'))
    if (row['verification']?.includes('from memory') === true) expect(held?.standing).toBe('from memory')
  })

  // Every line that the method uses (slopes over 7 degrees) is read back through the function at both ends and at the log middle.
  const usable = rows.filter((row) => Number(row['slope_le_deg']) > 7 && !/^<=|^>=/.test(row['h_over_B'] ?? ''))
  it.each(usable)('$edition $figure $roof zone $zones $sign is read at its ends', (row) => {
    const zone = row['zones'] === 'all' ? '1' : (row['zones']?.split(';')[0] ?? '')
    const steepest = Number(row['slope_gt_deg']) === 45
    const shape: RoofShape = {
      edition: `ASCE ${row['edition']}` as LoadEdition,
      roofKind: row['roof'] === 'hip' ? 'hip' : 'gable',
      tiltDeg: steepest ? 45 : Number(row['slope_le_deg']),
      heightOverWidth: 0.5,
    }
    const direction = row['sign'] === 'neg' ? 'uplift' : 'down'
    const [a1, a2] = [Number(row['A_low_ft2']), Number(row['A_high_ft2'])]
    const [g1, g2] = [Number(row['GCp_low']), Number(row['GCp_high'])]
    expect(pressureCoefficient(shape, zone, a1 / 2, direction)?.value).toBeCloseTo(g1, 6)
    expect(pressureCoefficient(shape, zone, a1, direction)?.value).toBeCloseTo(g1, 6)
    expect(pressureCoefficient(shape, zone, Math.sqrt(a1 * a2), direction)?.value).toBeCloseTo((g1 + g2) / 2, 6)
    expect(pressureCoefficient(shape, zone, a2 * 2, direction)?.value).toBeCloseTo(g2, 6)
  })

  it('interpolates 7-16 hip roofs of 7 to 20 degrees in h/B', () => {
    const at = (heightOverWidth: number) =>
      pressureCoefficient({ edition: 'ASCE 7-16', roofKind: 'hip', tiltDeg: 15, heightOverWidth }, '1', 10, 'uplift')
        ?.value
    expect(at(0.3)).toBeCloseTo(-1.3, 9)
    expect(at(0.65)).toBeCloseTo(-1.55, 9)
    expect(at(1.2)).toBeCloseTo(-1.8, 9)
  })

  // ASCE 7-16 figure 30.3-2H at 45 degrees (secondary source, printed to two decimals): -1.52 / -2.82 / -2.69 / -3.61.
  it.each([
    ['1', -1.52],
    ['2e', -2.82],
    ['2r', -2.69],
    ['3', -3.61],
  ])('has the steep hip end value of zone %s', (zone, printed) => {
    const shape: RoofShape = { edition: 'ASCE 7-16', roofKind: 'hip', tiltDeg: 45, heightOverWidth: 0.5 }
    expect(Math.abs((pressureCoefficient(shape, zone, 1, 'uplift')?.value ?? 0) - printed)).toBeLessThan(0.0051)
  })

  it('interpolates 7-22 hip roofs of 27 to 45 degrees in slope', () => {
    const at = (tiltDeg: number) =>
      pressureCoefficient({ edition: 'ASCE 7-22', roofKind: 'hip', tiltDeg, heightOverWidth: 0.5 }, '3', 10, 'uplift')
        ?.value
    expect(at(27)).toBeCloseTo(-2.0, 9)
    expect(at(36)).toBeCloseTo(-2.2, 9)
    expect(at(45)).toBeCloseTo(-2.4, 9)
  })

  it('has nothing for slopes outside the figures', () => {
    const shape: RoofShape = { edition: 'ASCE 7-16', roofKind: 'gable', tiltDeg: 7, heightOverWidth: 0.5 }
    expect(pressureCoefficient(shape, '1', 10, 'uplift')).toBeUndefined()
    expect(pressureCoefficient({ ...shape, tiltDeg: 45.1 }, '1', 10, 'uplift')).toBeUndefined()
    const hip: RoofShape = { edition: 'ASCE 7-10', roofKind: 'hip', tiltDeg: 30, heightOverWidth: 0.5 }
    expect(pressureCoefficient(hip, '1', 10, 'uplift')).toBeUndefined()
  })
})

describe('published wind calculations', () => {
  const gable = (edition: LoadEdition, tiltDeg: number): RoofShape => ({
    edition,
    roofKind: 'gable',
    tiltDeg,
    heightOverWidth: 0.5,
  })

  // ASCE 7-16 table 26.9-1, its note: Ke = exp(-0.0000362 zg), zg in ft (two secondary sources); the edition of 2010 has none.
  it.each([
    ['ASCE 7-16', 3000, 0.8971],
    ['ASCE 7-16', 6000, 0.8048],
    ['ASCE 7-22', 6000, 0.8048],
    ['ASCE 7-10', 6000, 1],
  ] as const)('by %s air at %d ft presses %f as much', (edition, groundElevationFt, share) => {
    const low = site(edition, 'C', 15, 115)
    expect(velocityPressurePsf({ ...low, groundElevationFt }) / velocityPressurePsf(low)).toBeCloseTo(share, 4)
  })

  // Permit calculation in a city record (2025), flush modules, gable 20 deg, ASCE 7-16 29.4.4: V 115, Kz 0.85, A 19.8.
  // Printed qz 24.3 is 0.7 % under its own formula; the chain is followed from the printed value, rounding 0.5 %.
  it('follows the chain of the 115 mph gable', () => {
    expect(off(velocityPressurePsf(site('ASCE 7-16', 'C', 15, 115)), 24.3)).toBeLessThanOrEqual(0.008)
    expect(solarEqualisation(19.8)).toBeCloseTo(0.68, 2)
    for (const [zone, printedGcp, p, windLb, netLb] of [
      ['1', 2.0, 33.2, 393.6, 358.0],
      ['2r', 2.58, 42.7, 507.0, 471.5],
      ['3r', 3.07, 50.9, 603.6, 568.0],
    ] as const) {
      const gcp = pressureCoefficient(gable('ASCE 7-16', 20), zone, 19.8, 'uplift')?.value ?? 0
      expect(Math.abs(-gcp - printedGcp)).toBeLessThan(0.0051)
      const pressure = windPressurePsf(
        { shape: gable('ASCE 7-16', 20), velocityPressurePsf: 24.3 },
        zone,
        19.8,
        false,
        'uplift',
      )
      expect(off(pressure, p)).toBeLessThanOrEqual(0.005)
      expect(off(0.6 * pressure * 19.8, windLb)).toBeLessThanOrEqual(0.005)
      expect(off(0.6 * pressure * 19.8 - 35.6, netLb)).toBeLessThanOrEqual(0.006)
    }
  })

  // Permit calculation in a city record, flush modules, 18 deg, ASCE 7-16: V 98, Kz 0.85, A 10.83, exposed No/Yes/Yes.
  // Its coefficients 1.5 and 2.5 are of another slope range: the arithmetic is tested with them, ours against figure 30.3-2B.
  it('follows the arithmetic of the 98 mph roof, and the right figure', () => {
    const qh = 0.00256 * 0.85 * 0.85 * 98 ** 2
    expect(off(qh, 17.8)).toBeLessThanOrEqual(0.003)
    const [low, mid, high] = [1.5, 2.5 * 1.5, 3.6 * 1.5].map((g) => qh * g * solarEqualisation(10.83))
    expect(off(low ?? 0, 20.9)).toBeLessThanOrEqual(0.003)
    expect(off(mid ?? 0, 52.4)).toBeLessThanOrEqual(0.003)
    expect(off(high ?? 0, 75.4)).toBeLessThanOrEqual(0.003)
    expect(off(0.6 * (high ?? 0) * 10.83 - 16.6, 473.5)).toBeLessThanOrEqual(0.003)
    const wind = { shape: gable('ASCE 7-16', 18), velocityPressurePsf: qh }
    expect(off(windPressurePsf(wind, '1', 10.83, false, 'uplift'), 27.9)).toBeLessThanOrEqual(0.003)
    expect(off(windPressurePsf(wind, '2r', 10.83, true, 'uplift'), 61.8)).toBeLessThanOrEqual(0.003)
    expect(off(windPressurePsf(wind, '3r', 10.83, true, 'uplift'), 74.1)).toBeLessThanOrEqual(0.003)
  })

  // Permit calculation in a city record (2023), exposure B at 15 ft, V 110, A 12.7, gammaE 1.5, D 2.9: printed 238.9 lb, 237.7 recalculated.
  it('follows the exposure B chain', () => {
    expect(off(velocityPressurePsf(site('ASCE 7-16', 'B', 15, 110)), 15.01)).toBeLessThanOrEqual(0.01)
    expect(solarEqualisation(12.7)).toBeCloseTo(0.76, 2)
    const p = 15.01 * 2 * 1.5 * solarEqualisation(12.7)
    expect(off(p, 34.1)).toBeLessThanOrEqual(0.004)
    expect(off(12.7 * (0.6 * p - 0.6 * 2.9), 238.9)).toBeLessThanOrEqual(0.006)
  })

  // Permit calculation in a city record, ASCE 7-10 section 30.5: V 140, B, h 15, slope 7-27, A 10, strength level.
  it.each([
    ['1', 'uplift', 32.3],
    ['2', 'uplift', 56.2],
    ['3', 'uplift', 83.1],
    ['1', 'down', 20.3],
  ] as const)('gives the 7-10 pressure of zone %s %s', (zone, direction, printed) => {
    const wind = {
      shape: gable('ASCE 7-10', 20),
      velocityPressurePsf: velocityPressurePsf(site('ASCE 7-10', 'B', 15, 140)),
    }
    expect(off(windPressurePsf(wind, zone, 10, false, direction), printed)).toBeLessThanOrEqual(0.004)
  })

  // Example 6.2 of the ASCE guide to 7-22 (answers quoted in an independent check report), qh Kd 29.39, with GCpi 0.18.
  it.each([
    ['1', 10, -64.1],
    ['2', 10, -84.7],
    ['3', 10, -111.1],
    ['1', 208, -24.7],
    ['2', 208, -34.7],
    ['3', 208, -58.2],
  ] as const)('gives the 7-22 cladding pressure of zone %s at %s ft2', (zone, area, printed) => {
    const gcp = pressureCoefficient(gable('ASCE 7-22', 20), zone, area, 'uplift')?.value ?? 0
    expect(Math.abs(29.39 * (gcp - 0.18) - printed)).toBeLessThan(0.11)
  })

  // IRC 2018 table R301.2(2), 63 cells (h 30 ft, exposure B, ASD). The print cuts decimals below 180 mph; positives below 10 print as 10, except at 150 mph.
  it.each(readTable('irc2018_r301_2_2_cells'))(
    'IRC $roof_slope_deg zone $zone $eff_area_ft2 ft2 $Vult_mph mph',
    (row) => {
      const { uplift, down } = cladding(row['roof_slope_deg'] ?? '', row['zone'] ?? '', Number(row['eff_area_ft2']))
      const q = velocityPressurePsf(site('ASCE 7-10', 'B', 30, Number(row['Vult_mph'])))
      // Kz is 0.7009 by formula and 0.70 in the table: 0.13 %.
      const [neg, pos] = [0.6 * q * (uplift - 0.18), 0.6 * q * (down + 0.18)]
      expect(Math.abs(neg - Number(row['neg_psf_by_formula']))).toBeLessThan(0.05 + 0.0014 * Math.abs(neg))
      const printedNeg = Number(row['neg_psf_printed'])
      expect(neg).toBeLessThan(printedNeg + 0.16)
      expect(neg).toBeGreaterThan(printedNeg - 1.16)
      const printedPos = Number(row['pos_psf_printed'])
      const shown = printedPos < 10 ? pos : Math.max(10, pos)
      expect(Math.abs(shown - printedPos)).toBeLessThan(0.16)
    },
  )

  // State roof table for 160 mph with height and exposure factors, 24 cells, ASD; the factor's own rounding is 0.3 %.
  it.each(readTable('state_roof_table_160mph_cells'))(
    '160 mph $roof_slope_deg zone $zone $exposure $mean_roof_height_ft',
    (row) => {
      const { uplift } = cladding(row['roof_slope_deg'] ?? '', (row['zone'] ?? '').split(';')[0] ?? '', 10)
      const height = Number((row['mean_roof_height_ft'] ?? '').split(' ')[0])
      const q = velocityPressurePsf(site('ASCE 7-10', row['exposure'] as 'B', height, 160))
      expect(off(0.6 * q * (uplift - 0.18), Number(row['neg_psf_printed']))).toBeLessThanOrEqual(0.006)
    },
  )
})

/** GCp of 7-10 for a table heading; flat roofs, which the stage refuses, straight from the table rows. */
function cladding(slope: string, zone: string, area: number): { uplift: number; down: number } {
  if (slope !== '0-7') {
    const shape: RoofShape = {
      edition: 'ASCE 7-10',
      roofKind: 'gable',
      tiltDeg: slope === '>7-27' ? 20 : 40,
      heightOverWidth: 0.5,
    }
    return {
      uplift: pressureCoefficient(shape, zone, area, 'uplift')?.value ?? Number.NaN,
      down: pressureCoefficient(shape, zone, area, 'down')?.value ?? Number.NaN,
    }
  }
  const at = (direction: 'uplift' | 'down'): number => {
    const row = PRESSURE_COEFFICIENTS.find(
      (r) => r.figure === '30.4-2A' && r.direction === direction && (r.zones === 'all' || r.zones.includes(zone)),
    )
    if (row === undefined) return Number.NaN
    const share = Math.log(area / row.lowAreaFt2) / Math.log(row.highAreaFt2 / row.lowAreaFt2)
    return row.lowCoefficient + (row.highCoefficient - row.lowCoefficient) * share
  }
  return { uplift: at('uplift'), down: at('down') }
}

// Permit calculation in a city record (2023): roof dead 8, live 20, modules 2.9 psf; 64.4 kip becomes 55.2 kip, -14.25 % printed, -14.29 % recalculated.
it('follows a published gravity check of an existing roof', () => {
  const change = gravityChangePct({
    roofAreaFt2: 2300,
    arrayAreaFt2: 538,
    existingDeadPsf: 8,
    livePsf: 20,
    snowPsf: 0,
    arrayDeadPsf: 2.9,
  })
  expect(Math.abs(change + 14.25)).toBeLessThan(0.06)
})
