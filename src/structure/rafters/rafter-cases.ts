import { DEFLECTION_WIND_SHARE } from '../../tables/irc/index.js'
import type { LoadCombination } from '../../tables/asce7/index.js'
import { loadDurationOf } from '../loads/index.js'
import type { LoadKind, RafterLoad } from './rafter-loads.js'

/** A combination on one rafter: which of its loads, with which factors. */
export interface RafterCase {
  readonly name: string
  readonly direction: LoadCombination['direction']
  /** CD of the wood. */
  readonly loadDuration: number
  readonly terms: readonly { readonly load: number; readonly factor: number }[]
}

const WITHOUT = ', without the array'

/** Which roof is looked at: both are designed for. @source IRC R324.4.1 and IBC 1607, panel systems (secondary) */
export type Roof = 'with the array' | 'without the array'

/** Combinations for strength; without the array those of dead load, live load and snow. */
export function strengthCases(
  loads: readonly RafterLoad[],
  combinations: readonly LoadCombination[],
  roof: Roof,
): RafterCase[] {
  const isBare = roof === 'without the array'
  return combinations.flatMap((row) =>
    isBare && (row.direction === 'uplift' || row.wind > 0) ? [] : casesOf(loads, row, isBare),
  )
}

function casesOf(loads: readonly RafterLoad[], row: LoadCombination, isBare: boolean): RafterCase[] {
  const indexOf = (kind: LoadKind, snowCase = ''): number =>
    loads.findIndex((load) => load.kind === kind && load.snowCase === snowCase)
  const isThere = (index: number): boolean => (loads[index]?.loads.length ?? 0) > 0
  const live = indexOf(isBare ? 'bare live' : 'live')
  const wind = indexOf(row.direction === 'uplift' ? 'wind up' : 'wind down')
  const array = indexOf(row.direction === 'uplift' ? 'least array' : 'array')
  const snowKind = isBare ? 'bare snow' : 'snow'
  const snowCases = row.snow > 0 ? loads.filter(({ kind }) => kind === snowKind).map(({ snowCase }) => snowCase) : ['']
  return snowCases.flatMap((snowCase) => {
    const snow = row.snow > 0 ? indexOf(snowKind, snowCase) : -1
    const there = { live: isThere(live), snow: isThere(snow), wind: isThere(wind) }
    // Without its own load a combination says what dead load alone says.
    if (row.snow > 0 && !there.snow && row.name !== 'D') return []
    const terms = [
      { load: indexOf('dead'), factor: row.dead },
      ...(isBare ? [] : [{ load: array, factor: row.dead }]),
      { load: live, factor: row.live },
      { load: wind, factor: row.wind },
      { load: snow, factor: row.snow },
    ].filter(({ load, factor }) => factor !== 0 && isThere(load))
    const lain = snowCase === '' ? '' : ` (${snowCase})`
    return [
      {
        name: `${row.name}${lain}${isBare ? WITHOUT : ''}`,
        direction: row.direction,
        loadDuration: loadDurationOf(row, there),
        terms,
      },
    ]
  })
}

/**
 * Variable loads alone, which the deflection limits are for.
 *
 * @source IRC table R301.7 with its note on wind (secondary); 0.7 S of strength-level snow (secondary: IBC 2024 table 1604.3)
 */
export function deflectionCases(loads: readonly RafterLoad[], combinations: readonly LoadCombination[]): RafterCase[] {
  const snowFactor = combinations.find(({ snow, wind }) => snow > 0 && wind === 0)?.snow ?? 1
  const windFactor = 0.6 * DEFLECTION_WIND_SHARE
  return loads.flatMap(({ kind, snowCase, loads: parts }, load): RafterCase[] => {
    if (parts.length === 0) return []
    const isBare = kind.startsWith('bare')
    const one = (name: string, factor: number, direction: RafterCase['direction'] = 'down'): RafterCase[] => [
      { name: `${name}${isBare ? WITHOUT : ''}`, direction, loadDuration: 1, terms: [{ load, factor }] },
    ]
    switch (kind) {
      case 'live':
      case 'bare live':
        return one('Lr', 1)
      case 'snow':
      case 'bare snow':
        return one(`${snowFactor === 1 ? '' : snowFactor}S (${snowCase})`, snowFactor)
      case 'wind down':
        return one(`${windFactor.toFixed(2)}W`, windFactor)
      case 'wind up':
        return one(`${windFactor.toFixed(2)}W`, windFactor, 'uplift')
      case 'dead':
      case 'array':
      case 'least array':
        return []
    }
  })
}
