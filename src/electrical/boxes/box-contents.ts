import type { WiringBox } from '../../project/index.js'
import { boxConductorSizes, type BoxConductorSize, type ConductorSize } from '../../tables/nec/index.js'
import type { BoxConductors, BoxContents } from './box-fill.js'
import type { BoxSite } from './box-sites.js'
import type { Entering } from './entering.js'

/** What is in a stated box. */
export interface Held {
  readonly contents: BoxContents
  /** Conductors of 4 AWG and larger, which count by the size of the box and not by volume. */
  readonly large: readonly Entering[]
  readonly spliced: boolean
}

/** Volumes of a conductor that passes whole with a long loop. */
const LONG_LOOP = 2

/**
 * Conductors and fittings of a box: one for each conductor that passes whole, one each before and behind a splice.
 *
 * Clamps count unless they are stated to be outside, which is on the safe side.
 */
export function heldIn({ box, incoming, outgoing }: BoxSite): Held {
  const spliced = box.splice === true || !passesWhole(insulated(incoming), insulated(outgoing))
  const groundsWhole = !spliced && passesWhole(grounds(outgoing), grounds(incoming), false)
  const loops = box.long_loops === true ? LONG_LOOP : 1
  const once = (side: (all: readonly Entering[]) => Entering[]) => moreOf(side(incoming), side(outgoing))
  const conductors = spliced
    ? [...insulated(incoming), ...insulated(outgoing)]
    : once(insulated).map((one) => ({ ...one, count: loops * one.count }))
  const entering = [...conductors, ...(groundsWhole ? once(grounds) : [...grounds(incoming), ...grounds(outgoing)])]
  return {
    spliced,
    large: entering.filter(({ size }) => smallSize(size) === undefined),
    contents: { ...fittingsOf(box), conductors: [...entering.flatMap(small), ...foreign(box)] },
  }
}

const insulated = (all: readonly Entering[]): Entering[] => all.filter(({ grounding }) => !grounding)
const grounds = (all: readonly Entering[]): Entering[] => all.filter(({ grounding }) => grounding)

function fittingsOf(box: WiringBox): Omit<BoxContents, 'conductors'> {
  return {
    internalClamps: (box.clamps ?? 'internal') === 'internal',
    supportFittings: box.support_fittings ?? 0,
    terminalBlocks: box.terminal_blocks ?? 0,
    devices: (box.devices ?? []).map(({ size_awg: size, gangs }) => ({ size, gangs: gangs ?? 1 })),
  }
}

/** Whether all go on in conductors of the same size and kind, those of a circuit in its own. */
function passesWhole(from: readonly Entering[], to: readonly Entering[], sameCircuit = true): boolean {
  return from.every((one) =>
    to.some(
      ({ circuit, size, kind }) => (!sameCircuit || circuit === one.circuit) && size === one.size && kind === one.kind,
    ),
  )
}

/** Of conductors that pass whole, the side that has more. */
function moreOf(incoming: Entering[], outgoing: Entering[]): Entering[] {
  const sum = (all: readonly Entering[]): number => all.reduce((total, { count }) => total + count, 0)
  return sum(outgoing) > sum(incoming) ? outgoing : incoming
}

function small({ size, count, grounding }: Entering): BoxConductors[] {
  const counted = smallSize(size)
  return counted === undefined ? [] : [{ size: counted, count, grounding }]
}

const smallSize = (size: ConductorSize): BoxConductorSize | undefined =>
  boxConductorSizes.find((candidate) => candidate === size)

function foreign(box: WiringBox): BoxConductors[] {
  return (box.other_conductors ?? []).map(({ size_awg: size, count, grounding }) => ({
    size,
    count,
    grounding: grounding === true,
  }))
}
