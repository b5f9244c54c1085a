import type { ArrangedPlane } from '../../roof/index.js'
import { feetOf, own, radiansOf, type Feet } from '../../values/index.js'
import type { PacketInput } from '../inputs.js'
import { feetInches, type Block } from '../layout/index.js'
import { xy, type Primitive } from '../model/index.js'
import { chain } from './dimension-chain.js'

/** Rails that lie equally high. */
interface RailLine {
  /** Along the plane, ft. */
  readonly yFt: Feet
  /** Ids without that of their plane. */
  readonly names: readonly string[]
}

/** The lines on which the rails of a plane lie, from the eave up; equal to a sixteenth of an inch. */
export function railLines({ mounts }: PacketInput, plane: ArrangedPlane): RailLine[] {
  const found: { yFt: Feet; names: string[] }[] = []
  const rails = mounts?.values.rails.filter((rail) => rail.plane === plane.id) ?? []
  for (const rail of rails.toSorted((a, b) => a.y_in - b.y_in)) {
    const yFt = feetOf(rail.y_in)
    const name = rail.id.replace(`${plane.id}.`, '')
    const last = found.at(-1)
    if (last !== undefined && yFt - last.yFt < 1 / 192) last.names.push(name)
    else found.push({ yFt, names: [name] })
  }
  return found
}

/** Height of the eave line in the plane, ft. */
export function eaveYFt({ edges, corners }: ArrangedPlane): Feet {
  const eaves = edges.filter(({ kind }) => kind === 'eave').flatMap(({ from, to }) => [from.yFt, to.yFt])
  return Math.min(...(eaves.length === 0 ? corners.map(({ yFt }) => yFt) : eaves))
}

/** Length of the lines at the ends of a distance: they do not reach the plane, whose edges have their names there. */
const SHORT_PT = 6

/**
 * Distances from the eave line to the rails and from rail to rail, up the slope. What has no room is in the table.
 *
 * @param at Edge of the plan, how far from it they stand on paper, and its scale.
 * @param within Lowest and highest rail that is dimensioned, ft; the eave line counts when it lies between them.
 */
export function railDimensions(
  input: PacketInput,
  plane: ArrangedPlane,
  at: { readonly fromFt: Feet; readonly offsetPt: number; readonly ptPerFt: number },
  within: readonly [Feet, Feet] = [-Infinity, Infinity],
): Primitive[] {
  const places = [eaveYFt(plane), ...railLines(input, plane).map(({ yFt }) => yFt)]
  const shown = places.filter((y) => y >= within[0] - 1e-6 && y <= within[1] + 1e-6)
  const x = at.fromFt - (at.offsetPt - SHORT_PT) / at.ptPerFt
  return chain(
    shown.map((y) => xy(x, y)),
    SHORT_PT,
    true,
  )
}

/** How far up the slope the rails lie, and how high above the eave and the ground. */
export function railHeightBlocks(input: PacketInput, plane: ArrangedPlane, isNamed: boolean): Block[] {
  const lines = railLines(input, plane)
  if (lines.length === 0) return []
  const eave = eaveYFt(plane)
  const ground = own(input.project.roof_planes, plane.id)?.eave_height_ft
  const rise = Math.sin(radiansOf(plane.tiltDeg))
  return [
    { kind: 'heading', text: isNamed ? `Heights of the rails, roof plane ${plane.id}` : 'Heights of the rails' },
    {
      kind: 'table',
      columns: [
        { heading: 'Rails', share: 0.34 },
        { heading: 'Up the slope from the eave', share: 0.22 },
        { heading: 'Above the eave', share: 0.22 },
        { heading: 'Above the ground', share: 0.22 },
      ],
      rows: lines.map(({ yFt, names }) => [
        names.join(', '),
        feetInches(yFt - eave),
        feetInches((yFt - eave) * rise),
        ground === undefined ? 'not stated' : feetInches(ground + (yFt - eave) * rise),
      ]),
      whole: true,
    },
    ...(isNamed ? [] : [HEIGHTS_NOTE]),
  ]
}

/** What the heights are of; once for all planes where their tables stand together. */
export const HEIGHTS_NOTE: Block = {
  kind: 'text',
  text: 'Heights are plumb, of the roof surface under the rail; that of the eave above the ground is as the project file states it.',
}
