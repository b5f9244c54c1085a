import type { FaultValues } from '../system/index.js'
import type { ServiceFault } from './fault-at-service.js'

/** The fault current in the names of the JSON output; null when it is not known. */
export function faultValues(fault: ServiceFault | undefined): FaultValues | null {
  if (fault === undefined) return null
  return {
    line_to_line_a: fault.lineToLineA,
    line_to_neutral_a: fault.lineToNeutralA,
    governs_a: fault.governsA,
    how: fault.how,
  }
}
