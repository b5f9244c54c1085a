import { necSource, rapidShutdownRules } from '../../tables/nec/index.js'
import type { Circuit, Job, StringValues } from '../system/index.js'

/** What starts the shutdown, and how conductors come down: the rule of the edition against what the project declares. */
export function checkRapidShutdown(job: Job, circuits: readonly Circuit[]): void {
  const rule = rapidShutdownRules.find((candidate) => candidate.edition === job.edition)
  if (rule === undefined) return
  const source = necSource(job.edition, rule.section, rule.standing)
  const stated = job.electrical.rapid_shutdown
  const strings = circuits.some((circuit) => circuit.kind === 'dc_string')
  job.worksheet.note({
    id: 'wire.rapid-shutdown',
    says: `Rapid shutdown: ${rule.outsideLimit} within ${rule.timeS} s beyond the boundary (${rule.boundary}); inside: ${rule.insideLimit}`,
    formula: 'controlled conductors at or below the limit',
    inputs: [
      { symbol: 'initiator', value: stated?.initiator ?? 'not stated', unit: '', from: 'electrical.rapid_shutdown' },
    ],
    result: { symbol: 'limit', value: rule.outsideLimit, unit: '' },
    source,
    limits: [rule.moduleLevelNote, ...(rule.unsure === undefined ? [] : [rule.unsure])].join('. '),
  })
  if (strings && stated?.inside_boundary === undefined)
    job.worksheet.find({
      severity: 'error',
      id: 'wire.rapid-shutdown-array',
      message:
        'how the string conductors are brought down in the array within the boundary and beyond it is not stated',
      where: 'electrical.rapid_shutdown.inside_boundary',
      source,
      fix: 'State module_level (shutdown units behind the modules), hazard_control_system or no_exposed_parts',
    })
  if (stated?.initiator === undefined)
    job.worksheet.find({
      severity: 'error',
      id: 'wire.rapid-shutdown-initiator',
      message: 'what starts the rapid shutdown is not stated',
      where: 'electrical.rapid_shutdown.initiator',
      source,
      fix: 'With module-level inverters the service or PV disconnect does it; state which',
    })
  if (rule.initiatorOutdoors && stated?.initiator_outdoors !== true)
    job.worksheet.find({
      severity: 'error',
      id: 'wire.rapid-shutdown-outdoors',
      message: 'the initiator of a dwelling has to be readily accessible outside, which the project does not state',
      where: 'electrical.rapid_shutdown.initiator_outdoors',
      source,
      fix: 'Put the disconnect that starts it outside and state initiator_outdoors: true',
    })
}

/**
 * The voltage that stays inside the array boundary: with shutdown behind every module that of one module in the cold.
 * A listed hazard control system, or an array without exposed parts, has no such limit.
 */
export function checkInsideVoltage(job: Job, circuits: readonly Circuit[], strings: readonly StringValues[]): void {
  const rule = rapidShutdownRules.find((candidate) => candidate.edition === job.edition)
  const chosen = job.electrical.rapid_shutdown?.inside_boundary ?? 'module_level'
  if (rule?.insideVoltage === undefined || chosen !== 'module_level') return
  const { limitV, section } = rule.insideVoltage
  const highest = new Map<string, number>()
  const perUnit = job.electrical.rapid_shutdown?.equipment?.modules_per_unit ?? 1
  for (const { id, modules, voc_cold_v: coldV, optimiser } of strings) {
    const string = circuits.find((circuit) => circuit.id === id)?.string
    const array = string?.array ?? id
    const together = string === undefined ? 1 : Math.min(perUnit, modules)
    const unitV = optimiser?.input_cold_v ?? (together * coldV) / modules
    highest.set(array, Math.max(unitV, highest.get(array) ?? 0))
  }
  for (const [array, unitV] of highest)
    if (unitV > limitV)
      job.worksheet.find({
        severity: 'error',
        id: 'wire.rapid-shutdown-voltage',
        message: `${unitOf(circuits, array, perUnit)} at ${unitV.toFixed(1)} V in the cold; after rapid shutdown ${limitV} V is the most inside the array boundary`,
        where: `arrays.${array}.module`,
        source: necSource(job.edition, section, rule.standing),
        fix: 'Use modules of a lower voltage, one unit behind each module, or a listed hazard control system (inside_boundary: hazard_control_system)',
      })
}

/** What stays together within the array after shutdown, in words up to its voltage. */
function unitOf(circuits: readonly Circuit[], array: string, perUnit: number): string {
  const string = circuits.find((circuit) => circuit.string?.array === array)?.string
  const sheet = string?.optimiser?.sheet
  const together = string === undefined ? 1 : sheet === undefined ? perUnit : (sheet.modules_per_unit ?? 1)
  return together === 1
    ? `a module of array ${array} alone opens`
    : `${together} modules of array ${array} on one unit open`
}
