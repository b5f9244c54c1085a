import type { WiringValues } from '../../electrical/index.js'
import { WORK_SOURCES } from '../../tables/fieldwork/index.js'
import type { MountValues } from '../../structure/index.js'
import { own } from '../../values/index.js'
import type { Source } from '../../worksheet/index.js'
import { quantity, tape, tapeAtMost } from './plan-facts.js'
import type { PlanSystem } from './plan-system.js'
import type { PlanQuantity } from './plan-values.js'
import type { StepRule } from './step-rule.js'
import { ofMounts, ofWiring, section } from './task-rule.js'
import { torqueText } from './torque.js'

const COMPUTED: Source = { document: 'space-mounts', standing: 'project file' }
const EDGE: Source = { document: 'NDS', edition: '2018', place: 'table 12.5.1C', standing: 'secondary' }
const LEAD_HOLE: Source = { document: 'NDS', edition: '2018', place: '12.1.4.2', standing: 'from memory' }

/** What a well set mount without lag screws looks like. */
const SETTING = {
  rafter: 'every screw bites in the middle of the rafter; one that spins is drawn and told',
  seam: 'every clamp sits square on its seam, on no panel end, and makes no hole',
  sheathing: 'every mount lies flat on sound, dry sheathing with all of its screws; one that spins is drawn and told',
} as const

/** Layout, mounts, rails and bonding. */
export const STEPS_ROOF: readonly StepRule[] = [
  {
    id: 'roof.layout',
    title: (system) => (onRafters(system) ? 'Lay out and drill the lead holes' : 'Lay out the mounts'),
    tools: (system) =>
      onRafters(system)
        ? ['chalk line', 'tape', 'stud finder or hammer and attic helper', 'drill with a stop on the bit']
        : ['chalk line', 'tape'],
    quantities: ofMounts(({ fastener }) =>
      fastener.into === 'rafter' ? [quantity('lead holes', fastener.count)] : [],
    ),
    tasks: [
      {
        when: ({ mounts }) => mounts !== undefined,
        says: 'snap the rails and mark every mount of the table below, each from the left end of the eave and from the eave up',
      },
      {
        says: ofMounts((mounts) =>
          equalSpans(mounts).map(
            ([zones, inches, governs]) =>
              `wind zone ${zones.join(', ')}: mounts along a rail are nowhere more than ${tapeAtMost(inches)} apart (${governs} governs)`,
          ),
        ),
        source: COMPUTED,
      },
      {
        says: ofMounts(({ lag }) =>
          lag === null
            ? []
            : [`each hole is within ${tapeAtMost(Math.max(0, lag.centring_tolerance_in))} of the middle of the rafter`],
        ),
        source: EDGE,
      },
      {
        says: (system) =>
          leadHoles(system).map(
            (bit) =>
              `drill with ${bit}, square to the roof; a hole that misses the wood is sealed and flashed, not used`,
          ),
        source: (system) => (mountOf(system)?.lag?.lead_hole_in === undefined ? LEAD_HOLE : mountSheet(system)),
      },
    ],
    cautions: ['height', 'structural-engineer'],
    needs: 'space-mounts',
    stop: 'a second person checks three mounts of each plane against the table before the first hole',
  },
  {
    id: 'roof.mounts',
    title: 'Set the mounts',
    tools: (system) =>
      system.mounts?.fastener.into === 'seam'
        ? ['torque wrench with the bit of the setscrews']
        : ['flat bar', 'sealant of the maker', 'socket wrench; no impact driver for the last turns'],
    quantities: ofMounts(({ counts }, system) => [
      quantity(mountOf(system)?.name ?? 'mounts', counts.mounts),
      ...fasteners(system),
    ]),
    tasks: [
      {
        says: ofMounts(({ lag, fastener }) => [
          lag === null
            ? SETTING[fastener.into]
            : `every screw has ${lag.thread_in_rafter_in.toFixed(2)} in of thread in the rafter; one that spins without biting is drawn and told`,
        ]),
        source: COMPUTED,
      },
      {
        when: ({ mounts }) => mounts?.fastener.into !== 'seam',
        says: 'flashing goes under the course above, sealant as the maker shows; nothing is nailed in the way of water',
        source: mountSheet,
      },
      {
        when: ({ mounts }) => mounts?.fastener.into === 'seam',
        says: (system) => torqueText('the setscrews of the clamps', mountOf(system)?.seam_clamp?.setscrew_torque_lb_in),
        source: mountSheet,
      },
      {
        says: (system) => torqueText('the bolt from rail to mount', mountOf(system)?.torque_lb_in),
        source: mountSheet,
      },
      {
        says: (system) =>
          coverings(system).map((covering) => `covering is ${covering.replace('_', ' ')}: the mount is made for it`),
        source: mountSheet,
      },
    ],
    cautions: ['height'],
    needs: 'space-mounts',
  },
  {
    id: 'roof.rails',
    title: 'Fix and join the rails',
    tools: ['saw with a guide, deburring tool', 'torque wrench', 'string line'],
    quantities: ofMounts(({ counts }) => [
      quantity('rails', counts.rails),
      quantity('pieces', counts.rail_pieces),
      quantity('splices', counts.splices),
    ]),
    tasks: [{ says: ofMounts(({ rails }) => rails.map(railText)), source: COMPUTED }],
    cautions: ['height'],
    needs: 'space-mounts',
  },
  {
    id: 'roof.bonding',
    title: 'Bond the array',
    tools: ['torque wrench', 'continuity tester'],
    tasks: [
      {
        says: ofWiring(({ grounding: { array } }) => [
          `${array.size_awg} AWG ${array.material}${array.unspliced ? ', unspliced' : ''}: ${array.note}`,
        ]),
        source: section('equipmentGrounding'),
      },
      {
        when: ({ wire }) => wire?.grounding.electrode.required === true,
        says: ofWiring(({ grounding }, { project }) => [
          electrodeText(grounding.electrode, project.electrical?.array_electrode),
        ]),
        source: section('arrayElectrode'),
      },
      {
        says: 'every rail, joint and frame is bonded with the parts that are listed for it; measured continuous end to end',
        source: WORK_SOURCES.makersSheet,
      },
    ],
    needs: 'size-wire',
  },
]

/** What is done about an electrode at the array where the edition asks for one. */
function electrodeText(
  electrode: WiringValues['grounding']['electrode'],
  stated: NonNullable<PlanSystem['project']['electrical']>['array_electrode'],
): string {
  if (electrode.size_awg !== null) return `electrode conductor ${electrode.size_awg} AWG: ${electrode.note}`
  return stated === 'within_6_ft_of_premises_electrode'
    ? 'electrode: the array is within 6 ft of that of the premises; measure it'
    : 'this edition asks for a grounding electrode at the array and the project has none: drive a rod, or show that the array is within 6 ft of the premises electrode'
}

function mountOf({ project }: PlanSystem) {
  return own(project.equipment.mounts, project.structure?.mount)
}

function mountSheet(system: PlanSystem): Source {
  return { ...WORK_SOURCES.makersSheet, document: mountOf(system)?.sheet ?? WORK_SOURCES.makersSheet.document }
}

/** What to drill lead holes with: as the maker has it, else as the mounts were computed, else not known. */
function leadHoles(system: PlanSystem): string[] {
  const stated = mountOf(system)?.lag?.lead_hole_in
  if (stated !== undefined) return [`a bit of ${stated} in`]
  const lag = system.mounts?.lag ?? null
  if (lag === null) return []
  return [`a bit between ${lag.lead_hole_least_in.toFixed(3)} and ${lag.lead_hole_most_in.toFixed(3)} in`]
}

/** Screws to lay ready; clamps bring their own. */
function fasteners(system: PlanSystem): PlanQuantity[] {
  const { mounts } = system
  if (mounts === undefined || mounts.fastener.into === 'seam') return []
  const lag = mountOf(system)?.lag
  const lags = mounts.counts.lag_screws > 0 && lag !== undefined
  return [quantity(lags ? `lag screws ${lag.size} x ${lag.length_in} in` : mounts.fastener.name, mounts.fastener.count)]
}

/** Whether the mounts are screwed into rafters, as far as they are known. */
const onRafters = ({ mounts }: PlanSystem): boolean => mounts === undefined || mounts.fastener.into === 'rafter'

function coverings({ project }: PlanSystem): string[] {
  return [...new Set(Object.values(project.structure?.framing ?? {}).flatMap(({ covering }) => covering ?? []))]
}

function railText(rail: MountValues['rails'][number]): string {
  const joints =
    rail.splices_in.length === 0 ? '' : `, joints ${rail.splices_in.map(tape).join(', ')} from the left end of the eave`
  return `${rail.id} (${rail.plane}): ${tape(rail.length_in)} of ${rail.pieces_in.map(tape).join(' + ')}${joints}; free ends ${tape(rail.overhang_left_in)} left and ${tape(rail.overhang_right_in)} right, no longer`
}

/** Zones that share a largest distance and its reason. */
function equalSpans(mounts: MountValues): [zones: string[], inches: number, governs: string][] {
  const spans: [string[], number, string][] = []
  for (const [zone, inches] of Object.entries(mounts.max_span_in)) {
    const governs = own(mounts.max_span_governs, zone) ?? 'as computed'
    const same = spans.find((each) => each[1] === inches && each[2] === governs)
    if (same === undefined) spans.push([[zone], inches, governs])
    else same[0].push(zone)
  }
  return spans
}
