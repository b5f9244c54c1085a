import {
  ARTIFACT,
  blockHeightPt,
  inPart,
  onLayer,
  wrapText,
  type Box,
  type Color,
  type Face,
  type Primitive,
  type Tag,
  inCapitals,
} from '../model/index.js'
import { drawRevisions, revisionsHeight, type RevisionRow } from './revision-rows.js'
import { label, line, TYPE_PT } from './text.js'

/** What the title strip of every sheet says. */
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
  /** Number of the lot at the assessor, when it is stated. */
  readonly parcel?: string | undefined
}

/** What it says of one sheet. */
export interface SheetFacts {
  readonly id: string
  readonly title: string
  readonly scale: string
  readonly size: string
  readonly place?: { readonly number: number; readonly of: number } | undefined
}

interface Line {
  readonly text: string
  readonly sizePt: number
  readonly face: Face
  readonly color?: Color
  /** Whether it is a part of the sheet's heading. */
  readonly heads?: true
}

const PAD = 4
/** Least height of the room for the stamp of the authority. */
const STAMP = 44

const cap = (text: string): Line => ({ text, sizePt: TYPE_PT.small, face: 'bold', color: 'grey' })
const say = (text: string, face: Face = 'plain'): Line => ({ text, sizePt: TYPE_PT.small, face })
const part = (heading: string, text: string): Line[] => (text === '' ? [] : [cap(heading), say(text)])

/**
 * Draws the strip along the right side of the frame, from top to bottom: room for the stamp, the project, its people,
 * codes, revisions, the sheet. Where it is too high, names are set in smaller type, then the longest end in an ellipsis;
 * the cover tells them whole. The title of the sheet is never cut.
 */
export function drawTitleStrip(
  facts: TitleFacts,
  sheet: SheetFacts,
  revisions: readonly RevisionRow[],
  box: Box,
): Primitive[] {
  const heading: Tag = { kind: 'H1', says: `${sheet.id} ${sheet.title}` }
  const width = box.width - 2 * PAD
  const cells = fitted(
    cellsOf(facts, sheet),
    width,
    box.height - STAMP - revisionsHeight(revisions, box) - SHEET_HEIGHT,
  )
  const used = cells.reduce((sum, cell) => sum + cellHeight(cell, width), 0)
  const drawn: Primitive[] = [line(box.x, box.y, box.x, box.y + box.height, { pen: 'heavy' })]
  const rule = (y: number, pen: 'thin' | 'heavy' = 'thin'): Primitive => line(box.x, y, box.x + box.width, y, { pen })
  let y = box.y + box.height - SHEET_HEIGHT - revisionsHeight(revisions, box) - used
  drawn.push(...(facts.draft ? draftStamp(box) : [stampRoom(box)]), rule(y, 'heavy'))
  for (const [index, cell] of cells.entries()) {
    if (index > 0) drawn.push(rule(y))
    drawn.push(...drawLines(cell, box.x + PAD, y + PAD, width, heading))
    y += cellHeight(cell, width)
  }
  drawn.push(...drawRevisions(revisions, { ...box, y }, rule))
  y += revisionsHeight(revisions, box)
  const number = sheetNumber(sheet, { ...box, y, height: SHEET_HEIGHT }, heading)
  return onLayer('titleBlock', inPart(ARTIFACT, [...drawn, rule(y, 'heavy'), ...number]))
}

const stampRoom = (box: Box): Primitive =>
  label(box.x + PAD, box.y + PAD, 'ROOM FOR STAMPS', { sizePt: TYPE_PT.small, face: 'bold', color: 'grey' })

/** A draft has no room for stamps: it says there what it is. */
function draftStamp(box: Box): Primitive[] {
  const room = { x: box.x + PAD, y: box.y + PAD, width: box.width - 2 * PAD, height: STAMP - 2 * PAD }
  return [
    { kind: 'rectangle', ...room, pen: 'medium', fill: 'white' },
    label(room.x + room.width / 2, room.y + room.height / 2, 'DRAFT - NOT FOR PERMIT', {
      face: 'bold',
      align: 'center',
      valign: 'middle',
      maxWidthPt: room.width - 2 * PAD,
    }),
  ]
}

function cellsOf(facts: TitleFacts, sheet: SheetFacts): Line[][] {
  return [
    [
      { text: facts.project, sizePt: TYPE_PT.head, face: 'bold' },
      ...part('SITE', facts.address),
      ...part('PARCEL', facts.parcel ?? ''),
      ...(facts.invented ? [say('People, places and equipment are invented.')] : []),
    ],
    [...part('OWNER', facts.owner), ...part('INSTALLER', facts.contractor), ...part('PREPARED BY', facts.preparedBy)],
    [
      cap('CODES'),
      say(facts.codes.length === 0 ? 'none stated' : facts.codes.join(', ')),
      ...part('AUTHORITY', facts.authority),
      ...part('UTILITY', facts.utility),
    ],
    [...part('DATE', facts.date), ...part('REVISION', facts.revision), ...part('SCALE', sheet.scale)],
    [
      cap('SHEET'),
      { text: inCapitals(sheet.title), sizePt: TYPE_PT.head, face: 'bold', heads: true },
      ...(facts.draft ? [say('DRAFT - NOT FOR PERMIT', 'bold')] : []),
    ],
  ]
}

/** Cells in the largest type of names that fits a height; where none does, cut line by line, the longest text first. */
function fitted(cells: readonly (readonly Line[])[], width: number, heightPt: number): Line[][] {
  const sizes = [TYPE_PT.head, TYPE_PT.text, TYPE_PT.small]
  const tries = sizes.map((mostPt) => cells.map((cell) => brokenLines(cell, width, mostPt)))
  const fits = (broken: readonly (readonly Broken[])[]): boolean =>
    broken.reduce(
      (sum, cell) => sum + 2 * PAD + cell.reduce((high, { each, lines }) => high + lineHigh(lines, each), 0),
      0,
    ) <= heightPt
  const broken = tries.find(fits) ?? tries.at(-1) ?? []
  while (!fits(broken)) {
    const longest = broken
      .flat()
      .filter(({ each }) => each.heads !== true)
      .toSorted((a, b) => b.lines.length - a.lines.length)[0]
    if (longest === undefined || longest.lines.length < 2) break
    longest.lines.splice(-2, 2, `${(longest.lines.at(-2) ?? '').replace(/.{2}$/u, '')}…`)
  }
  return broken.map((cell) => cell.map(({ each, lines }) => ({ ...each, text: lines.join('\n') })))
}

interface Broken {
  readonly each: Line
  readonly lines: string[]
}

const brokenLines = (cell: readonly Line[], width: number, mostPt: number): Broken[] =>
  cell.map((line) => {
    const each = { ...line, sizePt: Math.min(line.sizePt, mostPt) }
    return { each, lines: wrapText(each.text, each.sizePt, each.face, width) }
  })

const lineHigh = (lines: readonly string[], { sizePt }: Line): number => blockHeightPt(lines.length, sizePt) + 1.5

function cellHeight(cell: readonly Line[], width: number): number {
  return (
    2 * PAD + cell.reduce((sum, each) => sum + lineHigh(wrapText(each.text, each.sizePt, each.face, width), each), 0)
  )
}

function drawLines(lines: readonly Line[], x: number, top: number, width: number, heading: Tag): Primitive[] {
  let y = top
  return lines.map((each) => {
    const at = y
    y += lineHigh(wrapText(each.text, each.sizePt, each.face, width), each)
    const { text, sizePt, face, color = 'black' } = each
    const tag = each.heads === true ? heading : undefined
    return label(x, at, text, { sizePt, face, color, maxWidthPt: width, tag })
  })
}

/** Height of the cell with the number of the sheet. */
const SHEET_HEIGHT = 58

function sheetNumber(sheet: SheetFacts, box: Box, heading: Tag): Primitive[] {
  const middle = box.x + box.width / 2
  const count = sheet.place === undefined ? '' : `SHEET ${sheet.place.number} OF ${sheet.place.of}`
  let size: number = TYPE_PT.number
  while (size > TYPE_PT.head && wrapText(sheet.id, size, 'bold', box.width - 2 * PAD).length > 1) size -= 0.5
  return [
    label(middle, box.y + PAD, 'SHEET NUMBER', { sizePt: TYPE_PT.small, face: 'bold', color: 'grey', align: 'center' }),
    label(middle, box.y + 24, sheet.id, {
      sizePt: size,
      face: 'bold',
      align: 'center',
      valign: 'middle',
      tag: heading,
    }),
    ...(count === '' ? [] : [label(middle, box.y + 38, count, { sizePt: TYPE_PT.small, align: 'center' })]),
    label(middle, box.y + box.height - PAD, sheet.size, { sizePt: TYPE_PT.small, align: 'center', valign: 'bottom' }),
  ]
}
