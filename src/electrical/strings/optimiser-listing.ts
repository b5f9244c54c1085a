import { own } from '../../values/index.js'
import type { Circuit, Job } from '../system/index.js'
import type { OptimiserCase } from './optimiser-case.js'

/**
 * Whether a converter is named for its inverter, and the inverter has no strings without one.
 *
 * @returns Whether nothing speaks against it.
 * @source NEC 110.3(B)
 */
export function listedWith(job: Job, one: OptimiserCase, circuits: readonly Circuit[]): boolean {
  const { where, string, optimiser, inverterId } = one
  const { sheet, id: optimiserId } = optimiser
  const source = job.nec('listedEquipment')
  let holds = true
  if (sheet.works_with === undefined)
    job.worksheet.find({
      severity: 'warning',
      id: 'wire.optimiser-inverter-unknown',
      message: `whether converter ${optimiserId} works with inverter ${inverterId} is not stated, so it was not checked`,
      where: `equipment.optimisers.${optimiserId}.works_with`,
      source,
      fix: "Name the inverters of the maker's list under works_with",
    })
  else if (!sheet.works_with.includes(inverterId)) {
    holds = false
    job.worksheet.find({
      severity: 'error',
      id: 'wire.optimiser-inverter',
      message: `converter ${optimiserId} is for ${sheet.works_with.join(', ')}, not for inverter ${inverterId}`,
      where: `arrays.${string.array}.optimiser`,
      source,
      fix: 'Use a converter and an inverter that are listed for each other',
    })
  }
  const others = circuits.filter(
    ({ string: other }) =>
      other !== undefined &&
      other.optimiser === undefined &&
      own(job.project.inverter_units, other.unit) !== undefined &&
      other.unit === string.unit,
  )
  if (others.length > 0) {
    holds = false
    job.worksheet.find({
      severity: 'error',
      id: 'wire.optimiser-mixed',
      message: `${string.unit} has strings with converters and without: ${others.map(({ id }) => id).join(', ')} ${others.length === 1 ? 'has' : 'have'} none`,
      where,
      source,
      fix: 'Give every module of the inverter a converter, or none',
    })
  }
  return holds
}
