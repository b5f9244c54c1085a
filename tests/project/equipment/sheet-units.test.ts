import { describe, expect, test } from 'vitest'
import { fromSheetUnit, splitQuantity } from '../../../src/project/equipment/sheet-units.js'

describe('units of data sheets', () => {
  /**
   * Factors of NIST Special Publication 811 (2008), appendix B.8, to the digits that it prints, turned round where it goes
   * the other way: in 2.54 cm, lb 4.535 924 E-01 kg, lbf 4.448 222 N, psf 4.788 026 E+01 Pa, psi 6.894 757 E+03 Pa,
   * lbf-in 1.129 848 E-01 N m, lb/ft 1.488 164 kg/m, lbf/in 1.751 268 E+02 N/m (from memory).
   */
  test.each([
    [254, 'mm', 'in', 10],
    [25.4, 'cm', 'in', 10],
    [2.54, 'm', 'in', 100],
    [2, 'ft', 'in', 24],
    [3.048, 'm', 'ft', 10],
    [18, 'in', 'ft', 1.5],
    [304.8, 'mm', 'ft', 1],
    [0.4535924, 'kg', 'lb', 1],
    [4.448222, 'N', 'lb', 1],
    [4.448222, 'kN', 'lb', 1000],
    [47.88026, 'Pa', 'psf', 1],
    [4.788026, 'kPa', 'psf', 100],
    [6.894757, 'MPa', 'ksi', 1],
    [1000, 'psi', 'ksi', 1],
    [0.1129848, 'Nm', 'lb-in', 1],
    [0.1129848, 'N·m', 'lb-in', 1],
    [10, 'lb-ft', 'lb-in', 120],
    [1.488164, 'kg/m', 'lb per ft', 1],
    [0.1751268, 'N/mm', 'lb per in', 1],
    [645.16, 'mm2', 'in2', 1],
    [6.4516, 'cm²', 'in2', 1],
    [16.38706, 'cm3', 'in3', 1],
    [41.62314, 'cm4', 'in4', 1],
    [416231.4, 'mm4', 'in4', 1],
    [0.4, 'kW', 'W', 400],
    [-100, 'mV/K', 'V per deg C', -0.1],
    [-0.34, '%/°C', '% per deg C', -0.34],
    [113, 'F', 'deg C', 45],
    [-40, '°F', 'deg C', -40],
    [1, 'ohm/km', 'ohm per 1000 ft', 0.3048],
  ])('%f %s in %s', (value, from, to, expected) => {
    expect(fromSheetUnit(value, from, to)).toBeCloseTo(expected, 4)
  })

  test('another kind of unit is none', () => {
    expect(fromSheetUnit(1, 'kg', 'in')).toBeUndefined()
    expect(fromSheetUnit(1, 'constructor', 'in')).toBeUndefined()
    expect(fromSheetUnit(1, 'mm', '')).toBeUndefined()
    expect(fromSheetUnit(1, 'mm', 'constructor')).toBeUndefined()
  })

  test('what a person types', () => {
    expect(splitQuantity(' 1722 mm ')).toEqual({ value: 1722, unit: 'mm' })
    expect(splitQuantity('-0.27%/°C')).toEqual({ value: -0.27, unit: '%/°C' })
    expect(splitQuantity('.5kg')).toEqual({ value: 0.5, unit: 'kg' })
    for (const text of ['31.9', '-0.34', '1e3', '5/16', 'mm', '1 2', '']) expect(splitQuantity(text)).toBeUndefined()
  })
})
