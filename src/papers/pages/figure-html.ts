import { renderSvgFigure, type Sheet } from '../../drawings/index.js'
import { cleanLine, escapeMarkup } from '../../report/index.js'
import type { PageFigure, PageTable } from './page-block.js'

/** Width that figures are drawn at before the page scales them, points. */
const WIDTH_PT = 560

/** What scrolls by itself on a narrow screen, by keys too. */
export function wideHtml(html: string, label: string): string {
  return `<div class="wide" role="group" tabindex="0" aria-label="${escapeMarkup(cleanLine(label))}">${html}</div>`
}

/** A figure as vectors in the page, with the numbers behind it where it has any. */
export function figureHtml(figure: PageFigure, id: string, tableHtml: (table: PageTable) => string): string {
  const { says, caption, heightPt, draw, data } = figure
  const box = { x: 0, y: 0, width: WIDTH_PT, height: heightPt + 2 }
  const sheet: Sheet = {
    id,
    title: '',
    size: { name: 'figure', widthPt: box.width, heightPt: box.height },
    frame: box,
    scaleNote: 'None',
    viewports: [],
    paper: draw(0, 0, WIDTH_PT),
  }
  return [
    '<figure>',
    wideHtml(renderSvgFigure(sheet, id, cleanLine(says)), caption ?? says),
    ...(caption === undefined ? [] : [`<figcaption dir="auto">${escapeMarkup(cleanLine(caption))}</figcaption>`]),
    '</figure>',
    ...(data === undefined
      ? []
      : [`<details><summary>${escapeMarkup(cleanLine(data.heading))}</summary>`, tableHtml(data), '</details>']),
  ].join('\n')
}
