import { inchesOf, own } from '../../values/index.js'
import { torqueText } from './torque.js'
import { listModuleGroups } from '../../project/index.js'
import { WORK_SOURCES } from '../../tables/fieldwork/index.js'
import { nec, plural, quantity, step, stopFor, tape, task } from './plan-facts.js'
import type { PlanInput } from './plan-input.js'
import type { PlanStep } from './plan-values.js'

/** Inverters, modules, terminations and labels. */
export function stepsEquipment(input: PlanInput): PlanStep[] {
  const { project, mounts, wire: wiring, labels } = input
  const rail = own(project.equipment.rails, project.structure?.rail)
  const groups = listModuleGroups(project)
  const moduleLevel = groups.flatMap((group) =>
    group.conversion.kind === 'module_level'
      ? [{ group, inverter: group.conversion.inverter, id: group.conversion.inverterId }]
      : [],
  )
  const units = Object.entries(project.inverter_units ?? {})
  const clampZones = new Map(groups.map((group) => [group.array.module, group.module]))
  return [
    step('equipment.inverters', 'Set the inverters', {
      tools: ['torque wrench', 'the map for serial numbers'],
      quantities: [
        ...moduleLevel.map(({ group, inverter, id }) =>
          quantity(`${inverter.name ?? id}, array ${group.id}`, group.modules),
        ),
        ...units.map(([id, unit]) =>
          quantity(`${own(project.equipment.inverters, unit.inverter)?.name ?? unit.inverter}, ${id}`, 1),
        ),
      ],
      tasks: [
        moduleLevel.length === 0
          ? undefined
          : task('one behind each module, serial number written on the roof map before the module hides it'),
        units.length === 0
          ? undefined
          : task(
              'string inverters hang with the clearances of their sheet, out of the sun where the place allows',
              WORK_SOURCES.makersSheet,
            ),
        ...(wiring?.circuits ?? []).flatMap((circuit) =>
          circuit.kind === 'dc_string' || circuit.kind === 'ac_supply_tap'
            ? []
            : [
                task(
                  `circuit ${circuit.id}: ${plural(circuit.inverters, 'inverter')}, no more`,
                  nec(input, 'inverterOutputCurrent'),
                ),
              ],
        ),
        task('open ends of trunk cables are capped and watertight before night or rain', WORK_SOURCES.makersSheet),
      ],
      cautions: ['height', 'live-conductors'],
    }),
    step('equipment.modules', 'Lay the modules', {
      state: 'open_strings_live',
      tools: ['torque wrench', 'two people a module', 'clips for leads'],
      quantities: Object.entries(input.run.result.values.arrays).map(([id, array]) =>
        quantity(`modules, array ${id}`, array.modules),
      ),
      tasks: [
        ...[...clampZones].flatMap(([id, module]) => {
          const zone = module.clamp_zone_from_corner_in
          return zone === undefined
            ? []
            : [
                task(`${module.name ?? id}: clamps ${zone[0]} to ${zone[1]} in from the corners of the long side`, {
                  ...WORK_SOURCES.makersSheet,
                  document: module.sheet ?? id,
                }),
              ]
        }),
        task(
          'no modules are stacked on the roof: each goes from the hoist to its place and is clamped before the next comes up',
          WORK_SOURCES.practice,
          'modules.no-stack',
        ),
        units.length === 0
          ? undefined
          : task(
              'each string is joined from module to module, but both its ends stay open, capped and marked plus and minus until the last connection',
              WORK_SOURCES.commissioning,
              'strings.open',
            ),
        task(
          'begin at the lower row; leads are clipped so that none touches the roof',
          nec(input, 'arrayCableSupport'),
        ),
        task(
          'connectors of one make only, pushed until they click; none is opened under load',
          WORK_SOURCES.makersSheet,
        ),
        task(torqueText('the clamps', rail?.clamp?.torque_lb_in), WORK_SOURCES.makersSheet),
        mounts === undefined
          ? undefined
          : task(`pathways and setbacks of the drawings are free when ${plural(mounts.counts.modules, 'module')} lie`),
      ],
      cautions: ['height', 'live-conductors'],
      stop: 'a module makes voltage as soon as there is light: from here on every lead is live',
    }),
    step('equipment.terminations', 'Make the terminations', {
      state: units.length === 0 ? 'dead' : 'open_strings_live',
      tools: ['calibrated torque tool', 'voltage tester'],
      tasks: [
        task(
          'lock-out in place, absence of voltage proved again at the place of work',
          WORK_SOURCES.absenceOfVoltage,
          'terminations.prove-dead',
        ),
        ...(wiring?.circuits ?? []).flatMap((circuit) =>
          circuit.breaker_a === null
            ? []
            : [
                task(
                  `${circuit.id}: breaker ${circuit.breaker_a} A, terminals used at ${circuit.terminal_temperature_c} C`,
                  nec(input, 'terminalTemperature'),
                ),
              ],
        ),
        wiring === undefined
          ? undefined
          : task(
              `panel: rule ${wiring.panel.rule} ${wiring.panel.complies ? 'holds' : 'FAILS'} with ${Number(wiring.panel.inverter_a.toFixed(2))} A of inverters; breaker where the drawings have it`,
              nec(input, project.electrical?.connection?.kind === 'supply_side' ? 'supplySide' : 'loadSideBusbar'),
            ),
        task('each terminal is tightened with a torque tool to the number on the equipment', WORK_SOURCES.torque),
        task(
          torqueText('the terminals in the panel', project.electrical?.panel?.terminal_torque_lb_in),
          WORK_SOURCES.torque,
        ),
        ...Object.entries(project.equipment.inverters ?? {}).flatMap(([id, inverter]) =>
          units.length === 0 || inverter.terminal_torque_lb_in === undefined
            ? []
            : [
                task(
                  torqueText(`the terminals of ${inverter.name ?? id}`, inverter.terminal_torque_lb_in),
                  WORK_SOURCES.torque,
                ),
              ],
        ),
        units.length === 0
          ? undefined
          : task(
              'the DC run is landed at the inverter with its DC switch off, while its other end is open at the array; no string is joined to it yet',
              WORK_SOURCES.commissioning,
              'terminations.dc-run',
            ),
      ],
      cautions: ['live-conductors', 'electrician'],
      stop:
        stopFor(input, 'size-wire') ??
        'a licensed electrician makes or checks the connection in the panel or ahead of it',
    }),
    step('equipment.labels', 'Fix the labels', {
      state: units.length === 0 ? 'dead' : 'open_strings_live',
      tools: ['cleaner for the ground', 'the sheet of labels'],
      quantities: (labels ?? []).map((label) => quantity(`label ${label.number} (${label.id})`, label.count)),
      tasks: (labels ?? []).flatMap((label) => [
        {
          id: '',
          says: `label ${label.number}, ${label.count} at ${label.places.join(', ').replaceAll('_', ' ')}: ${label.text} (${label.look}; ${label.wording})`,
          source: label.source,
        },
        ...label.along.map((piece) => ({
          id: '',
          says: `label ${label.number} on ${piece.raceway}: at ${piece.atFt.map((ft) => tape(inchesOf(ft))).join(', ')} from its start, and on the cover of the box where it begins`,
          source: label.source,
        })),
      ]),
      stop: labels === undefined ? stopFor(input, 'size-wire') : undefined,
    }),
  ]
}
