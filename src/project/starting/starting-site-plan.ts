import { radiansOf } from '../../values/index.js'
import { tiltDegOf } from '../tilt.js'
import { follows, type Given } from './given.js'
import { MADE_UP_PLANE, type StartingHouse, type StartingPlane } from './starting-house.js'

/** From eave to ridge in plan, ft. */
export function runFt({ tilt, tiltKey, depthFt }: StartingPlane): Given {
  const slope = tiltKey === 'tilt_deg' ? 'tilt_deg' : 'pitch_in_12'
  return follows((value, depth) => depth * Math.cos(radiansOf(tiltDegOf({ [slope]: value }))), tilt, depthFt)
}

/** The house in the middle of a made-up lot, its first plane towards the street, equipment on the wall to the right. */
const LEFT_FT = 25
const FRONT_FT = 35

/** A plan of a made-up lot round a house of the size that its planes give. */
export function sitePlanLines({ planes, strings = false }: StartingHouse): string[] {
  const [first = MADE_UP_PLANE] = planes
  const wide = Math.round(first.widthFt.value)
  const deep = Math.round(2 * runFt(first).value)
  const right = LEFT_FT + wide
  const back = FRONT_FT + deep
  const rectangle = (xs: readonly [number, number], ys: readonly [number, number]): string =>
    polygon([
      [xs[0], ys[0]],
      [xs[1], ys[0]],
      [xs[1], ys[1]],
      [xs[0], ys[1]],
    ])
  const wings = planes.filter((plane) => [90, 270].includes(turnOf(plane, first)))
  const end = Math.max(back, ...wings.map(({ widthFt }) => back + Math.round(widthFt.value)))
  const box = (kind: string, at: number, more: string): string =>
    `!made_up { kind: ${kind}, x_ft: ${right}, y_ft: ${FRONT_FT + at}, ${more} }`
  const clear = 'clear_depth_in: 36, clear_width_in: 30, clear_height_in: 78'
  return [
    'site_plan:  # in feet; x to the right, y up the sheet; the map of the assessor shows the lot',
    `  up_azimuth_deg: ${(first.azimuthDeg.value + 180) % 360}  # direction that is up on the sheet: the first plane faces the street below`,
    `  lot: !made_up ${rectangle([0, right + LEFT_FT], [0, end + 40])}`,
    '  street: !made_up { name: Street (invented), lot_line: 1 }',
    '  buildings:',
    `    house: !made_up { name: House, main: true, corners: ${polygon(outlineOf({ right, back, end }, first, wings))} }`,
    `  driveway: !made_up ${rectangle([right + 5, right + 15], [0, FRONT_FT + 10])}`,
    '  roof_planes:',
    ...planes.flatMap((plane) => {
      const at = eaveLeft(plane, first, right, back)
      return at === undefined ? [] : [`    ${plane.id}: { eave_left: !made_up ${at} }`]
    }),
    '  equipment:  # with its height on the wall; the space in front is measured',
    `    meter: ${box('utility_meter', 6, 'bottom_in: 52, width_in: 13, height_in: 18, clear_depth_in: 36')}`,
    `    panel: ${box('main_panel', 9, `bottom_in: 40, width_in: 14.5, height_in: 30, handle_in: 66, ${clear}`)}`,
    `    outside: ${box('pv_disconnect', 12, `name: PV system disconnect, bottom_in: 50, width_in: 9, height_in: 14, handle_in: 58, ${clear}`)}`,
    `    ${strings ? 'inverter' : 'combiner'}: ${box(strings ? 'inverter' : 'combiner', 15, `bottom_in: 44, width_in: 15, height_in: 20, handle_in: 60, ${clear}`)}`,
    `  raceway_route: !made_up [${point(right, FRONT_FT)}, ${point(right, FRONT_FT + 15)}]`,
    `  ground_access: !made_up [${point(LEFT_FT + 2, FRONT_FT - 4)}]`,
  ]
}

type Point = readonly [x: number, y: number]

function point(x: number, y: number): string {
  return `{ x_ft: ${x}, y_ft: ${y} }`
}

function polygon(corners: readonly Point[]): string {
  return `[${corners.map(([x, y]) => point(x, y)).join(', ')}]`
}

/** How far a plane is turned from the first, clockwise in whole degrees. */
function turnOf(plane: StartingPlane, first: StartingPlane): number {
  return Math.round((plane.azimuthDeg.value - first.azimuthDeg.value + 360) % 360)
}

/** Left end of the eave: planes turned by a quarter lie on a leg of the house behind the first, towards its left or right side. */
function eaveLeft(plane: StartingPlane, first: StartingPlane, right: number, back: number): string | undefined {
  const turn = turnOf(plane, first)
  if (turn === 0) return plane === first ? point(LEFT_FT, FRONT_FT) : undefined
  if (turn === 180) return point(right, back)
  if (turn === 90) return point(LEFT_FT, back + Math.round(plane.widthFt.value))
  return turn === 270 ? point(right, back) : undefined
}

/** Corners of the house: a box, with one leg behind it at the side of a turned plane, or over all of its width. */
function outlineOf(
  { right, back, end }: { readonly right: number; readonly back: number; readonly end: number },
  first: StartingPlane,
  wings: readonly StartingPlane[],
): Point[] {
  const front: Point[] = [
    [LEFT_FT, FRONT_FT],
    [right, FRONT_FT],
  ]
  const turns = new Set(wings.map((wing) => turnOf(wing, first)))
  const across = Math.min(right - LEFT_FT, Math.round(2 * Math.max(0, ...wings.map((wing) => runFt(wing).value))))
  if (turns.size !== 1 || across >= right - LEFT_FT) return [...front, [right, end], [LEFT_FT, end]]
  if (turns.has(90)) return [...front, [right, back], [LEFT_FT + across, back], [LEFT_FT + across, end], [LEFT_FT, end]]
  return [...front, [right, end], [right - across, end], [right - across, back], [LEFT_FT, back]]
}
