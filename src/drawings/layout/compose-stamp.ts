import { textWidthPt, wrapText, type Sheet } from '../model/index.js'
import { label, line, TYPE_PT } from './text.js'

const WIDTH = 168
const HEIGHT = 22

/** A stamp as a sheet of its own: the project at the left, the sheet number at the right. */
export function composeStamp(id: string, project: string): Sheet {
  const box = { x: 0.5, y: 0.5, width: WIDTH - 1, height: HEIGHT - 1 }
  const split = WIDTH - textWidthPt(id, TYPE_PT.head, 'bold') - 12
  const lines = wrapText(project, TYPE_PT.small, 'plain', split - 8)
  const text = lines.length > 2 ? [lines[0] ?? '', `${(lines[1] ?? '').slice(0, -2)}…`] : lines
  return {
    id,
    title: project,
    size: { name: 'stamp', widthPt: WIDTH, heightPt: HEIGHT },
    frame: box,
    scaleNote: 'None',
    viewports: [],
    paper: [
      { kind: 'rectangle', ...box, pen: 'medium', fill: 'white' },
      line(split, box.y, split, box.y + box.height),
      label(4, HEIGHT / 2, text.join('\n'), { sizePt: TYPE_PT.small, valign: 'middle' }),
      label(WIDTH - 6, HEIGHT / 2, id, { sizePt: TYPE_PT.head, face: 'bold', align: 'right', valign: 'middle' }),
    ],
  }
}
