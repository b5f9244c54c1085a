import { boxCorners, type ArrangedPlane, type KeepOut, type ModulePlacement } from '../../roof/index.js'
import { distanceBetweenFt, inchesOf, own, type Point } from '../../values/index.js'
import type { PacketInput } from '../inputs.js'
import { feetInches, inches, type Block } from '../layout/index.js'
import { boundsOf, figuresOverlap, xy, type Box, type Primitive, type XY } from '../model/index.js'
import { clippedTo, toXY } from './plane-figures.js'
import { eaveYFt } from './rail-heights.js'
import { shortModuleName } from './short-module-name.js'

const objectsOf = ({ keepOuts }: ArrangedPlane): KeepOut[] => keepOuts.filter(({ kind }) => kind === 'obstruction')
const modulesOn = ({ arrangement }: PacketInput, plane: ArrangedPlane): ModulePlacement[] =>
  arrangement.values.modules.filter(({ roofPlane }) => roofPlane === plane.id)

/** Chimneys, vents and skylights from the nearest edges of the plane, where no module lies between. */
export function objectDimensions(input: PacketInput, plane: ArrangedPlane): Primitive[] {
  const outline = plane.corners.map(toXY)
  const things = [
    ...modulesOn(input, plane).map((module) => boxCorners(module).map(toXY)),
    ...objectsOf(plane).map(({ thing }) => thing.map(toXY)),
  ]
  return objectsOf(plane).flatMap(({ thing }): Primitive[] => {
    const box = boundsOf(thing.map(toXY))
    const free = ([from, to]: readonly [XY, XY]): boolean =>
      things.every((each) => !figuresOverlap([from, to], each, 1e-3))
    return [waysAcross(outline, box), waysUp(outline, box)].flatMap((ways) => {
      const [way] = ways.filter(free).toSorted((a, b) => lengthOf(a) - lengthOf(b))
      if (way === undefined) return []
      return { kind: 'dimension', from: way[0], to: way[1], offsetPt: 0, text: feetInches(lengthOf(way)) } as const
    })
  })
}

const lengthOf = ([a, b]: readonly [XY, XY]): number => Math.hypot(b.x - a.x, b.y - a.y)
/** Wider than any roof, ft. */
const FAR = 10_000

/** From the edge at the left, and to that at the right, at the middle of a thing. */
function waysAcross(outline: readonly XY[], { x, y, width, height }: Box): [XY, XY][] {
  const at = y + height / 2
  const found = boundsOf(clippedTo(outline, sliver(-FAR, at, 2 * FAR, 0)))
  return [
    [xy(found.x, at), xy(x, at)],
    [xy(x + width, at), xy(found.x + found.width, at)],
  ]
}

/** From the edge below, and to that above. */
function waysUp(outline: readonly XY[], { x, y, width, height }: Box): [XY, XY][] {
  const at = x + width / 2
  const found = boundsOf(clippedTo(outline, sliver(at, -FAR, 0, 2 * FAR)))
  return [
    [xy(at, found.y), xy(at, y)],
    [xy(at, y + height), xy(at, found.y + found.height)],
  ]
}

/** A line as a figure that is next to nothing wide. */
function sliver(x: number, y: number, width: number, height: number): XY[] {
  const [wide, high] = [Math.max(width, 1e-6), Math.max(height, 1e-6)]
  return [xy(x, y), xy(x + wide, y), xy(x + wide, y + high), xy(x, y + high)]
}

/** Where they stand, how large they are, and what stays free round them; `isNamed` when those of other planes stand beside them. */
export function objectBlocks(input: PacketInput, plane: ArrangedPlane, isNamed: boolean): Block[] {
  const objects = objectsOf(plane)
  if (objects.length === 0) return []
  const left = Math.min(...plane.corners.map(({ xFt }) => xFt))
  return [
    { kind: 'heading', text: isNamed ? `Things on roof plane ${plane.id}` : 'Things on the roof' },
    {
      kind: 'table',
      columns: [
        { heading: 'Thing', share: 0.3 },
        { heading: 'From the left end, up from the eave', share: 0.34 },
        { heading: 'Stays free, nearest module', share: 0.36 },
      ],
      rows: objects.map((object) => {
        const { x, y, width, height } = boundsOf(object.thing.map(toXY))
        return [
          `${object.name.replaceAll('_', ' ')}, ${feetInches(width)} by ${feetInches(height)}`,
          `${feetInches(x - left)}, ${feetInches(y - eaveYFt(plane))}`,
          `${freeWords(input, plane, object)}; ${nearestWords(modulesOn(input, plane), object.thing)}`,
        ]
      }),
      whole: true,
    },
  ]
}

function freeWords({ project }: PacketInput, plane: ArrangedPlane, { name, clearanceIn }: KeepOut): string {
  const stated = own(own(project.roof_planes, plane.id)?.obstructions, name)?.clearance_in
  return stated === undefined && clearanceIn === 0 ? 'none stated' : `${inches(clearanceIn)} kept`
}

function nearestWords(modules: readonly ModulePlacement[], thing: readonly Point[]): string {
  const [nearest] = modules
    .map((module) => ({ module, ft: distanceBetweenFt(boxCorners(module), thing) }))
    .toSorted((a, b) => a.ft - b.ft)
  if (nearest === undefined) return 'no module'
  const { module, ft } = nearest
  return `${inches(inchesOf(ft), 8)} to ${shortModuleName(module.id, module.array)}`
}
