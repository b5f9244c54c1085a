import type { PlanEquipment, SitePlan } from '../../project/index.js'
import type { PacketInput } from '../inputs.js'
import { feetInches, label, TYPE_PT } from '../layout/index.js'
import { asSymbol, boundsOf, onLayer, type Box, type Primitive, type XY, inCapitals } from '../model/index.js'
import { obstacleFigures } from './site-obstacles.js'
import { overheadFigures } from './site-overhead.js'
import { lotDistances } from './lot-distances.js'
import { planPoint } from './plan-frame.js'
import { street, lotLines } from './site-lot-lines.js'
import { NEAR, roofs } from './site-roofs.js'

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
    ...lotLines(lot),
    ...street(plan.street, lot),
    ...(plan.second_street === 'none' ? [] : street(plan.second_street, lot)),
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

function buildingName(name: string, corners: readonly XY[]): Primitive {
  const box = boundsOf(corners)
  return label(box.x + box.width / 2, box.y + box.height / 2, inCapitals(name), {
    sizePt: TYPE_PT.text,
    face: 'bold',
    align: 'center',
    valign: 'middle',
    halo: true,
    maxWidthPt: 120,
    shifts: NEAR,
  })
}
