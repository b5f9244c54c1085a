import type { ArrangedPlane } from '../../roof/index.js'
import { own } from '../../values/index.js'
import type { PacketInput } from '../inputs.js'
import { label, TYPE_PT, type Block } from '../layout/index.js'
import { xy, type Primitive, type XY } from '../model/index.js'

/** A sign of the roof plan: what it means, where it stands, and how it looks in a box from a corner. */
interface Sign {
  readonly says: string
  /** Missing: on every roof plan. */
  readonly when?: (input: PacketInput, plane: ArrangedPlane) => boolean
  readonly draw: (x: number, y: number) => Primitive
}

const WIDTH = 20
const HEIGHT = 9
const GAP = 6
/** Letters from which a text may take two lines. */
const LONG = 34

const box = (x: number, y: number) => ({ kind: 'rectangle', x, y, width: WIDTH, height: HEIGHT }) as const
const through = (x: number, y: number): XY[] => [xy(x, y + HEIGHT / 2), xy(x + WIDTH, y + HEIGHT / 2)]
const hasMounts = ({ mounts }: PacketInput): boolean => mounts !== undefined

const mountMark = (x: number, y: number): Primitive => ({
  kind: 'circle',
  center: xy(x + WIDTH / 2, y + HEIGHT / 2),
  radiusPt: 1.7,
  pen: 'thin',
  fill: 'black',
})

/** In the order of the legend. */
const SIGNS: readonly Sign[] = [
  {
    says: 'Module with its row and column (row 1 is the lowest)',
    draw: (x, y) => ({ ...box(x, y), pen: 'medium', fill: 'light' }),
  },
  {
    says: 'Rail',
    when: hasMounts,
    draw: (x, y) => ({ kind: 'path', points: through(x, y), pen: 'heavy', color: 'grey' }),
  },
  {
    says: 'Mount on a rafter',
    when: ({ mounts }) => mounts?.values.fastener.into === 'rafter',
    draw: mountMark,
  },
  {
    says: 'Mount on a seam or on the sheathing',
    when: ({ mounts }) => mounts !== undefined && mounts.values.fastener.into !== 'rafter',
    draw: mountMark,
  },
  {
    says: 'Rafter',
    when: ({ project }, plane) => own(project.structure?.framing, plane.id) !== undefined,
    draw: (x, y) => ({ kind: 'path', points: through(x, y), pen: 'hair', dash: 'center', color: 'grey' }),
  },
  {
    says: 'Fire access pathway',
    when: (_, plane) => plane.pathways.length > 0,
    draw: (x, y) => ({
      ...box(x, y),
      pen: 'thin',
      dash: 'dashed',
      hatch: { angleDeg: 135, gapPt: 4, cross: true },
    }),
  },
  {
    says: 'Strip that stays free',
    draw: (x, y) => ({ ...box(x, y), pen: 'thin', dash: 'dashed', hatch: { angleDeg: 45, gapPt: 5 } }),
  },
  {
    says: 'Raceway, where shown',
    draw: (x, y) => ({ kind: 'path', points: through(x, y), pen: 'heavy', dash: 'dashed' }),
  },
]

/** The signs that a roof plan has, with their meaning, each a block for itself. */
export function roofLegend(input: PacketInput, plane: ArrangedPlane): Block[] {
  return SIGNS.filter((sign) => sign.when?.(input, plane) ?? true).map(({ says, draw }): Block => ({
    kind: 'figure',
    heightPt: says.length > LONG ? 2 * HEIGHT : HEIGHT,
    gapPt: GAP,
    draw: (x, y, width) => [
      draw(x, says.length > LONG ? y + HEIGHT / 2 : y),
      label(x + 28, y + (says.length > LONG ? HEIGHT : HEIGHT / 2), says, {
        sizePt: TYPE_PT.small,
        valign: 'middle',
        maxWidthPt: width - 28,
      }),
    ],
  }))
}
