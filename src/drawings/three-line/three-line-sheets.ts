import { counted, label, TYPE_PT, type SheetDraft } from '../layout/index.js'
import { inPart, onLayer, type Primitive, type Tag } from '../model/index.js'
import { oneLineSources, type OneLineSource } from '../sheets/one-line-sources.js'
import { continued, type SheetJob } from '../sheets/job.js'
import { acrossFor } from './across.js'
import { installationOf } from './installation.js'
import { rightPtOf } from './panel-job.js'
import { drawStrip, stripHeightPt, stripsOf } from './panels.js'
import { drawPvSystem } from './pv-system.js'
import { rowPlace } from './sources.js'
import { slotsOf } from './wires.js'

/** Least width of a panel with its rows and its service, and what parts two of them, points. */
const STRIP_PT = 520
const GAP_PT = 24
const NOTES = [
  'Every conductor of the schedule is drawn with all its wires. Tags are those of sheet E-601; the stroke under a tag goes through the wires of its conductor.',
  'Dashed: equipment ground. Poles joined by a dotted line open together. Neutral and ground are bonded at service disconnects only (250.24, 250.142(B)).',
]

/** Sheet E-605: every wire of every conductor, from the modules to the utility. Only on request. */
export function threeLineSheets({ input, stationery }: SheetJob): SheetDraft[] {
  const wiring = input.wire?.values
  if (wiring === undefined) return []
  const { body } = stationery
  const slots = slotsOf(wiring.service?.phases ?? 1)
  const sources = oneLineSources(input, wiring)
  const notes = NOTES.map((text, index) => label(body.x, body.y + index * 10, text, { sizePt: TYPE_PT.small }))
  const isCombined = wiring.circuits.some(({ kind }) => kind === 'ac_combined_output')
  const across = acrossFor(body.width, sources, isCombined)
  const job = { input, wiring, slots, across, box: { ...body, y: body.y + 26 } }
  const groups = grouped(sources, (source) => rowPlace(job, source).heightPt, body.height - 90)
  const drawn = groups.map((group, index) =>
    drawPvSystem(job, group, {
      withConnection: index === 0,
      further: index === 0 ? sources.length - group.length : 0,
    }),
  )
  const pages: Primitive[][] = drawn.map((each) => [...each.drawn])
  const pv = drawn.at(-1) ?? { bottom: body.y + 26 }
  const { roots, supplySide } = installationOf(input.project, wiring)
  const columns = Math.max(1, Math.floor((body.width + GAP_PT) / (STRIP_PT + GAP_PT)))
  const width = (body.width - GAP_PT * (columns - 1)) / columns
  let [column, y] = [0, pv.bottom + 14]
  let startY = y
  for (const strip of stripsOf(roots, supplySide)) {
    const panelJob = { project: input.project, wiring, slots, rightPt: rightPtOf(width) }
    const height = stripHeightPt(panelJob, strip, { x: body.x, width })
    if (y + height > body.y + body.height && (y > startY || startY > body.y)) {
      column += 1
      if (column === columns || startY + height > body.y + body.height) {
        column = 0
        pages.push([])
        startY = body.y
      }
      y = startY
    }
    // From the right to the left, as the service stands on the right.
    const x = body.x + body.width - width - column * (width + GAP_PT)
    pages.at(-1)?.push(...drawStrip(panelJob, strip, { x, y, width, height }))
    y += height
  }
  return pages.map((paper, index) => ({
    id: continued('E-605', index),
    title: index === 0 ? 'Three-line diagram' : 'Three-line diagram, continued',
    scale: 'None',
    paper: [...(index === 0 ? notes : []), ...inPart(diagramTag(sources.length), onLayer('oneLine', paper))],
  }))
}

/** The part of the diagram on one sheet, in words. */
const diagramTag = (sources: number): Tag => ({
  kind: 'Figure',
  says: `Three-line diagram, not to scale: every wire of every conductor from ${counted(sources, 'source')} through inverters, boxes and devices to the panels, the meter and the utility, with neutral and equipment ground; the tags are those of the table of conductors.`,
})

/** Sources by sheet; strings of one inverter stay together. */
function grouped(
  sources: readonly OneLineSource[],
  heightPt: (source: OneLineSource) => number,
  roomPt: number,
): OneLineSource[][] {
  const groups: OneLineSource[][] = [[]]
  let used = 0
  for (const source of sources) {
    const last = groups.at(-1) ?? []
    const tied = source.unit !== undefined && last.at(-1)?.unit === source.unit
    const height = heightPt(source)
    if (last.length > 0 && used + height > roomPt && !tied) {
      groups.push([])
      used = 0
    }
    groups.at(-1)?.push(source)
    used += height
  }
  return groups
}
