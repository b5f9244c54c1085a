import type { PvModule } from '../project-types.generated.js'
import type { Report, Rule } from './rule.js'

/** Figures of a module's data sheet that cannot stand together. */
export const checkModules: Rule = (project, report) => {
  for (const [id, module] of Object.entries(project.equipment.modules ?? {})) {
    below(id, module, 'vmp_v', 'voc_v', 'V', report)
    below(id, module, 'imp_a', 'isc_a', 'A', report)
    const { length_in: length, width_in: width } = module
    if (length !== undefined && width !== undefined && width > length) {
      report(
        ['equipment', 'modules', id, 'width_in'],
        `${width} in is more than length_in ${length} in; length is the long side`,
      )
    }
    clampZone(id, 'clamp_zone_from_corner_in', module.clamp_zone_from_corner_in, length, 'length_in', report)
    clampZone(id, 'clamp_zone_short_side_in', module.clamp_zone_short_side_in, width, 'width_in', report)
  }
}

type Figure = 'vmp_v' | 'voc_v' | 'imp_a' | 'isc_a'

function below(id: string, module: PvModule, low: Figure, high: Figure, unit: string, report: Report): void {
  const [a, b] = [module[low], module[high]]
  if (a === undefined || b === undefined || a < b) return
  report(['equipment', 'modules', id, low], `${a} ${unit} is not below ${high} ${b} ${unit}; are the two swapped?`)
}

function clampZone(
  id: string,
  key: string,
  zone: readonly number[] | undefined,
  side: number | undefined,
  sideKey: string,
  report: Report,
): void {
  const [near, far] = zone ?? []
  if (near === undefined || far === undefined) return
  const path = ['equipment', 'modules', id, key]
  if (near >= far) report(path, `[${near}, ${far}] in: the nearest distance has to be less than the farthest`)
  else if (side !== undefined && far > side)
    report(path, `reaches to ${far} in, beyond the side of ${side} in (${sideKey})`)
}
