import { boxCorners, type ArrangedPlane } from '../../roof/index.js'
import { zoneFinder } from '../../structure/index.js'
import { own, radiansOf } from '../../values/index.js'
import {
  ARCHITECT_SCALES,
  centredOrigin,
  feetInches,
  flowBlocks,
  label,
  largestScale,
  plainNumber,
  scaleBar,
  TYPE_PT,
  type Block,
  type Scale,
  type SheetDraft,
} from '../layout/index.js'
import { boundsOf, onLayer, xy, type Box, type Primitive, type Viewport, type XY } from '../model/index.js'
import { continued, type SheetJob } from './job.js'
import { toXY } from './plane-figures.js'
import { stripLines, zoneAreas, type ZoneArea } from './wind-zone-figures.js'

/** Room below a plan for its name, and round it. */
const NAME_PT = 22
const AROUND_PT = 12
/** Between a plan and its name. */
const NAME_GAP_PT = 9
const NOTES_SHARE = 0.34

/** Points of a zone at which its name is tried, and how far it moves from them, points. */
const MOST_PLACES = 24
const LEAST_APART_PT = 6
const NUDGES = [xy(0, 0), ...[4, -4, 7, -7].flatMap((by) => [xy(0, by), xy(by, 0)])]

/** Where the name of a zone may stand: in the middle of its widest part, or along the strip, clear of lines and modules. */
function zonePlaces({ middle, along }: ZoneArea, ptPerFt: number): XY[] {
  const shifts: XY[] = []
  for (const point of along) {
    const shift = xy((point.xFt - middle.xFt) * ptPerFt, (middle.yFt - point.yFt) * ptPerFt)
    if (shifts.every((each) => Math.hypot(each.x - shift.x, each.y - shift.y) >= LEAST_APART_PT)) shifts.push(shift)
  }
  return shifts.slice(0, MOST_PLACES).flatMap((shift) => NUDGES.map((by) => xy(shift.x + by.x, shift.y + by.y)))
}

/** Sheet S-502: the wind zones of each plane that carries modules, with the loads that go with them. */
export function windZoneSheets(job: SheetJob): SheetDraft[] {
  const { input, stationery } = job
  const { body } = stationery
  const values = input.mounts?.values
  const planes = Object.values(input.arrangement.values.planes).filter(
    ({ id }) => own(values?.loads.planes, id) !== undefined,
  )
  if (values === undefined || planes.length === 0) return []
  const notesWidth = Math.max(190, body.width * NOTES_SHARE)
  const plans: Box = { ...body, width: body.width - notesWidth - 14 }
  const notesBox: Box = { ...body, x: body.x + body.width - notesWidth, width: notesWidth }
  const [columns, rows] = gridOf(planes.length, plans)
  const cells = planes.map((_, index): Box => ({
    x: plans.x + (index % columns) * (plans.width / columns),
    y: plans.y + Math.floor(index / columns) * (plans.height / rows),
    width: plans.width / columns,
    height: plans.height / rows,
  }))
  const scale = commonScale(planes, cells, stationery.unitPt)
  const drawn = planes.map((plane, index) => drawPlane(job, plane, cells[index] ?? plans, scale))
  const title = 'Wind zones of the roof'
  return flowBlocks(noteBlocks(job, planes, scale), notesBox, 1, body).map((notes, page) =>
    page > 0
      ? { id: continued('S-502', page), title: `${title}, continued`, scale: 'None', paper: notes }
      : {
          id: 'S-502',
          title,
          scale: scale.note,
          viewports: drawn.map(({ viewport }) => viewport),
          paper: [...drawn.flatMap(({ name }) => name), ...notes],
        },
  )
}

/** Columns and rows of the plans: as near to squares as may be. */
function gridOf(count: number, { width, height }: Box): readonly [number, number] {
  const columns = Math.min(count, Math.max(1, Math.round(Math.sqrt((count * width) / height / 1.6))))
  return [columns, Math.ceil(count / columns)]
}

function commonScale(planes: readonly ArrangedPlane[], cells: readonly Box[], unitPt: number): Scale {
  const scales = planes.map((plane, index) => {
    const bounds = boundsOf(plane.corners.map(toXY))
    return largestScale(ARCHITECT_SCALES, bounds.width, bounds.height, roomOf(cells[index]), unitPt)
  })
  return scales.toSorted((a, b) => a.ptPerFt - b.ptPerFt)[0] ?? largestScale(ARCHITECT_SCALES, 1, 1, roomOf(cells[0]))
}

function roomOf({ x, y, width, height }: Box = { x: 0, y: 0, width: 0, height: 0 }): Box {
  return {
    x: x + AROUND_PT,
    y: y + AROUND_PT,
    width: width - 2 * AROUND_PT,
    height: height - 2 * AROUND_PT - NAME_PT,
  }
}

function drawPlane(
  { input }: SheetJob,
  plane: ArrangedPlane,
  cell: Box,
  scale: Scale,
): { readonly viewport: Viewport; readonly name: readonly Primitive[] } {
  const loads = own(input.mounts?.values.loads.planes, plane.id)
  const edition = input.project.codes?.loads
  const roofKind = input.project.structure?.building?.roof_kind
  const stripFt = loads?.edge_strip_ft ?? 0
  const corners = plane.corners.map(toXY)
  const { x, y, width, height } = boundsOf(corners)
  const room = roomOf(cell)
  const zoneOf =
    edition === undefined || roofKind === undefined || loads === undefined
      ? undefined
      : zoneFinder({ id: plane.id, tiltDeg: loads.slope_deg, edges: plane.edges }, stripFt, { edition, roofKind })
  const areas = zoneOf === undefined ? [] : zoneAreas(plane, ({ xFt, yFt }) => zoneOf(xFt, yFt))
  const modules = input.arrangement.values.modules.filter(({ roofPlane }) => roofPlane === plane.id)
  const primitives: Primitive[] = [
    ...onLayer(
      'module',
      modules.map((module): Primitive => ({
        kind: 'path',
        points: boxCorners(module).map(toXY),
        closed: true,
        pen: 'hair',
        color: 'grey',
        fill: 'light',
      })),
    ),
    ...onLayer<Primitive>('roofOutline', [{ kind: 'path', points: corners, closed: true, pen: 'heavy' }]),
    ...onLayer(
      'detail',
      stripLines(plane, stripFt, Math.cos(radiansOf(loads?.slope_deg ?? 0))).map(({ from, to }): Primitive => ({
        kind: 'path',
        points: [toXY(from), toXY(to)],
        pen: 'thin',
        dash: 'dashed',
      })),
    ),
    ...areas.map((area): Primitive =>
      label(area.middle.xFt, area.middle.yFt, area.zone, {
        face: 'bold',
        sizePt: TYPE_PT.small,
        align: 'center',
        valign: 'middle',
        halo: true,
        shifts: zonePlaces(area, scale.ptPerFt),
      }),
    ),
  ]
  const viewport: Viewport = {
    scalePtPerFt: scale.ptPerFt,
    originPt: centredOrigin({ x, y }, { x: x + width, y: y + height }, scale, room),
    box: { ...cell, height: cell.height - NAME_PT },
    says: `Wind zones of roof plane ${plane.id}: ${[...new Set(areas.map(({ zone }) => zone))].join(', ')}, by strips of ${feetInches(stripFt)} along its edges; the table beside it has their loads.`,
    primitives,
  }
  const foot = room.y + (room.height + height * scale.ptPerFt) / 2
  const name = label(room.x + room.width / 2, foot + NAME_GAP_PT, `ROOF PLANE ${plane.id}`, {
    face: 'bold',
    align: 'center',
    maxWidthPt: room.width,
  })
  return { viewport, name: onLayer('title', [name]) }
}

function noteBlocks({ input }: SheetJob, planes: readonly ArrangedPlane[], scale: Scale): Block[] {
  const values = input.mounts?.values
  const rows = planes.flatMap(({ id }) =>
    Object.entries(own(values?.loads.planes, id)?.zones ?? {}).map(([zone, loads]) => [
      id,
      zone,
      plainNumber(loads.uplift_psf, 1),
      plainNumber(loads.down_psf, 1),
      plainNumber(loads.edge_factor, 2),
    ]),
  )
  const strips = [...new Set(planes.map(({ id }) => feetInches(own(values?.loads.planes, id)?.edge_strip_ft ?? 0)))]
  return [
    { kind: 'figure', heightPt: 30, draw: (x, y) => scaleBar(x, y + 10, scale) },
    { kind: 'heading', text: 'Loads on modules by zone' },
    {
      kind: 'table',
      columns: [
        { heading: 'Plane', share: 0.26 },
        { heading: 'Zone', share: 0.14, bold: true },
        { heading: 'Up, psf', share: 0.2, align: 'right' },
        { heading: 'Down, psf', share: 0.2, align: 'right' },
        { heading: 'Edge factor', share: 0.2, align: 'right' },
      ],
      rows,
    },
    { kind: 'heading', text: 'Notes' },
    {
      kind: 'list',
      numbered: true,
      items: [
        `Zones by ${values?.edition ?? 'the stated edition'}; the strips along the edges are ${strips.join(', ')} wide, seen from above, and drawn along the slope.`,
        'Loads are those of allowable stress design at right angles to the roof, dead load and snow counted; the highest edge factor of modules in the zone stands beside them.',
        'Modules are in grey. How far apart mounts may be in each zone is on sheet S-501.',
      ],
    },
  ]
}
