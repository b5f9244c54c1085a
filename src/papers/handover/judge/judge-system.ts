import type { StatedTorque, WorkPlanValues } from '../../../fieldwork/index.js'
import type { Commissioning, Project } from '../../../project/index.js'
import { TEST_LIMITS as LIMITS } from '../../../tables/fieldwork/index.js'
import { OUTSIDE_BOUNDARY_V, rapidShutdownRules } from '../../../tables/nec/index.js'
import type { RecordRow } from '../handover-values.js'
import { openRow, percent, readRow, shown } from './verdict.js'

const KEY = 'commissioning'

/** What the tests of the whole system go by. */
export interface SystemFacts {
  readonly project: Project
  readonly measured: Commissioning
  readonly ac: WorkPlanValues['ac_voltage']
  /** Edition of the electrical code of the wiring; undefined when it cannot be sized. */
  readonly edition: string | undefined
  /** Rated DC power of all modules and AC power of all inverters, W. */
  readonly dcW: number
  readonly acW: number
  /** Temperature coefficient of power, percent per C, where all modules have the same. */
  readonly powerPctPerC: number | undefined
}

const CHECKS = {
  visual: 'everything as drawn, no bare or pinched lead',
  torque_marks: 'torque marks on every screw',
  labels: 'labels in place and right',
  ac_circuits: 'AC circuits: insulation, continuity, each conductor on its terminal, breaker as drawn',
  dc_run: 'DC run: continuity, polarity by its marks, insulation',
  switches: 'every switch and disconnect turns off what it names',
  meter_direction: 'the meter turns the right way',
  monitoring: 'the monitoring shows every unit',
} as const
type CheckName = keyof typeof CHECKS

/** Checks without a reading. */
export function judgeChecks({ measured }: SystemFacts, names: readonly CheckName[]): RecordRow[] {
  return names.map((name) => {
    const row = openRow(CHECKS[name], 'right', '-', `${KEY}.checks.${name}`)
    const outcome = measured.checks?.[name]
    if (outcome === undefined) return row
    const more = [outcome.note, outcome.photo === undefined ? undefined : `photograph ${outcome.photo}`]
    const why = more.filter((each) => each !== undefined).join('; ')
    return readRow(row, outcome.pass ? 'right' : 'not right', outcome.pass ? 'pass' : 'fail', why)
  })
}

/** Resistance of bonding; the standard fixes no value, so that up to what is usual somebody looks at it. */
export function judgeBonding({ measured }: SystemFacts): RecordRow[] {
  const limit = `aim ${LIMITS.bondingAimOhm} ohm and the wire; ${LIMITS.bondingUsualOhm} ohm usual`
  const readings = Object.entries(measured.bonding ?? {})
  if (readings.length === 0)
    return [
      openRow(
        'grounding bar to each rail, frame and inverter',
        `at least ${LIMITS.bondingTestA * 1000} mA`,
        limit,
        `${KEY}.bonding`,
      ),
    ]
  return readings.map(([id, { what, ohm, wire_ohm: wireOhm }]) => {
    const aimOhm = LIMITS.bondingAimOhm + (wireOhm ?? 0)
    const row = openRow(what, `up to ${shown(aimOhm, 2, 'ohm')}`, limit, `${KEY}.bonding.${id}.ohm`)
    const measuredText = shown(ohm, 3, 'ohm')
    if (ohm <= aimOhm) return readRow(row, measuredText, 'pass')
    if (ohm <= LIMITS.bondingUsualOhm + (wireOhm ?? 0))
      return readRow(row, measuredText, 'look', 'above what is aimed at, within what is usual: look at the joints')
    return readRow(row, measuredText, 'fail', 'above what is usual: find the joint')
  })
}

export function judgeAcVoltages({ measured, ac }: SystemFacts): RecordRow[] {
  const readings = [
    ['line_to_line_v', 'AC, line to line', 1],
    ['line1_to_neutral_v', 'AC, line 1 to neutral', 0.5],
    ['line2_to_neutral_v', 'AC, line 2 to neutral', 0.5],
  ] as const
  // A 208 V service has its lines to neutral at another ratio.
  const asked = ac.nominal_v === 240 ? readings : readings.slice(0, 1)
  return asked.map(([key, what, share]) => {
    const row = openRow(
      what,
      `${(ac.nominal_v * share).toFixed(0)} V`,
      `${(ac.low_v * share).toFixed(0)} to ${(ac.high_v * share).toFixed(0)} V`,
      `${KEY}.ac_voltages.${key}`,
    )
    const readV = measured.ac_voltages?.[key]
    if (readV === undefined) return row
    const pass = readV >= ac.low_v * share && readV <= ac.high_v * share
    return readRow(row, shown(readV, 1, 'V'), pass ? 'pass' : 'fail', percent(readV / (ac.nominal_v * share) - 1))
  })
}

/** Stops on loss of the mains, and waits before it comes back. */
export function judgeLossOfMains({ measured }: SystemFacts): RecordRow[] {
  const { stops_s: stopsS, returns_s: returnsS } = measured.loss_of_mains ?? {}
  const stops = openRow(
    'loss of mains: inverters stop',
    'at once',
    `within ${LIMITS.stopsWithinS} s`,
    `${KEY}.loss_of_mains.stops_s`,
  )
  const returns = openRow(
    'mains back: inverters feed again',
    `after the wait, usually ${LIMITS.returnsAfterS} s`,
    "the utility's profile",
    `${KEY}.loss_of_mains.returns_s`,
  )
  return [
    stopsS === undefined
      ? stops
      : readRow(stops, shown(stopsS, 1, 's'), stopsS <= LIMITS.stopsWithinS ? 'pass' : 'fail'),
    returnsS === undefined
      ? returns
      : readRow(
          returns,
          shown(returnsS, 0, 's'),
          returnsS >= LIMITS.returnsAfterS ? 'pass' : 'look',
          returnsS >= LIMITS.returnsAfterS ? '' : 'shorter than usual: hold it against the profile of the utility',
        ),
  ]
}

/** Rapid shutdown by the edition of the project; none for an edition without the rule. */
export function judgeShutdown({ measured, edition, project }: SystemFacts): RecordRow[] {
  const rule = rapidShutdownRules.find((each) => each.edition === edition)
  if (rule === undefined) return []
  const read = measured.rapid_shutdown ?? {}
  const late = read.after_s !== undefined && read.after_s > rule.timeS
  const atTime = read.after_s === undefined ? '' : ` after ${read.after_s} s`
  const judge = (row: RecordRow, readV: number | undefined, limitV: number): RecordRow => {
    if (readV === undefined) return row
    const measuredText = `${shown(readV, 1, 'V')}${atTime}`
    if (readV > limitV) return readRow(row, measuredText, 'fail', `above ${limitV} V`)
    if (read.after_s === undefined) return readRow(row, measuredText, 'look', 'the time of the reading was not noted')
    return late
      ? readRow(row, measuredText, 'look', `read later than ${rule.timeS} s: repeat it in time`)
      : readRow(row, measuredText, 'pass')
  }
  const outside = openRow(
    `outside the boundary (${rule.boundary})`,
    `${rule.outsideLimit} or less`,
    `${OUTSIDE_BOUNDARY_V} V within ${rule.timeS} s, ${rule.edition} ${rule.section}`,
    `${KEY}.rapid_shutdown.outside_v`,
  )
  const inside = project.electrical?.rapid_shutdown?.inside_boundary === 'module_level' ? rule.insideVoltage : undefined
  return [
    judge(outside, read.outside_v, OUTSIDE_BOUNDARY_V),
    ...(inside === undefined
      ? []
      : [
          judge(
            openRow(
              'inside the boundary',
              `${inside.limitV} V or less`,
              `${inside.limitV} V within ${rule.timeS} s, ${rule.edition} ${inside.section}`,
              `${KEY}.rapid_shutdown.inside_v`,
            ),
            read.inside_v,
            inside.limitV,
          ),
        ]),
  ]
}

/** AC power against light. No source gives a band, so that the ratio is for somebody to look at. */
export function judgeEnergy({ measured, dcW, acW, powerPctPerC }: SystemFacts): RecordRow[] {
  const read = measured.energy ?? {}
  const light = read.irradiance_w_m2 ?? measured.irradiance_w_m2
  const cellC = read.cell_c ?? measured.cell_c
  const limit = `light above ${LIMITS.steadyWPerM2} W/m2, steady for ${LIMITS.steadyMin} min`
  const highestW =
    light === undefined
      ? undefined
      : Math.min(
          acW,
          ((dcW * light) / 1000) *
            (cellC === undefined || powerPctPerC === undefined ? 1 : 1 + (powerPctPerC / 100) * (cellC - 25)),
        )
  const row = openRow(
    'AC power of the whole system',
    highestW === undefined
      ? `at most ${shown(dcW / 1000, 2, 'kW')} x G / 1000 W/m2, and ${shown(acW / 1000, 2, 'kW')} of the inverters; less all losses`
      : `below ${shown(highestW, 0, 'W')} at ${light ?? 0} W/m2, by shade, dirt, wires and the inverter`,
    limit,
    `${KEY}.energy.ac_w`,
  )
  if (read.ac_w === undefined) return [row]
  const measuredText = shown(read.ac_w, 0, 'W')
  if (highestW === undefined || highestW === 0) return [readRow(row, measuredText, 'look', 'the light was not noted')]
  const ratio = `${((read.ac_w / highestW) * 100).toFixed(0)} % of the most that modules and inverters give in this light`
  const weak = (light ?? 0) <= LIMITS.steadyWPerM2 || (read.steady_min ?? 0) < LIMITS.steadyMin
  const why = weak
    ? `${ratio}; the light was too weak or not steady long enough`
    : `${ratio}; no source has a limit for it`
  return [readRow(row, measuredText, 'look', why)]
}

/** DC voltage of module-level inverters: no unit above the open voltage of its module. */
export function judgeUnits({ measured }: SystemFacts, highestV: number, cellC: number): RecordRow[] {
  const readings = Object.entries(measured.unit_dc_v ?? {})
  const expected = `units side by side alike, below ${shown(highestV, 1, 'V')} (open module, cells ${cellC} C)`
  const limit = `at most ${shown(highestV, 1, 'V')}`
  if (readings.length === 0) return [openRow('every unit', expected, limit, `${KEY}.unit_dc_v`)]
  return readings.map(([id, readV]) => {
    const row = openRow(`unit ${id}`, expected, limit, `${KEY}.unit_dc_v.${id}`)
    const pass = readV > 0 && readV <= highestV
    return readRow(row, shown(readV, 1, 'V'), pass ? 'pass' : 'fail', readV > 0 ? '' : 'the unit has no voltage')
  })
}

/** Torques that the equipment states, and those that were set. */
export function judgeTorques({ measured }: SystemFacts, stated: readonly StatedTorque[]): RecordRow[] {
  const set = Object.entries(measured.torques ?? {}).map(([id, { what, lb_in: setLbIn, stated_lb_in: statedLbIn }]) => {
    const row = openRow(
      what,
      statedLbIn === undefined ? 'as the maker states' : `${statedLbIn} lb-in`,
      'the number on the equipment',
      `${KEY}.torques.${id}`,
    )
    if (statedLbIn === undefined)
      return readRow(row, `${setLbIn} lb-in`, 'look', 'what the equipment asks for was not noted')
    return readRow(row, `${setLbIn} lb-in`, setLbIn === statedLbIn ? 'pass' : 'fail')
  })
  const open = stated.map(({ what, lb_in: lbIn, from }) =>
    openRow(
      what,
      lbIn === null ? `as the maker states (not in the project: ${from})` : `${lbIn} lb-in`,
      'the number on the equipment',
      from,
    ),
  )
  return [...open, ...set]
}
