import {
  COLORS,
  DASH_PT,
  flattenSheet,
  LAYERS,
  PEN_PT,
  rounded,
  sheetSays,
  type LayerKey,
  type HatchMark,
  type Mark,
  type Sheet,
  type TextMark,
  textFigure,
  type XY,
  POINTS_PER_INCH,
} from '../model/index.js'
import { escapeMarkup } from '../../report/index.js'

/**
 * A sheet as SVG: true size in inches, points from the upper left corner as units, its marks in the order of drawing in
 * groups by layer, so that a layer may have several.
 */
export function renderSvg(sheet: Sheet, language = 'en-US'): string {
  const { widthPt, heightPt } = sheet.size
  const { marks } = flattenSheet(sheet)
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" xml:lang="${language}" role="img" aria-labelledby="sheet-title sheet-desc" width="${inches(widthPt)}in" height="${inches(heightPt)}in" viewBox="0 0 ${rounded(widthPt)} ${rounded(heightPt)}">`,
    `<title id="sheet-title">${escapeMarkup(`${sheet.id} ${sheet.title}`)}</title>`,
    `<desc id="sheet-desc">${escapeMarkup(sheetSays(sheet))}</desc>`,
    ...patterns(marks, ''),
    `<rect x="0" y="0" width="${rounded(widthPt)}" height="${rounded(heightPt)}" fill="#ffffff"/>`,
    ...layerGroups(marks),
    '</svg>',
    '',
  ].join('\n')
}

/**
 * A figure to stand in a web page: without ground, layers and size of its own, its colours those of `COLORS`.
 *
 * @param id Begins the ids inside it, so that several can stand in one page.
 * @param says What it shows, in words.
 */
export function renderSvgFigure(sheet: Sheet, id: string, says: string): string {
  const { widthPt, heightPt } = sheet.size
  const { marks } = flattenSheet(sheet)
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" role="img" aria-label="${escapeMarkup(says)}" viewBox="0 0 ${rounded(widthPt)} ${rounded(heightPt)}">`,
    ...patterns(marks, id),
    ...marks.map((mark) => markText(mark, id)),
    '</svg>',
  ].join('\n')
}

/** Runs of marks of one layer. */
function layerGroups(marks: readonly Mark[]): string[] {
  const lines: string[] = []
  const counts = new Map<LayerKey, number>()
  for (const [index, mark] of marks.entries()) {
    if (mark.layer !== marks[index - 1]?.layer) {
      const { name } = LAYERS[mark.layer]
      const count = (counts.get(mark.layer) ?? 0) + 1
      counts.set(mark.layer, count)
      lines.push(`<g id="${name}${count === 1 ? '' : `.${count}`}" data-layer="${name}">`)
    }
    lines.push(markText(mark, ''))
    if (mark.layer !== marks[index + 1]?.layer) lines.push('</g>')
  }
  return lines
}

/** Each kind of hatch once: a square with lines through its middle, moved onto the lines of the hatch and turned. */
function patterns(marks: readonly Mark[], id: string): string[] {
  const found = new Map(marks.flatMap((mark) => (mark.kind === 'hatch' ? [[`${id}${patternId(mark)}`, mark]] : [])))
  if (found.size === 0) return []
  return ['<defs>', ...[...found].map(([name, mark]) => patternText(name, mark)), '</defs>']
}

const patternId = ({ angleDeg, gapPt, cross, pen, color }: HatchMark): string =>
  `hatch-${rounded(angleDeg)}-${rounded(gapPt)}${cross === true ? '-cross' : ''}-${pen}-${color}`

function patternText(id: string, { angleDeg, gapPt, cross, pen, color }: HatchMark): string {
  const [half, whole] = [rounded(gapPt / 2), rounded(gapPt)]
  const lines = `M0 ${half} H${whole}${cross === true ? ` M${half} 0 V${whole}` : ''}`
  const turned = `rotate(${rounded(-angleDeg)}) translate(${-half} ${-half})`
  return `<pattern id="${id}" patternUnits="userSpaceOnUse" width="${whole}" height="${whole}" patternTransform="${turned}"><path d="${lines}" fill="none" stroke="${COLORS[color]}" stroke-width="${PEN_PT[pen]}"/></pattern>`
}

function markText(mark: Mark, id: string): string {
  switch (mark.kind) {
    case 'path': {
      const points = mark.points.map(({ x, y }, index) => `${index === 0 ? 'M' : 'L'}${x} ${y}`).join(' ')
      return `<path d="${points}${mark.closed ? ' Z' : ''}"${lookText(mark)}/>`
    }
    case 'rectangle':
      return `<rect x="${mark.x}" y="${mark.y}" width="${mark.width}" height="${mark.height}"${lookText(mark)}/>`
    case 'circle':
      return `<circle cx="${mark.center.x}" cy="${mark.center.y}" r="${mark.radius}"${lookText(mark)}/>`
    case 'hatch':
      return hatchText(mark, id)
    case 'text':
      return (mark.halo ? haloText(mark) : '') + lineText(mark)
  }
}

function lookText(mark: Exclude<Mark, TextMark | HatchMark>): string {
  const fill = mark.fill === undefined ? 'none' : COLORS[mark.fill]
  if (mark.pen === undefined) return ` fill="${fill}"`
  const dash = DASH_PT[mark.dash]
  const dashes = dash.length === 0 ? '' : ` stroke-dasharray="${dash.join(' ')}"`
  return ` fill="${fill}" stroke="${COLORS[mark.color]}" stroke-width="${PEN_PT[mark.pen]}"${dashes}`
}

function hatchText(mark: HatchMark, id: string): string {
  const points = mark.points.map(({ x, y }) => `${x},${y}`).join(' ')
  return `<polygon points="${points}" fill="url(#${id}${patternId(mark)})" fill-rule="evenodd"/>`
}

function haloText(mark: TextMark): string {
  const points = textFigure(mark).map(({ x, y }: XY) => `${rounded(x)},${rounded(y)}`)
  return `<polygon points="${points.join(' ')}" fill="#ffffff"/>`
}

/** The length is stated so that another font in the viewer cannot make a line longer than it was laid out. */
function lineText(mark: TextMark): string {
  const turned =
    mark.rotationDeg === 0 ? '' : ` transform="rotate(${rounded(-mark.rotationDeg)} ${mark.at.x} ${mark.at.y})"`
  const weight = mark.face === 'bold' ? ' font-weight="bold"' : ''
  const length = mark.widthPt > 0 ? ` textLength="${mark.widthPt}" lengthAdjust="spacingAndGlyphs"` : ''
  return `<text x="${mark.at.x}" y="${mark.at.y}" font-family="'DejaVu Sans Condensed', 'DejaVu Sans', sans-serif" font-stretch="condensed" font-size="${mark.sizePt}"${weight} fill="${COLORS[mark.color]}"${length}${turned}>${escapeMarkup(mark.text)}</text>`
}

function inches(points: number): number {
  return Math.round((points / POINTS_PER_INCH) * 10000) / 10000
}
