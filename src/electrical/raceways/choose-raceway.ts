import {
  NIPPLE_FILL_PCT,
  racewayAreas,
  racewayFill,
  tradeSizes,
  type RacewayTableKind,
  type TradeSize,
  type WiringMethod,
} from '../../tables/nec/index.js'
import type { Percent, SquareInches } from '../../values/index.js'

export type RacewayKind = 'EMT' | 'PVC 40' | 'PVC 80' | 'LFNC' | 'LFMC' | 'RMC'

/** How full one trade size gets. */
export interface RacewayVerdict {
  readonly tradeSize: TradeSize
  readonly insideIn2: SquareInches
  readonly fillPct: Percent
  readonly limitPct: Percent
  readonly passes: boolean
}

const TABLE_KIND: Readonly<Record<RacewayKind, RacewayTableKind>> = {
  EMT: 'EMT',
  'PVC 40': 'PVC Sch 40',
  'PVC 80': 'PVC Sch 80',
  LFNC: 'LFNC-B',
  LFMC: 'LFMC',
  RMC: 'RMC',
}

/** A wiring method as kind of raceway whose inside the tables hold; undefined for the others. */
export function racewayTableKind(method: WiringMethod): RacewayKind | undefined {
  return RACEWAY_KINDS.find((kind) => kind === method)
}

const RACEWAY_KINDS: readonly RacewayKind[] = ['EMT', 'PVC 40', 'PVC 80', 'LFNC', 'LFMC', 'RMC']

/** How full a raceway of another inside area gets. */
export function judgeInside(
  tradeSize: TradeSize,
  insideIn2: SquareInches,
  conductors: number,
  areaIn2: SquareInches,
  nipple: boolean,
): RacewayVerdict {
  const limitPct = fillLimitPct(conductors, nipple)
  const fillPct = (areaIn2 / insideIn2) * 100
  return { tradeSize, insideIn2, fillPct, limitPct, passes: fillPct <= limitPct * (1 + 1e-9) }
}

/**
 * Largest share of the inside that conductors may fill.
 *
 * @returns percent.
 * @source NEC Chapter 9 Table 1 and note 4
 */
export function fillLimitPct(conductors: number, nipple: boolean): Percent {
  if (nipple) return NIPPLE_FILL_PCT
  return racewayFill.find((row) => conductors <= row.to)?.percent ?? 40
}

/**
 * How full one trade size gets.
 *
 * @param conductors Number of all conductors, the grounding ones too.
 * @param areaIn2 Sum of their cross-sections, in2.
 * @source NEC Chapter 9 Table 4; LFNC as type B
 */
export function judgeRaceway(
  kind: RacewayKind,
  tradeSize: TradeSize,
  conductors: number,
  areaIn2: SquareInches,
  nipple: boolean,
): RacewayVerdict | undefined {
  const row = racewayAreas.find((candidate) => candidate.kind === TABLE_KIND[kind] && candidate.tradeSize === tradeSize)
  if (row === undefined) return undefined
  const limitPct = fillLimitPct(conductors, nipple)
  const allowedIn2 = limitPct === 40 ? row.area40In2 : (row.area100In2 * limitPct) / 100
  const fillPct = (areaIn2 / row.area100In2) * 100
  return { tradeSize, insideIn2: row.area100In2, fillPct, limitPct, passes: areaIn2 <= allowedIn2 }
}

/**
 * The smallest trade size that takes the conductors.
 *
 * @returns undefined when even the largest of the table is too small.
 */
export function chooseRaceway(
  kind: RacewayKind,
  conductors: number,
  areaIn2: SquareInches,
  nipple: boolean,
): RacewayVerdict | undefined {
  return tradeSizes
    .flatMap((size) => judgeRaceway(kind, size, conductors, areaIn2, nipple) ?? [])
    .find((verdict) => verdict.passes)
}
