import type { PlanEquipment, Project } from '../../project/index.js'
import { boxCorners, type Arrangement } from '../../roof/index.js'
import { label, line, northArrow } from '../layout/index.js'
import { boundsOf, xy, type Primitive, type XY } from '../model/index.js'
import { EQUIPMENT } from '../sheets/site-figures.js'
import { planeInPlan, planPoint } from '../sheets/plan-frame.js'

/** What a sketch is drawn from. */
export interface SiteSketchInput {
  readonly project: Project
  readonly arrangement: Arrangement
  readonly heightPt: number
  /** Size of its letters, points. */
  readonly typePt: number
}

/** A sketch of house, modules and equipment, with the room that it takes and its words for who does not see it. */
export interface SiteSketch {
  readonly heightPt: number
  readonly says: string
  readonly at: (left: number, top: number, widthPt: number) => Primitive[]
}

/** Feet round what is drawn. */
const ROUND_FT = 6
/** Share of the width for the plan; names of the equipment stand in the rest. */
const PLAN_SHARE = 0.62

/**
 * The site plan as somebody needs it who comes in the dark: buildings, modules and equipment, each with its name at the
 * end of a line. Not to a round scale.
 *
 * @returns undefined when the project has no site plan with buildings.
 */
export function siteSketch({ project, arrangement, heightPt, typePt }: SiteSketchInput): SiteSketch | undefined {
  const plan = project.site_plan
  const buildings = Object.values(plan?.buildings ?? {}).map(({ corners }) => corners.map(planPoint))
  if (plan === undefined || buildings.length === 0) return undefined
  const modules = moduleFigures(project, arrangement)
  const equipment = Object.values(plan.equipment ?? {}).toSorted((a, b) => b.y_ft - a.y_ft || a.x_ft - b.x_ft)
  const box = boundsOf([...buildings.flat(), ...modules.flat(), ...equipment.map(planPoint)])
  const street = streetSide(plan, xy(box.x + box.width / 2, box.y + box.height / 2))
  const names = equipment.map(nameOf)
  return {
    heightPt,
    says: `Sketch of the house from above with ${modules.length} modules on its roof and ${names.length === 0 ? 'no equipment placed' : names.join(', ')}${street === undefined ? '' : `; the street ${street.name} is at the ${street.side} of the sketch`}.`,
    at: (left, top, widthPt) => {
      const room = { width: widthPt * PLAN_SHARE - 2 * typePt, height: heightPt - 2 * typePt - 8 }
      const scale = Math.min(room.width / (box.width + 2 * ROUND_FT), room.height / (box.height + 2 * ROUND_FT))
      const middle = xy(left + (widthPt * PLAN_SHARE) / 2, top + heightPt / 2)
      const place = ({ x, y }: XY): XY =>
        xy(middle.x + (x - box.x - box.width / 2) * scale, middle.y - (y - box.y - box.height / 2) * scale)
      const figure = (points: readonly XY[], look: Partial<Primitive>): Primitive =>
        ({ kind: 'path', points: points.map(place), closed: true, ...look }) as Primitive
      const north = (360 - (plan.up_azimuth_deg ?? 0)) % 360
      return [
        ...buildings.map((points) => figure(points, { pen: 'medium', fill: 'light' })),
        ...modules.map((points) => figure(points, { pen: 'thin', fill: 'mid' })),
        ...equipment.flatMap((each, index) => {
          const at = place(planPoint(each))
          const y = top + typePt + index * Math.min(typePt * 2, (heightPt - 2 * typePt) / Math.max(1, equipment.length))
          const from = xy(left + widthPt * PLAN_SHARE + 4, y + typePt * 0.6)
          return [
            line(at.x, at.y, from.x, from.y, { pen: 'thin' }),
            { kind: 'circle', center: at, radiusPt: 3, pen: 'thin', fill: 'black' } as const,
            label(from.x + 4, y, names[index] ?? '', {
              sizePt: typePt,
              face: 'bold',
              maxWidthPt: widthPt * (1 - PLAN_SHARE) - 10,
            }),
          ]
        }),
        ...streetWords(street, middle, { width: widthPt * PLAN_SHARE, height: heightPt }, typePt),
        ...northArrow(left + widthPt - 24, top + heightPt - 24, north, 13),
      ]
    },
  }
}

const nameOf = ({ kind, name }: PlanEquipment): string => name ?? EQUIPMENT[kind][1]

function moduleFigures(project: Project, { modules }: Arrangement): XY[][] {
  const places = new Map(modules.map(({ roofPlane }) => [roofPlane, planeInPlan(project, roofPlane)]))
  return modules.flatMap((module) => {
    const place = places.get(module.roofPlane)
    return place === undefined ? [] : [boxCorners(module).map(place)]
  })
}

interface StreetSide {
  readonly name: string
  readonly side: 'left' | 'right' | 'top' | 'bottom'
}

/** On which side of the sketch the street lies. */
function streetSide({ lot, street }: NonNullable<Project['site_plan']>, middle: XY): StreetSide | undefined {
  const from = lot[(street?.lot_line ?? 0) - 1]
  const to = street === undefined ? undefined : lot[street.lot_line % lot.length]
  if (street === undefined || from === undefined || to === undefined) return undefined
  const [dx, dy] = [(from.x_ft + to.x_ft) / 2 - middle.x, (from.y_ft + to.y_ft) / 2 - middle.y]
  const side = Math.abs(dx) > Math.abs(dy) ? (dx > 0 ? 'right' : 'left') : dy > 0 ? 'top' : 'bottom'
  return { name: street.name, side }
}

function streetWords(
  street: StreetSide | undefined,
  middle: XY,
  { width, height }: { readonly width: number; readonly height: number },
  sizePt: number,
): Primitive[] {
  if (street === undefined) return []
  const away = {
    left: xy(-width / 2 + sizePt, 0),
    right: xy(width / 2 - sizePt, 0),
    top: xy(0, -height / 2 + sizePt / 2),
    bottom: xy(0, height / 2 - sizePt / 2),
  }[street.side]
  const upright = street.side === 'left' || street.side === 'right'
  return [
    label(middle.x + away.x, middle.y + away.y, `STREET: ${street.name}`, {
      sizePt,
      face: 'bold',
      align: 'center',
      valign: 'middle',
      rotationDeg: upright ? 90 : 0,
    }),
  ]
}
