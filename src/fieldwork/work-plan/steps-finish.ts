import { SERVICE_VOLTAGE_BAND, WORK_SOURCES } from '../../tables/fieldwork/index.js'
import { nec, plural, step, stopFor, task, type PlanInput } from './plan-facts.js'
import type { FirstWeek, PlanStep, VoltageReading } from './plan-values.js'

/** Nominal service voltage and what the meter may show round it, V. */
export function acVoltage(input: PlanInput): { nominal_v: number; low_v: number; high_v: number } {
  const nominal = input.project.electrical?.service?.voltage_v ?? 240
  return {
    nominal_v: nominal,
    low_v: nominal * (1 - SERVICE_VOLTAGE_BAND),
    high_v: nominal * (1 + SERVICE_VOLTAGE_BAND),
  }
}

/** Commissioning, final inspection, permission and the first week. */
export function stepsFinish(
  input: PlanInput,
  readings: readonly VoltageReading[],
  weeks: readonly FirstWeek[],
): PlanStep[] {
  const { project, wiring, labels } = input
  const ac = acVoltage(input)
  const supplySide = project.electrical?.connection?.kind === 'supply_side'
  const connectionRule = nec(input, supplySide ? 'supplySide' : 'loadSideBusbar')
  const [best, worst] = [
    weeks.reduce((a, b) => (b.expected_kwh > a.expected_kwh ? b : a)),
    weeks.reduce((a, b) => (b.expected_kwh < a.expected_kwh ? b : a)),
  ]
  return [
    step('finish.readings', 'Measure before switching on', {
      tools: [
        'DC voltmeter rated for the string voltage',
        'thermometer on the back of a module',
        'insulation tester where strings are used',
      ],
      tasks: [
        ...readings.map((reading) =>
          task(
            `${reading.what}: ${reading.voc_v.toFixed(1)} V open at ${reading.cell_c} C cells${reading.one_module_less_v === null ? '' : ` (a module missing would read ${reading.one_module_less_v.toFixed(1)} V)`}; read: ______`,
            WORK_SOURCES.commissioning,
          ),
        ),
        task(
          `AC between the lines: ${ac.low_v.toFixed(0)} to ${ac.high_v.toFixed(0)} V, each to neutral half of it; read: ______`,
          WORK_SOURCES.voltageRange,
        ),
        ...(wiring?.circuits ?? []).map((circuit) =>
          task(
            `circuit ${circuit.id}: at full sun no more than ${circuit.continuous_a.toFixed(1)} A; read: ______`,
            nec(input, 'inverterOutputCurrent'),
          ),
        ),
        project.inverter_units === undefined
          ? undefined
          : task('polarity right on every string', WORK_SOURCES.commissioning),
        task('every rail and frame continuous to the grounding bar', WORK_SOURCES.commissioning),
      ],
      cautions: ['live-conductors', 'electrician'],
      stop:
        stopFor(input, 'size-wire') ?? 'a reading that is off is found and put right before anything is switched on',
    }),
    step('finish.final-inspection', 'Final inspection', {
      kind: 'inspection',
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
        nec(input, 'rapidShutdown')?.place === 'no such rule'
          ? undefined
          : task('rapid shutdown shown working in front of the inspector', nec(input, 'rapidShutdown')),
        task(
          'covers on, unused openings closed, directories filled in, working space free',
          nec(input, 'workingSpace'),
        ),
        task('the written record of torques, readings and serial numbers is handed over', WORK_SOURCES.commissioning),
      ],
      cautions: ['authority'],
      stop: 'the system stays off until the inspector has signed',
    }),
    step('finish.permission', 'Permission of the utility', {
      tasks: [
        task(
          `send the signed card to ${project.parties?.utility?.name ?? 'the utility'}; wait for its written permission to operate`,
        ),
        task(
          'then: main or PV breaker on, disconnect on; inverters wait about five minutes before they feed in',
          WORK_SOURCES.interactive,
        ),
        task(
          'with the sun up, open the disconnect once: every inverter stops at once and starts again after its wait',
          WORK_SOURCES.interactive,
        ),
      ],
      cautions: ['authority', 'electrician'],
      stop: 'switching on before the written permission is forbidden by the utility, even for a test',
    }),
    step('finish.first-week', 'Check of the first week', {
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
