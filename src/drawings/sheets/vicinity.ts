import { vicinityFeet } from '../../project/facts.js'
import type { Vicinity, VicinityStreet } from '../../project/index.js'
import { degreesOf, own } from '../../values/index.js'
import {
  centredOrigin,
  label,
  largestScale,
  northArrow,
  scaleBar,
  TYPE_PT,
  VICINITY_SCALES,
  type Block,
  type Scale,
} from '../layout/index.js'
import { boundsOf, inPart, inset, onLayer, xy, type Box, type Primitive, type XY, inCapitals } from '../model/index.js'
import type { SheetJob } from './job.js'
import { clippedLine } from './plane-figures.js'

/** Height of the sketch and of north arrow and scale above it, units of the layout. */
const SKETCH = 150
const MARKS = 52
/** Streets keep so far from the frame of the sketch. */
const MARGIN = 12

/** The vicinity sketch of the cover, when the project states streets: north up and to scale. */
export function vicinityBlocks({ input, stationery }: SheetJob): Block[] {
  const vicinity = input.project.site_plan?.vicinity
  if (vicinity === undefined) return []
  const cross = vicinity.cross_street === undefined ? undefined : own(vicinity.streets, vicinity.cross_street)
  return [
    { kind: 'heading', text: 'Vicinity' },
    {
      kind: 'figure',
      heightPt: MARKS + SKETCH,
      draw: (x, y, width) => sketch(vicinity, { x, y: y + MARKS, width, height: SKETCH }, stationery.unitPt),
    },
    ...(cross === undefined ? [] : [{ kind: 'text', text: `Nearest cross street: ${cross.name}.` } as const]),
  ]
}

/** @param frame On paper, units of the layout; north arrow and scale stand above it. */
function sketch(vicinity: Vicinity, frame: Box, unitPt: number): Primitive[] {
  const streets = Object.values(vicinity.streets)
  const site = vicinityFeet(vicinity.site)
  const bounds = boundsOf([site, ...streets.flatMap(({ points }) => points.map(vicinityFeet))])
  const room = inset(frame, MARGIN)
  const scale = largestScale(VICINITY_SCALES, bounds.width, bounds.height, room, unitPt)
  const origin = centredOrigin(bounds, xy(bounds.x + bounds.width, bounds.y + bounds.height), scale, room)
  const at = ({ x, y }: XY): XY => xy(origin.x + x * scale.ptPerFt, origin.y - y * scale.ptPerFt)
  const mark = at(site)
  const figures: Primitive[] = [
    { kind: 'rectangle', ...frame, pen: 'thin', layer: 'symbol' },
    ...streets.flatMap((street) => streetFigures(street, at, frame)),
    { kind: 'circle', center: mark, radiusPt: 3.2, pen: 'medium', fill: 'black', layer: 'symbol' },
    label(mark.x, mark.y, 'SITE', {
      sizePt: TYPE_PT.text,
      face: 'bold',
      align: 'center',
      valign: 'middle',
      halo: true,
      shifts: [xy(18, -9), xy(-18, -9), xy(18, 9), xy(-18, 9), xy(0, -11), xy(0, 11), xy(20, 0), xy(-20, 0)],
    }),
    ...streets.map((street) => streetName(street, at, frame)),
  ]
  return [
    ...northArrow(frame.x + 26, frame.y - MARKS + 28, 0, 15),
    ...scaleBar(frame.x + 62, frame.y - MARKS + 14, scale, frame.width - 62 - 16),
    ...inPart({ kind: 'Figure', says: saysOf(vicinity, scale) }, figures),
  ]
}

function streetFigures({ points }: VicinityStreet, at: (point: XY) => XY, frame: Box): Primitive[] {
  return onLayer<Primitive>(
    'street',
    piecesOf(points.map((point) => at(vicinityFeet(point)))).flatMap((piece) => {
      const shown = clippedLine(piece, frame)
      return shown === undefined ? [] : [{ kind: 'path', points: shown, pen: 'medium' } as const]
    }),
  )
}

const piecesOf = (points: readonly XY[]): [XY, XY][] =>
  points.slice(1).map((to, index) => [points[index] ?? to, to] as [XY, XY])

const lengthOf = ([a, b]: readonly [XY, XY]): number => Math.hypot(b.x - a.x, b.y - a.y)

/** Places of a name along its street, as shares of its longest piece, and how far beside it. */
const ALONG = [0, 0.15, -0.15, 0.3, -0.3, 0.4, -0.4]
const BESIDE = [-7, 7, -13, 13]

/** The name beside the longest piece of its street, along it. */
function streetName({ name, points }: VicinityStreet, at: (point: XY) => XY, frame: Box): Primitive {
  const [longest = [xy(0, 0), xy(1, 0)] as [XY, XY]] = piecesOf(
    points.map((point) => at(vicinityFeet(point))),
  ).toSorted((a, b) => lengthOf(b) - lengthOf(a))
  const [a, b] = longest
  const length = lengthOf(longest)
  const [ux, uy] = [(b.x - a.x) / length, (b.y - a.y) / length]
  const angle = degreesOf(Math.atan2(-uy, ux))
  const rotationDeg = angle > 90.01 || angle <= -89.99 ? angle - Math.sign(angle) * 180 : angle
  const shifts = ALONG.flatMap((share) =>
    BESIDE.map((beside) => xy(ux * share * length - uy * beside, uy * share * length + ux * beside)),
  )
  return label((a.x + b.x) / 2, (a.y + b.y) / 2, inCapitals(name), {
    sizePt: TYPE_PT.small,
    align: 'center',
    valign: 'middle',
    rotationDeg: Math.round(rotationDeg * 1000) / 1000 + 0,
    maxWidthPt: Math.max(60, Math.min(length, frame.width - 2 * MARGIN)),
    halo: true,
    shifts,
  })
}

function saysOf({ streets, cross_street: cross }: Vicinity, scale: Scale): string {
  const names = Object.values(streets).map(({ name }) => name)
  const nearest = cross === undefined ? '' : `; the nearest cross street is ${own(streets, cross)?.name ?? cross}`
  return `Vicinity sketch, north up, ${scale.note}: the site and ${names.join(', ')}${nearest}.`
}
