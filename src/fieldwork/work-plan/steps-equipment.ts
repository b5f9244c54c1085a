import type { RequiredLabel } from '../../drawings/index.js'
import { landingPanel } from '../../project/facts.js'
import { isAc } from '../../electrical/index.js'
import { listModuleGroups } from '../../project/index.js'
import { WORK_SOURCES } from '../../tables/fieldwork/index.js'
import { inchesOf, own } from '../../values/index.js'
import { plural, quantity, tape } from './plan-facts.js'
import type { PlanSystem } from './plan-system.js'
import type { PlanQuantity, PlanState, PlanTask } from './plan-values.js'
import type { StepRule } from './step-rule.js'
import { connectionSection, ofMounts, ofWiring, section, task } from './task-rule.js'
import { connectionTasks } from './connection-tasks.js'
import { torqueText } from './torque.js'

const wallUnits = (system: PlanSystem): boolean => system.wallUnits
/** Once modules lie, the leads of strings are live. */
const stateUnderModules = (system: PlanSystem): PlanState => (system.wallUnits ? 'open_strings_live' : 'dead')

/** Inverters, modules, terminations and labels. */
export const STEPS_EQUIPMENT: readonly StepRule[] = [
  {
    id: 'equipment.inverters',
    title: 'Set the inverters',
    tools: ['torque wrench', 'the map for serial numbers'],
    quantities: (system) => [...moduleLevelInverters(system), ...wallInverters(system)],
    tasks: [
      {
        when: (system) => system.moduleLevel,
        says: 'one behind each module, serial number written on the roof map before the module hides it',
      },
      {
        when: wallUnits,
        says: 'string inverters hang with the clearances of their sheet, out of the sun where the place allows',
        source: WORK_SOURCES.makersSheet,
      },
      {
        says: ofWiring(({ circuits }) =>
          circuits
            .filter((circuit) => isAc(circuit) && circuit.kind !== 'ac_supply_tap')
            .map((circuit) => `circuit ${circuit.id}: ${plural(circuit.inverters, 'inverter')}, no more`),
        ),
        source: section('inverterOutputCurrent'),
      },
      {
        says: 'open ends of trunk cables are capped and watertight before night or rain',
        source: WORK_SOURCES.makersSheet,
      },
    ],
    cautions: ['height', 'live-conductors'],
  },
  {
    id: 'equipment.modules',
    title: 'Lay the modules',
    state: 'open_strings_live',
    tools: ['torque wrench', 'two people a module', 'clips for leads'],
    quantities: ({ run }) =>
      Object.entries(run.result.values.arrays).map(([id, array]) => quantity(`modules, array ${id}`, array.modules)),
    tasks: [
      clampTasks,
      {
        id: 'modules.no-stack',
        says: 'no modules are stacked on the roof: each goes from the hoist to its place and is clamped before the next comes up',
        source: WORK_SOURCES.practice,
      },
      {
        id: 'strings.open',
        when: wallUnits,
        says: 'each string is joined from module to module, but both its ends stay open, capped and marked plus and minus until the last connection',
        source: WORK_SOURCES.commissioning,
      },
      {
        says: 'begin at the lower row; leads are clipped so that none touches the roof',
        source: section('arrayCableSupport'),
      },
      {
        says: 'connectors of one make only, pushed until they click; none is opened under load',
        source: WORK_SOURCES.makersSheet,
      },
      { says: clampTorque, source: WORK_SOURCES.makersSheet },
      {
        says: ofMounts(({ counts }) => [
          `pathways and setbacks of the drawings are free when ${plural(counts.modules, 'module')} lie`,
        ]),
      },
    ],
    cautions: ['height', 'live-conductors'],
    stop: 'a module makes voltage as soon as there is light: from here on every lead is live',
  },
  {
    id: 'equipment.terminations',
    title: 'Make the terminations',
    state: stateUnderModules,
    tools: ['calibrated torque tool', 'voltage tester'],
    tasks: [
      {
        id: 'terminations.prove-dead',
        says: 'lock-out in place, absence of voltage proved again at the place of work',
        source: WORK_SOURCES.absenceOfVoltage,
      },
      {
        says: ofWiring(({ circuits }) =>
          circuits
            .filter((circuit) => circuit.breaker_a !== null)
            .map(
              (circuit) =>
                `${circuit.id}: breaker ${circuit.breaker_a} A, terminals used at ${circuit.terminal_temperature_c} C`,
            ),
        ),
        source: section('terminalTemperature'),
      },
      {
        says: ofWiring(connectionTasks),
        source: connectionSection,
      },
      {
        says: 'each terminal is tightened with a torque tool to the number on the equipment',
        source: WORK_SOURCES.torque,
      },
      {
        says: ({ project }) =>
          torqueText('the terminals in the panel', landingPanel(project.electrical).stated?.terminal_torque_lb_in),
        source: WORK_SOURCES.torque,
      },
      { when: wallUnits, says: inverterTorques, source: WORK_SOURCES.torque },
      {
        id: 'terminations.dc-run',
        when: wallUnits,
        says: 'the DC run is landed at the inverter with its DC switch off, while its other end is open at the array; no string is joined to it yet',
        source: WORK_SOURCES.commissioning,
      },
    ],
    cautions: ['live-conductors', 'electrician'],
    needs: 'size-wire',
    stop: 'a licensed electrician makes or checks the connection in the panel or ahead of it',
  },
  {
    id: 'equipment.labels',
    title: 'Fix the labels',
    state: stateUnderModules,
    tools: ['cleaner for the ground', 'the sheet of labels'],
    quantities: ({ labels = [] }) =>
      labels.map((label) => quantity(`label ${label.number} (${label.id})`, label.count)),
    tasks: [({ labels = [] }) => labels.flatMap(labelTasks)],
    needs: 'size-wire',
  },
]

function moduleLevelInverters({ project }: PlanSystem): PlanQuantity[] {
  return listModuleGroups(project).flatMap(({ id, modules, conversion }) =>
    conversion.kind === 'module_level'
      ? [quantity(`${conversion.inverter.name ?? conversion.inverterId}, array ${id}`, modules)]
      : [],
  )
}

function wallInverters({ project }: PlanSystem): PlanQuantity[] {
  return Object.entries(project.inverter_units ?? {}).map(([id, { inverter }]) =>
    quantity(`${own(project.equipment.inverters, inverter)?.name ?? inverter}, ${id}`, 1),
  )
}

/** Where each kind of module may be clamped, by its own sheet. */
function clampTasks({ project }: PlanSystem): PlanTask[] {
  const modules = new Map(listModuleGroups(project).map((group) => [group.array.module, group.module]))
  return [...modules].flatMap(([id, module]) => {
    const zone = module.clamp_zone_from_corner_in
    if (zone === undefined) return []
    const says = `${module.name ?? id}: clamps ${zone[0]} to ${zone[1]} in from the corners of the long side`
    return [task(says, { ...WORK_SOURCES.makersSheet, document: module.sheet ?? id })]
  })
}

function clampTorque({ project }: PlanSystem): string {
  return torqueText('the clamps', own(project.equipment.rails, project.structure?.rail)?.clamp?.torque_lb_in)
}

function inverterTorques({ project }: PlanSystem): string[] {
  return Object.entries(project.equipment.inverters ?? {}).flatMap(([id, { name, terminal_torque_lb_in: torque }]) =>
    torque === undefined ? [] : [torqueText(`the terminals of ${name ?? id}`, torque)],
  )
}

/** A label carries the source of its own wording. */
function labelTasks({ number, count, placeTitles, text, look, wording, source, along }: RequiredLabel): PlanTask[] {
  return [
    {
      id: '',
      says: `label ${number}, ${count} at ${placeTitles.join(', ')}: ${text} (${look}; ${wording})`,
      source,
    },
    ...along.map(({ raceway, atFt }) => ({
      id: '',
      says: `label ${number} on ${raceway}: at ${atFt.map((ft) => tape(inchesOf(ft))).join(', ')} from its start, and on the cover of the box where it begins`,
      source,
    })),
  ]
}
