import { countFitted } from '../../roof/index.js'
import { Worksheet, type Result } from '../../worksheet/index.js'
import { firstWeeks } from './first-week.js'
import { currentReadings, insulationValues } from './insulation.js'
import type { PlanInput } from './plan-input.js'
import { planSystem } from './plan-system.js'
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
  const insulation = insulationValues(input.project, worksheet)
  const currents = currentReadings(input.project)
  const ac = acVoltage(input)
  const system = planSystem(input, { readings, insulation, currents, ac })
  return worksheet.result({
    steps: [
      ...stepsBefore(input, system),
      ...stepsRoof(input),
      ...stepsEquipment(input),
      ...stepsFinish(input, system, weeks),
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
    insulation,
    currents,
    ac_voltage: ac,
    first_week: weeks,
  })
}
