import { describe, expect, test } from 'vitest'
import {
  dispatch,
  leastCost,
  OWN_USE,
  type Battery,
  type Control,
  type StorageFlows,
  yearOfUse,
} from '../../src/storage/index.js'
import { loadOf, NIGHT, PEAK, pvOf, sum } from './annual-house.js'

// Cases S1 to S6 were solved by hand and R1 to R6 by formula, each checked with a linear programme outside the project.

const battery = (stated: Partial<Battery> & { powerKw: number; each?: number }): Battery => {
  const { powerKw, each = 1, ...rest } = stated
  return {
    mostKwh: 8,
    leastKwh: 0,
    chargeSunKw: powerKw,
    chargeGridKw: powerKw,
    dischargeKw: powerKw,
    storedOfSun: each,
    storedOfGrid: each,
    givenOfStored: each,
    standbyKw: 0,
    ...rest,
  }
}

const bill = (flows: StorageFlows, buy: (i: number) => number, sell: number): number =>
  flows.importKwh.reduce((usd, kwh, i) => usd + kwh * buy(i) - (flows.exportKwh[i] ?? 0) * sell, 0)

/** Use above zero and output below zero of each hour, one after the other. */
const house = (...net: number[]) => ({
  stepH: 1,
  loadKwh: Float64Array.from(net, (kwh) => Math.max(0, kwh)),
  pvKwh: Float64Array.from(net, (kwh) => Math.max(0, -kwh)),
})
const prices = (count: number, buy: (i: number) => number, sell: number) => ({
  buyUsd: Float64Array.from({ length: count }, (_, i) => buy(i)),
  sellUsd: new Float64Array(count).fill(sell),
})
const FREE = { chargeFrom: 'any', batteryExport: true } as const

describe('cases solved by hand', () => {
  test('S1: a lossless battery takes two surpluses', () => {
    const steps = house(-3, -1, 3)
    const flows = dispatch(steps, battery({ mostKwh: 4, powerKw: 2 }), OWN_USE, 0)
    expect([...flows.chargeKwh]).toEqual([2, 1, 0])
    expect([...flows.exportKwh]).toEqual([1, 0, 0])
    expect([...flows.dischargeKwh]).toEqual([0, 0, 2])
    expect([...flows.importKwh]).toEqual([0, 0, 1])
    expect(flows.storedKwh[2]).toBe(1)
    expect(bill(flows, () => 0.2, 0.05)).toBeCloseTo(0.15, 12)
    expect(bill(dispatch(steps, battery({ mostKwh: 0, powerKw: 0 }), OWN_USE, 0), () => 0.2, 0.05)).toBeCloseTo(0.4, 12)
    const least = leastCost(
      steps,
      battery({ mostKwh: 4, powerKw: 2 }),
      prices(3, () => 0.2, 0.05),
      FREE,
      0,
    )
    expect(least).toBeCloseTo(0.1, 12)
  })

  test('S2: losses both ways, the size binds', () => {
    const flows = dispatch(house(-5, 5), battery({ mostKwh: 4, powerKw: 5, each: 0.9 }), OWN_USE, 0)
    expect(flows.chargeKwh[0]).toBeCloseTo(4 / 0.9, 12)
    expect(flows.exportKwh[0]).toBeCloseTo(5 - 4 / 0.9, 12)
    expect(flows.dischargeKwh[1]).toBeCloseTo(3.6, 12)
    expect(flows.importKwh[1]).toBeCloseTo(1.4, 12)
    expect(bill(flows, () => 0.3, 0.1)).toBeCloseTo(0.3644, 4)
  })

  test.each([
    [10, 6, 4.86, 1.056],
    [4, 4.4444, 3.6, 1.4044],
  ])('S3: charging at night, %d kWh', (mostKwh, charged, given, usd) => {
    const control: Control = {
      chargeFrom: 'any',
      batteryExport: false,
      charge: Uint8Array.of(1, 1, 0, 0),
      discharge: Uint8Array.of(0, 0, 1, 1),
    }
    const flows = dispatch(house(0, 0, 3, 3), battery({ mostKwh, powerKw: 3, each: 0.9 }), control, 0)
    expect(sum(flows.chargeKwh)).toBeCloseTo(charged, 4)
    expect(sum(flows.dischargeKwh)).toBeCloseTo(given, 10)
    expect(bill(flows, (i) => (i < 2 ? 0.1 : 0.4), 0)).toBeCloseTo(usd, 4)
  })

  test.each([
    [2, 1, 4],
    [3, 1, 3.5],
    [3, 0.9, 3.65],
  ])('S4: least peak with %d kW and %d', (powerKw, given, peakKw) => {
    const peakAt = (demandLimitKw: number): number =>
      Math.max(
        ...dispatch(
          house(2, 6, 4, 1),
          battery({ mostKwh: 3, powerKw, givenOfStored: given }),
          { ...OWN_USE, demandLimitKw },
          3,
        ).importKwh,
      )
    expect(peakAt(peakKw)).toBeCloseTo(peakKw, 10)
    // A lower limit is not reached.
    expect(peakAt(peakKw - 0.01)).toBeGreaterThanOrEqual(peakKw)
  })
})

interface Annual {
  readonly a?: number
  readonly pv?: number
  readonly battery: Battery
  readonly control?: Control
  readonly buy?: (i: number) => number
  readonly sell?: number
  readonly free?: Parameters<typeof leastCost>[3]
  /** import, export, curtailed, charged, discharged, full cycles, bill, least bill. */
  readonly expected: readonly number[]
}
const lossy = battery({ powerKw: 4, each: 0.96, leastKwh: 0.8 })
const ANNUAL: Readonly<Record<string, Annual>> = {
  'R1 no battery': {
    battery: battery({ mostKwh: 0, powerKw: 4 }),
    expected: [3349.5357, 7298.865, 0, 0, 0, 0, 243.9711, 243.9711],
  },
  'R2 lossless': {
    battery: battery({ powerKw: 4 }),
    expected: [637.6773, 4587.0066, 0, 2711.8584, 2711.8584, 338.9823, -81.4519, -81.4519],
  },
  'R3 losses, reserve, standby': {
    battery: { ...lossy, standbyKw: 0.02 },
    expected: [988.1577, 4552.8785, 0, 2671.028, 2461.6194, 320.5234, -24.0099, -24.0099],
  },
  'R4 discharge in peak hours only': {
    battery: lossy,
    control: { ...OWN_USE, discharge: PEAK },
    buy: (i) => (PEAK[i] === 1 ? 0.36 : 0.18),
    free: { chargeFrom: 'pv', batteryExport: false },
    expected: [2327.8898, 6189.7821, 0, 1109.0828, 1021.6459, 133.0268, 173.97, -20.1573],
  },
  'R5 no export': {
    battery: { ...lossy, chargeSunKw: 2, chargeGridKw: 2, dischargeKw: 2 },
    control: { ...OWN_USE, exportCapKw: 0 },
    sell: 0,
    free: { ...FREE, exportCapKw: 0 },
    expected: [906.8781, 0, 4648.4119, 2650.4531, 2442.6575, 318.0544, 145.1005, 145.1005],
  },
  'R6 charge at night': {
    a: 1.1,
    pv: 4,
    battery: { ...lossy, chargeSunKw: 3, chargeGridKw: 3, dischargeKw: 3 },
    control: { chargeFrom: 'any', batteryExport: false, charge: NIGHT, discharge: PEAK },
    buy: (i) => (PEAK[i] === 1 ? 0.36 : NIGHT[i] === 1 ? 0.1 : 0.18),
    sell: 0.03,
    expected: [4356.7324, 5055.0567, 0, 1377.6224, 1269.6168, 165.3147, 446.8536, 165.8041],
  },
}

describe('annual cases by formula', () => {
  test('the house has the published check sums', () => {
    expect(sum(loadOf(1))).toBeCloseTo(6192.456684, 5)
    expect(sum(pvOf(1))).toBeCloseTo(1904.508065, 5)
    expect(loadOf(1)[4000]).toBeCloseTo(0.825667, 6)
    expect(pvOf(1)[4092]).toBeCloseTo(0.793001, 6)
  })

  test.each(Object.entries(ANNUAL))('%s', (_, one) => {
    const steps = { stepH: 1, loadKwh: loadOf(one.a ?? 0.9), pvKwh: pvOf(one.pv ?? 5) }
    const { battery: unit, control = OWN_USE, buy = () => 0.16, sell = 0.04, expected } = one
    const flows = dispatch(steps, unit, control, unit.leastKwh)
    const least = leastCost(steps, unit, prices(8760, buy, sell), one.free ?? FREE, unit.leastKwh)
    const found = [
      sum(flows.importKwh),
      sum(flows.exportKwh),
      sum(flows.curtailedKwh),
      sum(flows.chargeKwh),
      sum(flows.dischargeKwh),
      yearOfUse(flows, unit, 1, unit.mostKwh).fullCycles,
      bill(flows, buy, sell),
      least ?? Number.NaN,
    ]
    for (const [i, value] of expected.entries()) expect(Math.abs((found[i] ?? NaN) - value)).toBeLessThan(0.01)
  })
})
