import { drawLabel, labelHeightPt } from '../labels/draw-label.js'
import { labelsToAsk, requiredLabels, type LabelAsk, type RequiredLabel } from '../labels/required-labels.js'
import { enlarged, flowBlocks, isReduced, label, TYPE_PT, type Block, type SheetDraft } from '../layout/index.js'
import { blockHeightPt, wrapText, xy, type Primitive, POINTS_PER_INCH } from '../model/index.js'
import { scaleLabel } from '../labels/scale-label.js'
import { continued, type SheetJob } from './job.js'
import { labelElevation } from './label-elevation.js'

/** Least width of a column of labels at true size, and at half size, points. */
const COLUMN_PT = { 1: 400, 0.5: 280 } as const
const SIZE = TYPE_PT.small

/** Sheet E-604: every label of the edition at true size, on letter paper at half size, with its colours, and where each goes. */
export function labelSheets(job: SheetJob): SheetDraft[] {
  const wiring = job.input.wire?.values
  if (wiring === undefined) return []
  const labels = requiredLabels(job.input.project, wiring)
  const asked = labelsToAsk(job.input.project, wiring)
  const { body, unitPt, size } = job.stationery
  const share = isReduced(size) ? 0.5 : 1
  const columns = Math.max(1, Math.floor((body.width + 18) / (COLUMN_PT[share] / unitPt + 18)))
  const columnPt = (body.width - 18 * (columns - 1)) / columns
  const blocks: Block[] = [
    { kind: 'heading', text: `Labels by ${wiring.edition}` },
    {
      kind: 'list',
      items: [
        `${share === 1 ? 'Drawn at true size.' : 'Drawn at half size: a label is twice as wide and as high as here; heights of letters are those of the label.'} Colours are named in words, so that a copy in black and white says the same.`,
        'Fixed for good, not written by hand, of a material that lasts where they are.',
        'Words that the code does not fix may be worded otherwise by the authority.',
        'REFLECTIVE beside a label: the code asks for reflective material.',
      ],
    },
    labelElevation(labels, wiring),
    ...labels.map((each) => labelBlock(each, columnPt, { share, unitPt })),
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
    scale: share === 1 ? 'Labels at true size' : 'Labels at half size',
    paper,
  }))
}

/** A label at its size, or at half of it: laid out on paper and brought back to units of the layout. */
function labelBlock(
  each: RequiredLabel,
  columnPt: number,
  { share, unitPt }: { readonly share: 0.5 | 1; readonly unitPt: number },
): Block {
  const widthPt = Math.min(each.widthIn * POINTS_PER_INCH, ((columnPt - 26) * unitPt) / share)
  const height = (labelHeightPt(each, widthPt) * share) / unitPt
  const notes = noteText(each)
  const noteLines = wrapText(notes, SIZE, 'plain', columnPt - 26)
  return {
    kind: 'figure',
    heightPt: height + blockHeightPt(noteLines.length, SIZE) + 5,
    gapPt: 19,
    draw: (x, y): readonly Primitive[] => [
      { kind: 'circle', center: xy(x + 10, y + 14), radiusPt: 9, pen: 'medium' },
      label(x + 10, y + 14, String(each.number), { face: 'bold', align: 'center', valign: 'middle' }),
      ...scaleLabel(
        drawLabel(each, (x + 26) * unitPt, y * unitPt, widthPt),
        xy((x + 26) * unitPt, y * unitPt),
        share,
      ).map((part) => enlarged(part, 1 / unitPt)),
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
