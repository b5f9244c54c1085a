import { CONTINUOUS_FACTOR, necSource, type SupplySideRule } from '../../tables/nec/index.js'
import type { Amperes } from '../../values/index.js'
import type { Sources } from './sources.js'
import { isSupplyTap, type Job, largestStandardDeviceA, type PanelValues, type RuleValues } from '../system/index.js'
import { judgeSupplySide, type SupplySideVerdict } from './judge-supply-side.js'
import type { CircuitInSegment, SizedSegment } from '../segments/index.js'

/**
 * Connection ahead of the service disconnect: sum, distance of the device, and whether the stated conductor carries it.
 *
 * @param serviceAmpacityA Stated, or of the service conductors as they are described; undefined when neither is known, A.
 */
export function checkSupplySide(
  job: Job,
  sources: Sources,
  sized: readonly SizedSegment[],
  serviceAmpacityA: Amperes | undefined,
): PanelValues {
  const { service, panel } = job.electrical
  const verdict = judgeSupplySide(job.edition, {
    serviceA: service?.rating_a,
    serviceAmpacityA,
    inverterA: sources.inverterA,
    sourceBreakersA: sources.breakersA.reduce((sum, breaker) => sum + breaker, 0),
  })
  const { rule } = verdict
  recordComparison(job, verdict)
  checkDeviceDistance(job, rule)
  const conductors = sized
    .flatMap(({ circuits }) => circuits)
    .filter(({ circuit }) => isSupplyTap(circuit))
    .map((entry) => conductorRule(job, entry))
  return {
    bus_a: panel?.bus_a ?? null,
    main_a: panel?.main_a ?? null,
    inverter_a: sources.inverterA,
    rule: 'supply side',
    section: rule.section,
    complies: verdict.holds && conductors.every(({ holds }) => holds),
    max_inverter_a: verdict.maxInverterA,
    label: '',
    rules: [serviceRule(verdict), ...conductors],
    spaces_needed: 0,
    spaces_free: panel?.spaces_free ?? null,
  }
}

/** The sources against the service: the step, and the error when they are too much for it. */
function recordComparison(job: Job, { rule, holds, formula, sumA, limitA }: SupplySideVerdict): void {
  const source = necSource(job.edition, rule.section, rule.standing)
  job.worksheet.note({
    id: 'wire.panel.supply-side',
    says: `Connection on the supply side of the service disconnect: ${formula}`,
    formula: 'sum <= limit',
    inputs: [
      { symbol: 'sum', value: sumA, unit: 'A', from: 'sources' },
      { symbol: 'limit', value: limitA, unit: 'A', from: 'electrical.service' },
    ],
    result: { symbol: 'sum', value: sumA, unit: 'A' },
    check: { relation: '<=', limit: limitA, pass: holds },
    source,
  })
  if (holds) return
  job.worksheet.find({
    severity: 'error',
    id: 'wire.supply-side',
    message: `${sumA.toFixed(1)} A on the supply side, ${limitA.toFixed(1)} A allowed`,
    where: 'electrical.connection',
    source,
    fix: 'Reduce the inverters or enlarge the service',
  })
}

/** Limit of the editions beside those that name none, ft. @source NEC 705.31 (2017, read), 705.11(C) (2020, 2026): secondary */
const USUAL_DISTANCE_FT = 10

/** Whether the overcurrent device is as near to the connection as the edition wants it. */
function checkDeviceDistance(job: Job, rule: SupplySideRule): void {
  const distanceFt = job.electrical.connection?.overcurrent_device_distance_ft
  if (rule.deviceWithinFt === undefined) {
    if (distanceFt !== undefined && distanceFt > USUAL_DISTANCE_FT)
      job.worksheet.find({
        severity: 'warning',
        id: 'wire.supply-side-far',
        message: `the overcurrent device is ${distanceFt} ft from the connection; this edition names no limit, those before and after it ${USUAL_DISTANCE_FT} ft inside a dwelling`,
        where: 'electrical.connection.overcurrent_device_distance_ft',
        source: necSource(job.edition, rule.section, rule.standing),
        fix: `Keep it within ${USUAL_DISTANCE_FT} ft, or ask the authority`,
      })
    return
  }
  if (distanceFt !== undefined && distanceFt <= rule.deviceWithinFt) return
  job.worksheet.find({
    severity: 'error',
    id: 'wire.supply-side-distance',
    message:
      distanceFt === undefined
        ? 'the distance from the supply-side connection to its overcurrent device is not stated'
        : `the overcurrent device is ${distanceFt} ft from the connection, ${rule.deviceWithinFt} ft is the limit`,
    where: 'electrical.connection.overcurrent_device_distance_ft',
    source: necSource(job.edition, rule.section, rule.standing),
    fix: `Put it within ${rule.deviceWithinFt} ft of conductor length, or use current limiters where the edition allows them`,
  })
}

/** The comparison with the service as a rule of the connection. */
function serviceRule({ rule, holds, sumA, limitA, maxInverterA }: SupplySideVerdict): RuleValues {
  return {
    rule: 'supply side',
    section: rule.section,
    holds,
    sum_a: sumA,
    limit_a: limitA,
    why: `${sumA.toFixed(1)} A ${holds ? '<=' : '>'} ${limitA.toFixed(1)} A`,
    max_inverter_a: maxInverterA,
    label: '',
  }
}

/** The conductors ahead of the device as a rule of the connection: those stated, else those chosen. */
function conductorRule(job: Job, { sized, demand }: CircuitInSegment): RuleValues {
  const holds = sized.named === undefined || sized.named.complies || sized.named.reason === 'fails: voltage rise'
  const verdict = sized.named?.verdict ?? sized.verdict
  const ampacityA = Math.min(verdict.terminalA, verdict.correctedA)
  const neededA = Math.max(demand.requiredA, demand.service?.endDeviceA ?? 0, demand.service?.leastA ?? 0)
  const size = sized.named?.size ?? sized.size
  return {
    rule: 'supply-side conductor',
    section: job.nec('serviceConductor').place ?? '',
    holds,
    sum_a: neededA,
    limit_a: ampacityA,
    why: `${size} ${demand.material} carries ${ampacityA.toFixed(1)} A, ${neededA.toFixed(1)} A are needed${holds ? '' : `; ${sized.named?.reason ?? ''}`}`,
    max_inverter_a: largestStandardDeviceA(ampacityA) / CONTINUOUS_FACTOR,
    label: '',
  }
}
