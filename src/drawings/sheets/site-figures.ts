import type { PlanEquipment, SitePlan } from '../../project/index.js'
import { boxCorners, type ModulePlacement, type Point } from '../../roof/index.js'
import type { PacketInput } from '../inputs.js'
import { feetInches, label, TYPE_PT } from '../layout/index.js'
import { asSymbol, boundsOf, onLayer, xy, type Box, type Primitive, type XY } from '../model/index.js'
import { degreesOf, own, type Degrees } from '../../values/index.js'
import { obstacleFigures } from './site-obstacles.js'
import { overheadFigures } from './site-overhead.js'
import { lotDistances } from './lot-distances.js'
import { planeInPlan, planPoint } from './plan-frame.js'
import { clippedTo, toXY } from './plane-figures.js'

/** Letters that mark equipment on the plan, and what they are called. */
export const EQUIPMENT: Readonly<Record<PlanEquipment['kind'], readonly [mark: string, name: string]>> = {
  utility_meter: ['M', 'Utility meter'],
  main_panel: ['MP', 'Main panel'],
  pv_disconnect: ['D', 'PV system disconnect'],
  combiner: ['C', 'AC combiner'],
  inverter: ['INV', 'Inverter'],
  production_meter: ['PM', 'Production meter'],
  junction_box: ['JB', 'Junction box'],
  storage: ['ESS', 'Energy storage'],
  storage_disconnect: ['SD', 'Storage disconnect'],
  isolating_device: ['MID', 'Isolating device'],
  backup_panel: ['BP', 'Backup panel'],
  gas_meter: ['G', 'Gas meter'],
}

const NEAR: readonly XY[] = [0, 10, -10, 20, -20].map((dy) => xy(0, dy))

/**
 * Everything of the site plan, ft.
 *
 * @param sheet What of the plan the sheet has room for.
 */
export function siteFigures(input: PacketInput, plan: SitePlan, sheet: Box): Primitive[] {
  const lot = plan.lot.map(planPoint)
  const buildings = Object.entries(plan.buildings ?? {})
  const main = buildings.find(([, building]) => building.main === true) ?? buildings[0]
  const distances = main === undefined ? [] : lotDistances(lot, main[1].corners.map(planPoint))
  return [
    { kind: 'path', points: lot, closed: true, pen: 'heavy', dash: 'center', layer: 'lotLine' },
    ...(plan.driveway === undefined ? [] : driveway(plan.driveway.map(planPoint))),
    ...buildings.map(([, building]): Primitive => ({
      kind: 'path',
      points: building.corners.map(planPoint),
      layer: 'building',
      closed: true,
      pen: 'medium',
      fill: 'white',
    })),
    ...roofs(input),
    ...onLayer('siteObject', obstacleFigures(input.project, sheet)),
    ...onLayer('overhead', overheadFigures(input.project, sheet)),
    ...(plan.raceway_route === undefined
      ? []
      : [
          {
            kind: 'path',
            points: plan.raceway_route.map(planPoint),
            pen: 'heavy',
            dash: 'dashed',
            layer: 'circuit',
          } as const,
        ]),
    ...(plan.ground_access ?? []).flatMap(ladder),
    ...Object.entries(plan.equipment ?? {}).flatMap(([, each]) => equipment(each)),
    ...street(plan.street, lot),
    ...(plan.second_street === 'none' ? [] : street(plan.second_street, lot)),
    ...lotLines(lot),
    ...distances.map(({ from, to, lengthFt }): Primitive => ({
      kind: 'dimension',
      from,
      to,
      offsetPt: 0,
      text: feetInches(lengthFt, 1),
    })),
    ...buildings.map(([id, building]) =>
      buildingName(
        building.height_ft === undefined
          ? (building.name ?? id)
          : `${building.name ?? id}, ${building.height_ft} ft high`,
        building.corners.map(planPoint),
      ),
    ),
  ]
}

function driveway(points: readonly XY[]): Primitive[] {
  const box = boundsOf(points)
  return [
    { kind: 'path', points, closed: true, pen: 'thin', fill: 'light', layer: 'driveway' },
    label(box.x + box.width / 2, box.y + box.height / 2, 'DRIVEWAY', {
      sizePt: TYPE_PT.small,
      align: 'center',
      valign: 'middle',
      halo: true,
      rotationDeg: box.height > box.width ? 90 : 0,
      shifts: NEAR,
    }),
  ]
}

/** Roof planes that the plan places, with modules and pathways seen from above. */
function roofs(input: PacketInput): Primitive[] {
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

function ladder(at: { x_ft: number; y_ft: number }): Primitive[] {
  const size = 5
  return [
    { kind: 'circle', center: planPoint(at), radiusPt: size, pen: 'thin', fill: 'white', layer: 'roofPath' },
    label(at.x_ft, at.y_ft, 'L', { sizePt: TYPE_PT.small, face: 'bold', align: 'center', valign: 'middle' }),
  ]
}

function equipment(each: PlanEquipment): Primitive[] {
  const at = planPoint(each)
  return [
    ...asSymbol<Primitive>('EQUIPMENT', at, [
      {
        kind: 'circle',
        center: at,
        radiusPt: 1.8,
        pen: 'thin',
        fill: 'black',
        layer: each.kind === 'main_panel' ? 'panel' : 'equipment',
      },
    ]),
    label(at.x, at.y, EQUIPMENT[each.kind][0], {
      sizePt: TYPE_PT.text,
      face: 'bold',
      align: 'center',
      valign: 'middle',
      halo: true,
      aside: true,
      shifts: [],
    }),
  ]
}

function street(stated: SitePlan['street'], lot: readonly XY[]): Primitive[] {
  if (stated === undefined) return []
  const a = lot[stated.lot_line - 1]
  const b = lot[stated.lot_line % lot.length]
  if (a === undefined || b === undefined) return []
  const { middle, out, rotationDeg } = beside(a, b, lot)
  return [
    label(middle.x, middle.y, stated.name.toUpperCase(), {
      sizePt: TYPE_PT.head,
      face: 'bold',
      align: 'center',
      valign: 'middle',
      rotationDeg,
      halo: true,
      maxWidthPt: 260,
      // Farther along the line before it stands aside: a leader to the line would run along it.
      shifts: [0, 60, -60, 120, -120, 180, -180].flatMap((along) =>
        [24, 30, 36].map((by) => shifted(a, b, out, by, along)),
      ),
    }),
  ]
}

function lotLines(lot: readonly XY[]): Primitive[] {
  return lot.flatMap((a, index) => {
    const b = lot[(index + 1) % lot.length] ?? a
    if (a.x === b.x && a.y === b.y) return []
    const { middle, out, rotationDeg } = beside(a, b, lot)
    return label(middle.x, middle.y, `LOT LINE ${feetInches(Math.hypot(b.x - a.x, b.y - a.y), 1)}`, {
      sizePt: TYPE_PT.small,
      align: 'center',
      valign: 'middle',
      rotationDeg,
      halo: true,
      shifts: [9, 18, 27, 36].flatMap((by) => [0, 50, -50, 100, -100].map((along) => shifted(a, b, out, by, along))),
    })
  })
}

function shifted(a: XY, b: XY, out: XY, by: number, along: number): XY {
  const length = Math.hypot(b.x - a.x, b.y - a.y)
  return xy(out.x * by + ((b.x - a.x) / length) * along, -out.y * by - ((b.y - a.y) / length) * along)
}

/** Middle of a lot line, the direction away from the lot, and the angle of a text along it. */
function beside(a: XY, b: XY, lot: readonly XY[]): { middle: XY; out: XY; rotationDeg: Degrees } {
  const length = Math.hypot(b.x - a.x, b.y - a.y)
  const area = lot.reduce((sum, p, index) => {
    const q = lot[(index + 1) % lot.length] ?? p
    return sum + p.x * q.y - q.x * p.y
  }, 0)
  const side = area > 0 ? 1 : -1
  const angle = degreesOf(Math.atan2(b.y - a.y, b.x - a.x))
  const upright = angle > 90.01 || angle <= -89.99 ? angle + (angle > 0 ? -180 : 180) : angle
  return {
    middle: xy((a.x + b.x) / 2, (a.y + b.y) / 2),
    out: xy((side * (b.y - a.y)) / length, (side * (a.x - b.x)) / length),
    rotationDeg: Math.round(upright * 1000) / 1000,
  }
}

function buildingName(name: string, corners: readonly XY[]): Primitive {
  const box = boundsOf(corners)
  return label(box.x + box.width / 2, box.y + box.height / 2, name.toUpperCase(), {
    sizePt: TYPE_PT.text,
    face: 'bold',
    align: 'center',
    valign: 'middle',
    halo: true,
    maxWidthPt: 120,
    shifts: NEAR,
  })
}
