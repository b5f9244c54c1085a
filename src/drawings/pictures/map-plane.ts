import type { ArrangedPlane, ModulePlacement } from '../../roof/index.js'
import type { SystemModule } from '../../yield/index.js'
import { label, northArrow, TYPE_PT } from '../layout/index.js'
import { xy, textWidthPt, type Primitive, type XY } from '../model/index.js'
import { shortModuleName } from '../sheets/short-module-name.js'
import type { Degrees, Point } from '../../values/index.js'
import { lossClass, wholeLossPct } from './loss-shade.js'

/** Points of paper per foot: a module of 3.7 ft has room for its figures. */
export const PT_PER_FT = 12
/** Above the drawing of a plane: its name and the north arrow. */
const HEAD_PT = 66

/** A plane drawn, with the room that it takes. */
export interface DrawnPlane {
  readonly widthPt: number
  readonly heightPt: number
  /** With its upper left corner at a place, points, y down. */
  readonly at: (left: number, top: number) => Primitive[]
}

/** A roof plane with its modules, looked at square to the plane, up the slope upwards. */
export function drawPlane(
  plane: ArrangedPlane,
  placements: readonly ModulePlacement[],
  modules: ReadonlyMap<string, SystemModule>,
): DrawnPlane {
  const things = plane.keepOuts.filter(({ kind }) => kind === 'obstruction')
  const all = [
    ...plane.corners,
    ...things.flatMap(({ thing }) => thing),
    ...placements.flatMap(({ xFt, yFt, widthFt, heightFt }) => [
      { xFt, yFt },
      { xFt: xFt + widthFt, yFt: yFt + heightFt },
    ]),
  ]
  const least = { xFt: Math.min(...all.map(({ xFt }) => xFt)), yFt: Math.min(...all.map(({ yFt }) => yFt)) }
  const most = { xFt: Math.max(...all.map(({ xFt }) => xFt)), yFt: Math.max(...all.map(({ yFt }) => yFt)) }
  const title = `Roof plane ${plane.id}`
  const facts = `tilt ${plane.tiltDeg.toFixed(1)} deg, facing ${plane.azimuthDeg.toFixed(0)} deg`
  const drawnPt = (most.xFt - least.xFt) * PT_PER_FT
  const textPt = 60 + Math.max(textWidthPt(title, TYPE_PT.head, 'bold'), textWidthPt(facts, TYPE_PT.small, 'plain'))
  return {
    widthPt: Math.max(drawnPt, textPt),
    heightPt: HEAD_PT + (most.yFt - least.yFt) * PT_PER_FT,
    at: (left, top) => {
      const paper = ({ xFt, yFt }: Point): XY =>
        xy(left + (xFt - least.xFt) * PT_PER_FT, top + HEAD_PT + (most.yFt - yFt) * PT_PER_FT)
      return [
        ...northArrow(left + 26, top + 30, northOnPaperDeg(plane.azimuthDeg), 14),
        label(left + 56, top + 14, title, { sizePt: TYPE_PT.head, face: 'bold' }),
        label(left + 56, top + 29, facts, { sizePt: TYPE_PT.small }),
        { kind: 'path', points: plane.corners.map(paper), closed: true, pen: 'heavy' },
        ...things.flatMap(({ thing, name }) => obstruction(thing.map(paper), name)),
        ...placements.flatMap((placement) => moduleFigure(placement, modules.get(placement.id), paper)),
      ]
    },
  }
}

/** True north on paper, clockwise from the top, where up the slope is up: a plane that faces south has north at the top. */
export function northOnPaperDeg(planeAzimuthDeg: Degrees): Degrees {
  return (((180 - planeAzimuthDeg) % 360) + 360) % 360
}

function obstruction(corners: readonly XY[], name: string): Primitive[] {
  const x = corners.reduce((sum, corner) => sum + corner.x, 0) / corners.length
  const y = corners.reduce((sum, corner) => sum + corner.y, 0) / corners.length
  return [
    { kind: 'path', points: corners, closed: true, pen: 'medium', hatch: { angleDeg: -45, gapPt: 4 } },
    label(x, y, name, { sizePt: 6, align: 'center', valign: 'middle', halo: true }),
  ]
}

function moduleFigure(
  { id, array, xFt, yFt, widthFt, heightFt }: ModulePlacement,
  module: SystemModule | undefined,
  paper: (point: Point) => XY,
): Primitive[] {
  const { x, y } = paper({ xFt, yFt: yFt + heightFt })
  const [width, height] = [widthFt * PT_PER_FT, heightFt * PT_PER_FT]
  const box = { kind: 'rectangle', x, y, width, height, pen: 'thin' } as const
  const name = shortModuleName(id, array)
  if (module === undefined) return [box, ...lines([name, 'not estimated'], x, y, width, height)]
  const lossPct = wholeLossPct(module.light_loss_pct, module.mismatch_loss_pct)
  return [{ ...box, ...lossClass(lossPct).look }, ...lines([name, ...figuresOf(module)], x, y, width, height)]
}

/** What is told of a module: its energy, and what shade takes of its light and of what that is worth. */
export function figuresOf(module: SystemModule): string[] {
  return [
    `${module.ac_kwh.toFixed(0)} kWh`,
    `light ${takenText(module.light_loss_pct)} %`,
    `mism. ${takenText(module.mismatch_loss_pct)} %`,
  ]
}

/** A loss with its sign, percent; nothing lost has none. */
export function takenText(lossPct: number): string {
  return lossPct < 0.05 ? '0.0' : `-${lossPct.toFixed(1)}`
}

/** Lines in the middle of a box, as large as they fit, 6 points at the most. */
function lines(texts: readonly string[], x: number, y: number, width: number, height: number): Primitive[] {
  const widest = Math.max(...texts.map((text) => textWidthPt(text, 1, 'bold')))
  const sizePt = Math.min(6, (width - 3) / widest, (height - 3) / (1.35 * texts.length))
  const first = y + height / 2 - ((texts.length - 1) / 2) * 1.3 * sizePt
  return texts.map((text, index) =>
    label(x + width / 2, first + index * 1.3 * sizePt, text, {
      sizePt: Math.floor(sizePt * 100) / 100,
      align: 'center',
      valign: 'middle',
      halo: true,
      face: index === 1 ? 'bold' : 'plain',
    }),
  )
}
