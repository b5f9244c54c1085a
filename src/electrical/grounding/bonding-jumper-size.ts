import { bondingJumper, type ConductorSize } from '../../tables/nec/index.js'
import { type Conductor, circularMils } from '../conductors/index.js'

/**
 * Least copper neutral, main bonding jumper and supply-side bonding jumper of a set of service conductors.
 *
 * @param service Largest ungrounded conductor of that set, up to 500 kcmil.
 * @source NEC Table 250.102(C)(1)
 */
export function bondingJumperSize(service: Conductor): ConductorSize {
  const kcmil = circularMils(service.size) / 1000
  const row = bondingJumper.find(({ toCopperKcmil, toAluminumKcmil }) =>
    service.material === 'copper' ? kcmil <= toCopperKcmil : kcmil <= toAluminumKcmil,
  )
  if (row === undefined) throw new Error(`no bonding jumper for ${service.size}`)
  return row.copper as ConductorSize
}
