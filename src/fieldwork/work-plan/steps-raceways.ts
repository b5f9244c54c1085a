import { cablesIn, type WiringValues } from '../../electrical/index.js'
import { inchesOf } from '../../values/index.js'
import { plural, quantity, tape } from './plan-facts.js'
import type { PlanSystem } from './plan-system.js'
import type { PlanTask } from './plan-values.js'
import type { StepRule } from './step-rule.js'
import { ofMounts, ofWiring, section, task } from './task-rule.js'

type Raceway = WiringValues['raceways'][number]

/** Raceways, and the inspection of what modules and covers will hide. */
export const STEPS_RACEWAYS: readonly StepRule[] = [
  {
    id: 'roof.raceway',
    title: 'Run raceways, boxes and straps',
    tools: ['bender or heater', 'reamer', 'level', 'fish tape'],
    quantities: ofWiring(({ raceways }) =>
      raceways.flatMap((raceway) => [
        quantity(
          `${raceway.type}${raceway.trade_size === null ? '' : ` ${raceway.trade_size} in`}, ${raceway.id}`,
          raceway.length_ft,
          'ft',
        ),
        quantity(`strap, ${raceway.id}`, raceway.straps),
      ]),
    ),
    tasks: [
      ofWiring(({ raceways }, system) => raceways.flatMap((raceway) => racewayTasks(raceway, system))),
      {
        says: ofWiring(({ grounding }) => grounding.raceway_bonding.map((each) => `bond at ${each.at}: ${each.note}`)),
        source: section('metalRacewayBonding'),
      },
      { says: 'holes through roof and wall are flashed and sealed; boxes stay open for the rough inspection' },
    ],
    cautions: ['height', 'live-conductors'],
    needs: 'size-wire',
  },
  {
    id: 'roof.rough-inspection',
    title: 'Rough inspection',
    kind: 'inspection',
    tasks: [
      { says: 'approved set and permit card lie ready, a ladder stands tied off' },
      {
        says: ofMounts(({ counts }) => [
          `${plural(counts.mounts, 'mount')} visible, spacing and free rail ends as drawn, flashing in place`,
        ]),
      },
      { says: 'bonding of rails complete and visible', source: section('equipmentGrounding') },
      {
        says: ofWiring(({ raceways }) => [
          `${plural(raceways.length, 'raceway')}: type, size, straps and bushings visible, covers off`,
        ]),
        source: section('racewaySupport'),
      },
      {
        when: ({ wire }) => wire !== undefined,
        says: 'conductors of the sizes and kinds of the schedule, with their equipment grounding conductors',
        source: section('equipmentGroundSize'),
      },
      { says: 'clear space in front of panel and disconnects', source: section('workingSpace') },
    ],
    cautions: ['authority'],
    stop: 'nothing is covered by modules before the inspector has signed',
  },
]

/** Straps, fitting and conductors of one raceway, one after the other. */
function racewayTasks(raceway: Raceway, system: PlanSystem): PlanTask[] {
  const straps = raceway.strap_positions_ft.map((ft) => tape(inchesOf(ft))).join(', ')
  return [
    task(
      `${raceway.id} (${raceway.location}): ${raceway.straps === 1 ? 'strap' : 'straps'} at ${straps} from its start`,
      section('racewaySupport')(system),
    ),
    ...(raceway.expansion_fitting
      ? [
          task(
            `${raceway.id}: expansion fitting set for today's temperature; it moves ${tape(raceway.length_change_in ?? 0)} over the year`,
            section('pvcExpansion')(system),
          ),
        ]
      : []),
    task(
      `${raceway.id}: ${heldText(raceway)}`,
      section(raceway.form === 'cable' ? 'racewaySupport' : 'racewayFill')(system),
    ),
  ]
}

function heldText(raceway: Raceway): string {
  return raceway.form === 'cable'
    ? `run ${cablesIn(raceway)
        .map(({ name, circuit }) => `${name} (${circuit})`)
        .join('; ')}`
    : `pull ${raceway.conductors.map(conductorText).join('; ')}`
}

function conductorText(conductor: Raceway['conductors'][number]): string {
  const use = [conductor.use.replaceAll('_', ' '), conductor.circuit].filter((part) => part !== '').join(', ')
  return `${conductor.count} x ${conductor.size_awg} AWG ${conductor.material} ${conductor.insulation} (${use})`
}
