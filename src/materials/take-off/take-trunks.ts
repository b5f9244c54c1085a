import type { CircuitValues, WiringValues } from '../../electrical/index.js'
import { own } from '../../values/index.js'
import type { Need } from './need.js'
import type { TakeOffJob } from './take-off-job.js'

/** Trunk cable by its drops, end caps, caps for drops without an inverter, and the way into the box. */
export function takeTrunks(job: TakeOffJob, wiring: WiringValues): Need[] {
  return wiring.circuits.filter((circuit) => circuit.kind === 'ac_branch').flatMap((circuit) => trunkOf(job, circuit))
}

function trunkOf(job: TakeOffJob, circuit: CircuitValues): Need[] {
  const { electrical, equipment } = job.project
  const branch = own(electrical?.branches, circuit.id)
  const known = Object.keys(equipment.trunk_cables ?? {})
  const trunkId = branch?.trunk ?? electrical?.trunk ?? known[0] ?? ''
  const cable = own(equipment.trunk_cables, trunkId)
  const centre = branch?.feed === 'centre'
  const halves = centre ? 2 : 1
  const trunk = circuit.segments.find((segment) => segment.id === `${circuit.id}.trunk`)
  const spacingFt = cable?.connector_spacing_ft
  const lengthFt = trunk?.length_ft ?? 0
  const byLength = spacingFt === undefined ? 0 : halves * Math.ceil(lengthFt / spacingFt - 1e-6)
  const drops = Math.max(circuit.inverters, byLength)
  const from = `branch ${circuit.id} (wire: values.circuits)`
  const each = (item: string, name: string, quantity: number, why: string): Need => ({
    item,
    name,
    group: 'trunk',
    unit: 'each',
    quantity,
    why,
  })
  return [
    each(
      `trunk.${trunkId}`,
      `${cable?.name ?? `Trunk cable ${trunkId}`}, one drop`,
      drops,
      `${drops} drops for ${circuit.inverters} inverters over ${(halves * lengthFt).toFixed(1)} ft of ${from}`,
    ),
    {
      ...each(`trunk-end-cap.${trunkId}`, 'Cap for the end of the trunk', halves, `${halves} for ${from}`),
      general: 'trunk-end-cap',
    },
    {
      ...each(
        `trunk-drop-cap.${trunkId}`,
        'Cap for a drop that is not used',
        drops - circuit.inverters,
        `${drops - circuit.inverters} drops without inverter on ${from}`,
      ),
      general: 'trunk-drop-cap',
    },
    {
      ...each('cord-grip', 'Strain relief, rain tight', halves, `where the trunk enters the box, ${from}`),
      group: 'raceway',
    },
  ]
}
