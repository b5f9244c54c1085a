import type { PlanSystem } from './plan-system.js'
import { CLOSE_STRINGS, DEAD_TESTS, STRING_TESTS } from './rules-tests.js'
import type { StepRule } from './step-rule.js'

const strings = (system: PlanSystem): boolean => system.strings

/** Tests while the system is off, and the last connection. */
export const STEPS_TEST: readonly StepRule[] = [
  {
    id: 'test.dead',
    title: 'Test what is dead',
    state: (system) => (system.strings ? 'open_strings_live' : 'dead'),
    tools: ['low-ohm meter', 'insulation tester', 'the approved drawings'],
    tasks: DEAD_TESTS,
    cautions: ['live-conductors', 'electrician'],
    needs: 'size-wire',
    stop: 'what is off is found and put right before anything is joined',
  },
  {
    id: 'test.strings',
    title: 'Test the open strings',
    when: strings,
    state: 'open_strings_live',
    tools: [
      'DC voltmeter rated for the string voltage',
      'insulation tester with the voltages below',
      'irradiance meter, thermometer on the back of a module',
    ],
    tasks: STRING_TESTS,
    cautions: ['live-conductors', 'electrician'],
    stop: 'a string that reads otherwise is found and put right before any string is joined',
  },
  {
    id: 'test.close-strings',
    title: 'Close the strings: the last connection',
    when: strings,
    state: 'open_strings_live',
    tools: ['DC voltmeter and DC clamp meter rated for the string voltage'],
    tasks: CLOSE_STRINGS,
    cautions: ['live-conductors', 'electrician'],
    stop: 'the DC switch and the AC stay off and locked until the permission of the utility',
  },
]
