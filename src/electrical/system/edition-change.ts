import {
  CARRIED_FROM,
  changes2026,
  EDITION_NOT_READ,
  necSource,
  type Change2026,
  type Rule2026,
} from '../../tables/nec/index.js'
import type { Finding } from '../../worksheet/index.js'
import type { Job } from './job.js'

/**
 * What every result by an edition has to say whose text was not read for this project; nothing for the others.
 *
 * @source NEC 2026, all of it secondary
 */
export function editionStanding(edition: string | undefined): Finding[] {
  if (edition !== EDITION_NOT_READ) return []
  return [
    {
      severity: 'warning',
      id: 'wire.edition-secondary',
      message: `secondary: the ${edition} text was not read; sections and numbers are those of ${CARRIED_FROM} with the changes that articles report, and label words are those of ${CARRIED_FROM}, unconfirmed`,
      where: 'codes.electrical',
      source: necSource(edition, 'all of it', 'secondary'),
      fix: `Hold every section against the printed ${edition} before you file, or ask the authority whether it still takes ${CARRIED_FROM}`,
    },
  ]
}

/**
 * Tells both values where one changed from 2023 to 2026 and the project is worked by 2026.
 *
 * @param rule Row of the table of changes.
 * @param here What it means in this project, with numbers and units.
 */
export function reportEditionChange({ edition, worksheet }: Job, rule: Rule2026, where: string, here: string): void {
  if (edition !== EDITION_NOT_READ) return
  const row = changeOf(rule)
  worksheet.find({
    severity: 'note',
    id: 'wire.edition-changed',
    message: `${rule}: ${CARRIED_FROM} ${row.value2023}, ${edition} ${row.value2026}; ${here}`,
    where,
    source: necSource(edition, row.section2026, 'secondary'),
    fix: 'Ask the authority which edition it judges by, and read the section there',
  })
}

function changeOf(rule: Rule2026): Change2026 {
  const row = changes2026.find((each) => each.rule === rule)
  if (row === undefined) throw new Error(`no change called '${rule}'`)
  return row
}
