import { describe, expect, test } from 'vitest'
import { makeCalendar } from '../../src/money/calendar/index.js'
import { essentialOf, readBattery, readControl, storagePart } from '../../src/money/storage/index.js'
import { Worksheet } from '../../src/worksheet/index.js'
import type { RateSheet } from '../../src/money/index.js'
import { dispatch, type Battery } from '../../src/storage/index.js'

// What windows and loads mean was counted by hand on a calendar of 2026, whose 1 January is a Thursday and a holiday here.
const calendar = makeCalendar('2026-01-01', true)
const sheet = { holidays: ['new_year'], observed: 'none' } as unknown as RateSheet
const count = (marks: Uint8Array = new Uint8Array()): number => marks.reduce((all, mark) => all + mark, 0)
/** Hour of the year of a day (0 = 1 January) and an hour of standard time. */
const at = (day: number, hour: number): number => day * 24 + hour

describe('windows by clock, kind of day and month', () => {
  test('weekdays leave weekends and holidays out', () => {
    const window = { days: ['weekdays' as const], from_hour: 16, to_hour: 21, months: [1] }
    const { discharge } = readControl({ discharge_windows: [window] }, sheet, calendar)
    // January 2026 has 22 weekdays, less New Year.
    expect(count(discharge)).toBe(21 * 5)
    expect([15, 16, 20, 21].map((hour) => discharge?.[at(1, hour)])).toEqual([0, 1, 1, 0])
    expect([0, 2, 3].map((day) => discharge?.[at(day, 18)])).toEqual([0, 0, 0])
  })

  test('clock time moves against standard time in summer', () => {
    const window = { days: ['every_day' as const], from_hour: 16, to_hour: 21 }
    const { discharge } = readControl({ discharge_windows: [window] }, sheet, calendar)
    const july = 181
    expect([14, 15, 19, 20].map((hour) => discharge?.[at(july, hour)])).toEqual([0, 1, 1, 0])
    expect(count(discharge)).toBe(365 * 5)
  })

  test('a window over midnight and one of a whole day', () => {
    const night = { days: ['every_day' as const], from_hour: 22, to_hour: 6 }
    const day = { days: ['holidays' as const], from_hour: 0, to_hour: 24 }
    const control = readControl(
      { charge_from: 'any', grid_charge_windows: [night], discharge_windows: [day] },
      sheet,
      calendar,
    )
    expect([21, 22, 23, 0, 5, 6].map((hour) => control.charge?.[at(10, hour)])).toEqual([0, 1, 1, 1, 1, 0])
    expect(count(control.discharge)).toBe(24)
    expect(control.chargeFrom).toBe('any')
  })

  test('an event and the hours before it', () => {
    const event = { date: '01-15', from_hour: 16, to_hour: 20, charge_hours: 3 }
    const control = readControl({ events: [event] }, sheet, calendar)
    expect([...(control.event ?? [])].flatMap((mark, h) => (mark === 1 ? [h] : []))).toEqual(
      [16, 17, 18, 19].map((h) => at(14, h)),
    )
    expect([...(control.beforeEvent ?? [])].flatMap((mark, h) => (mark === 1 ? [h] : []))).toEqual(
      [13, 14, 15].map((h) => at(14, h)),
    )
    const long = readControl({ events: [{ date: '01-15', from_hour: 4, to_hour: 20 }] }, sheet, calendar)
    expect(count(long.beforeEvent)).toBe(12)
    expect(long.beforeEvent?.[at(13, 16)]).toBe(1)
  })
})

describe('rules that decide before own use', () => {
  const battery: Battery = {
    mostKwh: 6,
    leastKwh: 0,
    chargeSunKw: 3,
    chargeGridKw: 3,
    dischargeKw: 3,
    storedOfSun: 1,
    storedOfGrid: 1,
    givenOfStored: 1,
    standbyKw: 0,
  }
  const house = (...net: number[]) => ({
    stepH: 1,
    loadKwh: Float64Array.from(net, (kwh) => Math.max(0, kwh)),
    pvKwh: Float64Array.from(net, (kwh) => Math.max(0, -kwh)),
  })
  const marks = (...values: number[]): Uint8Array => Uint8Array.from(values)

  test('before an event it fills from the grid and holds, and in it serves the house', () => {
    const control = {
      chargeFrom: 'any' as const,
      batteryExport: false,
      beforeEvent: marks(1, 1, 1, 0, 0),
      event: marks(0, 0, 0, 1, 1),
    }
    const flows = dispatch(house(1, 1, 1, 2, -1), battery, control, 0)
    expect([...flows.chargeKwh]).toEqual([3, 3, 0, 0, 1])
    expect([...flows.dischargeKwh]).toEqual([0, 0, 0, 2, 0])
    expect([...flows.importKwh]).toEqual([4, 4, 1, 0, 0])
  })

  test('an event goes before a limit of demand and before windows', () => {
    const event = marks(1, 0)
    const shy = { chargeFrom: 'surplus' as const, batteryExport: false, event, beforeEvent: marks(0, 0) }
    expect([...dispatch(house(2, 2), battery, { ...shy, demandLimitKw: 1.5 }, 6).dischargeKwh]).toEqual([2, 0.5])
    expect([...dispatch(house(2, 2), battery, { ...shy, discharge: marks(0, 0) }, 6).dischargeKwh]).toEqual([2, 0])
  })

  test('before an event it holds even when it may not charge from the grid', () => {
    const control = { chargeFrom: 'surplus' as const, batteryExport: false, beforeEvent: marks(1), event: marks(0) }
    expect([...dispatch(house(2), battery, control, 4).dischargeKwh]).toEqual([0])
  })

  test('a limit of demand: above it the battery gives, below it the grid fills it up to the limit', () => {
    const control = { chargeFrom: 'any' as const, batteryExport: false, demandLimitKw: 2 }
    const flows = dispatch(house(5, 1, 2), battery, control, 6)
    expect([...flows.importKwh]).toEqual([2, 2, 2])
    const shy = dispatch(house(5, 1, -1), battery, { ...control, chargeFrom: 'surplus' }, 6)
    expect([...shy.importKwh]).toEqual([2, 1, 0])
    expect([...shy.chargeKwh]).toEqual([0, 0, 1])
  })

  test('in a discharge window it goes below the limit of demand', () => {
    const control = { chargeFrom: 'surplus' as const, batteryExport: false, demandLimitKw: 2, discharge: marks(1, 0) }
    expect([...dispatch(house(3, 3), battery, control, 6).importKwh]).toEqual([0, 2])
  })

  test('charging at night keeps the limit of demand', () => {
    const control = { chargeFrom: 'any' as const, batteryExport: false, demandLimitKw: 2, charge: marks(1, 1) }
    expect([...dispatch(house(1, 3), battery, control, 0).importKwh]).toEqual([2, 2])
  })

  test('battery export: full power into the grid, up to the cap', () => {
    const control = { chargeFrom: 'surplus' as const, batteryExport: true, discharge: marks(1, 1, 0) }
    expect([...dispatch(house(1, 1, 1), battery, control, 6).exportKwh]).toEqual([2, 2, 0])
    const capped = dispatch(house(1, 1, 1), battery, { ...control, exportCapKw: 0.5 }, 6)
    expect([...capped.exportKwh]).toEqual([0.5, 0.5, 0])
    expect([...capped.curtailedKwh]).toEqual([0, 0, 0])
  })

  test('sun first, and the rest of the power from the grid', () => {
    const sunny = { stepH: 1, loadKwh: Float64Array.of(0), pvKwh: Float64Array.of(1.5) }
    const unit = { ...battery, storedOfSun: 1, storedOfGrid: 0.9, chargeGridKw: 4 }
    const control = { chargeFrom: 'any' as const, batteryExport: false, charge: marks(1) }
    const flows = dispatch(sunny, unit, control, 0)
    // Half of the converter is taken by the sun; the other half is 2 kW of the grid.
    expect(flows.chargeKwh[0]).toBeCloseTo(3.5, 12)
    expect(flows.storedKwh[0]).toBeCloseTo(1.5 + 2 * 0.9, 12)
  })
})

describe('a unit on the DC side of a shared inverter, seen from the AC side', () => {
  const storage = { unit: 'b', count: 1, reserve_pct: 10 }
  const unit = {
    coupling: 'dc' as const,
    usable_kwh: 10,
    charge_kw: 5,
    discharge_kw: 5,
    charge_efficiency_pct: 98,
    discharge_efficiency_pct: 97,
    inverter_efficiency_pct: 96,
    inverter_ac_kw: 7.6,
    standby_w: 10,
  }

  test('the sun saves the inverter, the grid pays it twice', () => {
    const worked = readBattery(storagePart(storage, { b: unit }), new Worksheet())
    // 5 kW of DC are 4.8 kW that the house misses; for 5 kW of DC from the grid 5 / 0.96 are drawn.
    expect(worked.chargeSunKw).toBeCloseTo(4.8, 12)
    expect(worked.chargeGridKw).toBeCloseTo(5 / 0.96, 12)
    expect(worked.dischargeKw).toBeCloseTo(4.8, 12)
    expect(worked.storedOfSun).toBeCloseTo(0.98 / 0.96, 12)
    expect(worked.storedOfGrid).toBeCloseTo(0.98 * 0.96, 12)
    expect(worked.givenOfStored).toBeCloseTo(0.97 * 0.96, 12)
    expect(worked.sharedAcKw).toBe(7.6)
    expect(worked.leastKwh).toBe(1)
  })
})

describe('essential loads', () => {
  test('one by one: energy by the hour, all at once for the peak, the largest start on top', () => {
    const essential = essentialOf({
      kind: 'critical_loads_panel',
      loads: {
        fridge: { w: 150, hours_per_day: 12, surge_w: 1000 },
        lights: { w: 100, from_hour: 22, to_hour: 2 },
        network: { w: 40 },
        pump: { w: 800, hours_per_day: 3, surge_w: 3000, locked_rotor_a: 30 },
      },
    })
    expect(essential?.kwhOfHour[12]).toBeCloseTo(0.075 + 0.04 + 0.1, 12)
    expect(essential?.kwhOfHour[23]).toBeCloseTo(0.075 + 0.04 + 0.1 + 0.1, 12)
    expect(essential?.kwhOfHour[2]).toBeCloseTo(0.215, 12)
    expect(essential?.peakW).toBe(1090)
    expect(essential?.surgeW).toBe(1090 + 2200)
    expect(essential?.lockedRotorA).toBe(30)
  })

  test('as a sum', () => {
    const essential = essentialOf({ kind: 'whole_house', essential: { avg_w: 480, peak_w: 2000 } })
    expect(essential?.kwhOfHour.reduce((a, b) => a + b, 0)).toBeCloseTo(11.52, 12)
    expect(essential?.surgeW).toBeUndefined()
  })
})
