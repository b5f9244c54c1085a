import { SERVICE_VOLTAGE_BAND } from '../../tables/fieldwork/index.js'
import type { PlanInput } from './plan-input.js'
import type { WorkPlanValues } from './plan-values.js'

/** Nominal service voltage and what the meter may show round it, V. */
export function acVoltage(input: PlanInput): WorkPlanValues['ac_voltage'] {
  const nominal = input.project.electrical?.service?.voltage_v ?? 240
  return {
    nominal_v: nominal,
    low_v: nominal * (1 - SERVICE_VOLTAGE_BAND),
    high_v: nominal * (1 + SERVICE_VOLTAGE_BAND),
  }
}
