import type { WiringValues } from '../../electrical/index.js'
import { own } from '../../values/index.js'
import {
  boxedSwitch,
  breakerSymbol,
  converterSymbol,
  earthSymbol,
  fusedSwitchSymbol,
  inverterSymbol,
  junctionBox,
  meterSymbol,
  shutdownUnitSymbol,
  sourceSymbol,
  switchSymbol,
  tagSymbol,
} from '../diagram/one-line-symbols.js'
import { bondingOf, neutralBar } from '../diagram/bonding.js'
import type { PacketInput } from '../inputs.js'
import { label, line, TYPE_PT, type Block } from '../layout/index.js'
import { asArtifact, onLayer, type Primitive } from '../model/index.js'
import { batterySymbol, existingSource, joinFlag, lighter } from '../tree/tree-symbols.js'
import type { OneLineSource } from './one-line-sources.js'

/** What the diagram shows, so that the legend lists that and nothing else. */
interface Drawn {
  readonly input: PacketInput
  readonly wiring: WiringValues
  readonly sources: readonly OneLineSource[]
}

interface Sign {
  readonly says: string
  readonly when: (drawn: Drawn) => boolean
  /** Drawn round the middle of a cell. */
  readonly draw: (x: number, y: number) => readonly Primitive[]
}

const CELL = { symbol: 48, width: 200, height: 24 } as const
const SIZE = TYPE_PT.small
const always = (): boolean => true
const level = (x: number, y: number): Primitive => line(x - 20, y, x + 20, y, { pen: 'medium' })
const disconnects = ({ input }: Drawn) => Object.values(input.project.electrical?.disconnects ?? {})
const isSupply = ({ input }: Drawn): boolean => input.project.electrical?.connection?.kind === 'supply_side'
const isLong = ({ input }: Drawn): boolean => input.project.electrical?.distribution !== undefined
const shutdownOf = ({ input }: Drawn) => input.project.electrical?.rapid_shutdown
const isControlled = (drawn: Drawn): boolean =>
  shutdownOf(drawn)?.initiator !== undefined && drawn.sources.some(({ shutdown }) => shutdown !== undefined)
const hasSource = (drawn: Drawn, of: 'storage' | 'generator'): boolean =>
  (of === 'storage' && drawn.wiring.storage !== undefined) ||
  Object.values(drawn.input.project.electrical?.distribution?.sources ?? {}).some(({ kind }) => kind === of)

/** Whether a plain switch is drawn: as a disconnect, in an inverter, or as a disconnect that nobody described. */
function hasSwitch(drawn: Drawn): boolean {
  const { project } = drawn.input
  return (
    disconnects(drawn).some(
      ({ kind, fused, breaker }) => fused !== true && (kind === 'dc' || (kind === 'pv_system' && breaker !== true)),
    ) ||
    drawn.sources.some(
      ({ unit }) =>
        own(project.equipment.inverters, own(project.inverter_units, unit)?.inverter)?.dc_disconnect === true,
    )
  )
}

const hasFuse = (drawn: Drawn): boolean =>
  disconnects(drawn).some(({ kind, fused }) => kind !== 'equipment' && fused === true) ||
  (isSupply(drawn) && !disconnects(drawn).some(({ kind }) => kind === 'pv_system'))

/** One family of graphic symbols, in the order of the legend. @source IEEE 315 (forms from memory) */
const SIGNS: readonly Sign[] = [
  { says: 'Photovoltaic modules', when: always, draw: (x, y) => sourceSymbol(x - 13, y) },
  { says: 'Inverter, dc to ac', when: always, draw: (x, y) => inverterSymbol(x - 10, y) },
  {
    says: 'DC converter behind modules',
    when: ({ sources }) => sources.some(({ device }) => device === 'converter'),
    draw: (x, y) => converterSymbol(x - 9, y),
  },
  {
    says: 'Rapid-shutdown unit behind modules',
    when: ({ sources }) => sources.some(({ device }) => device === 'shutdown unit'),
    draw: (x, y) => shutdownUnitSymbol(x - 9, y),
  },
  {
    says: 'RS: listed rapid-shutdown equipment; its control line',
    when: isControlled,
    draw: (x, y) => [
      line(x - 20, y + 3, x + 20, y + 3, { pen: 'thin', dash: 'hidden' }),
      label(x, y, 'RS', { sizePt: SIZE, align: 'center', valign: 'bottom' }),
    ],
  },
  {
    says: 'Shutdown initiator, a switch of its own',
    when: (drawn) => shutdownOf(drawn)?.initiator === 'switch',
    draw: boxedSwitch,
  },
  {
    says: 'Junction box',
    when: always,
    draw: (x, y) => junctionBox(x, y),
  },
  {
    says: 'Conductors of a circuit, with the tag of the schedule',
    when: always,
    draw: (x, y) => [level(x, y), ...tagSymbol(x, y, '#')],
  },
  { says: 'Circuit breaker', when: always, draw: (x, y) => [level(x, y), ...breakerSymbol(x, y)] },
  {
    says: 'Disconnect switch, hinge on the load side',
    when: hasSwitch,
    draw: (x, y) => [level(x, y), ...switchSymbol(x, y, 'right')],
  },
  {
    says: 'Fused disconnect, fuse on the load side of its switch (240.40)',
    when: hasFuse,
    draw: (x, y) => [level(x, y), ...fusedSwitchSymbol(x, y, 'right')],
  },
  {
    says: 'Busbar',
    when: always,
    draw: (x, y) => [line(x, y - 8, x, y + 8, { pen: 'heavy' }), line(x - 20, y, x, y, { pen: 'medium' })],
  },
  {
    says: 'Neutral bar with its bonding jumper',
    when: ({ wiring }) => bondingOf(wiring).jumper !== undefined,
    draw: (x, y) => neutralBar(x - 14, y + 3, x + 20, '#'),
  },
  { says: 'Utility meter', when: always, draw: meterSymbol },
  { says: 'Grounding electrode', when: always, draw: (x, y) => earthSymbol(x, y - 8) },
  {
    says: 'Equipment grounding and bonding conductor',
    when: always,
    draw: (x, y) => [line(x - 20, y, x + 20, y, { dash: 'dashed' })],
  },
  { says: 'Goes on at the same letter', when: isLong, draw: (x, y) => joinFlag(x - 12, y, 'A') },
  {
    says: 'In grey: there already',
    when: isLong,
    draw: (x, y) => lighter([level(x, y)]),
  },
  {
    says: 'Storage',
    when: (drawn) => hasSource(drawn, 'storage'),
    draw: (x, y) => batterySymbol(x - 13, y),
  },
  {
    says: 'Generator',
    when: (drawn) => hasSource(drawn, 'generator'),
    draw: (x, y) => existingSource('generator', x - 16, y),
  },
]

/** What holds for the whole diagram. */
const NOTES = [
  'Terminals are tightened to the torque that stands beside the equipment; where none stands, to its marking (110.14(D)).',
  'Numbers of labels are those of sheet E-604.',
  'Lines that cross without a dot do not join.',
]

/**
 * The symbols of the diagram with what they mean, and what holds for all of it.
 *
 * @param widthPt Room that they stand in.
 */
export function oneLineLegend(drawn: Drawn, widthPt: number): Block[] {
  const signs = SIGNS.filter(({ when }) => when(drawn))
  const columns = Math.max(1, Math.floor(widthPt / CELL.width))
  const cellPt = widthPt / columns
  return [
    { kind: 'heading', text: 'Symbols' },
    {
      kind: 'figure',
      heightPt: Math.ceil(signs.length / columns) * CELL.height,
      keep: true,
      draw: (left, top) =>
        onLayer(
          'legend',
          signs.flatMap(({ says, draw }, index) => {
            const x = left + (index % columns) * cellPt
            const y = top + (Math.floor(index / columns) + 0.5) * CELL.height
            return [
              // What stands in a symbol is not read aloud: its words stand beside it.
              ...asArtifact(draw(x + CELL.symbol / 2, y)),
              label(x + CELL.symbol + 4, y, says, {
                sizePt: SIZE,
                valign: 'middle',
                maxWidthPt: cellPt - CELL.symbol - 10,
              }),
            ]
          }),
        ),
    },
    { kind: 'list', items: NOTES, whole: true },
  ]
}
