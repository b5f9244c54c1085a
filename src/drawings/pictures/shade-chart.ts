import { label, line, polyline, TYPE_PT } from '../layout/index.js'
import { xy, type Look, type Primitive, type Sheet, type XY } from '../model/index.js'
import type { Degrees } from '../../values/index.js'
import { hiddenParts, type Hiding } from './hidden-runs.js'
import { halfDayDeg, planeEdgeDeg, sunCourses, sunPlace } from './sun-course.js'

/** What a chart of the horizon is drawn from. */
export interface ShadeChartInput {
  /** Name of the place that is looked from: `module south.r1c1`. */
  readonly from: string
  /** North positive. */
  readonly latitudeDeg: Degrees
  readonly tiltDeg: Degrees
  /** Direction that the plane faces, degrees clockwise from true north. */
  readonly azimuthDeg: Degrees
  /** Share of direct light that arrives from a direction, twelve months, 0 to 1. */
  readonly seen: (azimuthDeg: Degrees, elevationDeg: Degrees) => readonly number[]
}

/** Paper, and the chart on it, points: 2 an azimuth degree, 4.2 a degree of elevation. */
const WIDTH = 792
const HEIGHT = 520
const CHART = { left: 44, top: 58, perAzimuth: 2, perElevation: 4.2 } as const
const RIGHT = CHART.left + 360 * CHART.perAzimuth
const BOTTOM = CHART.top + 90 * CHART.perElevation

/** How parts that hide the sky look; a copy in black and white tells them apart. */
const LOOKS: Readonly<Record<Hiding, Look>> = {
  all: { fill: 'mid', pen: 'medium' },
  most: { fill: 'light', pen: 'thin', hatch: { angleDeg: 45, gapPt: 3, cross: true } },
  some: { fill: 'light', pen: 'thin', dash: 'hidden' },
}
const BEHIND: Look = { hatch: { angleDeg: -45, gapPt: 9 } }
const HALO = { halo: true, sizePt: TYPE_PT.small, align: 'center' } as const

/** Chart of the horizon: azimuth to the right, elevation upwards, with the sun's courses over what hides the sky. */
export function shadeChart(input: ShadeChartInput): Sheet {
  const middleDeg = input.latitudeDeg < 0 ? 0 : 180
  const frame: Frame = {
    middleDeg,
    x: (azimuthDeg) => CHART.left + columnDeg(azimuthDeg, middleDeg) * CHART.perAzimuth,
  }
  return {
    id: 'Horizon',
    title: `seen from ${input.from}`,
    size: { name: 'picture', widthPt: WIDTH, heightPt: HEIGHT },
    frame: { x: 0, y: 0, width: WIDTH, height: HEIGHT },
    scaleNote: '',
    viewports: [],
    paper: [
      ...hiders(input, frame),
      ...planeBack(input, frame),
      ...axes(frame),
      ...hourLines(input, frame),
      ...courses(input, frame),
      ...titles(input),
      ...legend(),
    ],
  }
}

interface Frame {
  readonly middleDeg: Degrees
  readonly x: (azimuthDeg: Degrees) => number
}

/** Degrees from the left edge, 0 to 360. */
function columnDeg(azimuthDeg: Degrees, middleDeg: Degrees): Degrees {
  return (((azimuthDeg - middleDeg + 180) % 360) + 360) % 360
}

const yOf = (elevationDeg: Degrees): number => BOTTOM - elevationDeg * CHART.perElevation
const mean = (months: readonly number[]): number => months.reduce((sum, share) => sum + share, 0) / months.length

function hiders({ seen }: ShadeChartInput, { middleDeg }: Frame): Primitive[] {
  const first = middleDeg - 180
  return hiddenParts((azimuthDeg, elevationDeg) => mean(seen(azimuthDeg, elevationDeg)), first, first + 360).map(
    ({ hiding, corners }): Primitive => ({
      kind: 'path',
      points: corners.map(([azimuthDeg, elevationDeg]) =>
        xy(CHART.left + (azimuthDeg - first) * CHART.perAzimuth, yOf(elevationDeg)),
      ),
      closed: true,
      ...LOOKS[hiding],
    }),
  )
}

/** What lies behind the plane, which nothing there can shade and from where no direct light comes. */
function planeBack({ tiltDeg, azimuthDeg }: ShadeChartInput, { middleDeg }: Frame): Primitive[] {
  const first = middleDeg - 180
  const edge = Array.from({ length: 361 }, (_, index) => ({
    column: index,
    heightDeg: Math.max(0, planeEdgeDeg(tiltDeg, azimuthDeg, first + index)),
  }))
  if (edge.every(({ heightDeg }) => heightDeg < 0.05)) return []
  const points = edge.map(({ column, heightDeg }) => xy(CHART.left + column * CHART.perAzimuth, yOf(heightDeg)))
  return [
    { kind: 'path', points: [...points, xy(RIGHT, BOTTOM), xy(CHART.left, BOTTOM)], closed: true, ...BEHIND },
    ...aboveLevel(points).map((part): Primitive => ({ kind: 'path', points: part, pen: 'medium', dash: 'dashed' })),
  ]
}

/** The stretches of an edge that rise above level. */
function aboveLevel(points: readonly XY[]): XY[][] {
  const parts: XY[][] = [[]]
  points.forEach((point, index) => {
    const isLevel = (at: number): boolean => (points[at]?.y ?? BOTTOM) >= BOTTOM
    if (isLevel(index) && isLevel(index - 1) && isLevel(index + 1)) parts.push([])
    else parts.at(-1)!.push(point)
  })
  return parts.filter((part) => part.length > 1)
}

const COMPASS: Readonly<Record<number, string>> = {
  0: 'N',
  45: 'NE',
  90: 'E',
  135: 'SE',
  180: 'S',
  225: 'SW',
  270: 'W',
  315: 'NW',
}

function axes({ middleDeg }: Frame): Primitive[] {
  const drawn: Primitive[] = [
    {
      kind: 'rectangle',
      x: CHART.left,
      y: CHART.top,
      width: RIGHT - CHART.left,
      height: BOTTOM - CHART.top,
      pen: 'medium',
    },
  ]
  for (let elevationDeg = 0; elevationDeg <= 90; elevationDeg += 10) {
    const y = yOf(elevationDeg)
    if (elevationDeg > 0 && elevationDeg < 90) drawn.push(line(CHART.left, y, RIGHT, y, { pen: 'hair', color: 'grey' }))
    drawn.push(label(CHART.left - 5, y, String(elevationDeg), { align: 'right', valign: 'middle' }))
  }
  for (let column = 0; column <= 360; column += 15) {
    const x = CHART.left + column * CHART.perAzimuth
    const azimuthDeg = (column + middleDeg + 180) % 360
    const isNamed = column % 45 === 0
    drawn.push(line(x, BOTTOM, x, BOTTOM + (isNamed ? 5 : 3)))
    if (isNamed && column > 0 && column < 360) drawn.push(line(x, CHART.top, x, BOTTOM, { pen: 'hair', color: 'grey' }))
    if (isNamed)
      drawn.push(label(x, BOTTOM + 6, `${azimuthDeg} ${COMPASS[azimuthDeg] ?? ''}`.trim(), { align: 'center' }))
  }
  drawn.push(
    label((CHART.left + RIGHT) / 2, BOTTOM + 18, 'Azimuth, degrees clockwise from true north', { align: 'center' }),
    label(14, (CHART.top + BOTTOM) / 2, 'Elevation, degrees', { align: 'center', valign: 'middle', rotationDeg: 90 }),
  )
  return drawn
}

/** Lines of equal solar time between the solstices, with dots and names where the longest day crosses them. */
function hourLines({ latitudeDeg }: ShadeChartInput, frame: Frame): Primitive[] {
  const courses = sunCourses()
  const [june, december] = [courses[0]!.declinationDeg, courses.at(-1)!.declinationDeg]
  const longest = latitudeDeg < 0 ? december : june
  const drawn: Primitive[] = []
  for (let hour = 0; hour < 24; hour += 1) {
    const angleDeg = (hour - 12) * 15
    const places = Array.from({ length: 25 }, (_, index) =>
      sunPlace(latitudeDeg, december + ((june - december) * index) / 24, angleDeg),
    )
    drawn.push(...strokes(places, frame, { pen: 'hair', dash: 'dotted' }))
    const { azimuthDeg, elevationDeg } = sunPlace(latitudeDeg, longest, angleDeg)
    if (elevationDeg <= 1) continue
    drawn.push(
      label(frame.x(azimuthDeg), yOf(elevationDeg) - 4, `${hour} h`, {
        ...HALO,
        valign: 'bottom',
        shifts: [xy(0, 0), xy(0, 16), xy(12, 0), xy(-12, 0), xy(12, 16), xy(-12, 16)],
        optional: true,
      }),
    )
  }
  return drawn
}

function courses({ latitudeDeg }: ShadeChartInput, frame: Frame): Primitive[] {
  return sunCourses().flatMap(({ name, declinationDeg }) => {
    const half = halfDayDeg(latitudeDeg, declinationDeg)
    if (half === 0) return []
    const count = Math.max(2, Math.ceil(half))
    const places = Array.from({ length: count + 1 }, (_, index) =>
      sunPlace(latitudeDeg, declinationDeg, -half + (2 * half * index) / count),
    )
    const dots: Primitive[] = []
    for (let hour = -12; hour < 12; hour += 1) {
      const { azimuthDeg, elevationDeg } = sunPlace(latitudeDeg, declinationDeg, hour * 15)
      if (elevationDeg <= 0) continue
      const center = xy(frame.x(azimuthDeg), yOf(elevationDeg))
      dots.push({ kind: 'circle', center, radiusPt: 1.3, pen: 'thin', fill: 'black' })
    }
    // Between two hours, about half-way down on either side, so that names lie apart from hours and from each other.
    const angles = half < 20 ? [half / 2] : [15 * (Math.floor(half / 30) + 0.5)]
    const names = [angles[0]!, -angles[0]!].map((angleDeg) => {
      const { azimuthDeg, elevationDeg } = sunPlace(latitudeDeg, declinationDeg, angleDeg)
      return label(frame.x(azimuthDeg), yOf(Math.max(0, elevationDeg)), name, {
        ...HALO,
        valign: 'middle',
        shifts: [xy(0, 0), xy(0, -7), xy(0, 7), xy(10, 0), xy(-10, 0)],
        optional: angleDeg < 0,
      })
    })
    return [...strokes(places, frame, { pen: 'medium' }), ...dots, ...names]
  })
}

/** A course as lines that end at the horizon and at the edges of the chart. */
function strokes(
  places: readonly { readonly azimuthDeg: Degrees; readonly elevationDeg: Degrees }[],
  frame: Frame,
  look: Look,
): Primitive[] {
  const lines: [number, number][][] = [[]]
  let before: { readonly x: number; readonly elevationDeg: Degrees } | undefined
  for (const { azimuthDeg, elevationDeg } of places) {
    const x = frame.x(azimuthDeg)
    const leaps = before !== undefined && Math.abs(x - before.x) > 180 * CHART.perAzimuth
    // Over the zenith the sun changes sides; there is nothing between.
    const turns = before !== undefined && Math.abs(x - before.x) > 120 * CHART.perAzimuth
    if (elevationDeg < -1e-9 || turns) lines.push([])
    if (leaps) joinEdge(lines, before!, { x, elevationDeg })
    if (elevationDeg >= -1e-9) lines.at(-1)!.push([x, yOf(elevationDeg)])
    before = { x, elevationDeg }
  }
  return lines.filter((points) => points.length > 1).map((points) => polyline(points, look))
}

/** Carries a line on to the edge where it leaves the chart, and begins the next at the other edge. */
function joinEdge(
  lines: [number, number][][],
  before: { readonly x: number; readonly elevationDeg: Degrees },
  after: { readonly x: number; readonly elevationDeg: Degrees },
): void {
  if (before.elevationDeg < 0 || after.elevationDeg < 0) return
  const y = yOf((before.elevationDeg + after.elevationDeg) / 2)
  const [leaves, enters] = before.x > after.x ? [RIGHT, CHART.left] : [CHART.left, RIGHT]
  lines.at(-2)?.push([leaves, y])
  lines.at(-1)?.push([enters, y])
}

function titles({ from, latitudeDeg, tiltDeg, azimuthDeg }: ShadeChartInput): Primitive[] {
  const pole = latitudeDeg < 0 ? 'S' : 'N'
  return [
    label(CHART.left, 14, `What hides the sky from ${from}`, { sizePt: TYPE_PT.title, face: 'bold' }),
    label(
      CHART.left,
      36,
      `Latitude ${Math.abs(latitudeDeg).toFixed(2)} deg ${pole}; modules tilted ${tiltDeg.toFixed(1)} deg, facing ${azimuthDeg.toFixed(0)} deg. Sun on the 21st of each month, dots at whole hours of solar time (12 h = noon), without refraction.`,
      { sizePt: TYPE_PT.small },
    ),
  ]
}

function legend(): Primitive[] {
  const y = BOTTOM + 40
  const entries: readonly (readonly [look: Look, text: string])[] = [
    [LOOKS.all, 'lets less than 2 % of direct light through'],
    [LOOKS.most, '2 to 50 %'],
    [LOOKS.some, '50 to 98 % (means of twelve months)'],
    [{ ...BEHIND, pen: 'medium', dash: 'dashed' }, 'behind the plane of the modules'],
  ]
  const places = [0, 205, 275, 455]
  return entries.flatMap(([look, text], index) => {
    const x = CHART.left + places[index]!
    return [
      { kind: 'rectangle', x, y, width: 20, height: 11, ...look } as const,
      label(x + 25, y + 5.5, text, { valign: 'middle' }),
    ]
  })
}
