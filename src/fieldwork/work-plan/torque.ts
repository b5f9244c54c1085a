import type { Project } from '../../project/index.js'
import { landingPanel } from '../../project/facts.js'
import { own, poundFeetOf, type PoundInches } from '../../values/index.js'

/**
 * What to tighten a fastener to: the number of the equipment file, or room to write down the maker's.
 *
 * @param what What is tightened: `clamps`.
 * @param lbIn Torque from the data sheet, lb-in; undefined when the file has none.
 */
export function torqueText(what: string, lbIn: PoundInches | undefined): string {
  if (lbIn === undefined) {
    return `torque of ${what}: as the maker states; write it here: ______ (the equipment file has none)`
  }
  return `torque of ${what}: ${lbIn} lb-in (${poundFeetOf(lbIn).toFixed(1)} lb-ft)`
}

/** Something that is tightened, with the torque that the equipment states, lb-in; null where the project has none. */
export interface StatedTorque {
  readonly what: string
  readonly lb_in: number | null
  readonly from: string
}

/** All that is tightened with a torque tool, as in the steps of the work. */
export function statedTorques(project: Project): StatedTorque[] {
  const { structure, equipment, electrical } = project
  const mountId = structure?.mount
  const mount = mountId === undefined ? undefined : own(equipment.mounts, mountId)
  const rail = structure?.rail === undefined ? undefined : own(equipment.rails, structure.rail)
  const panel = landingPanel(electrical)
  const used = new Set(Object.values(project.inverter_units ?? {}).map(({ inverter }) => inverter))
  const of = (what: string, lbIn: number | undefined, from: string): StatedTorque => ({
    what,
    lb_in: lbIn ?? null,
    from,
  })
  return [
    ...(mount?.seam_clamp === undefined
      ? []
      : [
          of(
            'setscrews of the seam clamps',
            mount.seam_clamp.setscrew_torque_lb_in,
            `equipment.mounts.${mountId ?? ''}.seam_clamp.setscrew_torque_lb_in`,
          ),
        ]),
    ...(mount === undefined
      ? []
      : [of('bolt from rail to mount', mount.torque_lb_in, `equipment.mounts.${mountId ?? ''}.torque_lb_in`)]),
    ...(rail === undefined
      ? []
      : [of('module clamps', rail.clamp?.torque_lb_in, `equipment.rails.${structure?.rail ?? ''}.clamp.torque_lb_in`)]),
    of('PV terminals in the panel', panel.stated?.terminal_torque_lb_in, `${panel.where}.terminal_torque_lb_in`),
    ...[...used].map((id) => {
      const inverter = own(equipment.inverters, id)
      return of(
        `AC terminals of ${inverter?.name ?? id}`,
        inverter?.terminal_torque_lb_in,
        `equipment.inverters.${id}.terminal_torque_lb_in`,
      )
    }),
  ]
}
