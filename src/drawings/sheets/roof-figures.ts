import { boxCorners, type ArrangedPlane, type KeepOut } from '../../roof/index.js'
import type { PacketInput } from '../inputs.js'
import { label, TYPE_PT } from '../layout/index.js'
import { asSymbol, onLayer, textWidthPt, xy, type Box, type Primitive, type XY, inCapitals } from '../model/index.js'
import { degreesOf, feetOf, own } from '../../values/index.js'
import { pathways, strip } from './free-strips.js'
import { NEAR } from './near-places.js'
import { clippedLine, toXY, uprightInside } from './plane-figures.js'
import { withinRegion } from './plan-region.js'
import { raceway } from './roof-raceway.js'
import { shortModuleName } from './short-module-name.js'

/**
 * Everything that lies on the plane, in feet along its surface.
 *
 * @param region The part of the plane that is drawn; all of it when missing.
 */
export function roofFigures(input: PacketInput, plane: ArrangedPlane, ptPerFt: number, region?: Box): Primitive[] {
  const outline = plane.corners.map(toXY)
  const figures: Primitive[] = [
    ...onLayer(
      'roofPath',
      plane.keepOuts.flatMap((keepOut) => strip(keepOut, outline)),
    ),
    ...onLayer('roofPath', pathways(plane, outline, region)),
    ...onLayer('rafter', rafters(input, plane, outline)),
    { kind: 'path', points: outline, closed: true, pen: 'heavy', layer: 'roofOutline' },
    ...plane.edges.flatMap((edge) => edgeName(edge, region)),
    ...onLayer('roofObject', plane.keepOuts.filter((keepOut) => keepOut.kind === 'obstruction').flatMap(obstruction)),
    ...onLayer('module', modules(input, plane, ptPerFt)),
    ...railsAndMounts(input, plane),
    ...onLayer('circuit', raceway(input, plane)),
  ]
  return region === undefined ? figures : withinRegion(figures, region)
}

function rafters(input: PacketInput, plane: ArrangedPlane, outline: readonly XY[]): Primitive[] {
  const framing = own(input.project.structure?.framing, plane.id)
  if (framing?.spacing_in === undefined || framing.first_offset_in === undefined) return []
  const spacing = feetOf(framing.spacing_in)
  const xs = outline.map((point) => point.x)
  const lines: Primitive[] = []
  for (let x = Math.min(...xs) + feetOf(framing.first_offset_in); x < Math.max(...xs); x += spacing) {
    for (const points of uprightInside(outline, x))
      lines.push({ kind: 'path', points, pen: 'hair', dash: 'center', color: 'grey' })
  }
  return lines
}

/** The name of an edge beside the middle of what is shown of it, outside the plane. */
function edgeName({ from, to, kind }: ArrangedPlane['edges'][number], region: Box | undefined): Primitive[] {
  const whole: [XY, XY] = [toXY(from), toXY(to)]
  const shown = region === undefined ? whole : clippedLine(whole, region)
  if (shown === undefined) return []
  const [a, b] = shown
  const [dx, dy] = [b.x - a.x, b.y - a.y]
  const length = Math.hypot(dx, dy)
  // The plane lies on the left, so the outside is on the right; on paper y goes down.
  const [ox, oy] = [dy / length, dx / length]
  const angle = degreesOf(Math.atan2(dy, dx))
  const rotationDeg = angle > 90.01 || angle <= -89.99 ? angle + (angle > 0 ? -180 : 180) : angle
  const out = [9, 14].flatMap((by) =>
    [0, 30, -30, 60, -60, 100, -100, 150, -150].map((along) =>
      xy(ox * by + (dx / length) * along, oy * by - (dy / length) * along),
    ),
  )
  const name = label((a.x + b.x) / 2, (a.y + b.y) / 2, inCapitals(kind), {
    sizePt: TYPE_PT.text,
    face: 'bold',
    align: 'center',
    valign: 'middle',
    rotationDeg: Math.round(rotationDeg * 1000) / 1000,
    halo: true,
    shifts: out,
  })
  return [name]
}

function obstruction(keepOut: KeepOut): Primitive[] {
  const points = keepOut.thing.map(toXY)
  const [a, b, c, d] = points
  const cross: Primitive[] =
    a === undefined || b === undefined || c === undefined || d === undefined
      ? []
      : [
          { kind: 'path', points: [a, c], pen: 'hair' },
          { kind: 'path', points: [b, d], pen: 'hair' },
        ]
  const middle = points.reduce((sum, { x, y }) => xy(sum.x + x / points.length, sum.y + y / points.length), xy(0, 0))
  const clear: Primitive[] =
    keepOut.clearanceIn > 0
      ? [
          {
            kind: 'path',
            points: keepOut.corners.map(toXY),
            closed: true,
            pen: 'hair',
            dash: 'dashed',
            layer: 'roofPath',
          },
        ]
      : []
  const name = label(middle.x, middle.y, inCapitals(keepOut.name).replaceAll('_', ' '), {
    sizePt: TYPE_PT.small,
    align: 'center',
    valign: 'middle',
    halo: true,
    maxWidthPt: 80,
    shifts: NEAR,
  })
  return [...clear, { kind: 'path', points, closed: true, pen: 'medium', fill: 'mid' }, ...cross, name]
}

/** Where the name of a module may stand: in its middle, or clear of a rail, a box or a raceway that crosses it. */
const NAME_PLACES = [0, 4, -4, 6, -6, 9, -9, 13, -13].flatMap((across) => [0, -8, 8].map((down) => xy(across, down)))

function modules(input: PacketInput, plane: ArrangedPlane, ptPerFt: number): Primitive[] {
  return input.arrangement.values.modules
    .filter((module) => module.roofPlane === plane.id)
    .flatMap((module) => {
      const name = shortModuleName(module.id, module.array)
      const wide = module.widthFt * ptPerFt - 3
      const turned = textWidthPt(name, TYPE_PT.small) > wide && module.heightFt > module.widthFt
      return [
        ...asSymbol<Primitive>('PV-MODULE', xy(module.xFt, module.yFt), [
          { kind: 'path', points: boxCorners(module).map(toXY), closed: true, pen: 'medium', fill: 'light' },
        ]),
        label(module.xFt + module.widthFt / 2, module.yFt + module.heightFt / 2, name, {
          sizePt: TYPE_PT.small,
          align: 'center',
          valign: 'middle',
          halo: true,
          rotationDeg: turned ? 90 : 0,
          shifts: NAME_PLACES,
          optional: true,
        }),
      ]
    })
}

function railsAndMounts(input: PacketInput, plane: ArrangedPlane): Primitive[] {
  const values = input.mounts?.values
  if (values === undefined) return []
  const rails = values.rails
    .filter((rail) => rail.plane === plane.id)
    .flatMap((rail): Primitive[] => {
      const [x, y] = [feetOf(rail.x_in), feetOf(rail.y_in)]
      return [
        { kind: 'path', points: [xy(x, y), xy(x + feetOf(rail.length_in), y)], pen: 'heavy', color: 'grey' },
        ...rail.splices_in.map((splice): Primitive => ({
          kind: 'path',
          points: [xy(feetOf(splice), y - 0.25), xy(feetOf(splice), y + 0.25)],
          pen: 'medium',
        })),
      ]
    })
  const mounts = values.mounts
    .filter((mount) => mount.plane === plane.id)
    .flatMap((mount) => {
      const center = xy(feetOf(mount.x_in), feetOf(mount.y_in))
      return asSymbol<Primitive>('PV-MOUNT', center, [
        { kind: 'circle', center, radiusPt: 1.7, pen: 'thin', fill: 'black' },
      ])
    })
  return [...onLayer('rail', rails), ...onLayer('mount', mounts)]
}
