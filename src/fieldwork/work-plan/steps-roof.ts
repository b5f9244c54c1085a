import { inchesOf, own } from '../../values/index.js'
import { torqueText } from './torque.js'
import { WORK_SOURCES } from '../../tables/fieldwork/index.js'
import type { Source } from '../../worksheet/index.js'
import { nec, plural, quantity, step, stopFor, tape, tapeAtMost, task } from './plan-facts.js'
import type { PlanInput } from './plan-input.js'
import type { PlanStep } from './plan-values.js'

const COMPUTED: Source = { document: 'space-mounts', standing: 'project file' }
const EDGE: Source = { document: 'NDS', edition: '2018', place: 'table 12.5.1C', standing: 'secondary' }
const LEAD_HOLE: Source = { document: 'NDS', edition: '2018', place: '12.1.4.2', standing: 'from memory' }

/** Layout, mounts, rails and bonding. */
export function stepsRoof(input: PlanInput): PlanStep[] {
  const { project, mounts, wire: wiring } = input
  const product = own(project.equipment.mounts, project.structure?.mount)
  const sheet: Source = { ...WORK_SOURCES.makersSheet, document: product?.sheet ?? WORK_SOURCES.makersSheet.document }
  const lag = product?.lag
  const stop = stopFor(input, 'space-mounts')
  const framing = Object.values(project.structure?.framing ?? {})
  const drilled =
    lag?.lead_hole_in === undefined
      ? mounts === undefined
        ? undefined
        : `a bit between ${mounts.lag.lead_hole_least_in.toFixed(3)} and ${mounts.lag.lead_hole_most_in.toFixed(3)} in`
      : `a bit of ${lag.lead_hole_in} in`
  return [
    step('roof.layout', 'Lay out and drill the lead holes', {
      tools: ['chalk line', 'tape', 'stud finder or hammer and attic helper', 'drill with a stop on the bit'],
      quantities: mounts === undefined ? [] : [quantity('lead holes', mounts.counts.lag_screws)],
      tasks: [
        mounts === undefined
          ? undefined
          : task(
              'snap the rails and mark every mount of the table below, each from the left end of the eave and from the eave up',
            ),
        ...(mounts === undefined
          ? []
          : equalSpans(mounts).map(([zones, inches, governs]) =>
              task(
                `wind zone ${zones.join(', ')}: mounts along a rail are nowhere more than ${tapeAtMost(inches)} apart (${governs} governs)`,
                COMPUTED,
              ),
            )),
        mounts === undefined
          ? undefined
          : task(
              `each hole is within ${tapeAtMost(Math.max(0, mounts.lag.centring_tolerance_in))} of the middle of the rafter`,
              EDGE,
            ),
        drilled === undefined
          ? undefined
          : task(
              `drill with ${drilled}, square to the roof; a hole that misses the wood is sealed and flashed, not used`,
              lag?.lead_hole_in === undefined ? LEAD_HOLE : sheet,
            ),
      ],
      cautions: ['height', 'structural-engineer'],
      stop: stop ?? 'a second person checks three mounts of each plane against the table before the first hole',
    }),
    step('roof.mounts', 'Set the mounts', {
      tools: ['flat bar', 'sealant of the maker', 'socket wrench; no impact driver for the last turns'],
      quantities:
        mounts === undefined
          ? []
          : [
              quantity(product?.name ?? 'mounts', mounts.counts.mounts),
              quantity(
                lag === undefined ? 'lag screws' : `lag screws ${lag.size} x ${lag.length_in} in`,
                mounts.counts.lag_screws,
              ),
            ],
      tasks: [
        mounts === undefined
          ? undefined
          : task(
              `every screw has ${mounts.lag.thread_in_rafter_in.toFixed(2)} in of thread in the rafter; one that spins without biting is drawn and told`,
              COMPUTED,
            ),
        task(
          'flashing goes under the course above, sealant as the maker shows; nothing is nailed in the way of water',
          sheet,
        ),
        task(torqueText('the bolt from rail to mount', product?.torque_lb_in), sheet),
        ...[...new Set(framing.flatMap((each) => each.covering ?? []))].map((covering) =>
          task(`covering is ${covering.replace('_', ' ')}: the mount is made for it`, sheet),
        ),
      ],
      cautions: ['height'],
      stop,
    }),
    step('roof.rails', 'Fix and join the rails', {
      tools: ['saw with a guide, deburring tool', 'torque wrench', 'string line'],
      quantities:
        mounts === undefined
          ? []
          : [
              quantity('rails', mounts.counts.rails),
              quantity('pieces', mounts.counts.rail_pieces),
              quantity('splices', mounts.counts.splices),
            ],
      tasks: (mounts?.rails ?? []).map((rail) =>
        task(
          `${rail.id} (${rail.plane}): ${tape(rail.length_in)} of ${rail.pieces_in.map(tape).join(' + ')}${rail.splices_in.length === 0 ? '' : `, joints ${rail.splices_in.map(tape).join(', ')} from the left end of the eave`}; free ends ${tape(rail.overhang_left_in)} left and ${tape(rail.overhang_right_in)} right, no longer`,
          COMPUTED,
        ),
      ),
      cautions: ['height'],
      stop,
    }),
    step('roof.bonding', 'Bond the array', {
      tools: ['torque wrench', 'continuity tester'],
      tasks: [
        wiring === undefined
          ? undefined
          : task(
              `${wiring.grounding.array.size_awg} AWG ${wiring.grounding.array.material}${wiring.grounding.array.unspliced ? ', unspliced' : ''}: ${wiring.grounding.array.note}`,
              nec(input, 'equipmentGrounding'),
            ),
        wiring === undefined || !wiring.grounding.electrode.required
          ? undefined
          : task(
              electrodeText(wiring.grounding.electrode, project.electrical?.array_electrode),
              nec(input, 'arrayElectrode'),
            ),
        task(
          'every rail, joint and frame is bonded with the parts that are listed for it; measured continuous end to end',
          WORK_SOURCES.makersSheet,
        ),
      ],
      stop: stopFor(input, 'size-wire'),
    }),
    ...raceways(input),
  ]
}

/** What is done about an electrode at the array where the edition asks for one. */
function electrodeText(
  electrode: NonNullable<PlanInput['wire']>['grounding']['electrode'],
  stated: NonNullable<PlanInput['project']['electrical']>['array_electrode'],
): string {
  if (electrode.size_awg !== null) return `electrode conductor ${electrode.size_awg} AWG: ${electrode.note}`
  return stated === 'within_6_ft_of_premises_electrode'
    ? 'electrode: the array is within 6 ft of that of the premises; measure it'
    : 'this edition asks for a grounding electrode at the array and the project has none: drive a rod, or show that the array is within 6 ft of the premises electrode'
}

/** Zones that share a largest distance and its reason. */
function equalSpans(mounts: NonNullable<PlanInput['mounts']>): [zones: string[], inches: number, governs: string][] {
  const spans: [string[], number, string][] = []
  for (const [zone, inches] of Object.entries(mounts.max_span_in)) {
    const governs = own(mounts.max_span_governs, zone) ?? 'as computed'
    const same = spans.find((each) => each[1] === inches && each[2] === governs)
    if (same === undefined) spans.push([[zone], inches, governs])
    else same[0].push(zone)
  }
  return spans
}

function raceways(input: PlanInput): PlanStep[] {
  const { wire: wiring } = input
  const support = nec(input, 'racewaySupport')
  const quantities = (wiring?.raceways ?? []).flatMap((raceway) => [
    quantity(
      `${raceway.type}${raceway.trade_size === null ? '' : ` ${raceway.trade_size} in`}, ${raceway.id}`,
      raceway.length_ft,
      'ft',
    ),
    quantity(`strap, ${raceway.id}`, raceway.straps),
  ])
  const tasks = (wiring?.raceways ?? []).flatMap((raceway) => [
    task(
      `${raceway.id} (${raceway.location}): ${raceway.straps === 1 ? 'strap' : 'straps'} at ${raceway.strap_positions_ft.map((ft) => tape(inchesOf(ft))).join(', ')} from its start`,
      support,
    ),
    ...(raceway.expansion_fitting
      ? [
          task(
            `${raceway.id}: expansion fitting set for today's temperature; it moves ${tape(raceway.length_change_in ?? 0)} over the year`,
            nec(input, 'pvcExpansion'),
          ),
        ]
      : []),
    task(
      `${raceway.id}: pull ${raceway.conductors.map((each) => `${each.count} x ${each.size_awg} AWG ${each.material} ${each.insulation} (${[each.use.replaceAll('_', ' '), each.circuit].filter((part) => part !== '').join(', ')})`).join('; ')}`,
      nec(input, 'racewayFill'),
    ),
  ])
  return [
    step('roof.raceway', 'Run raceways, boxes and straps', {
      tools: ['bender or heater', 'reamer', 'level', 'fish tape'],
      quantities,
      tasks: [
        ...tasks,
        ...(wiring?.grounding.raceway_bonding ?? []).map((each) =>
          task(`bond at ${each.at}: ${each.note}`, nec(input, 'metalRacewayBonding')),
        ),
        task('holes through roof and wall are flashed and sealed; boxes stay open for the rough inspection'),
      ],
      cautions: ['height', 'live-conductors'],
      stop: stopFor(input, 'size-wire'),
    }),
    step('roof.rough-inspection', 'Rough inspection', {
      kind: 'inspection',
      tasks: [
        task('approved set and permit card lie ready, a ladder stands tied off'),
        input.mounts === undefined
          ? undefined
          : task(
              `${plural(input.mounts.counts.mounts, 'mount')} visible, spacing and free rail ends as drawn, flashing in place`,
            ),
        task('bonding of rails complete and visible', nec(input, 'equipmentGrounding')),
        wiring === undefined
          ? undefined
          : task(
              `${plural(wiring.raceways.length, 'raceway')}: type, size, straps and bushings visible, covers off`,
              support,
            ),
        wiring === undefined
          ? undefined
          : task(
              'conductors of the sizes and kinds of the schedule, with their equipment grounding conductors',
              nec(input, 'equipmentGroundSize'),
            ),
        task('clear space in front of panel and disconnects', nec(input, 'workingSpace')),
      ],
      cautions: ['authority'],
      stop: 'nothing is covered by modules before the inspector has signed',
    }),
  ]
}
