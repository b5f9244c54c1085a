import { existingHouseChecks } from '../../electrical/index.js'
import { isUnconfirmed } from '../unconfirmed.js'
import type { PacketInput } from '../inputs.js'
import { flowBlocks, label, TYPE_PT, type Block, type SheetDraft } from '../layout/index.js'
import { blockHeightPt, wrapText } from '../model/index.js'
import { equipmentRows } from './equipment-rows.js'
import { sheetSource } from '../sheet-source.js'
import { continued, type SheetJob } from './job.js'
import { vicinityBlocks } from './vicinity.js'
import { scopeText, projectFacts } from './cover-facts.js'
import { generalNotes, legend, approval } from './cover-notes.js'

/** Sheet G-001: what the packet is about. `index` lists the sheets that follow. */
export function coverSheets(job: SheetJob, index: readonly (readonly [id: string, title: string])[]): SheetDraft[] {
  const { input } = job
  const { body } = job.stationery
  const columns = body.width > 600 ? 3 : 2
  const titleLines = wrapText(input.project.title, TYPE_PT.title, 'bold', (body.width - 18 * (columns - 1)) / columns)
  // Documents of several pages are `X-001 to X-002`.
  const numbers = index.some(([id]) => id.includes(' to ')) ? 0.31 : 0.24
  const blocks: Block[] = [
    {
      kind: 'figure',
      heightPt: blockHeightPt(titleLines.length, TYPE_PT.title) + 18,
      draw: (x, y) => [
        label(x, y, 'PERMIT DRAWINGS: PHOTOVOLTAIC SYSTEM', { face: 'bold', color: 'grey' }),
        label(x, y + 14, titleLines.join('\n'), { sizePt: TYPE_PT.title, face: 'bold' }),
      ],
    },
    { kind: 'heading', text: 'Scope of work' },
    { kind: 'text', text: scopeText(input) },
    ...draftBlocks(input),
    { kind: 'heading', text: 'Project data' },
    { kind: 'facts', facts: projectFacts(input) },
    ...houseBlocks(input),
    { kind: 'heading', text: 'Equipment' },
    {
      kind: 'table',
      columns: [
        { heading: 'Item', share: 0.2 },
        { heading: 'No.', share: 0.15 },
        { heading: 'Name', share: 0.21 },
        { heading: 'Ratings', share: 0.44 },
      ],
      rows: equipmentRows(input).map((row) => row.slice(0, 4)),
    },
    ...vicinityBlocks(job),
    { kind: 'heading', text: 'Sheet index' },
    {
      kind: 'table',
      columns: [
        { heading: 'Sheet', share: numbers, bold: true },
        { heading: 'Title', share: 1 - numbers },
      ],
      rows: indexRows(index),
    },
    ...issueBlocks(input),
    { kind: 'heading', text: 'General notes' },
    { kind: 'list', numbered: true, items: generalNotes(input) },
  ]
  const marks: Block[] = [{ kind: 'heading', text: 'Lines and marks' }, legend()]
  // Every drawing has a legend and room for stamps in its strip, so neither is worth a sheet of its own.
  const tries = [[...marks, ...approval()], marks, []].map((last) => flowBlocks([...blocks, ...last], body, columns))
  const least = Math.min(...tries.map(({ length }) => length))
  const pages = tries.find(({ length }) => length === least) ?? []
  return pages.map((paper, page) => ({
    id: continued('G-001', page),
    title: page === 0 ? 'Cover sheet' : 'Cover sheet, continued',
    // Nothing of it is to scale but the vicinity sketch.
    scale: paper.some(({ layer }) => layer === 'street') ? 'As noted' : 'None',
    paper,
  }))
}

/** The index by series: a sheet that goes on at others is one row that names the first and the end of the last: `S-601 to -6`. */
function indexRows(index: readonly (readonly [id: string, title: string])[]): string[][] {
  const rows: { readonly first: string; readonly title: string; last: string }[] = []
  for (const [id, title] of index) {
    const before = rows.at(-1)
    const suffix = before === undefined ? undefined : id.slice(before.first.length)
    if (before !== undefined && id.startsWith(`${before.first}-`) && /^-\d+$/u.test(suffix ?? '')) before.last = id
    else rows.push({ first: id, last: id, title })
  }
  return rows.map(({ first, last, title }) => [
    first === last ? first : `${first} to ${last.slice(first.length)}`,
    title,
  ])
}

/** Errors that stop a permit packet, and values that nobody confirmed; a draft lists them. */
function draftBlocks(input: PacketInput): Block[] {
  const errors = input.findings.filter((finding) => finding.severity === 'error' || isUnconfirmed(finding))
  if (!input.draft) return []
  return [
    { kind: 'heading', text: 'DRAFT: not for permit' },
    errors.length === 0
      ? { kind: 'text', text: 'Drawn as a draft; no check fails.' }
      : {
          kind: 'list',
          numbered: true,
          items: errors.map(
            (finding) =>
              `${finding.message}${finding.where === '' ? '' : ` (${finding.where})`}${finding.source === undefined ? '' : `; ${sheetSource(finding.source)}`}`,
          ),
        },
  ]
}

/** All issues; the strip of a sheet has room for the newest only. */
function issueBlocks({ project }: PacketInput): Block[] {
  const issues = project.document?.revisions ?? []
  if (issues.length === 0) return []
  return [
    { kind: 'heading', text: 'Revisions' },
    {
      kind: 'table',
      columns: [
        { heading: 'Rev', share: 0.12, bold: true },
        { heading: 'Date', share: 0.22 },
        { heading: 'What', share: 0.66 },
      ],
      rows: issues.map(({ number, date, text }) => [number, date, text]),
    },
  ]
}

const HOUSE_STATES = {
  met: '',
  not_met: 'TO BE MENDED: ',
  not_stated: 'TO BE LOOKED AT: ',
  not_needed: 'not needed: ',
} as const

/** What the permit sets off in the house as it is; left out while the project states nothing of it. */
function houseBlocks({ project }: PacketInput): Block[] {
  if (project.existing_house === undefined) return []
  return [
    { kind: 'heading', text: 'The house as it is' },
    {
      kind: 'facts',
      facts: existingHouseChecks(project).map(({ about, state, says, source }) => [
        about,
        `${HOUSE_STATES[state]}${says}; ${sheetSource(source)}`,
      ]),
    },
  ]
}
