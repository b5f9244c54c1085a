import type { SourceStanding } from '../../worksheet/index.js'
import type { LoadEdition } from './edition.js'
import { ALLOWABLE_OF_STRENGTH_SNOW } from './snow-cases.js'

/** A combination of allowable stress design: factors of dead load, roof live load, snow and wind. */
export interface LoadCombination {
  readonly name: string
  readonly direction: 'down' | 'uplift'
  readonly dead: number
  readonly live: number
  readonly snow: number
  readonly wind: number
  readonly standing: SourceStanding
}

function combinations(snow: number): readonly LoadCombination[] {
  const s = snow === 1 ? 'S' : `${snow}S`
  const standing = 'secondary' as const
  const none = { direction: 'down', dead: 1, live: 0, snow: 0, wind: 0, standing } as const
  return [
    { ...none, name: 'D' },
    { ...none, name: 'D + Lr', live: 1 },
    { ...none, name: `D + ${s}`, snow },
    { ...none, name: 'D + 0.6W', wind: 0.6 },
    { ...none, name: 'D + 0.75(0.6W) + 0.75Lr', live: 0.75, wind: 0.45 },
    { ...none, name: `D + 0.75(0.6W) + 0.75(${s})`, snow: 0.75 * snow, wind: 0.45 },
    { ...none, name: '0.6D + 0.6W', direction: 'uplift', dead: 0.6, wind: 0.6 },
  ]
}

/**
 * Combinations that a rafter under an array can meet.
 *
 * @source ASCE 7-10 and 7-16 section 2.4.1; 0.7 S of 7-22 section 2.4.1 equations 3a, 4a and 6a (all secondary)
 */
export const ROOF_COMBINATIONS: Readonly<Record<LoadEdition, readonly LoadCombination[]>> = {
  'ASCE 7-10': combinations(1),
  'ASCE 7-16': combinations(1),
  'ASCE 7-22': combinations(ALLOWABLE_OF_STRENGTH_SNOW),
}

const onModules = (edition: LoadEdition): readonly LoadCombination[] =>
  ROOF_COMBINATIONS[edition].filter(({ live }) => live === 0)

/** Those that an array itself can meet: roof live load is left out on modules close to the roof. */
export const LOAD_COMBINATIONS: Readonly<Record<LoadEdition, readonly LoadCombination[]>> = {
  'ASCE 7-10': onModules('ASCE 7-10'),
  'ASCE 7-16': onModules('ASCE 7-16'),
  'ASCE 7-22': onModules('ASCE 7-22'),
}
