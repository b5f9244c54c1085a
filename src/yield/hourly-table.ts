import type { YieldRun } from './run-yield.js'
import { DAY_TYPE_COUNT } from './day-type-steps.js'
import type { SkySteps } from './sky-steps.js'

/** Numbers by hour of an hourly file, or by day type and step of the monthly method. */
export interface StepTable {
  readonly headings: readonly string[]
  readonly rows: readonly (readonly (string | number)[])[]
}

/**
 * Course of the year behind an estimate: a row for each interval of a weather file, sun up or not (night consumption is
 * negative); one row for each daylight step of each day type otherwise, with the number of days of the year that it
 * stands for.
 */
export function stepTable(run: YieldRun): StepTable {
  return run.climate.kind === 'hourly' ? hourTable(run, run.climate.length) : dayTypeTable(run)
}

const LIGHT = ['ghi_w_m2', 'dni_w_m2', 'dhi_w_m2'] as const

function lightOf(steps: SkySteps, step: number): number[] {
  return [steps.ghiWM2[step]!, steps.dniWM2[step]!, steps.dhiWM2[step]!]
}

function hourTable(run: YieldRun, length: number): StepTable {
  const { steps, arrays, system, climate } = run
  if (climate.kind !== 'hourly') throw new Error('an hourly table needs an hourly climate')
  const stepOfRow = new Int32Array(length).fill(-1)
  steps.fileRow?.forEach((row, step) => {
    stepOfRow[row] = step
  })
  const rows = Array.from({ length }, (_, row) => {
    const step = stepOfRow[row]!
    const when = [climate.month[row]!, climate.day[row]!, climate.middleH[row]! + climate.stepH / 2]
    if (step < 0) {
      const dark = [climate.ghiWM2[row]!, climate.dniWM2[row]!, climate.dhiWM2[row]!]
      return [...when, ...dark, climate.dryBulbC[row]!, ...arrays.map(() => 0), 0, 0, -system.nightW]
    }
    return [
      ...when,
      ...lightOf(steps, step),
      steps.dryBulbC[step]!,
      ...arrays.map((array) => array.planeWM2[step]!),
      system.dcW[step]!,
      system.clippedW[step]!,
      system.acW[step]!,
    ]
  })
  return { headings: ['month', 'day', 'hour_ending_standard_time', ...LIGHT, 'dry_bulb_c', ...powers(run)], rows }
}

function dayTypeTable(run: YieldRun): StepTable {
  const { steps, arrays, system } = run
  const rows = Array.from({ length: steps.length }, (_, step) => {
    const { month, dayType, days, hour } = steps.label(step)
    return [
      month,
      dayType ?? 0,
      days ?? 0,
      hour,
      days === undefined ? 0 : steps.hours[step]! / days,
      ...lightOf(steps, step),
      steps.dryBulbC[step]!,
      ...arrays.map((array) => array.planeWM2[step]!),
      system.dcW[step]!,
      system.clippedW[step]!,
      system.acW[step]!,
    ]
  })
  return {
    headings: [
      'month',
      `day_type_1_dull_to_${DAY_TYPE_COUNT}_clear`,
      'days_per_year',
      'solar_time_h',
      'step_h',
      ...LIGHT,
      'dry_bulb_c',
      ...powers(run),
    ],
    rows,
  }
}

function powers(run: YieldRun): string[] {
  return [...run.arrays.map((array) => `plane_${array.plan.id}_w_m2`), 'dc_w', 'clipped_w', 'ac_w']
}
