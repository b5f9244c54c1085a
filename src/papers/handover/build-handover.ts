import { statedTorques } from '../../fieldwork/index.js'
import { listModuleGroups } from '../../project/index.js'
import { ENERGISING_ORDER, MAINTENANCE, SWITCH_OFF_ORDER } from '../../tables/fieldwork/index.js'
import { formatSource, Worksheet, type Result } from '../../worksheet/index.js'
import { TOTALS } from '../totals.js'
import { asBuilt, systemFacts } from './as-built.js'
import { emergencySheet, stepsFor } from './emergency.js'
import { handoverFindings } from './handover-findings.js'
import type { HandoverInput } from './handover-input.js'
import type { HandoverValues, RecordRow, Verdict } from './handover-values.js'
import { judgeTorques, type SystemFacts } from './judge/index.js'
import { ownerSummary } from './owner-summary.js'
import { recordTests } from './record-tests.js'
import { serialNumbers } from './serial-numbers.js'
import { stringFactsOf } from './string-facts-of.js'

/** Tasks of the work plan that are figures of safe work. */
const SAFETY_TASKS = /^(?:safety|lock-out|absence)\./u

/**
 * The record of the tests with its verdicts, and all that the owner keeps.
 *
 * @param work Proof of the work plan: its findings and assumptions come along.
 */
export function handoverOf(input: HandoverInput, work: Result<unknown>): Result<HandoverValues> {
  const { project, measured } = input
  const strings = stringFactsOf(input)
  const system = systemOf(input)
  const tests = recordTests(input, system, strings)
  const torques = judgeTorques(system, statedTorques(project))
  const values: HandoverValues = {
    date: input.date ?? measured.date ?? null,
    facts: systemFacts(input),
    people: peopleOf(input),
    conditions: conditionsOf(input),
    instruments: {
      columns: ['Instrument', 'Serial number', 'Calibrated', 'Due'],
      rows: Object.values(measured.instruments ?? {}).map(({ name, serial, calibrated, due }) => [
        name,
        serial ?? '-',
        calibrated ?? '-',
        due ?? '-',
      ]),
    },
    tests,
    voc_table: vocTable(input),
    counts: countVerdicts([...tests.flatMap(({ rows }) => rows), ...torques]),
    torques,
    as_built: asBuilt(input),
    serials: serialNumbers(input),
    maintenance: MAINTENANCE.filter(({ only }) => only !== 'strings' || strings.length > 0).map(
      ({ when, what, who, source }) => ({ when, what, who, source: formatSource(source) }),
    ),
    emergency: emergencySheet(input),
    owner: ownerSummary(input),
    energising: stepsFor(ENERGISING_ORDER, input),
    switching_off: stepsFor(SWITCH_OFF_ORDER, input),
    safety: input.work.steps
      .flatMap(({ tasks }) => tasks)
      .filter(({ id }) => SAFETY_TASKS.test(id))
      .map(({ says, source }) => ({ says, source })),
  }
  const worksheet = new Worksheet()
  worksheet.include(work)
  for (const finding of handoverFindings(project, values)) worksheet.find(finding)
  return worksheet.result(values)
}

function systemOf({ project, measured, work, wire }: HandoverInput): SystemFacts {
  const groups = listModuleGroups(project)
  const coefficients = new Set(groups.map(({ module }) => module.pmax_temp_coeff_pct_per_c))
  return {
    project,
    measured,
    ac: work.ac_voltage,
    edition: wire?.edition,
    dcW: TOTALS.total_dc_kw.of(project) * 1000,
    acW: TOTALS.total_ac_kw.of(project) * 1000,
    powerPctPerC: coefficients.size === 1 ? [...coefficients][0] : undefined,
  }
}

function vocTable({ project, work, cellC, measured }: HandoverInput): HandoverValues['voc_table'] {
  // Once the day's temperature is known, its own line says it.
  if (cellC !== undefined || measured.cell_c !== undefined) return []
  const hasStrings = listModuleGroups(project).some(({ conversion }) => conversion.kind === 'string')
  return work.readings
    .filter(({ modules }) => modules > 1 || !hasStrings)
    .map(({ what, cell_c: at, voc_v: volts, low_v: low, high_v: high }) => ({
      what,
      cell_c: at,
      voc_v: volts,
      low_v: low,
      high_v: high,
    }))
}

function countVerdicts(rows: readonly RecordRow[]): Record<Verdict, number> {
  const countOf = (verdict: Verdict): number => rows.filter((row) => row.verdict === verdict).length
  return { pass: countOf('pass'), fail: countOf('fail'), look: countOf('look'), open: countOf('open') }
}

function peopleOf({ project: { parties }, measured }: HandoverInput): HandoverValues['people'] {
  const roles = [
    ['Owner', parties?.owner],
    ['Designer', parties?.preparer],
    ['Installer', parties?.installer],
    ['Electrician', parties?.electrician],
    ['Utility', parties?.utility],
    ['Authority', parties?.authority],
    ['Tester', measured.tester],
  ] as const
  return roles.flatMap(([role, party]): HandoverValues['people'] =>
    party === undefined
      ? []
      : [[role, [party.name, party.phone, party.license].filter((each) => each !== undefined).join(', ')]],
  )
}

function conditionsOf({ measured, cellC, irradianceWM2 }: HandoverInput): HandoverValues['conditions'] {
  const cell = measured.cell_c ?? cellC
  const light = measured.irradiance_w_m2 ?? irradianceWM2
  return [
    ['Weather', measured.weather ?? ''],
    ['Light on the modules', light === undefined ? '' : `${light} W/m2`],
    ['Cells', cell === undefined ? '' : `${cell} C`],
  ]
}
