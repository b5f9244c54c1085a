import { countFitted } from '../../roof/index.js'
import { Worksheet, type Result } from '../../worksheet/index.js'
import { firstWeeks } from './first-week.js'
import { currentReadings, insulationValues } from './insulation.js'
import type { PlanInput } from './plan-input.js'
import { planSystem } from './plan-system.js'
import type { WorkPlanValues } from './plan-values.js'
import { voltageReadings } from './readings.js'
import { acVoltage } from './ac-voltage.js'
import { stepsOf } from './step-rule.js'
import { STEPS_BEFORE } from './steps-before.js'
import { STEPS_EQUIPMENT } from './steps-equipment.js'
import { STEPS_FINISH } from './steps-finish.js'
import { STEPS_RACEWAYS } from './steps-raceways.js'
import { STEPS_ROOF } from './steps-roof.js'
import { STEPS_STORAGE, STEPS_STORAGE_TEST } from './steps-storage.js'
import { STEPS_TEST } from './steps-test.js'

/** All steps, in the order of the work. */
const STEPS = [
  ...STEPS_BEFORE,
  ...STEPS_ROOF,
  ...STEPS_RACEWAYS,
  ...STEPS_EQUIPMENT,
  ...STEPS_STORAGE,
  ...STEPS_TEST,
  ...STEPS_STORAGE_TEST,
  ...STEPS_FINISH,
]

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
  const system = planSystem(input, { readings, insulation, currents, ac, weeks })
  return worksheet.result({
    steps: stepsOf(STEPS, system),
    mounts: (input.mounts?.mounts ?? []).map(({ id, plane, rail, rafter, x_in, y_in }) => ({
      mount: id,
      plane,
      rail,
      rafter,
      stands_on: input.mounts?.fastener.into ?? 'rafter',
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
