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
  const corners = (xs: readonly [number, number], ys: readonly [number, number]): string =>
    `[${[point(xs[0], ys[0]), point(xs[1], ys[0]), point(xs[1], ys[1]), point(xs[0], ys[1])].join(', ')}]`
  const box = (kind: string, at: number, more: string): string =>
    `!made_up { kind: ${kind}, x_ft: ${right}, y_ft: ${FRONT_FT + at}, ${more} }`
  const clear = 'clear_depth_in: 36, clear_width_in: 30, clear_height_in: 78'
  return [
    'site_plan:  # in feet; x to the right, y up the sheet; the map of the assessor shows the lot',
    `  up_azimuth_deg: ${(first.azimuthDeg.value + 180) % 360}  # direction that is up on the sheet: the first plane faces the street below`,
    `  lot: !made_up ${corners([0, right + LEFT_FT], [0, back + 40])}`,
    '  street: !made_up { name: Street (invented), lot_line: 1 }',
    '  buildings:',
    `    house: !made_up { name: House, main: true, corners: ${corners([LEFT_FT, right], [FRONT_FT, back])} }`,
    `  driveway: !made_up ${corners([right + 5, right + 15], [0, FRONT_FT + 10])}`,
    '  roof_planes:',
    ...planes.flatMap((plane) => {
      const at = eaveLeft(plane, first, [LEFT_FT, right], [FRONT_FT, back])
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

function point(x: number, y: number): string {
  return `{ x_ft: ${x}, y_ft: ${y} }`
}

/** Where the left end of the eave lies when the house is a box whose first plane faces down the sheet. */
function eaveLeft(
  plane: StartingPlane,
  first: StartingPlane,
  [left, right]: readonly [number, number],
  [front, back]: readonly [number, number],
): string | undefined {
  const turn = Math.round((plane.azimuthDeg.value - first.azimuthDeg.value + 360) % 360)
  if (turn === 0 && plane === first) return point(left, front)
  if (turn === 180) return point(right, back)
  if (turn === 90) return point(left, back)
  return turn === 270 ? point(right, front) : undefined
}
