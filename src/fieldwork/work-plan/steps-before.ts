import { WORK_SOURCES } from '../../tables/fieldwork/index.js'
import { existingHouseChecks } from '../../electrical/index.js'
import { own } from '../../values/index.js'
import { plural, quantity } from './plan-facts.js'
import type { PlanSystem } from './plan-system.js'
import type { PlanQuantity, PlanTask } from './plan-values.js'
import { task } from './task-rule.js'
import { ABSENCE_RULES, LOCK_OUT_RULES, SAFETY_RULES } from './rules-safety.js'
import type { StepRule } from './step-rule.js'

/** What is settled before anybody climbs. */
export const STEPS_BEFORE: readonly StepRule[] = [
  {
    id: 'before.utility',
    title: 'Apply to the utility',
    state: 'not_proved_dead',
    tasks: [
      {
        says: ({ utility }) =>
          `send the interconnection application to ${utility} with the one-line diagram and the data sheets`,
      },
      { says: 'keep its written answer: it says whether a disconnect, a meter change or a production limit is wanted' },
    ],
    cautions: ['authority'],
    stop: 'order nothing before the utility has agreed in writing',
  },
  {
    id: 'before.permit',
    title: 'Get the permit',
    state: 'not_proved_dead',
    tasks: [
      {
        says: ({ project }) =>
          `hand the packet in at ${project.parties?.authority?.name ?? 'the building department'} and ask which inspections it wants, and how they are called for`,
      },
      { says: 'have the approved set and the permit card at the house on every day of work' },
    ],
    cautions: ['authority'],
    stop: 'no work on the roof before the permit is issued',
  },
  {
    id: 'before.house',
    title: 'Bring the house up to what the permit asks',
    state: 'not_proved_dead',
    when: (system) => houseTasks(system).length > 0,
    tasks: [houseTasks],
    cautions: ['authority'],
  },
  {
    id: 'before.materials',
    title: 'Check the material against the plan',
    state: 'not_proved_dead',
    tools: ['the approved drawings', 'the data sheets'],
    quantities: material,
    tasks: [
      { says: 'names, ratings and listings on the boxes are those of the drawings; a substitute needs a new approval' },
      {
        says: 'no module has a cracked glass, a bent frame or a damaged lead; note serial numbers by place on the roof',
      },
      {
        says: 'instructions of every product are at hand: their torques, gaps and orders of work are part of its listing',
        source: WORK_SOURCES.makersSheet,
      },
    ],
    stop: 'what is missing or other than approved is settled now, not on the roof',
  },
  {
    id: 'before.safety',
    title: 'Weather, fall protection, ladder and rescue',
    state: 'not_proved_dead',
    tools: [
      'harness, rope and anchor rated for falls, or guardrail or net',
      'ladder that stands 3 ft above the eave, tied off',
      'covers for skylights and holes',
      'helmet, gloves, safety glasses',
    ],
    tasks: SAFETY_RULES,
    cautions: ['height'],
    stop: 'nobody steps on the roof before all of these are checked, and again each day',
  },
  {
    id: 'before.lock-out',
    title: 'Lock out',
    state: 'not_proved_dead',
    tools: ['padlock and tag'],
    tasks: LOCK_OUT_RULES,
    cautions: ['live-conductors', 'electrician'],
  },
  {
    id: 'before.prove-dead',
    title: 'Prove that there is no voltage',
    state: 'not_proved_dead',
    tools: ['voltage tester for the service voltage, proved on a known live point before and after'],
    tasks: ABSENCE_RULES,
    cautions: ['live-conductors', 'electrician'],
    stop: 'no cover comes off and no wire is touched before the absence of voltage is proved',
  },
  {
    id: 'before.look',
    title: 'Look at the roof before drilling',
    tools: ['flashlight', 'tape', 'moisture meter or awl'],
    tasks: [
      { says: framingTexts, source: WORK_SOURCES.projectFile },
      {
        says: 'wood is dry, sound and unsplit; covering lies flat and will last as long as the array',
        source: WORK_SOURCES.practice,
      },
      {
        says: ({ project }) =>
          `${plural(Object.keys(project.roof_planes).length, 'roof plane')}: vents, chimneys and skylights stand where the drawings have them`,
      },
    ],
    cautions: ['structural-engineer'],
    stop: 'what differs from the drawings goes back to the planning, and to an engineer where wood is hurt',
  },
]

/** What must lie there before the work begins. */
/** What the permit sets off in the house as it is and is not shown to be met. */
function houseTasks({ project }: PlanSystem): PlanTask[] {
  return existingHouseChecks(project).flatMap(({ state, about, says, source, todo }) =>
    state === 'met' || state === 'not_needed' ? [] : [task(`${about}: ${says}. ${todo}`, source)],
  )
}

function material({ project, run, mounts, wire }: PlanSystem): PlanQuantity[] {
  const modules = Object.entries(run.result.values.arrays).map(([id, array]) => {
    const module = own(project.arrays, id)?.module ?? ''
    return quantity(`modules ${own(project.equipment.modules, module)?.name ?? module}, array ${id}`, array.modules)
  })
  const hardware =
    mounts === undefined
      ? []
      : [
          quantity('mounts', mounts.counts.mounts),
          ...(mounts.fastener.into === 'seam'
            ? []
            : [quantity(mounts.counts.lag_screws > 0 ? 'lag screws' : mounts.fastener.name, mounts.fastener.count)]),
          quantity('pieces of rail', mounts.counts.rail_pieces),
          quantity('rail splices', mounts.counts.splices),
        ]
  const wiring =
    wire === undefined ? [] : [quantity('circuits', wire.circuits.length), quantity('raceways', wire.raceways.length)]
  return [...modules, ...hardware, ...wiring]
}

function framingTexts({ project }: PlanSystem): string[] {
  const inches = (value: number | undefined, unknown: string): string =>
    value === undefined ? `(${unknown})` : `${value} in`
  return Object.entries(project.structure?.framing ?? {}).map(
    ([plane, framing]) =>
      `${plane}: rafters ${framing.nominal_size ?? '(size not stated)'} at ${inches(framing.spacing_in, 'spacing not stated')}, first at ${inches(framing.first_offset_in, 'not stated')} from the left end of the eave: found so from the attic`,
  )
}
