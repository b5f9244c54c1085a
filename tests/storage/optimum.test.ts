import { createRequire } from 'node:module'
import { describe, expect, test } from 'vitest'
import { dispatch, leastCost, type PlanLimits } from '../../src/storage/index.js'
import { RandomSource } from '../../src/values/index.js'
import { randomDay, type RandomDay } from './random-day.js'

// The optimum is held against a general solver of linear programmes that knows nothing of batteries.

/** The solver; its types are those of a CommonJS module, which an import does not call. */
const loadSolver = createRequire(import.meta.url)('highs') as () => Promise<{
  solve(programme: string): { readonly Status: string; readonly ObjectiveValue: number }
}>

interface Case extends RandomDay {
  readonly buyUsd: Float64Array
  readonly sellUsd: Float64Array
  readonly limits: PlanLimits
}

function randomCase(random: RandomSource, steps: number): Case {
  const day = randomDay(random, steps)
  const buyUsd = Float64Array.from({ length: steps }, () => 0.05 + 0.4 * random.uniform())
  const sellUsd = buyUsd.map((usd) => usd * random.uniform())
  const { chargeFrom, batteryExport, exportCapKw } = day.control
  const limits = { chargeFrom, batteryExport, ...(exportCapKw === undefined ? {} : { exportCapKw }) }
  return { ...day, buyUsd, sellUsd, limits }
}

/** The linear programme of a case in the words of a file format for solvers. */
function programme({ house, battery, limits, buyUsd, sellUsd, startKwh }: Case): string {
  const { stepH, loadKwh, pvKwh } = house
  const n = (value: number): string => value.toFixed(12)
  const cost: string[] = []
  const rows: string[] = []
  const bounds: string[] = []
  for (const [i, load] of loadKwh.entries()) {
    const pv = pvKwh[i] ?? 0
    const sun = Math.max(0, pv)
    const need = load + battery.standbyKw * stepH - pv
    const k = String(i)
    cost.push(`${n(buyUsd[i] ?? 0)} imp${k} - ${n(sellUsd[i] ?? 0)} exp${k}`)
    // s: charged from the sun, g: from the grid, d: given out, w: thrown away, e: stored at the end.
    rows.push(`imp${k} - exp${k} - s${k} - g${k} + d${k} - w${k} = ${n(need)}`)
    const before = i === 0 ? '' : ` - e${String(i - 1)}`
    rows.push(
      `e${k}${before} - ${n(battery.storedOfSun)} s${k} - ${n(battery.storedOfGrid)} g${k} + ${n(1 / battery.givenOfStored)} d${k} = ${n(i === 0 ? startKwh : 0)}`,
    )
    rows.push(`${n(1 / battery.chargeSunKw)} s${k} + ${n(1 / battery.chargeGridKw)} g${k} <= ${n(stepH)}`)
    const surplus = Math.max(0, -need)
    bounds.push(`0 <= s${k} <= ${n(limits.chargeFrom === 'surplus' ? surplus : sun)}`)
    bounds.push(limits.chargeFrom === 'any' ? `g${k} >= 0` : `g${k} = 0`)
    const shared = battery.sharedAcKw === undefined ? Infinity : Math.max(0, battery.sharedAcKw * stepH - sun)
    const toHouse = limits.batteryExport ? Infinity : Math.max(0, need)
    bounds.push(`0 <= d${k} <= ${n(Math.min(battery.dischargeKw * stepH, shared, toHouse))}`)
    bounds.push(`0 <= w${k} <= ${n(sun)}`)
    bounds.push(`${n(battery.leastKwh)} <= e${k} <= ${n(battery.mostKwh)}`)
    bounds.push(limits.exportCapKw === undefined ? `exp${k} >= 0` : `0 <= exp${k} <= ${n(limits.exportCapKw * stepH)}`)
  }
  return `Minimize\n obj: ${cost.join('\n + ')}\nSubject To\n${rows.map((row, r) => ` r${String(r)}: ${row}`).join('\n')}\nBounds\n${bounds.join('\n')}\nEnd\n`
}

const least = (one: Case): number => leastCost(one.house, one.battery, one, one.limits, one.startKwh) ?? NaN

describe('the least cost', () => {
  test('is that of a general solver on 60 random days', async () => {
    const solver = await loadSolver()
    const random = new RandomSource(99)
    for (let i = 0; i < 60; i++) {
      const one = randomCase(random, 12)
      const solved = solver.solve(programme(one))
      expect(solved.Status).toBe('Optimal')
      expect(Math.abs(least(one) - solved.ObjectiveValue)).toBeLessThan(1e-6)
    }
  })

  test('is never above what any control pays', () => {
    const random = new RandomSource(5)
    for (let i = 0; i < 500; i++) {
      const one = randomCase(random, 24)
      const flows = dispatch(one.house, one.battery, one.control, one.startKwh)
      const paid = flows.importKwh.reduce(
        (usd, kwh, h) => usd + kwh * (one.buyUsd[h] ?? 0) - (flows.exportKwh[h] ?? 0) * (one.sellUsd[h] ?? 0),
        0,
      )
      expect(least(one)).toBeLessThanOrEqual(paid + 1e-9)
    }
  })

  test('falls with size, power and efficiency, and rises with the reserve', () => {
    const random = new RandomSource(13)
    for (let i = 0; i < 150; i++) {
      const one = randomCase(random, 24)
      const { battery } = one
      const at = (other: Partial<typeof battery>): number => least({ ...one, battery: { ...battery, ...other } })
      const own = at({})
      expect(at({ mostKwh: battery.mostKwh + 1 })).toBeLessThanOrEqual(own + 1e-9)
      expect(at({ dischargeKw: battery.dischargeKw + 1 })).toBeLessThanOrEqual(own + 1e-9)
      expect(at({ givenOfStored: Math.min(1, battery.givenOfStored * 1.05) })).toBeLessThanOrEqual(own + 1e-9)
      expect(at({ leastKwh: (battery.leastKwh + Math.min(one.startKwh, battery.mostKwh)) / 2 })).toBeGreaterThanOrEqual(
        own - 1e-9,
      )
    }
  })

  test('is not worked out where exports pay more than imports cost', () => {
    const one = randomCase(new RandomSource(3), 4)
    expect(least({ ...one, sellUsd: one.buyUsd.map((usd) => usd * 1.1) })).toBeNaN()
    expect(least({ ...one, sellUsd: one.buyUsd.map(() => -0.01) })).toBeNaN()
  })
})
