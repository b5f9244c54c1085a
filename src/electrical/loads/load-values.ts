import type { LoadValues } from '../system/index.js'
import type { ServiceLoad } from './load-answer.js'

/** The load in the names of the JSON output; null when there is none. */
export function loadValues(load: ServiceLoad | undefined): LoadValues | null {
  if (load === undefined) return null
  return {
    method: load.method,
    section: load.section,
    load_va: load.va,
    load_a: load.a,
    needed_a: load.neededA,
    least_service_a: load.leastServiceA,
    before_a: load.before?.a ?? null,
  }
}
