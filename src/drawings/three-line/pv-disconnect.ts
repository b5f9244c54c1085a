import { inCapitals } from '../model/index.js'
import type { Disconnect } from '../../project/index.js'
import { label, line, TYPE_PT } from '../layout/index.js'
import type { Primitive } from '../model/index.js'
import { bondingOf } from '../diagram/bonding.js'
import { breakerSymbol, fusedSwitchSymbol, switchSymbol, tagSymbol } from '../diagram/one-line-symbols.js'
import { dot } from '../tree/tree-symbols.js'
import type { PvJob } from './sources.js'
import { bundle, poles, run, type Slots, type Wire } from './wires.js'

const SIZE = TYPE_PT.small

/** Wires of an output before a disconnect and beyond it. */
export interface Through {
  readonly wires: readonly Wire[]
  readonly beyond: readonly Wire[]
  readonly x: number
  readonly y: number
}

/**
 * The PV system disconnect with the poles of all outputs: lines through its poles, the neutral past them; ahead of the
 * service its bond to the ground.
 *
 * @param devicesA Overcurrent devices in it.
 */
export function drawDisconnect(
  { slots, wiring }: PvJob,
  through: readonly Through[],
  stated: readonly [string, Disconnect] | undefined,
  devicesA: readonly number[],
): Primitive[] {
  const ys = through.map(({ y }) => y)
  const [top, bottom, x] = [
    Math.min(...ys) - slots.halfPt - 15,
    Math.max(...ys) + slots.halfPt + 11,
    through[0]?.x ?? 0,
  ]
  const symbol = poleSymbol(stated?.[1] ?? { fused: devicesA.length > 0 })
  const bond = bondingOf(wiring).others.find(
    ({ from, method }) => from === 'PV disconnect' && method === 'main bonding jumper',
  )
  const words = [
    stated?.[1].rating_a === undefined ? '' : `${stated[1].rating_a} A`,
    devicesA.length === 0 ? '' : `overcurrent device ${devicesA.join(', ')} A`,
  ].filter((word) => word !== '')
  return [
    { kind: 'rectangle', x: x - 24, y: top, width: 48, height: bottom - top, pen: 'medium' },
    ...through.flatMap(({ wires, beyond, y }) => [
      ...bundle(
        slots,
        wires.filter((wire) => wire !== 'G' || beyond.includes('G')),
        x - 24,
        x + 24,
        y,
      ),
      // A ground that does not go on ends at the enclosure.
      ...(wires.includes('G') && !beyond.includes('G')
        ? [run('G', x - 24, y + slots.dy('G'), x - 8, y + slots.dy('G')), dot(x - 8, y + slots.dy('G'))]
        : []),
      ...poles(slots, wires, x, y, symbol),
    ]),
    ...(bond === undefined ? [] : pvBond(slots, x, Math.max(...ys), bond.tag)),
    label(x - 24, top - 2, inCapitals((stated?.[0] ?? 'PV disconnect').replaceAll('_', ' ')), {
      sizePt: SIZE,
      face: 'bold',
      valign: 'bottom',
    }),
    label(x - 24, bottom + (bond === undefined ? 2 : 17), words.join(', '), { sizePt: SIZE, maxWidthPt: 120 }),
  ]
}

/** How a pole of a disconnect is drawn. */
function poleSymbol({ fused, breaker }: Pick<Disconnect, 'fused' | 'breaker'>): (x: number, y: number) => Primitive[] {
  if (fused === true) return (x, y) => fusedSwitchSymbol(x, y, 'right')
  return breaker === true ? breakerSymbol : (x, y) => switchSymbol(x, y, 'right')
}

/** Neutral to enclosure of a service disconnect of its own. */
function pvBond(slots: Slots, x: number, y: number, tag: string): Primitive[] {
  const [top, bottom] = [y + slots.dy('N'), y + slots.dy('G')]
  return [
    line(x - 8, top, x - 8, bottom, { pen: 'heavy' }),
    dot(x - 8, top),
    line(x - 8, bottom, x - 8, y + 34, { pen: 'hair' }),
    ...tagSymbol(x - 8, y + 35, tag),
  ]
}
