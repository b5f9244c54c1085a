import { countFitted } from '../../roof/index.js'
import { Worksheet, type Result } from '../../worksheet/index.js'
import { firstWeeks } from './first-week.js'
import type { PlanInput } from './plan-facts.js'
import type { WorkPlanValues } from './plan-values.js'
import { voltageReadings } from './readings.js'
import { stepsBefore } from './steps-before.js'
import { stepsEquipment } from './steps-equipment.js'
import { acVoltage, stepsFinish } from './steps-finish.js'
import { stepsRoof } from './steps-roof.js'

/**
 * The job in order, with tools, quantities and the numbers to hold to.
 *
 * @param stated Project, estimate, and what mounts and wiring came to; what is missing becomes a stop in its steps.
 * @throws StageError when the module states no open-circuit voltage.
 * @limits Torques are not invented: the equipment file has none, so the plan leaves a line to fill in from the sheet.
 */
export function planWork(stated: PlanInput): Result<WorkPlanValues> {
  const input = { ...stated, project: countFitted(stated.project) }
  const worksheet = new Worksheet()
  for (const { stage, where, why, fix } of input.missing) {
    worksheet.find({
      severity: 'warning',
      id: `work.${stage}-missing`,
      message: `the plan lacks the numbers of ${stage}: ${why}`,
      where,
      fix,
    })
  }
  const readings = voltageReadings(input, worksheet)
  const weeks = firstWeeks(input.run, input.project.production?.day_correlation)
  return worksheet.result({
    steps: [
      ...stepsBefore(input),
      ...stepsRoof(input),
      ...stepsEquipment(input),
      ...stepsFinish(input, readings, weeks),
    ],
    mounts: (input.mounts?.mounts ?? []).map(({ id, plane, rail, rafter, x_in, y_in }) => ({
      mount: id,
      plane,
      rail,
      rafter,
      x_in,
      y_in,
    })),
    readings,
    ac_voltage: acVoltage(input),
    first_week: weeks,
  })
}
