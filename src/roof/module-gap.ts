import type { Source, Worksheet } from '../worksheet/index.js'
import { feetOf, type Feet, type Inches } from '../values/index.js'

const SOURCE: Source = {
  document: 'Gap that mid clamps of framed modules commonly leave',
  standing: 'common practice, no source',
}

/**
 * Gap between neighbouring modules, ft: the person's, or half an inch as a stated assumption.
 *
 * @param path Dotted path where the person can state it.
 */
export function moduleGapFt(statedIn: Inches | undefined, path: string, worksheet: Worksheet): Feet {
  const gapIn =
    statedIn ??
    worksheet.assume({
      path,
      value: 0.5,
      unit: 'in',
      why: 'no gap between modules is stated; the mid clamp of the rail system sets it',
      source: SOURCE,
    })
  return feetOf(gapIn)
}
