import { expect, test } from 'vitest'
import { dispatch } from '../../src/storage/index.js'
import { RandomSource } from '../../src/values/index.js'
import { randomDay } from './random-day.js'

// The laws are those of energy and of the stated limits; the days are drawn by seed.
test('5,000 random days: energy is conserved in every step, and no limit is passed', () => {
  const random = new RandomSource(20_261)
  const near = 1e-9
  const broken: string[] = []
  for (let day = 0; day < 5000; day++) {
    const { house, battery, control, startKwh } = randomDay(random)
    const flows = dispatch(house, battery, control, startKwh)
    const { stepH } = house
    let before = startKwh
    const want = (holds: boolean, what: string, i: number): void => {
      if (!holds) broken.push(`day ${String(day)}, step ${String(i)}: ${what}`)
    }
    for (let i = 0; i < house.loadKwh.length; i++) {
      const [load, pv] = [house.loadKwh[i] ?? NaN, house.pvKwh[i] ?? NaN]
      const [drawn, sent, thrown] = [flows.importKwh[i] ?? NaN, flows.exportKwh[i] ?? NaN, flows.curtailedKwh[i] ?? NaN]
      const [c, d, e] = [flows.chargeKwh[i] ?? NaN, flows.dischargeKwh[i] ?? NaN, flows.storedKwh[i] ?? NaN]
      const standby = battery.standbyKw * stepH
      const sun = Math.max(0, pv)
      want(Math.abs(drawn - sent - (load + standby - (pv - thrown) + c - d)) < near, 'balance of the house', i)
      // What the sun gives counts first, with its own share stored.
      const fromSun = Math.min(c, sun)
      const most =
        before + fromSun * battery.storedOfSun + (c - fromSun) * battery.storedOfGrid - d / battery.givenOfStored
      const least = before + c * battery.storedOfGrid - d / battery.givenOfStored
      want(e < most + near && e > least - near, 'balance of the store', i)
      want(!(c > 0 && d > 0) && !(drawn > 0 && sent > 0), 'both ways in one step', i)
      want(c >= 0 && d >= 0 && drawn >= 0 && sent >= 0 && thrown >= 0, 'below zero', i)
      want(d <= battery.dischargeKw * stepH + near, 'power out', i)
      want(c <= Math.max(battery.chargeSunKw, battery.chargeGridKw) * stepH + near, 'power in', i)
      want(e >= battery.leastKwh - near && e <= battery.mostKwh + near, 'energy', i)
      want(thrown <= sun + near, 'more thrown away than there is', i)
      if (control.exportCapKw !== undefined) want(sent <= control.exportCapKw * stepH + near, 'export cap', i)
      const surplus = Math.max(0, pv - load - standby)
      if (control.chargeFrom === 'surplus') want(c <= surplus + near, 'charged from the grid', i)
      if (control.chargeFrom === 'pv') want(c <= Math.max(surplus, sun) + near, 'charged beyond the output', i)
      if (!control.batteryExport) want(d <= Math.max(0, load + standby - pv) + near, 'battery export', i)
      if (battery.sharedAcKw !== undefined && d > 0)
        want(d + sun <= battery.sharedAcKw * stepH + near, 'shared inverter', i)
      if (control.demandLimitKw !== undefined && c > 0)
        want(drawn <= Math.max(control.demandLimitKw * stepH, load + standby - pv) + near, 'limit of demand', i)
      before = e
    }
  }
  expect(broken.slice(0, 5)).toEqual([])
})

test('a lossless battery conserves energy over a day', () => {
  const random = new RandomSource(7)
  for (let day = 0; day < 200; day++) {
    const { house, battery, control, startKwh } = randomDay(random)
    const lossless = { ...battery, storedOfSun: 1, storedOfGrid: 1, givenOfStored: 1 }
    const { chargeKwh, dischargeKwh, storedKwh } = dispatch(house, lossless, control, startKwh)
    const total = (values: Float64Array): number => values.reduce((a, b) => a + b, 0)
    expect(total(chargeKwh)).toBeCloseTo(total(dischargeKwh) + (storedKwh.at(-1) ?? NaN) - startKwh, 9)
  }
})

test('load, output, battery and power together scale all energies', () => {
  const random = new RandomSource(11)
  for (let day = 0; day < 100; day++) {
    const { house, battery, control, startKwh } = randomDay(random)
    const twice = (values: Float64Array): Float64Array => values.map((kwh) => 2 * kwh)
    const large = {
      ...battery,
      mostKwh: 2 * battery.mostKwh,
      leastKwh: 2 * battery.leastKwh,
      chargeSunKw: 2 * battery.chargeSunKw,
      chargeGridKw: 2 * battery.chargeGridKw,
      dischargeKw: 2 * battery.dischargeKw,
      standbyKw: 2 * battery.standbyKw,
      ...(battery.sharedAcKw === undefined ? {} : { sharedAcKw: 2 * battery.sharedAcKw }),
    }
    const wide = {
      ...control,
      ...(control.demandLimitKw === undefined ? {} : { demandLimitKw: 2 * control.demandLimitKw }),
      ...(control.exportCapKw === undefined ? {} : { exportCapKw: 2 * control.exportCapKw }),
    }
    const one = dispatch(house, battery, control, startKwh)
    const two = dispatch(
      { ...house, loadKwh: twice(house.loadKwh), pvKwh: twice(house.pvKwh) },
      large,
      wide,
      2 * startKwh,
    )
    for (const key of ['importKwh', 'exportKwh', 'curtailedKwh', 'storedKwh'] as const)
      for (const [i, kwh] of one[key].entries()) expect(two[key][i]).toBeCloseTo(2 * kwh, 9)
  }
})
