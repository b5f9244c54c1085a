import { WORK_SOURCES } from '../../tables/fieldwork/index.js'
import { plural } from './plan-facts.js'
import type { PlanSystem } from './plan-system.js'
import type { PlanState } from './plan-values.js'
import { INSPECTION_SHUTDOWN, ON_TESTS } from './rules-tests.js'
import type { StepRule } from './step-rule.js'
import { connectionSection, ofWiring, section } from './task-rule.js'

const stateBeforePermission = (system: PlanSystem): PlanState => (system.strings ? 'closed_strings_off' : 'dead')

/** Final inspection, permission, tests with the system on, and the first week. */
export const STEPS_FINISH: readonly StepRule[] = [
  {
    id: 'finish.final-inspection',
    title: 'Final inspection',
    kind: 'inspection',
    state: stateBeforePermission,
    tasks: [
      {
        says: ({ labels }) =>
          labels === undefined
            ? []
            : `${plural(
                labels.reduce((sum, label) => sum + label.count, 0),
                'label',
              )} in place, printed, lasting`,
        source: section('pvDisconnect'),
      },
      {
        says: ofWiring(({ panel }) => [`the connection: ${panel.label === '' ? panel.section : panel.label}`]),
        source: connectionSection,
      },
      {
        when: ({ wire }) => wire !== undefined,
        says: 'disconnects within reach, lockable where the code asks, named as drawn',
        source: section('pvDisconnect'),
      },
      ...INSPECTION_SHUTDOWN,
      {
        says: 'covers on, unused openings closed, directories filled in, working space free',
        source: section('workingSpace'),
      },
      {
        says: 'the written record of torques, readings and serial numbers is handed over',
        source: WORK_SOURCES.commissioning,
      },
    ],
    cautions: ['authority'],
    stop: 'the system stays off: the inspector signs first, then the utility permits',
  },
  {
    id: 'finish.permission',
    title: 'Permission of the utility',
    state: stateBeforePermission,
    tasks: [
      {
        id: 'permission.wait',
        says: ({ utility }) => `send the signed card to ${utility}; wait for its written permission to operate`,
        source: WORK_SOURCES.practice,
      },
      {
        id: 'permission.no-test',
        says: 'everything stays off and locked; a test before the permission only with the written consent of the utility',
        source: WORK_SOURCES.practice,
      },
    ],
    cautions: ['authority'],
    stop: 'switching on before the written permission is forbidden by the utility, even for a test that it has not agreed to',
  },
  {
    id: 'on.tests',
    title: 'Switch on and test',
    state: 'on_after_permission',
    tools: [
      'clamp meter, voltmeter rated for the system',
      'irradiance meter, thermometer on the back of a module',
      'clock',
    ],
    tasks: ON_TESTS,
    cautions: ['live-conductors', 'electrician'],
    needs: 'size-wire',
    stop: 'a reading that is off: switch off, lock, find it',
  },
  {
    id: 'finish.first-week',
    title: 'Check of the first week',
    state: 'on_after_permission',
    tasks: [
      { says: weekRange, source: { document: 'estimate-yield', standing: 'project file' } },
      { says: 'every module or string reports, and those side by side read alike at noon' },
      {
        says: 'look at all raceways and fittings from the ground after the first hard rain; look for stains in the attic',
      },
      { says: 'run review-output with the readings of the week; one dull week is no fault' },
    ],
  },
]

function weekRange({ weeks }: PlanSystem): string {
  const best = weeks.reduce((a, b) => (b.expected_kwh > a.expected_kwh ? b : a))
  const worst = weeks.reduce((a, b) => (b.expected_kwh < a.expected_kwh ? b : a))
  return `seven days give ${worst.p10_kwh.toFixed(0)} to ${worst.p90_kwh.toFixed(0)} kWh in the darkest month and ${best.p10_kwh.toFixed(0)} to ${best.p90_kwh.toFixed(0)} kWh in the brightest in four of five cases; the table has every month`
}
