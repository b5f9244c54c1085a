import { inverterPath } from '../../project/facts.js'
import { deviceSection, VOLTAGE_UNBALANCE_PCT } from '../../tables/nec/index.js'
import { own, type Amperes } from '../../values/index.js'
import {
  addPairs,
  isAc,
  isShared,
  lineCurrentsOf,
  pairCurrentsOf,
  serviceOf,
  unbalancePct,
  type Circuit,
  type Job,
} from '../system/index.js'

/** On a three-phase service: how even the sources are, trunks with three lines, and what happens when a phase is lost. */
export function checkPhases(job: Job, circuits: readonly Circuit[]): void {
  if (serviceOf(job).phases === 1) return
  const sources = circuits.filter((circuit) => isAc(circuit) && !isShared(circuit))
  recordBalance(job, sources)
  checkTrunks(job, sources)
  const seen = new Set<string>()
  for (const { inverterId } of sources) {
    if (inverterId === undefined || seen.has(inverterId)) continue
    seen.add(inverterId)
    checkLostPhase(job, inverterId)
  }
}

function recordBalance(job: Job, sources: readonly Circuit[]): void {
  const pairs = addPairs(sources.map(pairCurrentsOf))
  const { a, b, c } = lineCurrentsOf(pairs)
  const pct = unbalancePct(pairs)
  const source = deviceSection(job.edition, 'phaseBalance')
  job.worksheet.note({
    id: 'wire.phase-balance',
    says: `Balance of the lines; the rule is about voltage, of which unbalance is to stay within ${VOLTAGE_UNBALANCE_PCT} %`,
    formula: 'largest deviation of a line current from the mean of the three, over the mean',
    inputs: [
      { symbol: 'I_A', value: a, unit: 'A', from: 'sources' },
      { symbol: 'I_B', value: b, unit: 'A', from: 'sources' },
      { symbol: 'I_C', value: c, unit: 'A', from: 'sources' },
    ],
    result: { symbol: 'unbalance', value: pct, unit: '%' },
    source,
  })
  if (pct < 1e-9) return
  const spread = Math.max(...Object.values(pairs)) - Math.min(...Object.values(pairs))
  const even = spread <= largestInverterA(sources) * (1 + 1e-9)
  job.worksheet.find({
    severity: even ? 'note' : 'warning',
    id: 'wire.phase-unbalance',
    message: `the lines carry ${a.toFixed(1)}, ${b.toFixed(1)} and ${c.toFixed(1)} A, ${pct.toFixed(0)} % from even${even ? ', which is as even as the number of inverters allows' : ''}; whether the voltage stays within ${VOLTAGE_UNBALANCE_PCT} % of even depends on the supply and was not checked`,
    where: 'electrical.service.phases',
    source,
    fix: even
      ? 'Ask the utility for its own limit, often 1 to 2 % of voltage or a number of kVA'
      : 'Spread the inverters evenly over AB, BC and CA, and ask the utility for its own limit',
  })
}

/** Current that the largest single-phase inverter puts between two lines, A; 0 where all are three-phase. */
function largestInverterA(sources: readonly Circuit[]): Amperes {
  return Math.max(
    0,
    ...sources
      .filter(({ inverter }) => inverter?.phases !== 3)
      .map(
        (circuit) => Object.values(pairCurrentsOf(circuit)).reduce((sum, pair) => sum + pair, 0) / circuit.inverters,
      ),
  )
}

function checkTrunks(job: Job, sources: readonly Circuit[]): void {
  for (const { id, lines, trunk, where } of sources) {
    if (trunk === undefined || lines !== 'ABC' || trunk.cable.lines === 3) continue
    job.worksheet.find({
      severity: trunk.cable.lines === 2 ? 'error' : 'warning',
      id: 'wire.trunk-lines',
      message: `branch ${id} takes all three lines, and its trunk cable ${trunk.id} ${trunk.cable.lines === 2 ? 'has two' : 'does not say how many it has'}`,
      where: trunk.cable.lines === 2 ? where : `equipment.trunk_cables.${trunk.id}.lines`,
      source: job.nec('listedEquipment'),
      fix: 'Use a three-phase trunk cable and state lines: 3, or put the branch on one pair of lines',
    })
  }
}

function checkLostPhase(job: Job, inverterId: string): void {
  const inverter = own(job.project.equipment.inverters, inverterId)
  if (inverter?.phases !== 3 || inverter.stops_on_lost_phase === true) return
  const never = inverter.stops_on_lost_phase === false
  job.worksheet.find({
    severity: never ? 'error' : 'warning',
    id: 'wire.lost-phase',
    message: `three-phase inverter ${inverterId} ${never ? 'does not stop' : 'does not say whether it stops'} in all phases when one is lost`,
    where: `${inverterPath(inverterId)}.stops_on_lost_phase`,
    source: deviceSection(job.edition, 'lostPhase'),
    fix: 'Use an inverter that is listed to stop, and state stops_on_lost_phase: true from its data sheet',
  })
}
