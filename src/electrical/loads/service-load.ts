import { LEAST_DWELLING_SERVICE_A } from '../../tables/nec/index.js'
import type { LoadCalculation } from '../../project/index.js'
import { USUAL_SERVICE_V, type Job } from '../system/index.js'
import { compareWithService } from './compare-with-service.js'
import { loadJob, tellUnused, type LoadJob } from './load-job.js'
import { measuredLoad } from './measured.js'
import type { MethodLoad } from './method-load.js'
import { optionalExisting } from './optional-existing.js'
import { optionalNew } from './optional-new.js'
import type { ServiceLoad } from './load-answer.js'
import { standardLoad } from './standard.js'

/**
 * Load of the dwelling by the method that the project names, compared with its service. Once a worksheet.
 *
 * @returns undefined when no load calculation is stated, and when it cannot be made, which an error finding says.
 * @throws StageError when an input of the method is not stated.
 * @source NEC 220.82, 220.83, 220.87, 230.79(C)
 * @limits One-family dwellings. As in the code, a fourth separately controlled heater can lower the load of the optional method of a
 * whole dwelling, since four and more count 40 percent and fewer 65. The line current is VA over the voltage from line to line; at
 * 208Y/120 V with three wires that is more than the larger leg carries, whatever the loads between lines and neutral.
 */
export function serviceLoad(job: Job): ServiceLoad | undefined {
  const stated = job.electrical.load_calculation
  if (stated === undefined) return undefined
  const load = loadJob(job, stated)
  const volts: number = job.electrical.service?.voltage_v ?? USUAL_SERVICE_V
  tellUnused(load, unusedKeys(stated))
  const made = byMethod(load, volts)
  if (made === undefined) return undefined
  const a = recordCurrent(load, made, volts)
  const source = made.source
  const answer: ServiceLoad = {
    va: made.va,
    a,
    method: stated.method,
    section: source.place ?? '',
    source,
    leastServiceA: LEAST_DWELLING_SERVICE_A,
    neededA: Math.max(a, LEAST_DWELLING_SERVICE_A),
    before: made.beforeVa === undefined ? undefined : { va: made.beforeVa, a: made.beforeVa / volts },
  }
  compareWithService(job, answer)
  return answer
}

function byMethod(load: LoadJob, volts: number): MethodLoad | undefined {
  switch (load.stated.method) {
    case 'optional_new':
      return optionalNew(load)
    case 'optional_existing':
      return optionalExisting(load)
    case 'standard':
      return standardLoad(load)
    case 'measured':
      return measuredLoad(load, volts)
  }
}

/** Keys that are stated and that the method does not look at. */
function unusedKeys(stated: LoadCalculation): string[] {
  const nameplates = [
    'floor_area_ft2',
    'small_appliance_circuits',
    'laundry_circuits',
    'appliances',
    'cooling',
    'heating',
  ] as const
  const foreign = stated.method === 'measured' ? nameplates : (['measured'] as const)
  const added = stated.method === 'optional_existing' ? [] : (['existing_ac_or_heat_added'] as const)
  const unused: string[] = [...foreign, ...added].filter((key) => stated[key] !== undefined)
  const { measured } = stated
  if (stated.method === 'measured' && measured?.pv_on_service === false && measured.pv_added_back !== undefined)
    unused.push('measured.pv_added_back')
  return unused
}

function recordCurrent({ job }: LoadJob, { va, source }: MethodLoad, volts: number): number {
  return job.worksheet.step({
    id: 'wire.load.current',
    says: 'Line current of the load at the service',
    formula: 'I = S / V',
    inputs: [
      { symbol: 'S', value: va, unit: 'VA', from: 'wire.load.total' },
      { symbol: 'V', value: volts, unit: 'V', from: 'voltage of the service' },
    ],
    result: { symbol: 'I', value: va / volts, unit: 'A' },
    source,
  })
}
