import type { PvModule } from '../../project/index.js'
import type { Worksheet } from '../../worksheet/index.js'
export interface SeriesCurve {
  readonly sections: number
}
export function seriesCurve(module: PvModule, _path: string, _worksheet: Worksheet): SeriesCurve {
  return { sections: module.bypass_sections ?? 3 }
}
export function shareOfString(_curve: SeriesCurve, litShare: number, dullShare: number): number {
  return Math.max(litShare, dullShare)
}
export function shareOfParallel(_curve: SeriesCurve, litShares: readonly number[], dullShare: number): number {
  return litShares.reduce((sum, lit) => sum + Math.max(lit, dullShare), 0) / litShares.length
}
