import { existingHouseChecks } from '../../electrical/index.js'
import { allOn, missing, notApplicable, type Judge } from './verdict.js'

/** Points of the house as it is. */
export const HOUSE_POINTS: Readonly<Record<string, Judge>> = {
  alarms: (facts) => {
    const checks = existingHouseChecks(facts.input.project).filter(({ id }) => id.endsWith('-alarms'))
    const open = checks.filter(({ state }) => state === 'not_met' || state === 'not_stated')
    if (open.length > 0) return missing(open.map(({ says, where }) => `${says} (${where})`).join('; '))
    if (checks.every(({ state }) => state === 'not_needed'))
      return notApplicable([...new Set(checks.map(({ says }) => says))].join('; '))
    return allOn(
      facts,
      'G',
      checks.map(({ about, says }) => [about, says]),
    )
  },
}
