import {
  cableText,
  type CircuitValues,
  type RacewayValues,
  type SegmentValues,
  type WiringValues,
} from '../../electrical/index.js'
import { plainNumber } from '../layout/index.js'
import type { Feet } from '../../values/index.js'

/** A way of conductors with the number that marks it on the diagram and in the schedules. */
export interface WireTag {
  readonly number: number
  /** Ids of the circuits in it. */
  readonly circuits: readonly string[]
  readonly inArray: boolean
  readonly where: string
  readonly conductors: string
  readonly raceway: string
  readonly lengthFt: Feet
  readonly fill: string
}

/** Numbers every trunk cable and raceway once, in the order from the array to the panel. */
export function wireTags(wiring: WiringValues): WireTag[] {
  const trunks = new Map<string, { circuits: string[]; segment: SegmentValues }>()
  for (const circuit of wiring.circuits) {
    const segment = trunkOf(circuit)
    if (segment === undefined) continue
    const key = `${segment.size_awg} ${segment.insulation} ${segment.egc_awg ?? ''}`
    const same = trunks.get(key)
    if (same === undefined) trunks.set(key, { circuits: [circuit.id], segment })
    else same.circuits.push(circuit.id)
  }
  const tags = [
    ...[...trunks.values()].map(({ circuits, segment }) => ({
      circuits,
      inArray: true,
      where: 'array, behind the modules',
      conductors: `${segment.size_awg} AWG ${segment.insulation}${segment.egc_awg === null ? '' : ` with ${segment.egc_awg} AWG ground`}`,
      raceway: 'none, clipped to the rails',
      lengthFt: Math.max(
        ...wiring.circuits.flatMap((each) => (circuits.includes(each.id) ? [trunkOf(each)?.length_ft ?? 0] : [0])),
      ),
      fill: '',
    })),
    ...wiring.raceways.map((raceway) => ({
      circuits: raceway.circuits,
      inArray: raceway.location === 'array',
      where: `${raceway.id.replaceAll('_', ' ')} (${raceway.location.replaceAll('_', ' ')})`,
      conductors: conductorText(raceway),
      raceway: racewayText(raceway),
      lengthFt: raceway.length_ft,
      fill:
        raceway.fill_pct === null || raceway.fill_limit_pct === null
          ? ''
          : `${plainNumber(raceway.fill_pct, 0)} of ${plainNumber(raceway.fill_limit_pct, 0)} %`,
    })),
  ]
  return tags.map((tag, index) => ({ number: index + 1, ...tag }))
}

function trunkOf(circuit: CircuitValues): SegmentValues | undefined {
  return circuit.segments.find((segment) => segment.id === `${circuit.id}.trunk`)
}

function racewayText({ form, type, trade_size: tradeSize }: RacewayValues): string {
  switch (form) {
    case 'open':
      return 'none, clipped to the rails'
    case 'cable':
      return 'none, cable'
    case 'raceway':
      return `${tradeSize ?? '?'} in ${type}`
  }
}

/** `4 x 12 AWG THWN-2 (L1, L2); 1 x 12 AWG ground`. */
function conductorText(raceway: RacewayValues): string {
  if (raceway.form === 'cable') return cableText(raceway)
  const sums = new Map<string, number>()
  for (const each of raceway.conductors) {
    const use = { current_carrying: '', neutral: ' neutral', grounding: ' ground' }[each.use]
    const metal = each.material === 'copper' ? 'Cu' : 'Al'
    const key = `${awg(each.size_awg)} ${metal} ${each.use === 'grounding' ? '' : each.insulation}${use}`.replaceAll(
      '  ',
      ' ',
    )
    sums.set(key, (sums.get(key) ?? 0) + each.count)
  }
  return [...sums].map(([text, count]) => `${count} x ${text}`).join('; ')
}

/** `12 AWG`, `250 kcmil`. */
export function awg(size: string): string {
  return size.includes('kcmil') ? size : `${size} AWG`
}
