import { isAc } from '../../electrical/index.js'
import { INSULATION_SOURCE, SAFETY_FIGURES, TEST_LIMITS as LIMITS, WORK_SOURCES } from '../../tables/fieldwork/index.js'
import { rapidShutdownRules } from '../../tables/nec/index.js'
import { section, type TaskRule } from './task-rule.js'
import type { InsulationValue, VoltageReading } from './plan-values.js'

/** Tests that need everything off and locked out; strings, where there are any, stay open. */
export const DEAD_TESTS: readonly TaskRule[] = [
  {
    id: 'test.visual',
    source: WORK_SOURCES.commissioning,
    says: 'look at everything: as drawn, torque marks on every screw, labels in place, no bare or pinched lead',
  },
  {
    id: 'test.ac-circuits',
    source: WORK_SOURCES.commissioning,
    says: 'AC circuits from the breaker (off, locked) to the inverters (unplugged, or as their manual has it): insulation, continuity, each conductor on its terminal, breaker of the drawn rating',
  },
  {
    id: 'test.bonding',
    source: WORK_SOURCES.commissioning,
    says: `bonding continuous from the grounding bar to each rail, frame and inverter: low-ohm meter with at least ${LIMITS.bondingTestA * 1000} mA, resistance of the leads taken off; ${LIMITS.bondingUsualOhm} ohm at most is usual, aim at ${LIMITS.bondingAimOhm} ohm more than the wire (the standard fixes no value); read: ______`,
  },
  {
    id: 'test.dc-run',
    source: WORK_SOURCES.commissioning,
    when: (system) => system.strings,
    says: 'DC run from the array to the inverter, open at the array and with the DC switch off: continuity and polarity by its marks, insulation to ground and to the raceway',
  },
]

/** Tests of the open strings: live by light, inverter and surge devices out. */
export const STRING_TESTS: readonly TaskRule[] = [
  {
    id: 'test.string-care',
    source: WORK_SOURCES.practice,
    says: `rated gloves, meter and leads for at least ${SAFETY_FIGURES.meterDcV} V DC CAT III; one string at a time; every other end stays capped`,
  },
  {
    id: 'test.shutdown-units',
    source: WORK_SOURCES.makersSheet,
    when: (system) => system.shutdownUnits,
    says: 'modules with shutdown units: an open string reads the units’ own low voltage; the figures below, and the insulation test, hold only as the maker of the units allows them',
  },
  {
    id: 'test.polarity',
    source: WORK_SOURCES.stringTests,
    says: 'polarity of every string at its open ends, before anything is joined',
  },
  {
    id: 'test.voc',
    source: WORK_SOURCES.stringTests,
    says: (system) =>
      system.readings.filter((reading) => reading.one_module_less_v !== null).map((reading) => vocText(reading)),
  },
  {
    id: 'test.voc-alike',
    source: WORK_SOURCES.stringTests,
    says: `strings of like modules in like sun lie within ${LIMITS.likeStrings * 100} % of each other; steady sun, one after the other`,
  },
  {
    id: 'test.isc',
    source: WORK_SOURCES.stringTests,
    says: (system) => [
      `short-circuit current only with a device made for it (never by joining connectors); without one this is left to the operating current after permission. Like strings within ${LIMITS.likeStrings * 100} %; light and cell temperature noted`,
      ...system.currents.flatMap(({ what, isc_a: isc, isc_pct_per_c: alpha }) =>
        isc === null
          ? [`${what}: Isc is not in the project file; from the data sheet: ______ A`]
          : [
              `${what}: ${isc.toFixed(2)} A x G / 1000 W/m2${alpha === null ? ' (coefficient of Isc not stated, so not corrected for temperature)' : ` x (1 + ${(alpha / 100).toFixed(4)} (T - 25 C))`}, ${(0.8 * isc).toFixed(2)} A at 800 W/m2 and 25 C; read: ______ A at ______ W/m2`,
            ],
      ),
    ],
  },
  {
    id: 'test.insulation',
    source: INSULATION_SOURCE,
    says: (system) => [
      'insulation of each string with inverter, surge devices and shutdown transmitters off it: negative to ground, then positive to ground (or both joined by a device made for it, to ground); nobody touches the array; the string is discharged after each test. A wet array reads lower, and a low reading wet is a failure too',
      ...system.insulation.map(insulationText),
    ],
  },
]

function vocText(reading: VoltageReading): string {
  const less =
    reading.one_module_less_v === null ? '' : ` (a module missing would read ${reading.one_module_less_v.toFixed(1)} V)`
  return `${reading.what}: ${reading.voc_v.toFixed(1)} V open at ${reading.cell_c} C cells, right from ${reading.low_v.toFixed(1)} to ${reading.high_v.toFixed(1)} V${less}; read: ______`
}

function insulationText(each: InsulationValue): string {
  const raised = `1.25 x Voc is ${each.raised_voc_v.toFixed(1)} V`
  if (each.max_system_v === null)
    return `${each.what}: ${raised}; NO TEST before the maximum system voltage of the modules is known (its data sheet): the test voltage must not be above it`
  if (each.test_v === null)
    return `${each.what}: ${raised}; NO TEST with a voltage of the table, all are above the ${each.max_system_v} V of the modules`
  const below =
    each.test_v < each.table_test_v
      ? `, which is below the ${each.table_test_v} V of the standard, because the modules are made for ${each.max_system_v} V`
      : `; never above the ${each.max_system_v} V of the modules, nor of connectors or anything left connected`
  return `${each.what}: ${raised}, so test with ${each.test_v} V${below}; at least ${each.least_mohm} Mohm; read: ______`
}

/** The last connection: only when all strings are right. */
export const CLOSE_STRINGS: readonly TaskRule[] = [
  {
    id: 'strings.switch-off',
    source: WORK_SOURCES.commissioning,
    says: 'DC switch of the inverter off and locked, AC off and locked',
  },
  {
    id: 'strings.last-connection',
    source: WORK_SOURCES.commissioning,
    says: 'only now are the ends of each string joined to their run, one string at a time; fuses, where there are any, last',
  },
  {
    id: 'strings.at-switch',
    source: WORK_SOURCES.stringTests,
    says: 'polarity and voltage once more at the inverter’s open DC switch. Reversed: nothing is opened or closed under current; clamp meter first, and open only below 0.5 A',
  },
]

/** Tests that need the system on, in this order; none before the utility's written permission. */
export const ON_TESTS: readonly TaskRule[] = [
  {
    id: 'on.order',
    source: WORK_SOURCES.inverterManual,
    says: (system) =>
      `switch on: ${system.strings ? 'DC switch, then ' : ''}AC breaker and disconnect (where the inverter manual has another order, the manual governs); feeding begins after the wait, usually ${LIMITS.returnsAfterS} s`,
  },
  {
    id: 'on.ac-voltage',
    source: WORK_SOURCES.voltageRange,
    says: ({ ac }) =>
      `AC between the lines: ${ac.low_v.toFixed(0)} to ${ac.high_v.toFixed(0)} V, each to neutral half of it; read: ______`,
  },
  {
    id: 'on.string-current',
    source: WORK_SOURCES.stringTests,
    when: (system) => system.strings,
    says: (system) => [
      `operating current of each string with a DC clamp; like strings within ${LIMITS.likeStrings * 100} %`,
      ...system.currents.map(({ what, imp_a: imp }) =>
        imp === null
          ? `${what}: current at maximum power not in the project file; read: ______ A at ______ W/m2`
          : `${what}: about ${imp.toFixed(2)} A x G / 1000 W/m2, ${(0.8 * imp).toFixed(2)} A at 800 W/m2, less where the inverter limits; read: ______ A at ______ W/m2`,
      ),
    ],
  },
  {
    id: 'on.module-voltage',
    source: WORK_SOURCES.commissioning,
    when: (system) => system.moduleLevel,
    says: (system) => [
      'module-level inverters: no DC string tests; the DC voltage of each unit is read from the monitoring, units side by side alike',
      ...system.readings
        .filter((reading) => reading.one_module_less_v === null)
        .map(
          (reading) =>
            `${reading.what}: no unit above the ${reading.voc_v.toFixed(1)} V open at ${reading.cell_c} C cells; read: ______`,
        ),
    ],
  },
  {
    id: 'on.ac-current',
    source: section('inverterOutputCurrent'),
    when: (system) => system.wire !== undefined,
    says: (system) =>
      (system.wire?.circuits ?? [])
        .filter(isAc)
        .map(
          (circuit) =>
            `circuit ${circuit.id}: at full sun no more than ${circuit.continuous_a.toFixed(1)} A; read: ______`,
        ),
  },
  {
    id: 'on.loss-of-mains',
    source: WORK_SOURCES.interactive,
    says: `open the AC breaker or disconnect: every inverter stops within ${LIMITS.stopsWithinS} s; closed again, it comes back only after its wait (usually ${LIMITS.returnsAfterS} s)`,
  },
  {
    id: 'on.rapid-shutdown',
    source: section('rapidShutdown'),
    when: (system) => rapidShutdownRules.some((rule) => rule.edition === system.edition),
    says: (system) => {
      const rule = rapidShutdownRules.find((each) => each.edition === system.edition)
      if (rule === undefined) return []
      const measured = system.strings
        ? `DC conductors beyond the boundary (${rule.boundary}) at ${rule.outsideLimit} or less within ${rule.timeS} s, measured at the inverter’s DC terminals; inside the boundary: ${rule.insideLimit}`
        : `the AC of the array is dead within ${rule.timeS} s, beyond the boundary (${rule.boundary}) ${rule.outsideLimit} or less; ${rule.moduleLevelNote}`
      return `rapid shutdown: turn its switch; ${measured}; read: ______`
    },
  },
  {
    id: 'on.energy',
    source: WORK_SOURCES.commissioning,
    says: `${LIMITS.steadyMin} min of steady light above ${LIMITS.steadyWPerM2} W/m2: AC power against light in the expected band, meter turns the right way, monitoring shows it; power: ______ W at ______ W/m2`,
  },
  {
    id: 'on.switch-off-order',
    source: WORK_SOURCES.inverterManual,
    says: (system) =>
      system.strings
        ? `order of switching off, written down for the owner: AC (or the shutdown switch) first, then DC, unless the manual has it otherwise; no DC connector is parted under load; with a faulty inverter clamp meter first, its DC switch only below ${LIMITS.faultOpenBelowA} A`
        : 'order of switching off, written down for the owner: AC breaker or the shutdown switch; no connector is parted under load',
  },
]

/** What the inspector sees of the rapid shutdown while everything is off. */
export const INSPECTION_SHUTDOWN: readonly TaskRule[] = [
  {
    id: 'inspection.rapid-shutdown',
    source: section('rapidShutdown'),
    when: (system) => rapidShutdownRules.some((rule) => rule.edition === system.edition),
    says: (system) =>
      `rapid shutdown: switch, labels and wiring are shown with the system off. Whoever wants to see it at work before permission needs the written consent of ${system.utility} to this test; afterwards off and locked again`,
  },
]
