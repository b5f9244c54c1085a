import { CHECKLIST, LISTS, type Supplier } from '../../tables/permit/index.js'
import type { Finding, Source } from '../../worksheet/index.js'
import { own } from '../../values/index.js'
import type { PacketInput } from '../inputs.js'
import type { Sheet } from '../model/index.js'
import { documentSheets } from '../sheets/document-index.js'
import { COVER_POINTS } from './cover-points.js'
import { ELECTRICAL_POINTS } from './electrical-points.js'
import { expeditedReview, type ExpeditedReview } from './expedited.js'
import { HOUSE_POINTS } from './house-points.js'
import { PAPER_POINTS } from './paper-points.js'
import { PLAN_POINTS } from './plan-points.js'
import { sheetWords } from './sheet-words.js'
import { STRUCTURE_POINTS } from './structure-points.js'
import { allOn, missing, notApplicable, present, type AuditFacts, type Judge, type Verdict } from './verdict.js'

/** A point that a reviewer asks for, and what was found of it. */
export interface AuditPoint {
  readonly id: string
  readonly asks: string
  /** Number of published lists that ask for it; null for a point of this authority alone. */
  readonly lists: number | null
  /** Whether the authority of the project asks for it; null while no file of it is named. */
  readonly required: boolean | null
  readonly state: Verdict['state']
  /** Where it stands in the packet. */
  readonly sheets: readonly string[]
  /** What stands there, what is not there, or why it does not apply. */
  readonly what: string
  readonly supplied_by: Supplier
}

/** The packet against the list of its reviewer. */
export interface AuditValues {
  readonly authority: {
    readonly name: string
    readonly list: string | null
    readonly as_of: string | null
    readonly invented: boolean
  } | null
  readonly points: readonly AuditPoint[]
  readonly present: number
  readonly missing: number
  readonly not_applicable: number
  readonly expedited: ExpeditedReview | null
}

/** How each point of the common list is looked up. */
export const JUDGES: Readonly<Record<string, Judge>> = {
  ...COVER_POINTS,
  ...PLAN_POINTS,
  ...STRUCTURE_POINTS,
  ...ELECTRICAL_POINTS,
  ...HOUSE_POINTS,
  ...PAPER_POINTS,
}

/**
 * Looks every point up in the composed sheets and in what they were drawn from.
 *
 * @param sheets The drawings of `input`.
 * @returns Missing points are errors where the authority asks for them, and warnings while nobody says what it asks.
 */
export function auditPacket(
  input: PacketInput,
  sheets: readonly Sheet[],
): { readonly values: AuditValues; readonly findings: readonly Finding[] } {
  const facts: AuditFacts = { input, sheets: sheetWords(sheets) }
  const { authority } = input
  const points = [...commonPoints(facts), ...ownPoints(facts)]
  const count = (state: AuditPoint['state']): number => points.filter((point) => point.state === state).length
  const expedited = expeditedReview(input) ?? null
  const values: AuditValues = {
    authority:
      authority === undefined
        ? null
        : {
            name: authority.name,
            list: authority.list ?? null,
            as_of: authority.as_of ?? null,
            invented: authority.invented === true,
          },
    points,
    present: count('present'),
    missing: count('missing'),
    not_applicable: count('not_applicable'),
    expedited,
  }
  return { values, findings: findingsOf(input, values) }
}

function commonPoints(facts: AuditFacts): AuditPoint[] {
  const { authority } = facts.input
  return CHECKLIST.map(({ id, asks, lists, by }) => {
    const dropped = authority?.not_asked?.includes(id) === true
    const verdict = dropped
      ? notApplicable(`${authority.name} does not ask for it (not_asked)`)
      : (own(JUDGES, id)?.(facts) ?? missing('no way to look it up'))
    return {
      id,
      asks,
      lists: lists.length,
      required: authority === undefined ? null : !dropped,
      ...told(verdict),
      supplied_by: by,
    }
  })
}

function ownPoints(facts: AuditFacts): AuditPoint[] {
  return Object.entries(facts.input.authority?.also_asked ?? {}).map(([id, point]) => {
    const verdicts = [
      ...(point.words === undefined
        ? []
        : [allOn(facts, point.sheets ?? 'GCASER', [[`words "${point.words}"`, point.words]])]),
      ...(point.document === undefined ? [] : [boundDocument(facts, point.document)]),
    ]
    const lacking = verdicts.filter(({ state }) => state !== 'present')
    const verdict =
      lacking.length > 0
        ? missing(lacking.map(({ what }) => what).join('; '))
        : present(
            verdicts.flatMap((each) => (each.state === 'present' ? each.sheets : [])),
            verdicts.map(({ what }) => what).join('; '),
          )
    return { id, asks: point.asks, lists: null, required: true, ...told(verdict), supplied_by: point.supplied_by }
  })
}

function boundDocument({ input }: AuditFacts, id: string): Verdict {
  const index = input.documents.findIndex((document) => document.id === id)
  const [sheet, title] = documentSheets(input.documents)[index] ?? []
  return sheet === undefined || title === undefined
    ? missing(`document ${id}: not under documents`)
    : present([sheet], title)
}

const told = (verdict: Verdict): Pick<AuditPoint, 'state' | 'sheets' | 'what'> => ({
  state: verdict.state,
  sheets: verdict.state === 'present' ? [...new Set(verdict.sheets)] : [],
  what: verdict.what,
})

function findingsOf(input: PacketInput, { points, expedited }: AuditValues): Finding[] {
  const { authority, project, size } = input
  const findings: Finding[] = points
    .filter(({ state }) => state === 'missing')
    .map(({ id, asks, what, required, supplied_by: by }) => ({
      severity: required === true ? 'error' : 'warning',
      id: 'audit.point-missing',
      message: `${id}: ${asks}; ${what}`,
      where: required === true ? 'permit.authority' : '',
      ...sourceOf(id),
      fix: `To be supplied by the ${by}${required === null ? '; or leave it out when your authority does not ask for it' : ''}.`,
    }))
  if (authority === undefined) {
    findings.push({
      severity: 'note',
      id: 'audit.no-authority',
      message: `no file says what your authority asks, so the packet is held against all ${CHECKLIST.length} points of published lists`,
      where: 'permit.authority',
      fix: 'Write what its list asks into a file and name it under permit.authority.',
    })
    return findings
  }
  const { name } = project.parties?.authority ?? {}
  if (name !== undefined && name !== authority.name)
    findings.push({
      severity: 'warning',
      id: 'audit.other-authority',
      message: `the project names ${name}, and the file under permit.authority is that of ${authority.name}`,
      where: 'parties.authority.name',
      fix: 'Name the file of the authority that the packet goes to.',
    })
  if (authority.paper !== undefined && authority.paper !== size)
    findings.push({
      severity: 'error',
      id: 'audit.other-paper',
      message: `the sheets are drawn on ${size}, and ${authority.name} asks for ${authority.paper}`,
      where: 'permit.authority',
      fix: `Leave --size out, or state --size ${authority.paper}.`,
    })
  if (expedited !== null && !expedited.eligible)
    findings.push({
      severity: 'note',
      id: 'audit.not-expedited',
      message: expedited.verdict,
      where: 'permit.authority',
      fix: 'Hand the packet in for the normal review.',
    })
  for (const remark of expedited?.remarks ?? [])
    findings.push({
      severity: 'note',
      id: 'audit.old-limit',
      message: remark.replace(/\.$/u, ''),
      where: 'permit.authority',
      fix: 'Ask the authority for its list in force.',
    })
  return findings
}

/** The published lists that ask for a point. */
function sourceOf(id: string): { readonly source?: Source } {
  const point = CHECKLIST.find((each) => each.id === id)
  if (point === undefined) return {}
  const places = point.lists.map((list) => LISTS[list])
  return {
    source: {
      document: 'Published lists of building departments',
      ...(places.length === 0 ? {} : { place: places.join('; ') }),
      standing: point.standing,
    },
  }
}
