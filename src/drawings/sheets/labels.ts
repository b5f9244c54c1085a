import { drawLabel, labelHeightPt } from '../labels/draw-label.js'
import { labelsToAsk, requiredLabels, type LabelAsk, type RequiredLabel } from '../labels/required-labels.js'
import { enlarged, flowBlocks, label, TYPE_PT, type Block, type SheetDraft } from '../layout/index.js'
import { blockHeightPt, wrapText, xy, type Primitive, POINTS_PER_INCH } from '../model/index.js'
import { continued, type SheetJob } from './job.js'
import { labelElevation } from './label-elevation.js'

const COLUMN_PT = 400
const SIZE = TYPE_PT.small

/** Sheet E-604: every label of the edition at true size with its colours, and where each goes. */
export function labelSheets(job: SheetJob): SheetDraft[] {
  const wiring = job.input.wire?.values
  if (wiring === undefined) return []
  const labels = requiredLabels(job.input.project, wiring)
  const asked = labelsToAsk(job.input.project, wiring)
  const { body, unitPt } = job.stationery
  const columns = Math.max(1, Math.floor((body.width + 18) / (COLUMN_PT + 18)))
  const columnPt = (body.width - 18 * (columns - 1)) / columns
  const blocks: Block[] = [
    { kind: 'heading', text: `Labels by ${wiring.edition}` },
    {
      kind: 'list',
      items: [
        'Drawn at true size. Colours are named in words, so that a copy in black and white says the same.',
        'Fixed for good, not written by hand, of a material that lasts where they are.',
        'Words that the code does not fix may be worded otherwise by the authority.',
        'REFLECTIVE beside a label: the code asks for reflective material.',
      ],
    },
    labelElevation(labels, wiring),
    ...labels.map((each) => labelBlock(each, columnPt, unitPt)),
    ...(asked.length === 0
      ? []
      : ([
          { kind: 'heading', text: 'Labels to ask the authority about' },
          { kind: 'list', items: asked.map(askText) },
        ] satisfies Block[])),
  ]
  return flowBlocks(blocks, body, columns).map((paper, page) => ({
    id: continued('E-604', page),
    title: page === 0 ? 'Labels and placards' : 'Labels and placards, continued',
    scale: 'Labels at true size',
    paper,
  }))
}

/** A label at true size: laid out on paper and brought back to units of the layout. */
function labelBlock(each: RequiredLabel, columnPt: number, unitPt: number): Block {
  const widthPt = Math.min(each.widthIn * POINTS_PER_INCH, (columnPt - 26) * unitPt)
  const height = labelHeightPt(each, widthPt) / unitPt
  const notes = noteText(each)
  const noteLines = wrapText(notes, SIZE, 'plain', columnPt - 26)
  return {
    kind: 'figure',
    heightPt: height + blockHeightPt(noteLines.length, SIZE) + 16,
    draw: (x, y): readonly Primitive[] => [
      { kind: 'circle', center: xy(x + 10, y + 14), radiusPt: 9, pen: 'medium' },
      label(x + 10, y + 14, String(each.number), { face: 'bold', align: 'center', valign: 'middle' }),
      ...drawLabel(each, (x + 26) * unitPt, y * unitPt, widthPt).map((part) => enlarged(part, 1 / unitPt)),
      label(x + 26, y + height + 5, noteLines.join('\n'), { sizePt: SIZE }),
    ],
  }
}

function noteText(each: RequiredLabel): string {
  const named = each.places.some((place) => place.startsWith('panel:')) ? ` At: ${each.placeTitles.join(', ')}.` : ''
  return `${each.count} needed: ${each.counted}.${named} Make: ${each.onSheet.look}. ${capital(each.onSheet.wording)}. Where: ${each.where}. Source: ${each.onSheet.source}.`
}

function askText({ when, phrases, look, onSheet }: LabelAsk): string {
  return `If ${when}: ${phrases.join('; ')}${look === '' ? '' : ` (${look})`}. Source: ${onSheet.source}.`
}

const capital = (text: string): string => `${text.charAt(0).toUpperCase()}${text.slice(1)}`
