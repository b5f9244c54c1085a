import { boxCorners, type ModulePlacement, type Point } from '../../roof/index.js'
import type { PacketInput } from '../inputs.js'
import { label, TYPE_PT } from '../layout/index.js'
import { asSymbol, boundsOf, onLayer, xy, type Primitive, type XY } from '../model/index.js'
import { own } from '../../values/index.js'
import { planeInPlan } from './plan-frame.js'
import { clippedTo, toXY } from './plane-figures.js'

/** Where a name beside its thing may stand. */
export const NEAR: readonly XY[] = [0, 10, -10, 20, -20].map((dy) => xy(0, dy))

/** Roof planes that the plan places, with modules and pathways seen from above. */
export function roofs(input: PacketInput): Primitive[] {
  const { modules, planes } = input.arrangement.values
  return Object.values(planes).flatMap((plane): Primitive[] => {
    const place = planeInPlan(input.project, plane.id)
    if (place === undefined) return []
    const stated = own(input.project.site_plan?.roof_planes, plane.id)
    const point = (each: { x_ft: number; y_ft: number }): XY => place({ xFt: each.x_ft, yFt: each.y_ft })
    return [
      {
        kind: 'path',
        points: plane.corners.map(place),
        closed: true,
        pen: 'thin',
        dash: 'dashed',
        layer: 'roofOutline',
      },
      ...plane.pathways.flatMap((pathway) =>
        pathway.figures.map((figure): Primitive => ({
          kind: 'path',
          points: clippedTo(plane.corners.map(toXY), figure.map(toXY)).map(({ x, y }) => place({ xFt: x, yFt: y })),
          closed: true,
          layer: 'roofPath',
          pen: 'hair',
          dash: 'dashed',
          hatch: { angleDeg: 135, gapPt: 4, cross: true },
        })),
      ),
      ...onLayer(
        'roofObject',
        plane.keepOuts
          .filter(({ kind }) => kind === 'obstruction')
          .map((keepOut): Primitive => ({
            kind: 'path',
            points: keepOut.thing.map(place),
            closed: true,
            pen: 'thin',
            fill: 'white',
          })),
      ),
      ...modules
        .filter((module) => module.roofPlane === plane.id)
        .flatMap((module) =>
          asSymbol<Primitive>('PV-MODULE', place(module), [
            {
              kind: 'path',
              points: boxCorners(module).map(place),
              layer: 'module',
              closed: true,
              pen: 'thin',
              fill: 'mid',
            },
          ]),
        ),
      ...arrayNames(
        modules.filter((module) => module.roofPlane === plane.id),
        place,
      ),
      ...(stated?.raceway === undefined
        ? []
        : [
            {
              kind: 'path',
              points: stated.raceway.map(point),
              pen: 'heavy',
              dash: 'dashed',
              layer: 'circuit',
            } as const,
          ]),
    ]
  })
}

function arrayNames(modules: readonly ModulePlacement[], place: (point: Point) => XY): Primitive[] {
  return [...new Set(modules.map((module) => module.array))].map((array) => {
    const own = modules.filter((module) => module.array === array)
    const middles = own.map((module) =>
      place({ xFt: module.xFt + module.widthFt / 2, yFt: module.yFt + module.heightFt / 2 }),
    )
    const box = boundsOf(middles)
    return label(box.x + box.width / 2, box.y + box.height / 2, `ARRAY ${array}: ${own.length} MODULES`, {
      sizePt: TYPE_PT.small,
      align: 'center',
      valign: 'middle',
      halo: true,
      maxWidthPt: 90,
      shifts: NEAR,
    })
  })
}
