import { conductorSizes, type ConductorSize } from '../../tables/nec/index.js'
import type { Circuit, Trunk } from '../system/index.js'
import { LEAST_RUN_SHARE, trunkEachA, trunkOhmPerKft } from './voltage-limits.js'
import { invertersOnLongerHalf, trunkRiseV } from './voltage-rise.js'
import type { Feet, Percent } from '../../values/index.js'

/** Voltage rise of a circuit up to the point of connection, percent of its voltage. */
export interface RiseParts {
  readonly trunkPct: Percent
  /** Of all its runs, with the combined output. */
  readonly runsPct: Percent
  readonly limitPct: Percent
  /** Length of those runs one way, ft. */
  readonly runsFt: Feet
  /** What the runs would take with one size in every piece, percent; undefined where the metal is not made in that size. */
  readonly runsPctWith: (size: ConductorSize) => number | undefined
}

/**
 * What brings a voltage rise within its limit, each with its number; each holds by itself.
 *
 * A remedy that shortens the trunk counts only when it leaves the runs as much as they are sized for now.
 */
export function riseRemedies(circuit: Circuit, parts: RiseParts): string[] {
  const { trunk } = circuit
  const { runsPct, limitPct } = parts
  if (trunk === undefined) return shorterRuns(parts)
  const mostPct = Math.min((1 - LEAST_RUN_SHARE) * limitPct, limitPct - runsPct)
  return [
    ...shorterTrunk(trunk, parts),
    ...centreFed(circuit, trunk, mostPct),
    ...moreBranches(circuit, trunk, mostPct),
    ...largerRuns(parts),
    ...shorterRuns(parts),
  ]
}

/** Only where the trunk leaves the runs their share: below it a shorter run would get smaller conductors. */
function shorterRuns({ trunkPct, runsPct, limitPct, runsFt }: RiseParts): string[] {
  const leftPct = limitPct - trunkPct
  const lengthFt = Math.floor((runsFt * leftPct) / runsPct)
  if (leftPct < LEAST_RUN_SHARE * limitPct || lengthFt < 1) return []
  return [`shorten the runs from ${runsFt.toFixed(0)} to ${lengthFt} ft`]
}

function shorterTrunk(trunk: Trunk, { trunkPct, runsPct, limitPct }: RiseParts): string[] {
  const lengthFt = Math.floor((trunk.lengthFt * (limitPct - runsPct)) / trunkPct)
  return lengthFt < 1 ? [] : [`keep the trunk to ${lengthFt} ft from the junction box to its last inverter`]
}

function centreFed(circuit: Circuit, trunk: Trunk, mostPct: Percent): string[] {
  if (trunk.feed === 'centre') return []
  const onHalf = invertersOnLongerHalf(trunk.inverters, 'centre')
  const pct = trunkPctOf(circuit, trunk, onHalf)
  return pct > mostPct ? [] : [`feed the trunk in its centre (the trunk then takes ${pct.toFixed(2)} %)`]
}

/** The fewest equal branches whose trunks, fed as now, leave the runs their share. */
function moreBranches(circuit: Circuit, trunk: Trunk, mostPct: Percent): string[] {
  for (let branches = 2; branches <= trunk.inverters; branches++) {
    const each = Math.ceil(trunk.inverters / branches)
    const pct = trunkPctOf(circuit, trunk, invertersOnLongerHalf(each, trunk.feed))
    if (pct <= mostPct)
      return [
        `divide it into ${branches} branches of at most ${each} inverters (the trunk of each then takes ${pct.toFixed(2)} %)`,
      ]
  }
  return []
}

/** Rise of a trunk with the spacing of the present one, percent. */
function trunkPctOf(circuit: Circuit, trunk: Trunk, onHalf: number): number {
  const spacingFt = trunk.lengthFt / invertersOnLongerHalf(trunk.inverters, trunk.feed)
  const eachA = trunkEachA(circuit, onHalf)
  return (100 * trunkRiseV(onHalf, spacingFt, eachA, trunkOhmPerKft(trunk.cable))) / circuit.voltageV
}

function largerRuns({ trunkPct, limitPct, runsPctWith }: RiseParts): string[] {
  const size = conductorSizes.find((candidate) => trunkPct + (runsPctWith(candidate) ?? Infinity) <= limitPct)
  return size === undefined
    ? []
    : [`name size_awg: ${size} in every segment of its runs, where their terminals take it`]
}
