import * as fc from '../fast-check.js'
import { describe, expect, it } from 'vitest'
import {
  billAcrossRates,
  computeBill,
  computeSavings,
  readTariff,
  savingsAt,
  savingsCurve,
  spreadMonths,
} from '../../src/money/index.js'
import { LOAD_SHAPES } from '../../src/tables/money/index.js'
import type { Tariff } from '../../src/project/index.js'
import { bell, calendar2025, total } from './hours.js'

const price = fc.integer({ min: 10, max: 600 }).map((mills) => mills / 1000)
const kwh = fc.integer({ min: 0, max: 20_000 }).map((tenths) => tenths / 10)
const months = fc.array(kwh, { minLength: 12, maxLength: 12 })
const peak = fc.integer({ min: 0, max: 60 }).map((tenths) => tenths / 10)
const rounding = fc.constantFrom('line' as const, 'total' as const)
const runs = { numRuns: 15 }

const flatTariff = (usd: number, how: 'line' | 'total'): Tariff => ({
  name: 'R-1 (invented)',
  fixed: { base: { usd_per_month: 9.99 } },
  energy: { all_year: { usd_per_kwh: usd } },
  rounding: how,
})

const tieredTariff = (low: number, high: number): Tariff => ({
  name: 'R-2 (invented)',
  fixed: { base: { usd_per_month: 9.99 } },
  energy: { all_year: { tiers: [{ up_to_kwh_per_month: 500, usd_per_kwh: low }, { usd_per_kwh: high }] } },
  rounding: 'line',
})

describe('bills', () => {
  it('savings never exceed the avoidable part of the bill where exports are unpaid', () => {
    fc.assert(
      fc.property(months, price, peak, (use, usd, peakKwh) => {
        const sheet = readTariff(tieredTariff(usd, usd * 2))
        const energy = {
          kind: 'hourly' as const,
          usageKwh: spreadMonths(use, LOAD_SHAPES['cold-fuelheat-MI'], calendar2025),
          productionKwh: bell(peakKwh),
        }
        const { values } = computeSavings(sheet, energy, calendar2025)
        const avoidable = values.without.total_usd - 12 * 9.99
        expect(values.annual_savings_usd).toBeLessThanOrEqual(avoidable + 1e-9)
        for (const saved of values.monthly_savings_usd) expect(saved).toBeGreaterThanOrEqual(0)
      }),
      runs,
    )
  })

  it('a higher price saves more', () => {
    fc.assert(
      fc.property(months, price, price, peak, (use, a, b, peakKwh) => {
        const usageKwh = spreadMonths(use, 'even', calendar2025)
        const energy = { kind: 'hourly' as const, usageKwh, productionKwh: bell(peakKwh) }
        const saved = (usd: number): number =>
          computeSavings(readTariff(flatTariff(usd, 'line')), energy, calendar2025).values.annual_savings_usd
        // Rounding moves each of the 12 bills by at most half a cent, without and with the system.
        expect(saved(Math.max(a, b))).toBeGreaterThanOrEqual(saved(Math.min(a, b)) - 12 * 0.01 - 1e-9)
      }),
      runs,
    )
  })

  it('a bill split in two adds up within rounding', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 2, max: 60 }),
        fc.integer({ min: 1, max: 59 }),
        kwh,
        price,
        (days, cut, use, usd) => {
          const at = Math.min(cut, days - 1)
          const sheet = readTariff({
            name: 'R-3 (invented)',
            fixed: { base: { usd_per_day: 0.3077 } },
            energy: { all_year: { tiers: [{ up_to_kwh_per_day: 10, usd_per_kwh: usd }, { usd_per_kwh: usd + 0.05 }] } },
            rounding: 'total',
          })
          const date = (n: number): string => new Date(Date.UTC(2025, 0, 1 + n)).toISOString().slice(0, 10)
          const bill = (from: number, to: number): number =>
            billAcrossRates(
              [{ from: '2024-01-01', sheet }],
              date(from),
              date(to),
              Math.round(((use * (to - from)) / days) * 1e6) / 1e6,
            ).values.total_usd
          expect(Math.abs(bill(0, at) + bill(at, days) - bill(0, days))).toBeLessThanOrEqual(0.015 + 1e-9)
        },
      ),
      runs,
    )
  })

  it('monthly bills reproduce from hourly use, to the cent', () => {
    const names = fc.constantFrom(...Object.values(LOAD_SHAPES), 'even' as const)
    fc.assert(
      fc.property(months, price, price, rounding, names, (use, low, high, how, shape) => {
        const sheet = readTariff({ ...tieredTariff(low, high), rounding: how })
        const hours = spreadMonths(use, shape, calendar2025)
        const fromHours = computeBill(sheet, { kind: 'hourly', usageKwh: hours }, calendar2025).values
        const fromMonths = computeBill(sheet, { kind: 'monthly', usageKwh: use }, calendar2025).values
        expect(fromHours.bills.map((bill) => bill.total_usd)).toEqual(fromMonths.bills.map((bill) => bill.total_usd))
      }),
      runs,
    )
  })

  it('every total is the sum of its lines', () => {
    fc.assert(
      fc.property(months, price, rounding, peak, (use, usd, how, peakKwh) => {
        const tariff: Tariff = {
          ...flatTariff(usd, how),
          taxes: { city: { percent: 3.7 } },
          solar: {
            net_billing: {
              netting: 'hour',
              export_usd_per_kwh: usd / 2,
              credit: { offsets: 'all', settle: 'annual', true_up_month: 3, paid_out_pct: 50 },
            },
          },
        }
        const energy = {
          kind: 'hourly' as const,
          usageKwh: spreadMonths(use, 'even', calendar2025),
          productionKwh: bell(peakKwh),
        }
        for (const bill of computeBill(readTariff(tariff), energy, calendar2025).values.bills) {
          const sum = bill.lines.reduce((all, line) => all + line.amount_usd, 0)
          expect(Math.abs(sum - bill.total_usd)).toBeLessThanOrEqual(how === 'line' ? 1e-9 : 0.005 + 1e-9)
        }
      }),
      runs,
    )
  })

  it('energy is neither made nor lost: use = import + generation - export', () => {
    fc.assert(
      fc.property(months, peak, (use, peakKwh) => {
        const usageKwh = spreadMonths(use, LOAD_SHAPES['warm-coast-CA'], calendar2025)
        const values = computeBill(
          readTariff(flatTariff(0.1, 'line')),
          { kind: 'hourly', usageKwh, productionKwh: bell(peakKwh) },
          calendar2025,
        ).values
        expect(values.import_kwh + values.generation_kwh - values.export_kwh).toBeCloseTo(total(usageKwh), 5)
      }),
      runs,
    )
  })
})

describe('savings curve', () => {
  it('is exact at its nodes and within 0.1 % between them', () => {
    const sheet = readTariff({
      ...tieredTariff(0.1, 0.3),
      solar: {
        net_billing: {
          netting: 'hour',
          export_usd_per_kwh: 0.04,
          credit: { offsets: 'all', settle: 'annual', true_up_month: 3 },
        },
      },
    })
    const usageKwh = spreadMonths(
      Array.from<number>({ length: 12 }).fill(800),
      LOAD_SHAPES['cold-fuelheat-MI'],
      calendar2025,
    )
    const curve = savingsCurve({
      sheet,
      energy: { kind: 'hourly', usageKwh, productionKwh: bell(5) },
      calendar: calendar2025,
      extraScales: [0.9137],
    })
    const direct = (scale: number): number =>
      computeSavings(
        sheet,
        { kind: 'hourly', usageKwh, productionKwh: bell(5).map((kwh) => kwh * scale) },
        calendar2025,
      ).values.annual_savings_usd
    for (const scale of [0.3, 0.9137, 1, 1.5]) expect(savingsAt(curve, scale)).toBeCloseTo(direct(scale), 2)
    for (const scale of [0.42, 0.777, 0.983, 1.234])
      expect(Math.abs(savingsAt(curve, scale) / direct(scale) - 1)).toBeLessThan(0.001)
  })
})
