import type { PvModule } from '../project-types.generated.js'
import type { Report, Rule } from './rule.js'

/** Figures of a module's data sheet that cannot stand together. */
export const checkModules: Rule = (project, report) => {
  for (const [id, module] of Object.entries(project.equipment.modules ?? {})) {
    for (const pair of ORDERED) below([id, module], pair, report)
    const { length_in: length, width_in: width } = module
    if (length !== undefined && width !== undefined && width > length) {
      report(
        ['equipment', 'modules', id, 'width_in'],
        `${width} in is more than length_in ${length} in; length is the long side`,
      )
    }
    for (const zone of ZONES) clampZone([id, module], zone, report)
  }
}

type NamedModule = readonly [id: string, module: PvModule]

/** The first is below the second. */
const ORDERED = [
  { low: 'vmp_v', high: 'voc_v', unit: 'V' },
  { low: 'imp_a', high: 'isc_a', unit: 'A' },
] as const

/** The zone lies on its side. */
const ZONES = [
  { key: 'clamp_zone_from_corner_in', sideKey: 'length_in' },
  { key: 'clamp_zone_short_side_in', sideKey: 'width_in' },
] as const

function below([id, module]: NamedModule, { low, high, unit }: (typeof ORDERED)[number], report: Report): void {
  const [a, b] = [module[low], module[high]]
  if (a === undefined || b === undefined || a < b) return
  report(['equipment', 'modules', id, low], `${a} ${unit} is not below ${high} ${b} ${unit}; are the two swapped?`)
}

function clampZone([id, module]: NamedModule, { key, sideKey }: (typeof ZONES)[number], report: Report): void {
  const [near, far] = module[key] ?? []
  const side = module[sideKey]
  if (near === undefined || far === undefined) return
  const path = ['equipment', 'modules', id, key]
  if (near >= far) report(path, `[${near}, ${far}] in: the nearest distance has to be less than the farthest`)
  else if (side !== undefined && far > side)
    report(path, `reaches to ${far} in, beyond the side of ${side} in (${sideKey})`)
}
