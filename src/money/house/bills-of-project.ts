import type { Project } from '../../project/index.js'
import { Worksheet, type Result } from '../../worksheet/index.js'
import { computeSavings, type SavingsValues } from '../bill/index.js'
import type { YieldRun } from '../../yield/index.js'
import { behindMeter, readStorage } from '../storage/index.js'
import { readHouse, type House } from './read-house.js'

/**
 * The twelve bills of a project without and with its system.
 *
 * @param estimate The energy estimate of this very project, where it is known already.
 * @throws StageError when tariff, use or a part of the energy estimate is missing.
 */
export function billsOfProject(
  project: Project,
  files: ReadonlyMap<string, string> = new Map(),
  estimate?: () => YieldRun,
): Result<SavingsValues> {
  const worksheet = new Worksheet()
  const { sheets, usage, hours }: House = readHouse(project, files, worksheet, estimate)
  const battery = readStorage(project, sheets.withSystem, usage.calendar, worksheet)
  const energy = {
    kind: 'hourly' as const,
    usageKwh: usage.usageKwh,
    productionKwh: hours.kwh,
    ...(battery === undefined ? {} : { storage: behindMeter(battery.system) }),
  }
  const bills = computeSavings(sheets.without, energy, usage.calendar, sheets.withSystem)
  worksheet.include(bills)
  return worksheet.result(bills.values)
}
