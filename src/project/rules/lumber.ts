import { lumberGrades } from '../../tables/nds/index.js'
import { listWords, showValue } from '../words.js'
import type { Rule } from './rule.js'

/** A rafter's species, size and grade exist together. */
export const checkLumber: Rule = (project, report) => {
  for (const [plane, { species, grade, nominal_size: size }] of Object.entries(project.structure?.framing ?? {})) {
    if (species === undefined || grade === undefined || size === undefined) continue
    const held = lumberGrades(species, size)
    // Species without design values are told where their strength is asked for.
    if (held.length === 0 || held.some((each) => each === grade)) continue
    report(
      ['structure', 'framing', plane, 'grade'],
      `${showValue(grade)} does not exist for ${species} of ${size}; its grades are ${listWords(held)}: read the stamp on a rafter again`,
    )
  }
}
