import {
  ARTIFACT,
  blockHeightPt,
  inPart,
  onLayer,
  wrapText,
  type Box,
  type Face,
  type Primitive,
  type Tag,
} from '../model/index.js'
import { label, line, TYPE_PT } from './text.js'

/** What the title block of every sheet says. */
export interface TitleFacts {
  readonly project: string
  readonly address: string
  readonly owner: string
  readonly contractor: string
  readonly preparedBy: string
  readonly authority: string
  readonly utility: string
  readonly codes: readonly string[]
  readonly date: string
  readonly revision: string
  readonly invented: boolean
  readonly draft: boolean
}

/** What it says of one sheet. */
export interface SheetFacts {
  readonly id: string
  readonly title: string
  readonly scale: string
  readonly size: string
}

interface Line {
  readonly text: string
  readonly sizePt: number
  readonly face: Face
  /** Whether it is a part of the sheet's heading. */
  readonly heads?: true
}

const SHARES = [0.235, 0.235, 0.15, 0.2, 0.09, 0.09] as const
const PAD = 4

/** Height that the block needs on paper of a width, so that the longest name of the project fits. */
export function titleBlockHeightPt(facts: TitleFacts, titles: readonly string[], widthPt: number): number {
  const heights = titles.flatMap((title) =>
    cells(facts, { id: 'E-601', title, scale: 'As noted', size: '11x17' }).map((lines, index) =>
      cellHeight(lines, cellWidth(index, widthPt)),
    ),
  )
  return Math.max(48, ...heights) + 2 * PAD
}

/** Draws the block along the bottom of the frame. */
export function drawTitleBlock(facts: TitleFacts, sheet: SheetFacts, box: Box): Primitive[] {
  const drawn: Primitive[] = [line(box.x, box.y, box.x + box.width, box.y, { pen: 'heavy' })]
  const heading: Tag = { kind: 'H1', says: `${sheet.id} ${sheet.title}` }
  let x = box.x
  for (const [index, lines] of cells(facts, sheet).entries()) {
    const width = cellWidth(index, box.width)
    if (index > 0) drawn.push(line(x, box.y, x, box.y + box.height, { pen: 'thin' }))
    if (index === SHARES.length - 1) drawn.push(...sheetNumber(sheet, { ...box, x, width }, heading))
    else drawn.push(...drawLines(lines, x + PAD, box.y + PAD, width - 2 * PAD, heading))
    x += width
  }
  return onLayer('titleBlock', inPart(ARTIFACT, drawn))
}

function cellWidth(index: number, widthPt: number): number {
  return widthPt * (SHARES[index] ?? 0)
}

const cap = (text: string): Line => ({ text, sizePt: TYPE_PT.small, face: 'bold' })
const say = (text: string): Line => ({ text, sizePt: TYPE_PT.small, face: 'plain' })

function cells(facts: TitleFacts, sheet: SheetFacts): Line[][] {
  const part = (heading: string, text: string): Line[] => (text === '' ? [] : [cap(heading), say(text)])
  return [
    [
      { text: facts.project, sizePt: TYPE_PT.head, face: 'bold' },
      ...part('SITE', facts.address),
      ...(facts.invented ? [say('People, places and equipment are invented.')] : []),
    ],
    [...part('OWNER', facts.owner), ...part('INSTALLER', facts.contractor), cap('PREPARED BY'), say(facts.preparedBy)],
    [
      cap('CODES'),
      say(facts.codes.length === 0 ? 'none stated' : facts.codes.join(', ')),
      ...part('AUTHORITY', facts.authority),
      ...part('UTILITY', facts.utility),
    ],
    [
      cap('SHEET'),
      { text: sheet.title.toUpperCase(), sizePt: TYPE_PT.head, face: 'bold', heads: true },
      ...(facts.draft ? [cap('DRAFT - NOT FOR PERMIT')] : []),
    ],
    [cap('DATE'), say(facts.date), cap('REVISION'), say(facts.revision), cap('SCALE'), say(sheet.scale)],
    [],
  ]
}

function cellHeight(lines: readonly Line[], width: number): number {
  return lines.reduce((sum, each) => sum + lineHeight(each, width - 2 * PAD), 0)
}

function lineHeight({ text, sizePt, face }: Line, width: number): number {
  return blockHeightPt(wrapText(text, sizePt, face, width).length, sizePt) + 1.5
}

function drawLines(lines: readonly Line[], x: number, top: number, width: number, heading: Tag): Primitive[] {
  let y = top
  return lines.map((each) => {
    const at = y
    y += lineHeight(each, width)
    const { text, sizePt, face } = each
    return label(x, at, text, {
      sizePt,
      face,
      maxWidthPt: width,
      tag: each.heads === true ? heading : undefined,
      ...(face === 'bold' && sizePt === TYPE_PT.small ? { color: 'grey' as const } : {}),
    })
  })
}

function sheetNumber(sheet: SheetFacts, box: Box, heading: Tag): Primitive[] {
  const middle = box.x + box.width / 2
  let size: number = TYPE_PT.number
  while (size > TYPE_PT.head && wrapText(sheet.id, size, 'bold', box.width - 2 * PAD).length > 1) size -= 0.5
  return [
    label(middle, box.y + PAD, 'SHEET NUMBER', { sizePt: TYPE_PT.small, face: 'bold', color: 'grey', align: 'center' }),
    label(middle, box.y + box.height / 2 + 2, sheet.id, {
      sizePt: size,
      face: 'bold',
      align: 'center',
      valign: 'middle',
      tag: heading,
    }),
    label(middle, box.y + box.height - PAD, sheet.size, { sizePt: TYPE_PT.small, align: 'center', valign: 'bottom' }),
  ]
}
