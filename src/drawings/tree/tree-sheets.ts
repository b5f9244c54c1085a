import type { WiringValues } from '../../electrical/index.js'
import type { Project } from '../../project/index.js'
import { labelMarks } from '../labels/label-marks.js'
import { label, TYPE_PT } from '../layout/index.js'
import type { Box, Primitive } from '../model/index.js'
import { carriesLoadsOnly } from './draw-feeder.js'
import { drawPanel } from './draw-panel.js'
import { drawTree } from './draw-service.js'
import { depthFrom, treeParts, type FeederPart, type PanelPart } from './tree-parts.js'
import { PANEL_PT, treeRoom, type Drawn } from './tree-room.js'
import { joinFlag, lighter, wire } from './tree-symbols.js'

/** Room over the tree where it begins a sheet, points. */
const HEAD_PT = 12

/** The tree of the installation below a diagram, or on sheets of its own where it is too high for that. */
export interface TreeSheets {
  /** Below the diagram; undefined where it stands on sheets of its own. */
  readonly below: Drawn<Primitive> | undefined
  readonly sheets: readonly Drawn<Primitive>[]
}

/**
 * @param from Height below which the tree may stand on the first sheet.
 * @param body Room of a whole sheet.
 */
export function treeSheets(project: Project, wiring: WiringValues, from: number, body: Box): TreeSheets {
  const { electrical } = project
  if (electrical?.distribution === undefined) return { below: undefined, sheets: [] }
  const parts = treeParts(electrical, wiring)
  const bottom = body.y + body.height
  const below = drawTree(project, wiring, parts, { ...body, y: from }, new Map())
  if (below.bottom <= bottom) return { below, sheets: [] }
  const whole = { ...body, y: body.y + HEAD_PT }
  const cutter = feederCutter(bottom)
  const first = cutter.fit(parts.roots, (cuts) => drawTree(project, wiring, parts, whole, cuts))
  const sheets = [first]
  for (let next = cutter.next(); next !== undefined; next = cutter.next()) {
    const { panel, letter } = next
    sheets.push(cutter.fit([panel], (cuts) => drawPart(project, wiring, { panel, letter }, whole, cuts)))
  }
  return { below: undefined, sheets }
}

interface Waiting {
  readonly panel: PanelPart
  readonly letter: string
}

/** Cuts feeders off, the last first, until what is drawn ends above a height; what was cut waits for a sheet. */
function feederCutter(bottom: number) {
  const cuts = new Map<string, string>()
  const waiting: Waiting[] = []
  const cut = ({ node, to }: FeederPart): void => {
    const letter = `P${cuts.size + 1}`
    cuts.set(node.id, letter)
    waiting.push({ panel: to, letter })
  }
  return {
    next: (): Waiting | undefined => waiting.shift(),
    fit: (panels: readonly PanelPart[], draw: (cuts: ReadonlyMap<string, string>) => Drawn<Primitive>) => {
      for (;;) {
        const drawn = draw(cuts)
        const left = panels
          .flatMap(({ feeders }) => feeders)
          .findLast(({ node, to }) => !cuts.has(node.id) && !carriesLoadsOnly(to))
        if (drawn.bottom <= bottom || left === undefined) return drawn
        cut(left)
      }
    },
  }
}

/** A panel with all beyond it, fed from another sheet. */
function drawPart(
  project: Project,
  wiring: WiringValues,
  { panel, letter }: Waiting,
  box: Box,
  cuts: ReadonlyMap<string, string>,
): Drawn<Primitive> {
  const room = treeRoom(box, depthFrom(panel, cuts), cuts, labelMarks(project, wiring))
  const { drawn, bottom, entryY } = drawPanel(room, panel, 0, box.y)
  const right = room.leftOf(0) + PANEL_PT
  return {
    drawn: [
      ...drawn,
      ...lighter([wire(right, entryY, right + 40, entryY)]),
      ...joinFlag(right + 40, entryY, letter),
      label(right + 40, entryY + 12, `fed from ${letter} on a sheet before`, {
        sizePt: TYPE_PT.small,
        maxWidthPt: box.x + box.width - right - 40,
      }),
    ],
    bottom,
  }
}
