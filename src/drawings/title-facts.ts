import type { Party } from '../project/index.js'
import type { PacketInput } from './inputs.js'
import type { StationeryWishes, TitleFacts } from './layout/index.js'

/** What the title block says, from the project file alone. */
export function titleFacts({ project, draft }: PacketInput): TitleFacts {
  const { parties, codes, document } = project
  const editions = [codes?.electrical, codes?.residential, codes?.loads, codes?.wood].filter(
    (each) => each !== undefined,
  )
  return {
    project: project.title,
    address: project.site.address ?? '',
    owner: parties?.owner?.name ?? '',
    contractor: partyText(parties?.installer),
    preparedBy: preparedBy(parties?.prepared_by_owner === true, parties?.preparer),
    authority: parties?.authority?.name ?? '',
    utility: parties?.utility?.name ?? '',
    // Local amendments stand once, on the cover.
    codes: editions,
    date: document?.date ?? 'not dated',
    revision: document?.revision ?? document?.revisions?.at(-1)?.number ?? '-',
    invented: document?.invented === true,
    draft,
  }
}

function preparedBy(owner: boolean, preparer: Party | undefined): string {
  if (owner) return 'the owner'
  return preparer === undefined ? 'Name and licence: ____________________' : partyText(preparer)
}

function partyText(party: Party | undefined): string {
  if (party === undefined) return ''
  return [party.name, party.license === undefined ? undefined : `licence ${party.license}`]
    .filter((each) => each !== undefined)
    .join(', ')
}

/** What the project asks of the lettering, and its issues after the first. */
export function stationeryWishes({ project }: PacketInput): StationeryWishes {
  return { leastTextIn: project.drawings?.least_text_in, revisions: project.document?.revisions }
}
