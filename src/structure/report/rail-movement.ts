import { designTemperatures } from '../../climate/index.js'
import type { Project } from '../../project/index.js'
import { ALUMINIUM_EXPANSION_PER_F } from '../../tables/aluminium/index.js'
import type { Source, Worksheet } from '../../worksheet/index.js'
import { FAHRENHEIT_PER_KELVIN, type Celsius, type Inches } from '../../values/index.js'
import type { PartCheck } from '../model/index.js'
import type { RailKit } from '../planes/index.js'
import type { LaidRail } from '../rails/index.js'

/** Metal under the night sky below the coldest air, and in the sun above the hottest, deg F. @source judgement */
const BEYOND_AIR_F = { colder: 10, hotter: 50 } as const

const EXPANSION: Source = { document: 'Thermal expansion of aluminium', standing: 'from memory' }

/** Range of temperatures of a rail, deg F. @source common practice, no source: coldest design less 10, hottest air and 50 */
export function railRangeF(coldestC: Celsius, hottestC: Celsius): number {
  return FAHRENHEIT_PER_KELVIN * (hottestC - coldestC) + BEYOND_AIR_F.hotter + BEYOND_AIR_F.colder
}

/** Growth of a rail over a range of temperatures, in. */
export function railGrowthIn(lengthIn: Inches, rangeF: number): Inches {
  return ALUMINIUM_EXPANSION_PER_F * lengthIn * rangeF
}

/** The movement of the ends of the longest rail against what the mounts allow, where their sheet says so. */
export function railMovementChecks(
  project: Project,
  rails: readonly LaidRail[],
  kit: RailKit,
  worksheet: Worksheet,
): PartCheck[] {
  const travelIn = kit.mount.product.travel_in
  const [first, ...others] = rails.map((rail) => rail.loaded.line)
  if (travelIn === undefined || first === undefined) return []
  const longest = others.reduce((a, b) => (b.endIn - b.startIn > a.endIn - a.startIn + 1e-9 ? b : a), first)
  const { extremeLow, high0p4pct } = designTemperatures(project.site, worksheet)
  const path = `${kit.mount.at}.travel_in`
  if (extremeLow === undefined || high0p4pct === undefined) {
    worksheet.find({
      severity: 'error',
      id: 'structure.rail-movement-not-checked',
      message: `mounts let a rail move ${travelIn} in each way, but the coldest and the hottest air at the site are not known`,
      where: 'site.design_temperatures',
      fix: 'State extreme_low_c and high_0p4pct_c under site.design_temperatures.',
    })
    return []
  }
  const rangeF = railRangeF(extremeLow.valueC, high0p4pct.valueC)
  const lengthIn = longest.endIn - longest.startIn
  const growthIn = railGrowthIn(lengthIn, rangeF)
  worksheet.step({
    id: 'structure.rail-growth',
    says: `Growth of the longest rail, ${longest.id}, between its coldest and its hottest; each end moves half of it`,
    formula: 'dL = alpha * L * dT, dT = hottest air + 50 - (coldest design - 10)',
    inputs: [
      { symbol: 'alpha', value: ALUMINIUM_EXPANSION_PER_F, unit: '1/F', from: EXPANSION.document },
      { symbol: 'L', value: lengthIn, unit: 'in', from: longest.id },
      { symbol: 'dT', value: rangeF, unit: 'F', from: `${extremeLow.from}; ${high0p4pct.from}` },
    ],
    result: { symbol: 'dL', value: growthIn, unit: 'in' },
    source: EXPANSION,
    limits: 'rails that shared clamps tie together count as one run',
  })
  const check: PartCheck = {
    name: 'rail movement',
    demand: growthIn / 2,
    capacity: travelIn,
    unit: 'in',
    where: longest.id,
    source: EXPANSION,
    path,
    fix: 'Break the row into shorter rails, or use mounts with longer slots.',
  }
  return [check]
}
