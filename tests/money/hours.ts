import { makeCalendar } from '../../src/money/index.js'

/** Calendar of 2025, whose 1 January is a Wednesday. */
export const calendar2025 = makeCalendar('2025-01-01', true)

/** The same energy in every hour, kWh. */
export function even(kwh: number): Float64Array {
  return new Float64Array(8760).fill(kwh)
}

/** A bell of output from 6 to 18 h standard time every day, kWh per hour, whole millionths. @param peakKwh At noon. */
export function bell(peakKwh: number): Float64Array {
  return Float64Array.from({ length: 8760 }, (_, h) => {
    const hour = h % 24
    const shape = hour >= 6 && hour < 18 ? Math.sin((Math.PI * (hour - 5.5)) / 12) : 0
    return Math.round(peakKwh * Math.max(0, shape) * 1e6) / 1e6
  })
}

/** Output of `kwh` in one clock-free hour of every day, local standard time. */
export function everyDayAt(hour: number, kwh: number): Float64Array {
  return Float64Array.from({ length: 8760 }, (_, h) => (h % 24 === hour ? kwh : 0))
}

export function total(hours: ArrayLike<number>): number {
  let all = 0
  for (let i = 0; i < hours.length; i++) all += hours[i] ?? 0
  return all
}
