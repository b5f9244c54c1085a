import type { SourceStanding } from '../../worksheet/index.js'
import type { LoadEdition } from './edition.js'
import { ALLOWABLE_OF_STRENGTH_SNOW } from './snow-cases.js'

/** A combination of allowable stress design: factors of dead load, snow and wind. */
export interface LoadCombination {
  readonly name: string
  readonly direction: 'down' | 'uplift'
  readonly dead: number
  readonly snow: number
  readonly wind: number
  readonly standing: SourceStanding
}

function combinations(snow: number, standing: SourceStanding): readonly LoadCombination[] {
  const s = snow === 1 ? 'S' : `${snow}S`
  return [
    { name: 'D', direction: 'down', dead: 1, snow: 0, wind: 0, standing: 'secondary' },
    { name: `D + ${s}`, direction: 'down', dead: 1, snow, wind: 0, standing },
    { name: 'D + 0.6W', direction: 'down', dead: 1, snow: 0, wind: 0.6, standing: 'secondary' },
    { name: `D + 0.75(0.6W) + 0.75(${s})`, direction: 'down', dead: 1, snow: 0.75 * snow, wind: 0.45, standing },
    { name: '0.6D + 0.6W', direction: 'uplift', dead: 0.6, snow: 0, wind: 0.6, standing: 'secondary' },
  ]
}

/**
 * Combinations that an array on a roof can meet; roof live load is left out under modules close to the roof.
 *
 * @source ASCE 7-10 and 7-16 section 2.4.1 (secondary); 0.7 S of 7-22 sections 2.4.1 and C7.2 (secondary, three texts)
 */
export const LOAD_COMBINATIONS: Readonly<Record<LoadEdition, readonly LoadCombination[]>> = {
  'ASCE 7-10': combinations(1, 'secondary'),
  'ASCE 7-16': combinations(1, 'secondary'),
  'ASCE 7-22': combinations(ALLOWABLE_OF_STRENGTH_SNOW, 'secondary'),
}
