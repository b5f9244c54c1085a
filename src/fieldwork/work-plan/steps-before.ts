import { WORK_SOURCES } from '../../tables/fieldwork/index.js'
import { own } from '../../values/index.js'
import { plural, quantity, step, task, tasksOf } from './plan-facts.js'
import type { PlanInput } from './plan-input.js'
import type { PlanSystem } from './plan-system.js'
import type { PlanStep } from './plan-values.js'
import { ABSENCE_RULES, LOCK_OUT_RULES, SAFETY_RULES } from './rules-safety.js'

/** What is settled before anybody climbs. */
export function stepsBefore(input: PlanInput, system: PlanSystem): PlanStep[] {
  const { project, mounts, wire: wiring } = input
  const values = Object.entries(input.run.result.values.arrays)
  const utility = project.parties?.utility?.name ?? 'the utility'
  const authority = project.parties?.authority?.name ?? 'the building department'
  return [
    step('before.utility', 'Apply to the utility', {
      state: 'not_proved_dead',
      tasks: [
        task(`send the interconnection application to ${utility} with the one-line diagram and the data sheets`),
        task('keep its written answer: it says whether a disconnect, a meter change or a production limit is wanted'),
      ],
      cautions: ['authority'],
      stop: 'order nothing before the utility has agreed in writing',
    }),
    step('before.permit', 'Get the permit', {
      state: 'not_proved_dead',
      tasks: [
        task(`hand the packet in at ${authority} and ask which inspections it wants, and how they are called for`),
        task('have the approved set and the permit card at the house on every day of work'),
      ],
      cautions: ['authority'],
      stop: 'no work on the roof before the permit is issued',
    }),
    step('before.materials', 'Check the material against the plan', {
      state: 'not_proved_dead',
      tools: ['the approved drawings', 'the data sheets'],
      quantities: [
        ...values.map(([id, array]) => {
          const module = own(project.arrays, id)?.module ?? ''
          return quantity(
            `modules ${own(project.equipment.modules, module)?.name ?? module}, array ${id}`,
            array.modules,
          )
        }),
        ...(mounts === undefined
          ? []
          : [
              quantity('mounts', mounts.counts.mounts),
              quantity('lag screws', mounts.counts.lag_screws),
              quantity('pieces of rail', mounts.counts.rail_pieces),
              quantity('rail splices', mounts.counts.splices),
            ]),
        ...(wiring === undefined
          ? []
          : [quantity('circuits', wiring.circuits.length), quantity('raceways', wiring.raceways.length)]),
      ],
      tasks: [
        task('names, ratings and listings on the boxes are those of the drawings; a substitute needs a new approval'),
        task('no module has a cracked glass, a bent frame or a damaged lead; note serial numbers by place on the roof'),
        task(
          'instructions of every product are at hand: their torques, gaps and orders of work are part of its listing',
          WORK_SOURCES.makersSheet,
        ),
      ],
      stop: 'what is missing or other than approved is settled now, not on the roof',
    }),
    step('before.safety', 'Weather, fall protection, ladder and rescue', {
      state: 'not_proved_dead',
      tools: [
        'harness, rope and anchor rated for falls, or guardrail or net',
        'ladder that stands 3 ft above the eave, tied off',
        'covers for skylights and holes',
        'helmet, gloves, safety glasses',
      ],
      tasks: [tasksOf(SAFETY_RULES, system)],
      cautions: ['height'],
      stop: 'nobody steps on the roof before all of these are checked, and again each day',
    }),
    step('before.lock-out', 'Lock out', {
      state: 'not_proved_dead',
      tools: ['padlock and tag'],
      tasks: [tasksOf(LOCK_OUT_RULES, system)],
      cautions: ['live-conductors', 'electrician'],
    }),
    step('before.prove-dead', 'Prove that there is no voltage', {
      state: 'not_proved_dead',
      tools: ['voltage tester for the service voltage, proved on a known live point before and after'],
      tasks: [tasksOf(ABSENCE_RULES, system)],
      cautions: ['live-conductors', 'electrician'],
      stop: 'no cover comes off and no wire is touched before the absence of voltage is proved',
    }),
    step('before.look', 'Look at the roof before drilling', {
      tools: ['flashlight', 'tape', 'moisture meter or awl'],
      tasks: [
        ...Object.entries(project.structure?.framing ?? {}).map(([plane, framing]) =>
          task(
            `${plane}: rafters ${framing.nominal_size ?? '(size not stated)'} at ${framing.spacing_in === undefined ? '(spacing not stated)' : `${framing.spacing_in} in`}, first at ${framing.first_offset_in === undefined ? '(not stated)' : `${framing.first_offset_in} in`} from the left end of the eave: found so from the attic`,
            WORK_SOURCES.projectFile,
          ),
        ),
        task(
          'wood is dry, sound and unsplit; covering lies flat and will last as long as the array',
          WORK_SOURCES.practice,
        ),
        task(
          `${plural(Object.keys(project.roof_planes).length, 'roof plane')}: vents, chimneys and skylights stand where the drawings have them`,
        ),
      ],
      cautions: ['structural-engineer'],
      stop: 'what differs from the drawings goes back to the planning, and to an engineer where wood is hurt',
    }),
  ]
}
