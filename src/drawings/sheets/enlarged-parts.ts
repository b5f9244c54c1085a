import type { ArrangedPlane } from '../../roof/index.js'
import {
  ARCHITECT_SCALES,
  centredOrigin,
  composeSheet,
  counted,
  label,
  mapMarks,
  TYPE_PT,
  type Scale,
  type SheetDraft,
  type Stationery,
} from '../layout/index.js'
import { boundsOf, cornersOf, onLayer, xy, type Box, type Primitive, type Viewport } from '../model/index.js'
import { continued, type SheetJob } from './job.js'
import { keyPlan } from './key-plan.js'
import { frames, type PartSheet } from './part-frames.js'
import { PART_ROOM, partDimensions } from './part-dimensions.js'
import { toXY } from './plane-figures.js'
import { isTooDense } from './plan-density.js'
import { partModules, planParts, type PlanPart } from './plan-parts.js'
import { roofFigures } from './roof-figures.js'

/** Height of the strip with north arrow, scale and key plan at the head of a sheet of parts, units of the layout. */
const HEAD = 66
/** Distance between parts on a sheet. */
const GAP = 12
/** More parts than these are no help: the reader would look for modules on too many drawings. */
const MOST_PARTS = 6

/**
 * The sheets of a plane, with its parts drawn larger on sheets that follow where the plan is too dense for its scale. On the
 * plan each part has a frame with its letter and its sheet.
 *
 * @param sheets The plan and its continuations.
 * @param northDeg Direction of north on paper, clockwise from the top.
 */
export function withParts(
  job: SheetJob,
  plane: ArrangedPlane,
  sheets: readonly SheetDraft[],
  northDeg: number,
): readonly SheetDraft[] {
  const [plan, ...more] = sheets
  const [viewport] = plan?.viewports ?? []
  if (plan === undefined || viewport === undefined || !isTooDense(composeSheet(plan, job.stationery))) return sheets
  const drawn = enlarged(job, plane, viewport.scalePtPerFt, plan, northDeg)
  if (drawn.length === 0) return sheets
  const framed: Viewport = {
    ...viewport,
    says: `${viewport.says ?? ''} ${counted(drawn.flatMap(({ parts }) => parts).length, 'part')} of it in frames, drawn larger on the sheets that follow.`,
    primitives: [...viewport.primitives, ...frames(plane, drawn, viewport.scalePtPerFt)],
  }
  // Notes that found no room beside the plan come last: their sheet is seldom full.
  const notes = more.map((draft, index) => ({ ...draft, id: continued(plan.id, drawn.length + 1 + index) }))
  return [{ ...plan, viewports: [framed] }, ...drawn.map(({ draft }) => draft), ...notes]
}

/** Sheets at the least scale at which no part is too dense; at the largest when all are. None when no scale is larger. */
function enlarged(
  job: SheetJob,
  plane: ArrangedPlane,
  fromPtPerFt: number,
  plan: SheetDraft,
  northDeg: number,
): PartSheet[] {
  const { unitPt } = job.stationery
  const larger = ARCHITECT_SCALES.map((scale) => ({ ...scale, ptPerFt: scale.ptPerFt / unitPt }))
    .filter(({ ptPerFt }) => ptPerFt > fromPtPerFt + 1e-6)
    .toReversed()
  let best: PartSheet[] = []
  for (const scale of larger) {
    const parts = partsAt(job, plane, scale)
    if (parts.length > MOST_PARTS) break
    best = partSheets(job, plane, scale, parts, plan, northDeg)
    if (best.every(({ draft }) => !isTooDense(composeSheet(draft, job.stationery)))) break
  }
  return best
}

function partsAt({ input, stationery: { body } }: SheetJob, plane: ArrangedPlane, scale: Scale): PlanPart[] {
  const modules = input.arrangement.values.modules.filter(({ roofPlane }) => roofPlane === plane.id)
  return planParts(boundsOf(plane.corners.map(toXY)), modules, {
    widthFt: (body.width - PART_ROOM.left - PART_ROOM.right) / scale.ptPerFt,
    heightFt: (body.height - HEAD - PART_ROOM.top - PART_ROOM.bottom) / scale.ptPerFt,
  })
}

/** Parts side by side on as many sheets as they need. */
function partSheets(
  job: SheetJob,
  plane: ArrangedPlane,
  scale: Scale,
  parts: readonly PlanPart[],
  plan: SheetDraft,
  northDeg: number,
): PartSheet[] {
  const { body } = job.stationery
  return rowsOf(parts, scale, body.width).map((row, index) => {
    const letters = row.map(({ letter }) => letter).join(', ')
    const title = `${plan.title}, ${row.length === 1 ? 'part' : 'parts'} ${letters}`
    const free = (body.width - row.reduce((sum, part) => sum + cellWidth(part, scale), 0)) / row.length
    let x = body.x
    const viewports = row.map((part) => {
      const width = cellWidth(part, scale) + free
      const box = { x, y: body.y + HEAD, width, height: body.height - HEAD }
      x += width
      return partViewport(job, plane, scale, part, box)
    })
    return {
      parts: row,
      draft: {
        id: continued(plan.id, index + 1),
        title,
        scale: scale.note,
        viewports,
        paper: head(job.stationery, plane, scale, parts, row, northDeg),
      },
    }
  })
}

const cellWidth = ({ region }: PlanPart, scale: Scale): number =>
  region.width * scale.ptPerFt + PART_ROOM.left + PART_ROOM.right

function rowsOf(parts: readonly PlanPart[], scale: Scale, widthPt: number): PlanPart[][] {
  const rows: PlanPart[][] = []
  let used = Infinity
  for (const part of parts) {
    const width = cellWidth(part, scale) + GAP
    if (used + width > widthPt + GAP) {
      rows.push([])
      used = 0
    }
    rows.at(-1)?.push(part)
    used += width
  }
  return rows
}

function partViewport(job: SheetJob, plane: ArrangedPlane, scale: Scale, part: PlanPart, box: Box): Viewport {
  const { input } = job
  const { letter, region } = part
  const room = {
    x: box.x + PART_ROOM.left,
    y: box.y + PART_ROOM.top,
    width: box.width - PART_ROOM.left - PART_ROOM.right,
    height: box.height - PART_ROOM.top - PART_ROOM.bottom,
  }
  const corner = xy(region.x + region.width, region.y + region.height)
  const { modules } = input.arrangement.values
  const own = partModules(
    modules.filter(({ roofPlane }) => roofPlane === plane.id),
    region,
  )
  return {
    scalePtPerFt: scale.ptPerFt,
    originPt: centredOrigin(xy(region.x, region.y), corner, scale, room),
    box,
    says: `Part ${letter} of roof plane ${plane.id}, ${scale.note}, with ${counted(own.length, 'module')}, its rails and mounts.`,
    primitives: [
      ...roofFigures(input, plane, scale.ptPerFt, region),
      ...onLayer<Primitive>('symbol', [
        { kind: 'path', points: cornersOf(region), closed: true, pen: 'hair', dash: 'hidden', color: 'grey' },
      ]),
      label(region.x + region.width / 2, region.y + region.height, `PART ${letter}`, {
        sizePt: TYPE_PT.head,
        face: 'bold',
        align: 'center',
        valign: 'middle',
        shifts: [-70, 70, -120, 120, 0].map((dx) => xy(dx, -14)),
      }),
      ...partDimensions(input, plane, part, scale.ptPerFt),
    ],
  }
}

/** North, scale and the whole plane with its parts. */
function head(
  { body }: Stationery,
  plane: ArrangedPlane,
  scale: Scale,
  parts: readonly PlanPart[],
  shown: readonly PlanPart[],
  northDeg: number,
): Primitive[] {
  const marks = mapMarks(scale, northDeg)
  const left = marks.kind === 'figure' ? marks.draw(body.x, body.y, 230) : []
  const room = { x: body.x + 250, y: body.y, width: body.width - 250, height: HEAD - 8 }
  return [...left, ...keyPlan(plane, parts, shown, room)]
}
