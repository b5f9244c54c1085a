import { conductorSizes, necSource } from '../tables/nec/index.js'
import { largeEnough, judgeSupplySide } from './judge-supply-side.js'
import type { Sources } from './check-panel.js'
import type { Job } from './job.js'
import type { PanelValues } from './wiring-values.js'

/** Connection ahead of the service disconnect: sum, conductor size, distance of the device. */
export function checkSupplySide(job: Job, sources: Sources): PanelValues {
  const { service, connection, panel } = job.electrical
  const verdict = judgeSupplySide(job.edition, {
    serviceA: service?.rating_a,
    serviceAmpacityA: service?.conductor_ampacity_a,
    inverterA: sources.inverterA,
    sourceBreakersA: sources.breakersA.reduce((sum, breaker) => sum + breaker, 0),
  })
  const { rule } = verdict
  const source = necSource(job.edition, rule.section, rule.standing)
  job.worksheet.note({
    id: 'wire.panel.supply-side',
    says: 'Connection on the supply side of the service disconnect',
    formula: verdict.formula,
    inputs: [
      { symbol: 'sum', value: verdict.sumA, unit: 'A', from: 'sources' },
      { symbol: 'limit', value: verdict.limitA, unit: 'A', from: 'electrical.service' },
    ],
    result: { symbol: 'sum', value: verdict.sumA, unit: 'A' },
    check: { relation: '<=', limit: verdict.limitA, pass: verdict.holds },
    source,
  })
  if (!verdict.holds)
    job.worksheet.find({
      severity: 'error',
      id: 'wire.supply-side',
      message: `${verdict.sumA.toFixed(1)} A on the supply side, ${verdict.limitA.toFixed(1)} A allowed`,
      where: 'electrical.connection',
      source,
      fix: 'Reduce the inverters or enlarge the service',
    })
  const distanceFt = connection?.overcurrent_device_distance_ft
  if (rule.deviceWithinFt !== undefined && (distanceFt === undefined || distanceFt > rule.deviceWithinFt))
    job.worksheet.find({
      severity: 'error',
      id: 'wire.supply-side-distance',
      message:
        distanceFt === undefined
          ? 'the distance from the supply-side connection to its overcurrent device is not stated'
          : `the overcurrent device is ${distanceFt} ft from the connection, ${rule.deviceWithinFt} ft is the limit`,
      where: 'electrical.connection.overcurrent_device_distance_ft',
      source,
      fix: `Put it within ${rule.deviceWithinFt} ft of conductor length, or use current limiters where the edition allows them`,
    })
  const size = conductorSizes.find((candidate) => candidate === connection?.conductor_size)
  if (size === undefined || !largeEnough(rule, size, connection?.conductor_material ?? 'copper'))
    job.worksheet.find({
      severity: size === undefined ? 'warning' : 'error',
      id: 'wire.supply-side-conductor',
      message:
        size === undefined
          ? `the size of the conductors between connection and device is not stated${rule.smallestCopper === undefined ? '' : ` (at least ${rule.smallestCopper} AWG copper or ${rule.smallestAluminum} AWG aluminum)`}`
          : `${size} AWG is below ${rule.smallestCopper} AWG copper or ${rule.smallestAluminum} AWG aluminum`,
      where: 'electrical.connection.conductor_size',
      source,
      fix: 'Use at least the size that the edition names and that carries the current',
    })
  return {
    bus_a: panel?.bus_a ?? null,
    main_a: panel?.main_a ?? null,
    inverter_a: sources.inverterA,
    rule: 'supply side',
    section: rule.section,
    complies: verdict.holds,
    max_inverter_a: verdict.maxInverterA,
    label: '',
    rules: [
      {
        rule: 'supply side',
        section: rule.section,
        holds: verdict.holds,
        sum_a: verdict.sumA,
        limit_a: verdict.limitA,
        why: `${verdict.sumA.toFixed(1)} A ${verdict.holds ? '<=' : '>'} ${verdict.limitA.toFixed(1)} A`,
        max_inverter_a: verdict.maxInverterA,
        label: '',
      },
    ],
    spaces_needed: 0,
    spaces_free: panel?.spaces_free ?? null,
  }
}
