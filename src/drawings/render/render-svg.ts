import {
  COLORS,
  DASH_PT,
  flattenSheet,
  hatchLines,
  PEN_PT,
  rounded,
  type HatchMark,
  type Mark,
  type Sheet,
  type TextMark,
  textFigure,
  type XY,
  POINTS_PER_INCH,
} from '../model/index.js'

/** A sheet as SVG: true size in inches, points from the upper left corner as units. */
export function renderSvg(sheet: Sheet, language = 'en-US'): string {
  const { widthPt, heightPt } = sheet.size
  const marks = flattenSheet(sheet).marks.map(markText)
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<svg xmlns="http://www.w3.org/2000/svg" xml:lang="${language}" width="${inches(widthPt)}in" height="${inches(heightPt)}in" viewBox="0 0 ${rounded(widthPt)} ${rounded(heightPt)}">`,
    `<title>${escape(`${sheet.id} ${sheet.title}`)}</title>`,
    `<rect x="0" y="0" width="${rounded(widthPt)}" height="${rounded(heightPt)}" fill="#ffffff"/>`,
    ...marks,
    '</svg>',
    '',
  ].join('\n')
}

function markText(mark: Mark): string {
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
      return hatchText(mark)
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

function hatchText(mark: HatchMark): string {
  const lines = hatchLines(mark.points, mark).map(
    ([from, to]) => `M${rounded(from.x)} ${rounded(from.y)} L${rounded(to.x)} ${rounded(to.y)}`,
  )
  return `<path d="${lines.join(' ')}" fill="none" stroke="${COLORS[mark.color]}" stroke-width="${PEN_PT[mark.pen]}"/>`
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
  return `<text x="${mark.at.x}" y="${mark.at.y}" font-family="'DejaVu Sans Condensed', 'DejaVu Sans', sans-serif" font-stretch="condensed" font-size="${mark.sizePt}"${weight} fill="${COLORS[mark.color]}"${length}${turned}>${escape(mark.text)}</text>`
}

function escape(text: string): string {
  return text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('>', '&gt;').replaceAll('"', '&quot;')
}

function inches(points: number): number {
  return Math.round((points / POINTS_PER_INCH) * 10000) / 10000
}
