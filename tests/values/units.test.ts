import { describe, expect, test } from 'vitest'
import {
  degreesOf,
  feetOf,
  inchesOf,
  pitchIn12Of,
  poundFeetOf,
  radiansOf,
  type Amperes,
  type Celsius,
  type Degrees,
  type Dollars,
  type Feet,
  type Inches,
  type Kelvins,
  type KilowattHours,
  type Pounds,
  type PoundsPerSquareFoot,
  type Radians,
  type Volts,
  type Watts,
} from '../../src/values/index.js'

describe('units', () => {
  test('one unit does not compile where another is wanted', () => {
    const lengthFt: Feet = 3
    const angleDeg: Degrees = 30
    const roomC: Celsius = 20
    const weightLb: Pounds = 20
    const currentA: Amperes = 20
    const powerW: Watts = 20
    const energyKwh: KilowattHours = 20
    // @ts-expect-error feet are no inches
    const lengthIn: Inches = lengthFt
    // @ts-expect-error degrees are no radians
    const angleRad: Radians = angleDeg
    // @ts-expect-error a temperature is no difference of two
    const differenceK: Kelvins = roomC
    // @ts-expect-error a force is no pressure
    const psf: PoundsPerSquareFoot = weightLb
    // @ts-expect-error amperes are no volts
    const volts: Volts = currentA
    // @ts-expect-error watts are no energy
    const kwh: KilowattHours = powerW
    // @ts-expect-error energy is no money
    const usd: Dollars = energyKwh
    // @ts-expect-error inches go into the conversion to feet, not feet
    feetOf(lengthFt)
    // At run time they are plain numbers.
    expect([lengthIn, angleRad, differenceK, psf, volts, kwh, usd]).toEqual([3, 30, 20, 20, 20, 20, 20])
  })

  test('a bare number and a product take any unit', () => {
    const one: Feet = 2
    const area: number = one * one
    const back: Inches = area
    expect(back).toBe(4)
  })

  test('conversions', () => {
    expect(inchesOf(2.5)).toBe(30)
    expect(feetOf(30)).toBe(2.5)
    expect(poundFeetOf(144)).toBe(12)
    expect(radiansOf(180)).toBe(Math.PI)
    expect(degreesOf(Math.PI / 2)).toBe(90)
    // A roof of 12 in 12 has 45 degrees.
    expect(pitchIn12Of(45)).toBeCloseTo(12, 12)
  })
})
