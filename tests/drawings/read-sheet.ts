import type { Box } from '../../src/drawings/model/index.js'
import { drawPacket, flattenSheet, type Mark, type PacketInput, type Sheet } from '../../src/drawings/index.js'

export type TextMark = Extract<Mark, { kind: 'text' }>
export type PathMark = Extract<Mark, { kind: 'path' }>
export type BoxMark = Extract<Mark, { kind: 'rectangle' }>
export type CircleMark = Extract<Mark, { kind: 'circle' }>
export interface Spot {
  readonly x: number
  readonly y: number
}

/** One or more lines of text that were set together. */
export interface Said {
  readonly text: string
  /** Left end of the first baseline, on paper. */
  readonly at: Spot
  /** Middle of all its lines, on paper. */
  readonly middle: Spot
  readonly lines: readonly TextMark[]
}

/** A drawn sheet as somebody with a scale rule reads it: points from the upper left corner of the paper. */
export interface ReadSheet {
  readonly sheet: Sheet
  readonly marks: readonly Mark[]
  readonly paths: readonly PathMark[]
  readonly boxes: readonly BoxMark[]
  readonly circles: readonly CircleMark[]
  readonly said: readonly Said[]
  /** All text, one space between words. */
  readonly words: string
}

export const flatText = (text: string): string => text.replaceAll(/\s+/gu, ' ').trim()

/**
 * Reads a sheet: what is drawn to scale in points of paper, what is not in units of the layout, in which signs and distances
 * have the same size on every paper.
 */
export function readSheet(printed: Sheet): ReadSheet {
  const by = isToScale(printed) ? 1 : 1 / (printed.unitPt ?? 1)
  const sheet = by === 1 ? printed : sheetBy(printed, by)
  const marks = flattenSheet(printed).marks.map((mark) => markBy(mark, by))
  const of = <K extends Mark['kind']>(kind: K) =>
    marks.filter((mark): mark is Extract<Mark, { kind: K }> => mark.kind === kind)
  const blocks = new Map<number, TextMark[]>()
  for (const text of of('text')) blocks.set(text.block, [...(blocks.get(text.block) ?? []), text])
  const said = [...blocks.values()].map((lines): Said => {
    const [first] = lines
    if (first === undefined) throw new Error('a text without lines')
    const middles = lines.map(middleOf)
    return {
      text: flatText(lines.map((line) => line.text).join(' ')),
      at: first.at,
      middle: {
        x: middles.reduce((sum, { x }) => sum + x, 0) / lines.length,
        y: middles.reduce((sum, { y }) => sum + y, 0) / lines.length,
      },
      lines,
    }
  })
  return {
    sheet,
    marks,
    paths: of('path'),
    boxes: of('rectangle'),
    circles: of('circle'),
    said,
    words: flatText(said.map((each) => each.text).join(' ')),
  }
}

const isToScale = ({ viewports, scaleNote }: Sheet): boolean => viewports.length > 0 || scaleNote !== 'None'

const boxBy = (box: Box, by: number): Box => ({
  x: box.x * by,
  y: box.y * by,
  width: box.width * by,
  height: box.height * by,
})

const sheetBy = (sheet: Sheet, by: number): Sheet => ({
  ...sheet,
  size: { ...sheet.size, widthPt: sheet.size.widthPt * by, heightPt: sheet.size.heightPt * by },
  frame: boxBy(sheet.frame, by),
  ...(sheet.body === undefined ? {} : { body: boxBy(sheet.body, by) }),
})

/** A mark as it is on a sheet of another size. */
function markBy(mark: Mark, by: number): Mark {
  const to = (value: number): number => Math.round(value * by * 1000) / 1000 + 0
  const at = ({ x, y }: Spot): Spot => ({ x: to(x), y: to(y) })
  if (by === 1) return mark
  switch (mark.kind) {
    case 'path':
      return { ...mark, points: mark.points.map(at) }
    case 'rectangle':
      return { ...mark, x: to(mark.x), y: to(mark.y), width: to(mark.width), height: to(mark.height) }
    case 'circle':
      return { ...mark, center: at(mark.center), radius: to(mark.radius) }
    case 'text':
      return { ...mark, at: at(mark.at), widthPt: to(mark.widthPt), sizePt: to(mark.sizePt) }
  }
}

export const readPacket = (input: PacketInput): ReadSheet[] => drawPacket(input).map(readSheet)

export function sheetOf(sheets: readonly ReadSheet[], id: string): ReadSheet {
  const found = sheets.find(({ sheet }) => sheet.id === id)
  if (found === undefined) throw new Error(`no sheet ${id} among ${sheets.map(({ sheet }) => sheet.id).join(', ')}`)
  return found
}

/** Middle of a line of text, a third of its height above the baseline, whatever its rotation. */
function middleOf({ at, widthPt, sizePt, rotationDeg }: TextMark): Spot {
  const turn = (rotationDeg * -Math.PI) / 180
  const [dx, dy] = [widthPt / 2, -0.27 * sizePt]
  return {
    x: at.x + dx * Math.cos(turn) - dy * Math.sin(turn),
    y: at.y + dx * Math.sin(turn) + dy * Math.cos(turn),
  }
}

/** Points of paper for a foot, from the words of a scale: `3/32" = 1'-0"`, `1" = 20'-0"`. */
export function ptPerFt(note: string): number {
  const found = /^(?:(\d+) )?(\d+)(?:\/(\d+))?" = (\d+)'-0"/u.exec(note)
  if (found === null) throw new Error(`no scale: ${note}`)
  const [, whole, over = '1', under = '1', feet = '1'] = found
  return (72 * (Number(whole ?? 0) + Number(over) / Number(under))) / Number(feet)
}

/** Feet of `12'-6 1/2"`, or of `6 1/2"`. */
export function feetOf(text: string): number {
  const found = /^(?:(\d+)'-)?(?:(\d+) )?(\d+)(?:\/(\d+))?"$/u.exec(text)
  if (found === null) throw new Error(`no length: ${text}`)
  const [, feet = '0', whole = '0', over = '0', under = '1'] = found
  return Number(feet) + (Number(whole) + Number(over) / Number(under)) / 12
}

export const isLength = (text: string): boolean => /^(?:\d+'-)?(?:\d+ )?\d+(?:\/\d+)?"$/u.test(text)

/** A drawn dimension: the words on it, and the two ends that its slashes stand on. */
export interface DrawnDimension {
  readonly text: string
  readonly from: Spot
  readonly to: Spot
}

/** A slash at the end of a dimension: short, heavy, at 45 degrees to its line. */
const slashes = (read: ReadSheet): Spot[] =>
  read.paths.flatMap(({ points, pen, closed }) => {
    const [a, b] = points
    if (points.length !== 2 || pen !== 'medium' || closed || a === undefined || b === undefined) return []
    const length = Math.hypot(b.x - a.x, b.y - a.y)
    return Math.abs(length - 2 * 2.2 * Math.SQRT2) < 0.02 ? [{ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }] : []
  })

/** Dimension lines: hair lines that pass 3 pt beyond a slash at either end. */
export function dimensionLines(read: ReadSheet): { readonly from: Spot; readonly to: Spot }[] {
  const ends = slashes(read)
  const near = (a: Spot, b: Spot): boolean => Math.hypot(a.x - b.x, a.y - b.y) < 0.01
  return read.paths.flatMap(({ points, pen }) => {
    const [a, b] = points
    if (points.length !== 2 || pen !== 'hair' || a === undefined || b === undefined) return []
    const length = Math.hypot(b.x - a.x, b.y - a.y)
    if (length < 6) return []
    const [ux, uy] = [(b.x - a.x) / length, (b.y - a.y) / length]
    const [from, to] = [
      { x: a.x + 3 * ux, y: a.y + 3 * uy },
      { x: b.x - 3 * ux, y: b.y - 3 * uy },
    ]
    return ends.some((end) => near(end, from)) && ends.some((end) => near(end, to)) ? [{ from, to }] : []
  })
}

/**
 * Dimensions with their words. The words stand over or under the middle of their line, or on its way beyond an end of it,
 * 6 pt from there.
 *
 * @param isMeant Which of the lengths on the sheet are dimensions of the drawing.
 * @returns of a length that has no such line nothing, so that whoever asks can tell.
 */
export function drawnDimensions(
  read: ReadSheet,
  isMeant: (said: Said) => boolean,
): { readonly found: DrawnDimension[]; readonly alone: string[] } {
  const lines = dimensionLines(read)
  const found: DrawnDimension[] = []
  const alone: string[] = []
  for (const each of read.said.filter((one) => isLength(one.text) && isMeant(one))) {
    const { text, middle } = each
    const [first] = each.lines
    const fits = lines.flatMap(({ from, to }) => {
      const length = Math.hypot(to.x - from.x, to.y - from.y)
      const way = (Math.atan2(from.y - to.y, to.x - from.x) * 180) / Math.PI
      const turned = (((way - (first?.rotationDeg ?? 0)) % 180) + 270) % 180
      if (Math.abs(turned - 90) > 0.5) return []
      const [dx, dy] = [middle.x - (from.x + to.x) / 2, middle.y - (from.y + to.y) / 2]
      const along = Math.abs(dx * (to.x - from.x) + dy * (to.y - from.y)) / length
      const away = Math.abs(dx * (to.y - from.y) - dy * (to.x - from.x)) / length
      const past = along - length / 2 - (first?.widthPt ?? 0) / 2
      return (along < 0.6 && away < 37) || (away < 0.6 && Math.abs(past - 6) < 0.6)
        ? [{ text, from, to, away: away + along }]
        : []
    })
    const [best] = fits.toSorted((a, b) => a.away - b.away)
    if (best === undefined) alone.push(text)
    else found.push(best)
  }
  return { found, alone }
}

/** What stands in the title strip at the right of the drawing. */
export function stripOf({ sheet, said }: ReadSheet): Said[] {
  const { body } = sheet
  if (body === undefined) throw new Error(`${sheet.id} has no title strip`)
  return said.filter(({ at }) => at.x > body.x + body.width)
}

/** Points of paper for a unit of the layout, in which signs on drawings to scale are as large as they were laid out. */
export const unitOf = ({ sheet }: ReadSheet): number => sheet.unitPt ?? 1

/** Whether a point lies in the part of the paper that a drawing to scale keeps to. */
export function inDrawing({ sheet }: ReadSheet, { x, y }: Spot): boolean {
  return sheet.viewports.some(
    ({ box }) => x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height,
  )
}

/**
 * The printed table whose headings are these: the words of each cell by row, on one sheet.
 *
 * @param under Title that the table stands under, where there are several of its kind.
 */
export function tableOf(read: ReadSheet, headings: readonly string[], under?: string): string[][] {
  const title = under === undefined ? undefined : read.said.find(({ text }) => text === under)
  const first = read.said
    .filter(({ text }) => text === headings[0])
    .filter(({ at }) => title === undefined || (at.y > title.at.y && Math.abs(at.x - title.at.x) < 10))
    .toSorted((a, b) => a.at.y - b.at.y)
  for (const start of first) {
    const heads = headings.map((heading) =>
      read.said.find(({ text, at }) => text === heading && Math.abs(at.y - start.at.y) < 0.01 && at.x >= start.at.x),
    )
    if (heads.some((head) => head === undefined)) continue
    const header = read.boxes.find(
      (box) => box.fill === 'light' && inside(box, start.at) && heads.every((head) => head && inside(box, head.at)),
    )
    if (header === undefined) continue
    const lefts = [header.x, ...columnLines(read, header), header.x + header.width]
    const rows: string[][] = []
    let bottom = header.y + header.height
    for (;;) {
      const row = read.boxes.find(
        (box) => Math.abs(box.x - header.x) < 0.01 && Math.abs(box.y - bottom) < 0.01 && box.width === header.width,
      )
      if (row === undefined) return rows
      rows.push(
        headings.map((_, index) =>
          read.said
            .filter(
              ({ at }) =>
                inside(row, at) && at.x >= (lefts[index] ?? 0) - 0.01 && at.x < (lefts[index + 1] ?? 0) - 0.01,
            )
            .map(({ text }) => text)
            .join(' '),
        ),
      )
      bottom = row.y + row.height
    }
  }
  throw new Error(`no table ${headings.join(' | ')} on ${read.sheet.id}`)
}

const inside = (box: BoxMark, { x, y }: Spot): boolean =>
  x >= box.x && x <= box.x + box.width && y >= box.y && y <= box.y + box.height

/** Where the columns of a row of a table part. */
function columnLines(read: ReadSheet, row: BoxMark): number[] {
  return read.paths
    .filter(
      ({ points: [a, b], pen }) =>
        pen === 'hair' &&
        a !== undefined &&
        b !== undefined &&
        Math.abs(a.x - b.x) < 0.001 &&
        Math.abs(a.y - row.y) < 0.01 &&
        Math.abs(b.y - row.y - row.height) < 0.01 &&
        a.x > row.x &&
        a.x < row.x + row.width,
    )
    .map(({ points: [a] }) => a?.x ?? 0)
    .toSorted((one, other) => one - other)
}

/** Names and values of the two-column lists without headings, as they stand side by side. */
export function factsOf(read: ReadSheet): Map<string, string> {
  const found = new Map<string, string>()
  for (const row of read.boxes) {
    const [split, ...more] = columnLines(read, row)
    if (split === undefined || more.length > 0 || row.fill !== undefined) continue
    const cells = read.said.filter(({ at }) => inside(row, at))
    const name = cells.filter(({ at }) => at.x < split).map(({ text }) => text)
    const value = cells.filter(({ at }) => at.x >= split).map(({ text }) => text)
    if (name.length === 1) found.set(name[0] ?? '', value.join(' '))
  }
  return found
}
