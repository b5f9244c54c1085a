import { loadProject } from '../../src/project/index.js'
import { dayModel, kindsOfDay } from '../../src/fieldwork/review/index.js'
import { solarNoonH, type Place } from '../../src/fieldwork/review/daylight.js'
import { dateText } from '../../src/values/time/day-number.js'
import { runYield, type YieldRun } from '../../src/yield/index.js'
import { randomOf } from './random-of.js'

export { randomOf }

export const { project, files } = loadProject({
  path: new URL('../../examples/lark-hollow.yaml', import.meta.url).pathname,
})
export const run: YieldRun = runYield(project, files)
export const model = dayModel(run)
export const place: Place = {
  latitudeDeg: project.site.latitude_deg,
  longitudeDeg: project.site.longitude_deg,
  utcOffsetH: -6,
}
export const DAY_MS = 86_400_000
export const dayOf = (text: string): number => Date.parse(`${text}T00:00:00Z`) / DAY_MS

/** Share of a standard normal below z, by integration. */
export function shareOfNormal(z: number): number {
  // Simpson's rule over the density from -8.
  const steps = 400
  const h = (z + 8) / steps
  const density = (x: number): number => Math.exp((-x * x) / 2) / Math.sqrt(2 * Math.PI)
  let sum = density(-8) + density(z)
  for (let at = 1; at < steps; at += 1) sum += density(-8 + at * h) * (at % 2 === 1 ? 4 : 2)
  return (sum * h) / 3
}

/** Kinds of consecutive days, 0 to 9. */
export function drawKinds(count: number, correlation: number, seed: number): number[] {
  const random = randomOf(seed)
  if (correlation === 0) return Array.from({ length: count }, () => Math.floor(10 * random.uniform()))
  let z = random.normal()
  return Array.from({ length: count }, () => {
    const kind = Math.min(9, Math.floor(10 * shareOfNormal(z)))
    z = correlation * z + Math.sqrt(1 - correlation ** 2) * random.normal()
    return kind
  })
}

export interface Fault {
  readonly shiftH?: number
  /** Share lost a week. */
  readonly soiling?: number
  readonly limitKw?: number
  readonly scale?: number
}

/** Course of a kind of day in the estimate: solar time, h, and power, kW. */
const courses = new Map<string, [number, number][]>()
for (let step = 0; step < run.steps.length; step += 1) {
  const { month, dayType, hour } = run.steps.label(step)
  const key = `${month}/${dayType ?? 0}`
  courses.set(key, [...(courses.get(key) ?? []), [hour, (run.system.acW[step] as number) / 1000]])
}

/** Power of a day at standard time, kW: the course of its kind in the estimate, carried along the season. */
function courseKw(day: number, kind: number): (hour: number) => number {
  const month = new Date(day * DAY_MS).getUTCMonth() + 1
  const points = courses.get(`${month}/${kind + 1}`) ?? []
  const factor = (kindsOfDay(model, day)[9] as number) / (model.kindsKwh[month - 1]?.[9] as number)
  const noon = solarNoonH(day, place)
  return (hour) => {
    const solar = hour - noon + 12
    const after = points.findIndex(([at]) => at > solar)
    const [low, high] = [points[after - 1], points[after]]
    if (low === undefined || high === undefined) return 0
    return (factor * (low[1] * (high[0] - solar) + high[1] * (solar - low[0]))) / (high[0] - low[0])
  }
}

/** An invented table of interval energies, kWh, with stamps at the beginnings in standard time. */
export function intervalCsv(from: string, days: number, stepMin: number, seed: number, fault: Fault = {}): string {
  const kinds = drawKinds(days, 0.29, seed)
  const rows = ['time,energy_kwh']
  kinds.forEach((kind, at) => {
    const day = dayOf(from) + at
    const power = courseKw(day, kind)
    const kept = (fault.scale ?? 1) * (1 - (fault.soiling ?? 0)) ** (at / 7)
    for (let minute = 0; minute < 1440; minute += stepMin) {
      let kwh = 0
      const parts = 4
      for (let part = 0; part < parts; part += 1) {
        const hour = (minute + ((part + 0.5) * stepMin) / parts) / 60 - (fault.shiftH ?? 0)
        kwh += (Math.min(fault.limitKw ?? Infinity, kept * power(hour)) * stepMin) / 60 / parts
      }
      const clock = `${String(Math.floor(minute / 60)).padStart(2, '0')}:${String(minute % 60).padStart(2, '0')}`
      rows.push(`${dateText(day)} ${clock},${kwh.toFixed(4)}`)
    }
  })
  return `${rows.join('\n')}\n`
}

/** An invented table of daily energies, kWh. */
export function dailyCsv(from: string, days: number, seed: number, fault: Fault = {}): string {
  const rows = drawKinds(days, 0.29, seed).map((kind, at) => {
    const day = dayOf(from) + at
    const kept = (fault.scale ?? 1) * (1 - (fault.soiling ?? 0)) ** (at / 7)
    return `${dateText(day)},${(kept * (kindsOfDay(model, day)[kind] as number)).toFixed(3)}`
  })
  return `date,kWh\n${rows.join('\n')}\n`
}

/** Kinds of a day in the estimate of the demo house, kWh. @param date `2026-05-01` */
export const kindsOf = (date: string): number[] => kindsOfDay(model, dayOf(date))
