import { SERVICE_VOLTAGE_BAND, WORK_SOURCES } from '../../tables/fieldwork/index.js'
import { nec, plural, step, stopFor, task, tasksOf } from './plan-facts.js'
import type { PlanInput } from './plan-input.js'
import type { PlanSystem } from './plan-system.js'
import type { FirstWeek, PlanStep } from './plan-values.js'
import { CLOSE_STRINGS, DEAD_TESTS, INSPECTION_SHUTDOWN, ON_TESTS, STRING_TESTS } from './rules-tests.js'

/** Nominal service voltage and what the meter may show round it, V. */
export function acVoltage(input: PlanInput): { nominal_v: number; low_v: number; high_v: number } {
  const nominal = input.project.electrical?.service?.voltage_v ?? 240
  return {
    nominal_v: nominal,
    low_v: nominal * (1 - SERVICE_VOLTAGE_BAND),
    high_v: nominal * (1 + SERVICE_VOLTAGE_BAND),
  }
}

/** Tests while the system is off, final inspection, permission, tests with the system on, and the first week. */
export function stepsFinish(input: PlanInput, system: PlanSystem, weeks: readonly FirstWeek[]): PlanStep[] {
  const { wire: wiring, labels } = input
  const connectionRule = nec(input, system.supplySide ? 'supplySide' : 'loadSideBusbar')
  const [best, worst] = [
    weeks.reduce((a, b) => (b.expected_kwh > a.expected_kwh ? b : a)),
    weeks.reduce((a, b) => (b.expected_kwh < a.expected_kwh ? b : a)),
  ]
  return [
    step('test.dead', 'Test what is dead', {
      state: system.strings ? 'open_strings_live' : 'dead',
      tools: ['low-ohm meter', 'insulation tester', 'the approved drawings'],
      tasks: [tasksOf(DEAD_TESTS, system)],
      cautions: ['live-conductors', 'electrician'],
      stop: stopFor(input, 'size-wire') ?? 'what is off is found and put right before anything is joined',
    }),
    ...(system.strings
      ? [
          step('test.strings', 'Test the open strings', {
            state: 'open_strings_live',
            tools: [
              'DC voltmeter rated for the string voltage',
              'insulation tester with the voltages below',
              'irradiance meter, thermometer on the back of a module',
            ],
            tasks: [tasksOf(STRING_TESTS, system)],
            cautions: ['live-conductors', 'electrician'],
            stop: 'a string that reads otherwise is found and put right before any string is joined',
          }),
          step('test.close-strings', 'Close the strings: the last connection', {
            state: 'open_strings_live',
            tools: ['DC voltmeter and DC clamp meter rated for the string voltage'],
            tasks: [tasksOf(CLOSE_STRINGS, system)],
            cautions: ['live-conductors', 'electrician'],
            stop: 'the DC switch and the AC stay off and locked until the permission of the utility',
          }),
        ]
      : []),
    step('finish.final-inspection', 'Final inspection', {
      kind: 'inspection',
      state: system.strings ? 'closed_strings_off' : 'dead',
      tasks: [
        labels === undefined
          ? undefined
          : task(
              `${plural(
                labels.reduce((sum, label) => sum + label.count, 0),
                'label',
              )} in place, printed, lasting`,
              nec(input, 'pvDisconnect'),
            ),
        wiring === undefined
          ? undefined
          : task(
              `the connection: ${wiring.panel.label === '' ? wiring.panel.section : wiring.panel.label}`,
              connectionRule,
            ),
        wiring === undefined
          ? undefined
          : task('disconnects within reach, lockable where the code asks, named as drawn', nec(input, 'pvDisconnect')),
        tasksOf(INSPECTION_SHUTDOWN, system),
        task(
          'covers on, unused openings closed, directories filled in, working space free',
          nec(input, 'workingSpace'),
        ),
        task('the written record of torques, readings and serial numbers is handed over', WORK_SOURCES.commissioning),
      ],
      cautions: ['authority'],
      stop: 'the system stays off: the inspector signs first, then the utility permits',
    }),
    step('finish.permission', 'Permission of the utility', {
      state: system.strings ? 'closed_strings_off' : 'dead',
      tasks: [
        task(
          `send the signed card to ${system.utility}; wait for its written permission to operate`,
          WORK_SOURCES.practice,
          'permission.wait',
        ),
        task(
          'everything stays off and locked; a test before the permission only with the written consent of the utility',
          WORK_SOURCES.practice,
          'permission.no-test',
        ),
      ],
      cautions: ['authority'],
      stop: 'switching on before the written permission is forbidden by the utility, even for a test that it has not agreed to',
    }),
    step('on.tests', 'Switch on and test', {
      state: 'on_after_permission',
      tools: [
        'clamp meter, voltmeter rated for the system',
        'irradiance meter, thermometer on the back of a module',
        'clock',
      ],
      tasks: [tasksOf(ON_TESTS, system)],
      cautions: ['live-conductors', 'electrician'],
      stop: stopFor(input, 'size-wire') ?? 'a reading that is off: switch off, lock, find it',
    }),
    step('finish.first-week', 'Check of the first week', {
      state: 'on_after_permission',
      tasks: [
        task(
          `seven days give ${worst.p10_kwh.toFixed(0)} to ${worst.p90_kwh.toFixed(0)} kWh in the darkest month and ${best.p10_kwh.toFixed(0)} to ${best.p90_kwh.toFixed(0)} kWh in the brightest in four of five cases; the table has every month`,
          { document: 'estimate-yield', standing: 'project file' },
        ),
        task('every module or string reports, and those side by side read alike at noon'),
        task(
          'look at all raceways and fittings from the ground after the first hard rain; look for stains in the attic',
        ),
        task('run review-output with the readings of the week; one dull week is no fault'),
      ],
    }),
  ]
}
