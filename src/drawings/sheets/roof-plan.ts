import type { ArrangedPlane } from '../../roof/index.js'
import {
  ARCHITECT_SCALES,
  centredOrigin,
  counted,
  feetInches,
  flowBlocks,
  mapMarks,
  notesOf,
  planRoom,
  type Block,
  type SheetDraft,
} from '../layout/index.js'
import { boundsOf, type Viewport } from '../model/index.js'
import { withParts } from './enlarged-parts.js'
import { continued, type SheetJob } from './job.js'
import { dimensionRoom, planDimensions } from './roof-dimensions.js'
import { toXY } from './plane-figures.js'
import { roofFigures } from './roof-figures.js'
import { HEIGHTS_NOTE } from './rail-heights.js'
import { railBlocks, roofNotes } from './roof-notes.js'

/** Height of the notes when they stand below the plan. */
const NOTES_HEIGHT = 156
/** Sheet of the rails when no other takes them. */
const RAILS_SHEET = 'A-601'

/**
 * Sheets and so on: the plan of each plane that carries modules, along its surface. The rails stand beside the
 * plans when they all find room there.
 *
 * @param railsOn Sheet that takes the rails of all planes when they do not; without it they have one of their own.
 */
export function roofPlanSheets(job: SheetJob, railsOn?: string): SheetDraft[] {
  const together = plansOf(job, 'here')
  if (railsApart(job, together).length === 0) return enlargedWhereDense(job, together)
  const plans = enlargedWhereDense(job, plansOf(job, railsOn ?? RAILS_SHEET))
  return railsOn === undefined ? [...plans, ...railSheets(job)] : plans
}

/** The plans of all planes, those that are too dense followed by their parts. */
function enlargedWhereDense(job: SheetJob, plans: readonly SheetDraft[][]): SheetDraft[] {
  return planesOf(job).flatMap((plane, index) => withParts(job, plane, plans[index] ?? [], northOf(plane)))
}

/** Up the slope is up on the sheet: the plane faces down the sheet, so north lies at 180 less its azimuth. */
const northOf = ({ azimuthDeg }: ArrangedPlane): number => (((180 - azimuthDeg) % 360) + 360) % 360

/** Tables of the rails when the plans have no room for them. */
export function railsApart(job: SheetJob, plans: readonly SheetDraft[][] = plansOf(job, 'here')): Block[] {
  if (job.input.mounts === undefined || plans.every((each) => each.length === 1)) return []
  return [...planesOf(job).flatMap((plane) => railBlocks(job.input, plane, true)), HEIGHTS_NOTE]
}

function planesOf({ input }: SheetJob): ArrangedPlane[] {
  const { modules, planes } = input.arrangement.values
  return Object.values(planes).filter((plane) => modules.some((module) => module.roofPlane === plane.id))
}

/** Sheets of each plane. */
function plansOf(job: SheetJob, rails: string): SheetDraft[][] {
  return planesOf(job).map((plane, index) => planSheets(job, plane, `A-1${String(index + 1).padStart(2, '0')}`, rails))
}

/** Rails and mounts of all planes. */
function railSheets(job: SheetJob): SheetDraft[] {
  const blocks = railsApart(job)
  const { body } = job.stationery
  const title = 'Rails and mounts'
  return flowBlocks(blocks, body, body.width > 560 ? 2 : 1).map((paper, page) => ({
    id: continued(RAILS_SHEET, page),
    title: page === 0 ? title : `${title}, continued`,
    scale: 'None',
    paper,
  }))
}

function planSheets(job: SheetJob, plane: ArrangedPlane, id: string, rails: string): SheetDraft[] {
  const { body, unitPt } = job.stationery
  const bounds = boundsOf(plane.corners.map(toXY))
  const placed = planRoom(
    body,
    { widthFt: bounds.width, heightFt: bounds.height },
    dimensionRoom(job.input, plane),
    ARCHITECT_SCALES,
    unitPt,
    NOTES_HEIGHT,
  )
  const { scale } = placed
  const blocks = [
    mapMarks(scale, northOf(plane)),
    ...roofNotes(job.input, plane, rails === 'here' ? railBlocks(job.input, plane, false) : rails),
  ]
  const { pages, room, drawBox } = notesOf(blocks, placed, body)
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
    says: planSays(job, plane, rails),
    primitives: [...roofFigures(job.input, plane, scale.ptPerFt), ...planDimensions(job.input, plane, scale.ptPerFt)],
  }
  const title = `Roof plan: ${plane.id}`
  return pages.map((notes, page) =>
    page > 0
      ? { id: continued(id, page), title: `${title}, continued`, scale: 'None', paper: notes }
      : { id, title, scale: scale.note, viewports: [viewport], paper: notes },
  )
}

/**
 * The plan in words.
 *
 * @param railsOn Sheet that lists the rails; `here` beside the plan.
 */
function planSays({ input }: SheetJob, plane: ArrangedPlane, railsOn: string): string {
  const { width, height } = boundsOf(plane.corners.map(toXY))
  const modules = input.arrangement.values.modules.filter(({ roofPlane }) => roofPlane === plane.id)
  const mounts = input.mounts?.values.mounts.filter((each) => each.plane === plane.id) ?? []
  const rails = input.mounts?.values.rails.filter((each) => each.plane === plane.id) ?? []
  const listed = railsOn === 'here' ? 'in the table beside it' : `on sheet ${railsOn}`
  const where = mounts.length === 0 ? '' : `; rails and mounts are listed ${listed}`
  const held = mounts.length === 0 ? '' : ` on ${counted(rails.length, 'rail')} with ${counted(mounts.length, 'mount')}`
  return `Plan of roof plane ${plane.id}, ${feetInches(width)} along the eave and ${feetInches(height)} up the slope, with ${counted(modules.length, 'module')}${held}, ${counted(plane.pathways.length, 'fire access pathway')} and the dimensions of all${where}.`
}
