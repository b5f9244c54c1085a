import type { Amperes } from '../../values/index.js'

/** Currents between the lines of a service, each in phase with its own voltage; on a single-phase service only `ab`. */
export interface PairCurrents {
  readonly ab: Amperes
  readonly bc: Amperes
  readonly ca: Amperes
}

/** Currents in the lines A, B and C. */
export interface LineCurrents {
  readonly a: Amperes
  readonly b: Amperes
  readonly c: Amperes
}

export const pairs = ['ab', 'bc', 'ca'] as const

/** A current between A and B alone, which is all that a single-phase service has. */
export const onePair = (ab: Amperes): PairCurrents => ({ ab, bc: 0, ca: 0 })

/**
 * A balanced three-phase source as the three equal pairs that give the same line currents.
 *
 * @param lineA Current in each line, A.
 */
export function balancedPairs(lineA: Amperes): PairCurrents {
  const each = lineA / Math.sqrt(3)
  return { ab: each, bc: each, ca: each }
}

/** Sum of sources on the same lines. */
export function addPairs(sources: readonly PairCurrents[]): PairCurrents {
  const sum = (pair: keyof PairCurrents): Amperes => sources.reduce((total, source) => total + source[pair], 0)
  return { ab: sum('ab'), bc: sum('bc'), ca: sum('ca') }
}

/**
 * Line currents of sources between the lines, balanced voltages, one power factor for all: two currents 60 degrees apart
 * meet in each line.
 *
 * @source vector sum, for example I_A = sqrt(I_ab2 + I_ca2 + I_ab I_ca); three equal ones give sqrt(3) I
 */
export function lineCurrentsOf({ ab, bc, ca }: PairCurrents): LineCurrents {
  return { a: meeting(ab, ca), b: meeting(ab, bc), c: meeting(bc, ca) }
}

/** Alone, a current is the line current itself, without the noise of a root. */
function meeting(one: Amperes, other: Amperes): Amperes {
  if (one === 0 || other === 0) return one + other
  return Math.sqrt(one ** 2 + other ** 2 + one * other)
}

/** Current in the line that carries most, A. */
export function highestLineA(source: PairCurrents): Amperes {
  const { a, b, c } = lineCurrentsOf(source)
  return Math.max(a, b, c)
}

/**
 * Current that would lose as many volts in a two-wire circuit as the worst pair of lines here: what flows in the two lines
 * in phase with the voltage between them, halved.
 *
 * Three equal pairs give sqrt(3)/2 of the line current, so that 2 L I Z becomes sqrt(3) L I Z.
 */
export function twoWireEquivalentA({ ab, bc, ca }: PairCurrents): Amperes {
  const sum = ab + bc + ca
  return Math.max(...[ab, bc, ca].map((own) => (own === sum ? own : own + (sum - own) / 4)))
}

/** Largest deviation of a line current from the mean of the three, percent of the mean; 0 without current. */
export function unbalancePct(source: PairCurrents): number {
  const lines = Object.values(lineCurrentsOf(source))
  const mean = lines.reduce((sum, line) => sum + line, 0) / lines.length
  if (mean === 0) return 0
  return (100 * Math.max(...lines.map((line) => Math.abs(line - mean)))) / mean
}

/** Volt-amperes of sources between lines of a voltage; V times the sum of the pair currents. */
export const apparentPowerVa = ({ ab, bc, ca }: PairCurrents, lineToLineV: number): number =>
  lineToLineV * (ab + bc + ca)

/** Equal sources that take the pairs AB, BC, CA in turn. @param count Number of them. @param eachA Current of one, A. */
export function inTurn(count: number, eachA: Amperes): PairCurrents {
  const [ab, bc, ca] = [0, 1, 2].map((first) => Math.floor((count - first + 2) / 3))
  return { ab: (ab ?? 0) * eachA, bc: (bc ?? 0) * eachA, ca: (ca ?? 0) * eachA }
}
