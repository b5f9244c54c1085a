import type { PvModule } from '../../project/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import { sectionCurve } from './section-curve.js'
import { seriesTables, type SeriesCurve } from './series-curve.js'

export { shareOfParallel, shareOfString, type SeriesCurve } from './series-curve.js'

/** What modules with some of their sections in the shade give; see `shareOfString`. */
export function seriesCurve(module: PvModule, path: string, worksheet: Worksheet): SeriesCurve {
  return seriesTables(sectionCurve(module, path, worksheet))
}
