import { StageError } from '../../worksheet/index.js'
import type { SquareInches } from '../../values/index.js'
import { chooseRaceway, judgeInside, judgeRaceway, racewayTableKind, type RacewayVerdict } from './choose-raceway.js'
import type { RacewaySegment } from './raceway-segment.js'

/**
 * How full the raceway of a segment gets; undefined where the inside of its kind is not known.
 *
 * @throws StageError when the named trade size is too small or no size is large enough.
 */
export function verdictOf(
  { stated, where }: RacewaySegment,
  count: number,
  areaIn2: SquareInches,
  nipple: boolean,
): RacewayVerdict | undefined {
  const { raceway: method, trade_size: tradeSize, inside_area_in2: insideIn2 } = stated
  const kind = racewayTableKind(method)
  const tooSmall = (verdict: RacewayVerdict | undefined, instead: string | undefined): StageError =>
    new StageError(
      `${where}.trade_size`,
      `${method} ${tradeSize ?? ''} is too small: ${count} conductors of ${areaIn2.toFixed(4)} in2 fill ${verdict?.fillPct.toFixed(1) ?? '?'} % of it, ${verdict?.limitPct ?? '?'} % is allowed`,
      `Use ${instead ?? 'more than one raceway'}`,
    )
  if (kind === undefined) {
    if (tradeSize === undefined || insideIn2 === undefined) return undefined
    const verdict = judgeInside(tradeSize, insideIn2, count, areaIn2, nipple)
    if (!verdict.passes) throw tooSmall(verdict, 'a larger trade size and its inside area')
    return verdict
  }
  const smallest = chooseRaceway(kind, count, areaIn2, nipple)
  if (tradeSize !== undefined) {
    const verdict = judgeRaceway(kind, tradeSize, count, areaIn2, nipple)
    if (verdict === undefined || !verdict.passes) throw tooSmall(verdict, smallest?.tradeSize)
    return verdict
  }
  if (smallest === undefined)
    throw new StageError(
      `${where}.raceway`,
      `${count} conductors of ${areaIn2.toFixed(3)} in2 do not fit the largest ${method} of the table`,
      'Divide the circuits between two raceways',
    )
  return smallest
}
