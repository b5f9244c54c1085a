import type { Job } from '../system/index.js'
import type { ServiceLoad } from './load-answer.js'

/** The load against the service and its conductors, and the least service of a dwelling. */
export function compareWithService(job: Job, load: Pick<ServiceLoad, 'a' | 'va' | 'leastServiceA' | 'neededA'>): void {
  const { service } = job.electrical
  job.worksheet.note({
    id: 'wire.load.needed',
    says: 'Least rating of the service disconnect: the load, and the least of a one-family dwelling',
    formula: 'R = max(I, N)',
    inputs: [
      { symbol: 'I', value: load.a, unit: 'A', from: 'wire.load.current' },
      { symbol: 'N', value: load.leastServiceA, unit: 'A', from: 'least service of a one-family dwelling' },
    ],
    result: { symbol: 'R', value: load.neededA, unit: 'A' },
    source: job.nec('leastDwellingService'),
  })
  if (service?.rating_a === undefined)
    job.worksheet.find({
      severity: 'warning',
      id: 'wire.load-not-compared',
      message: `the load of ${load.a.toFixed(1)} A could not be compared with the service, whose rating is not stated`,
      where: 'electrical.service.rating_a',
      source: job.nec('leastDwellingService'),
      fix: 'State rating_a of the service from its disconnect',
    })
  const limits = [
    ['rating_a', 'the service is rated', service?.rating_a],
    ['conductor_ampacity_a', 'the service conductors carry', service?.conductor_ampacity_a],
  ] as const
  for (const [key, words, limitA] of limits)
    if (limitA !== undefined && load.a > limitA)
      job.worksheet.find({
        severity: 'error',
        id: 'wire.load-above-service',
        message: `the load of the dwelling is ${load.a.toFixed(1)} A (${load.va.toFixed(0)} VA), ${words} ${limitA} A`,
        where: `electrical.service.${key}`,
        source: job.nec('leastDwellingService'),
        fix: 'Control or take out loads, or enlarge the service',
      })
}
