import { expect, test } from 'vitest'
import { airMass, airMassReader } from '../../src/sun/index.js'

test('the table of the hot loops is within 1 part in 50,000 of the formula from the zenith to the horizon', () => {
  const read = airMassReader()
  for (let i = 0; i <= 9000; i++) {
    const zenithDeg = i / 100
    const exact = airMass(zenithDeg)
    const error = Math.abs(read(zenithDeg, Math.cos((zenithDeg * Math.PI) / 180)) / exact - 1)
    expect(error, `${zenithDeg} degrees`).toBeLessThan(zenithDeg < 80 ? 1e-7 : 2e-5)
  }
})
