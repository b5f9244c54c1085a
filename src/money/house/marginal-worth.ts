import type { Project } from '../../project/index.js'
import { Worksheet } from '../../worksheet/index.js'
import { savingsAt, savingsCurve } from '../bill/index.js'
import type { YieldRun } from '../../yield/index.js'
import { readHouse } from './read-house.js'
import type { Dollars } from '../../values/index.js'

/** Share of the output that is taken away to see what it was worth. */
const TAKEN_AWAY = 0.1

/**
 * What the last kWh of a year's output are worth by the tariff, USD per kWh: the difference of the bills with the whole output and
 * with a tenth less, over the energy of that tenth.
 *
 * @param estimate The energy estimate of this very project, where it is known already.
 * @throws StageError when tariff, use or a part of the energy estimate is missing.
 * @limits The tenth is taken from all hours alike; a fault at certain hours may cost more or less.
 */
export function marginalWorth(
  project: Project,
  files: ReadonlyMap<string, string> = new Map(),
  estimate?: () => YieldRun,
): Dollars {
  const { sheets, usage, hours } = readHouse(project, files, new Worksheet(), estimate)
  const energy = { kind: 'hourly' as const, usageKwh: usage.usageKwh, productionKwh: hours.kwh }
  const curve = savingsCurve({
    sheet: sheets.without,
    sheetWithSystem: sheets.withSystem,
    energy,
    calendar: usage.calendar,
    grid: [1 - TAKEN_AWAY, 1],
  })
  const annualKwh = hours.kwh.reduce((sum, kwh) => sum + kwh, 0)
  return annualKwh > 0 ? (savingsAt(curve, 1) - savingsAt(curve, 1 - TAKEN_AWAY)) / (TAKEN_AWAY * annualKwh) : 0
}
