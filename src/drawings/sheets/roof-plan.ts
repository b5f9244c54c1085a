import type { ArrangedPlane } from '../../roof/index.js'
import {
  ARCHITECT_SCALES,
  centredOrigin,
  flowBlocks,
  largestScale,
  northArrow,
  scaleBar,
  type SheetDraft,
} from '../layout/index.js'
import { boundsOf, type Box, type Viewport } from '../model/index.js'
import { continued, type SheetJob } from './job.js'
import { planDimensions } from './roof-dimensions.js'
import { toXY } from './plane-figures.js'
import { roofFigures } from './roof-figures.js'
import { roofNotes } from './roof-notes.js'

/** Room on paper round the plane for edge names and dimensions, points. */
const ROOM = { left: 78, right: 44, top: 30, bottom: 96 } as const

/** Sheets and so on: the plan of each plane that carries modules, along its surface. */
export function roofPlanSheets(job: SheetJob): SheetDraft[] {
  const { modules, planes } = job.input.arrangement.values
  const used = Object.values(planes).filter((plane) => modules.some((module) => module.roofPlane === plane.id))
  return used.flatMap((plane, index) => planSheets(job, plane, `A-1${String(index + 1).padStart(2, '0')}`))
}

function planSheets(job: SheetJob, plane: ArrangedPlane, id: string): SheetDraft[] {
  const { body } = job.stationery
  const notesWidth = Math.max(168, body.width * 0.25)
  const planBox: Box = { ...body, width: body.width - notesWidth - 14 }
  const notesBox: Box = { ...body, x: body.x + body.width - notesWidth, width: notesWidth }
  const drawBox: Box = { ...planBox, height: planBox.height - 34 }
  const room = {
    x: drawBox.x + ROOM.left,
    y: drawBox.y + ROOM.top,
    width: drawBox.width - ROOM.left - ROOM.right,
    height: drawBox.height - ROOM.top - ROOM.bottom,
  }
  const bounds = boundsOf(plane.corners.map(toXY))
  const scale = largestScale(ARCHITECT_SCALES, bounds.width, bounds.height, room, job.stationery.unitPt)
  const originPt = centredOrigin(
    { x: bounds.x, y: bounds.y },
    { x: bounds.x + bounds.width, y: bounds.y + bounds.height },
    scale,
    room,
  )
  const viewport: Viewport = {
    scalePtPerFt: scale.ptPerFt,
    originPt,
    box: drawBox,
    primitives: [...roofFigures(job.input, plane, scale.ptPerFt), ...planDimensions(job.input, plane)],
  }
  // Up the slope is up on the sheet: the plane faces down the sheet, so north lies at 180 less its azimuth.
  const north = (((180 - plane.azimuthDeg) % 360) + 360) % 360
  const title = `Roof plan: ${plane.id}`
  const pages = flowBlocks(roofNotes(job.input, plane), notesBox, 1, body)
  return pages.map((notes, page) => {
    if (page > 0) return { id: continued(id, page), title: `${title}, continued`, scale: 'None', paper: notes }
    return {
      id,
      title,
      scale: scale.note,
      viewports: [viewport],
      paper: [
        ...notes,
        ...scaleBar(planBox.x + 4, planBox.y + planBox.height - 26, scale),
        ...northArrow(planBox.x + planBox.width - 26, planBox.y + planBox.height - 24, north),
      ],
    }
  })
}
