import { StageError } from '../../worksheet/index.js'
import type { MeterReading, OverlapPolicy } from './meter-series.js'
import { refuseRegister } from './register-readings.js'

const stampOf = (seconds: number): string => new Date(seconds * 1000).toISOString().slice(0, 16).replace('T', ' ')

/** Readings in the order of time and the count of what was dropped. */
export interface OrderedReadings {
  readonly readings: MeterReading[]
  readonly exactDuplicates: number
  readonly conflicts: number
}

/**
 * Sorts readings and removes overlaps: equal ones are dropped, different ones follow the policy.
 *
 * @param where Path in the project file.
 * @throws StageError for different readings of one interval without a policy, and for readings of a counting register.
 */
export function orderReadings(raw: readonly MeterReading[], policy: OverlapPolicy, where: string): OrderedReadings {
  const sorted = raw.toSorted((a, b) => a.startS - b.startS)
  const readings: MeterReading[] = []
  let exactDuplicates = 0
  let conflicts = 0
  for (const reading of sorted) {
    const last = readings.at(-1)
    if (last === undefined || reading.startS >= last.startS + last.durationS) {
      readings.push(reading)
      continue
    }
    const { startS, durationS, importWh, exportWh } = reading
    if (
      last.startS === startS &&
      last.durationS === durationS &&
      last.importWh === importWh &&
      last.exportWh === exportWh
    ) {
      exactDuplicates += 1
      continue
    }
    if (policy === undefined) {
      throw new StageError(
        where,
        `two different readings overlap at ${stampOf(startS)} UTC (${String(last.importWh / 1000)} and ${String(importWh / 1000)} kWh)`,
        'Ask for a clean export, or state usage.overlaps: first or last.',
      )
    }
    conflicts += 1
    if (policy === 'last') readings[readings.length - 1] = reading
  }
  refuseRegister(readings, where)
  return { readings, exactDuplicates, conflicts }
}
