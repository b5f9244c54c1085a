import type { WiringValues } from '../../electrical/index.js'
import type { RailValue } from '../../structure/index.js'
import type { Need } from './need.js'
import { practiceValue } from './practice.js'
import { idPart, type TakeOffJob } from './take-off-job.js'
import { feetOf, type Inches } from '../../values/index.js'

/** Lugs on the rails, the bare conductor between them, and the electrode of the array. */
export function takeGrounding(job: TakeOffJob, wiring: WiringValues, rails: readonly RailValue[]): Need[] {
  const { array, electrode, raceway_bonding: bonding } = wiring.grounding
  const slackFt = practiceValue(job, 'wire_slack_ft')
  const needs = railsByPlane(rails).flatMap(([plane, own]): Need[] => {
    const rows = own.toSorted((a, b) => a.y_in - b.y_in)
    const pathFt = feetOf(pathIn(rows))
    return [
      {
        item: `ground-lug.${array.size_awg}`,
        general: 'ground-lug',
        name: `Grounding lug for rail, ${array.size_awg} AWG`,
        group: 'grounding',
        unit: 'each',
        quantity: rows.length,
        why: `one on each of ${rows.length} rails of ${plane} (mounts: values.rails, wire: values.grounding.array)`,
      },
      bareWire(array.size_awg, {
        quantity: pathFt + 2 * slackFt,
        why: `from rail to rail of ${plane} ${pathFt.toFixed(1)} ft in one piece, and ${2 * slackFt} ft to the box (mounts: values.rails, wire: values.grounding.array)`,
      }),
    ]
  })
  if (bonding.length > 0)
    needs.push({
      item: 'bonding-bushing',
      name: 'Grounding bushing for metal raceway',
      group: 'grounding',
      unit: 'each',
      quantity: bonding.length,
      why: `one at each of ${bonding.length} changes from metal to plastic (wire: values.grounding.raceway_bonding)`,
    })
  return [...needs, ...electrodeNeeds(job, electrode)]
}

function electrodeNeeds(job: TakeOffJob, electrode: WiringValues['grounding']['electrode']): Need[] {
  const size = electrode.size_awg
  if (size === null || (!electrode.required && job.project.electrical?.array_electrode === 'none')) return []
  const from = '(wire: values.grounding.electrode)'
  const needs: Need[] = []
  if (job.project.electrical?.array_electrode === 'rod')
    needs.push(
      {
        item: 'ground-rod',
        name: 'Grounding electrode, rod 5/8 in x 8 ft',
        group: 'grounding',
        unit: 'each',
        quantity: 1,
        why: `electrode of the array ${from}`,
      },
      {
        item: 'rod-clamp',
        name: 'Clamp from conductor to rod, listed for burial',
        group: 'grounding',
        unit: 'each',
        quantity: 1,
        why: `one at the rod ${from}`,
      },
    )
  if (electrode.length_ft === null) {
    job.worksheet.find({
      severity: 'warning',
      id: 'materials.electrode-length',
      message: `the conductor of ${size} AWG to the electrode of the array is not counted, because its length is not stated`,
      where: 'electrical.array_electrode_run_ft',
      fix: 'Measure the way from the array to the electrode and state it',
    })
    return needs
  }
  const lengthFt = electrode.length_ft + 2 * practiceValue(job, 'wire_slack_ft')
  return [...needs, bareWire(size, { quantity: lengthFt, why: `from array to electrode, unspliced ${from}` })]
}

function bareWire(size: string, what: Pick<Need, 'quantity' | 'why'>): Need {
  return {
    item: `wire.bare.${idPart(size)}.copper`,
    name: `Bare copper ${size} AWG`,
    group: 'wire',
    unit: 'ft',
    ...what,
  }
}

function railsByPlane(rails: readonly RailValue[]): [string, RailValue[]][] {
  const planes = new Map<string, RailValue[]>()
  for (const rail of rails) planes.set(rail.plane, [...(planes.get(rail.plane) ?? []), rail])
  return [...planes]
}

/** Length of the way from the left end of one rail to the next, up the slope, in. */
function pathIn(rails: readonly RailValue[]): Inches {
  return rails.slice(1).reduce((sum, rail, i) => {
    const before = rails[i]
    return before === undefined ? sum : sum + Math.hypot(rail.x_in - before.x_in, rail.y_in - before.y_in)
  }, 0)
}
