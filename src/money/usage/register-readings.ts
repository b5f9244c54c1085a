import { StageError } from '../../worksheet/index.js'
import type { RawReading } from './espi-channels.js'
import type { MeterReading } from './meter-series.js'

const stampOf = (seconds: number): string => new Date(seconds * 1000).toISOString().slice(0, 16).replace('T', ' ')
const kwhOf = (wh: number): string => String(Number((wh / 1000).toPrecision(9)))
const HOUR_S = 3600
/** Readings that rise so often and never fall are those of a dial: the use of a house goes up and down every day. */
const RISES_OF_A_DIAL = 24

/**
 * Use of the intervals between the readings of a counting register, each at its time.
 *
 * A stretch of more than an hour without a reading is left out, so that it is a gap like any other.
 *
 * @param mayFall Whether the register counts both ways (delivered less sent).
 * @param factor Wh per unit of the values.
 * @throws StageError when the register falls, or shows two values at one time.
 */
export function differences(
  readings: readonly RawReading[],
  mayFall: boolean,
  factor: number,
  where: string,
): RawReading[] {
  const sorted = [...readings].sort((a, b) => a.startS - b.startS)
  const steps: RawReading[] = []
  for (const [i, next] of sorted.entries()) {
    const reading = sorted[i - 1]
    if (reading === undefined) continue
    const { startS } = reading
    if (next.startS === startS) {
      if (next.value === reading.value) continue
      throw new StageError(
        where,
        `the register shows two different readings at ${stampOf(startS)} UTC (${kwhOf(reading.value * factor)} and ${kwhOf(next.value * factor)} kWh)`,
        'Ask for a clean export of use per interval.',
      )
    }
    if (next.value < reading.value && !mayFall) {
      throw new StageError(
        where,
        `the register falls from ${kwhOf(reading.value * factor)} to ${kwhOf(next.value * factor)} kWh at ${stampOf(next.startS)} UTC: it ran over or was exchanged, or it is none`,
        'Ask the utility for the use per interval.',
      )
    }
    steps.push({ startS, durationS: next.startS - startS, value: next.value - reading.value })
  }
  const isHourly = steps.some(({ durationS }) => durationS <= HOUR_S)
  return isHourly ? steps.filter(({ durationS }) => durationS <= HOUR_S) : steps
}

/**
 * Refuses values that were to be the use of intervals and are readings of a dial, which would be added up to far too much.
 *
 * @param readings In the order of time.
 */
export function refuseRegister(readings: readonly MeterReading[], where: string): void {
  for (const key of ['importWh', 'exportWh'] as const) {
    let rises = 0
    const falls = readings.some((reading, i) => {
      const before = readings[i - 1]?.[key] ?? 0
      if (i > 0 && reading[key] > before) rises += 1
      return i > 0 && reading[key] < before
    })
    if (falls || rises < RISES_OF_A_DIAL) continue
    throw new StageError(
      where,
      `the readings never fall, from ${kwhOf(readings[0]?.[key] ?? 0)} to ${kwhOf(readings.at(-1)?.[key] ?? 0)} kWh: they are those of a counting register, not the use of each interval`,
      'Export the use per interval, or take the difference of each reading from the one before.',
    )
  }
}
