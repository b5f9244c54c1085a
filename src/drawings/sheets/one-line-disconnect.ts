import { inCapitals } from '../model/index.js'
import type { Disconnect } from '../../project/index.js'
import { label, line, TYPE_PT } from '../layout/index.js'
import type { Primitive } from '../model/index.js'
import type { DiagramJob, Output } from './one-line-job.js'
import { breakerSymbol, fusedSwitchSymbol, switchSymbol } from '../diagram/one-line-symbols.js'

const SIZE = TYPE_PT.small
/** Half of the box beside its middle, points. */
const LEFT_PT = 22
const RIGHT_PT = 26

/**
 * The disconnect of the PV system with a pole for every wire that passes through it; nothing when the breaker in the
 * panel is the disconnect. On the supply side there is always one, since it holds the overcurrent device; the grid, on its
 * right, is the live side.
 *
 * @param x Middle of its switches; `toX` is where the room for its text ends.
 */
export function drawDisconnect(job: DiagramJob, outputs: readonly Output[], x: number, toX: number): Primitive[] {
  const { electrical } = job.input.project
  const supply = electrical?.connection?.kind === 'supply_side'
  const stated = Object.entries(electrical?.disconnects ?? {}).filter(([, each]) => each.kind === 'pv_system')
  const [first] = stated
  if (first === undefined && !supply) return []
  const ys = outputs.map((output) => output.y)
  const [top, bottom] = [Math.min(...ys) - 15, Math.max(...ys) + 13]
  const symbol = symbolOf(first?.[1] ?? { fused: supply })
  const names = stated.map(([id]) => inCapitals(id.replaceAll('_', ' ')))
  return [
    {
      kind: 'rectangle',
      x: x - LEFT_PT,
      y: top,
      width: LEFT_PT + RIGHT_PT,
      height: bottom - top,
      pen: 'medium',
      fill: 'white',
    },
    ...ys.flatMap((y) => [line(x - LEFT_PT, y, x + RIGHT_PT, y, { pen: 'medium' }), ...symbol(x, y)]),
    label(x - LEFT_PT, top - 3, names.join(', ') || 'PV DISCONNECT', {
      face: 'bold',
      valign: 'bottom',
      maxWidthPt: Math.min(92, toX - x + LEFT_PT - 4),
    }),
    label(x - LEFT_PT, bottom + 3, words(first?.[1], supply, outputs, job.labels('pv_disconnect')), {
      sizePt: SIZE,
      maxWidthPt: toX - x + LEFT_PT - 8,
    }),
  ]
}

function symbolOf({ fused, breaker }: Pick<Disconnect, 'fused' | 'breaker'>): (x: number, y: number) => Primitive[] {
  if (fused === true) return (x, y) => fusedSwitchSymbol(x, y, 'right')
  return breaker === true ? breakerSymbol : (x, y) => switchSymbol(x, y, 'right')
}

function words(stated: Disconnect | undefined, supply: boolean, outputs: readonly Output[], marks: string): string {
  const ratings = [...new Set(outputs.flatMap((output) => (output.breakerA === null ? [] : [`${output.breakerA} A`])))]
  const facts = [
    'PV system disconnect',
    stated?.rating_a === undefined ? undefined : `${stated.rating_a} A`,
    stated?.lockable === true ? 'lockable' : undefined,
    stated?.service_rated === true ? 'service rated' : undefined,
    stated?.interrupting_rating_a === undefined ? undefined : `interrupts ${stated.interrupting_rating_a} A`,
    supply && ratings.length > 0 ? `overcurrent device ${ratings.join(', ')}` : undefined,
  ]
    .filter((each) => each !== undefined)
    .join(', ')
  return marks === '' ? facts : `${facts}\n${marks}`
}
