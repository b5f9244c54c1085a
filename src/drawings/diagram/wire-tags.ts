import {
  cableText,
  type CircuitValues,
  type ConductorValues,
  type RacewayValues,
  type WiringValues,
} from '../../electrical/index.js'
import { plainNumber } from '../layout/index.js'
import type { Feet } from '../../values/index.js'

/** A conductor of the PV system as the diagram marks it on the wire of its circuit. */
export interface WireTag {
  /** Of the list of conductors: `2a`. */
  readonly tag: string
  readonly circuits: readonly string[]
  readonly inArray: boolean
  /** Whether it ends in a box where the next one of its circuit begins. */
  readonly toBox: boolean
}

/** A trunk cable or raceway with the number that the tags of its conductors begin with. */
export interface NumberedWay {
  readonly number: number
  /** Ids of the circuits in it. */
  readonly circuits: readonly string[]
  readonly where: string
  readonly conductors: string
  readonly raceway: string
  readonly lengthFt: Feet
  readonly fill: string
}

const TRUNK = 'listed trunk cable'

export const isTrunk = ({ method }: ConductorValues): boolean => method === TRUNK

/** Tags that begin with a number mark what lies between the array and the connection. */
const NUMBERED = /^(\d+)[a-z]*$/u

const numberOf = ({ tag }: ConductorValues): number | undefined => {
  const found = NUMBERED.exec(tag)?.[1]
  return found === undefined ? undefined : Number(found)
}

/** The conductors from the array to the connection, in the order of the list, each to be drawn once. */
export function wireTags(wiring: WiringValues): WireTag[] {
  return wiring.conductors.flatMap((conductor) => {
    const number = numberOf(conductor)
    if (number === undefined) return []
    const { tag, circuits, method, to } = conductor
    const inArray = method === TRUNK || racewayOf(wiring, number)?.location === 'array'
    return [{ tag, circuits, inArray, toBox: to.startsWith('box ') }]
  })
}

/** Conductors whose tag begins with a letter: feeders F, taps T, service S, grounding and bonding G. */
export function lettered(wiring: WiringValues, letter: 'F' | 'T' | 'S' | 'G'): ConductorValues[] {
  return wiring.conductors.filter(({ tag }) => tag.startsWith(letter))
}

/** Raceway with a number; undefined for the number of a trunk cable. */
export function racewayOf(wiring: WiringValues, number: number): RacewayValues | undefined {
  const trunks = new Set(wiring.conductors.filter(({ method }) => method === TRUNK).map(numberOf)).size
  return number > trunks ? wiring.raceways[number - trunks - 1] : undefined
}

/** Raceway of a conductor; undefined for trunk cables, feeders and the like. */
export function racewayOfTag(wiring: WiringValues, conductor: ConductorValues): RacewayValues | undefined {
  const number = numberOf(conductor)
  return number === undefined ? undefined : racewayOf(wiring, number)
}

/** Every trunk cable and raceway once, by its number. */
export function numberedWays(wiring: WiringValues): NumberedWay[] {
  const numbers = new Map<number, ConductorValues[]>()
  for (const conductor of wiring.conductors) {
    const number = numberOf(conductor)
    if (number !== undefined) numbers.set(number, [...(numbers.get(number) ?? []), conductor])
  }
  return [...numbers].map(([number, conductors]) => {
    const raceway = racewayOf(wiring, number)
    const circuits = conductors.flatMap((each) => each.circuits)
    return { number, circuits, ...(raceway === undefined ? trunkWay(wiring, circuits) : racewayWay(raceway)) }
  })
}

type Way = Omit<NumberedWay, 'number' | 'circuits'>

function trunkWay(wiring: WiringValues, circuits: readonly string[]): Way {
  const segments = wiring.circuits.filter(({ id }) => circuits.includes(id)).flatMap((each) => trunkOf(each) ?? [])
  const [first] = segments
  const ground = first?.egc_awg ?? null
  return {
    where: 'array, behind the modules',
    conductors: `${first?.size_awg ?? '?'} AWG ${first?.insulation ?? ''}${ground === null ? '' : ` with ${ground} AWG ground`}`,
    raceway: 'none, clipped to the rails',
    lengthFt: Math.max(0, ...segments.map((each) => each.length_ft)),
    fill: '',
  }
}

function racewayWay(raceway: RacewayValues): Way {
  return {
    where: `${raceway.id.replaceAll('_', ' ')} (${raceway.location.replaceAll('_', ' ')})`,
    conductors: conductorText(raceway),
    raceway: racewayKind(raceway),
    lengthFt: raceway.length_ft,
    fill: fillText(raceway),
  }
}

export const fillText = ({ fill_pct: fill, fill_limit_pct: limit }: RacewayValues): string =>
  fill === null || limit === null ? '' : `${plainNumber(fill, 0)} of ${plainNumber(limit, 0)} %`

function trunkOf(circuit: CircuitValues): CircuitValues['segments'][number] | undefined {
  return circuit.segments.find((segment) => segment.id === `${circuit.id}.trunk`)
}

/** `3/4 in EMT`, or how conductors without a raceway lie. */
export function racewayKind({ form, type, trade_size: tradeSize }: RacewayValues): string {
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
    const key = `${awg(each.size_awg)} ${metalOf(each.material)} ${each.use === 'grounding' ? '' : each.insulation}${use}`
    const tidy = key.replaceAll('  ', ' ')
    sums.set(tidy, (sums.get(tidy) ?? 0) + each.count)
  }
  return [...sums].map(([text, count]) => `${count} x ${text}`).join('; ')
}

export const metalOf = (material: string): string => (material === 'copper' ? 'Cu' : 'Al')

/** `12 AWG`, `250 kcmil`. */
export function awg(size: string): string {
  return size.includes('kcmil') ? size : `${size} AWG`
}

/** `2 x 4/0 AWG Al`: parallel sets first. */
export function sizeText({ sets, size_awg: size, material }: ConductorValues): string {
  return `${sets > 1 ? `${sets} x ` : ''}${awg(size)} ${metalOf(material)}`
}
