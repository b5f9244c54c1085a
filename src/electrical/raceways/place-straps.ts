import {
  ARRAY_CABLE_SUPPORT_IN,
  racewaySupports,
  tradeSizes,
  type TradeSize,
  type WiringMethod,
} from '../../tables/nec/index.js'
import { methodRow } from './wiring-method.js'
import { feetOf, type Feet } from '../../values/index.js'

/** Where a raceway is fastened. */
export interface Straps {
  readonly positionsFt: readonly Feet[]
  readonly maxSpacingFt: Feet
  readonly maxFromBoxFt: Feet
  readonly section: string
}

/**
 * Positions of the straps of a raceway or of cables in a straight piece between two boxes or fittings, evenly spread.
 *
 * @param tradeSize null for cables.
 * @param lengthFt Length of the piece, ft.
 * @returns Positions from its start, ft. A piece so short that one strap is near enough to both ends gets one in the middle.
 * @source NEC 320.30, 330.30, 334.30, 342.30, 344.30, 348.30, 350.30, 352.30, 356.30, 358.30
 */
export function placeStraps(method: WiringMethod, tradeSize: TradeSize | null, lengthFt: Feet): Straps {
  const { spacingFt, fromBoxIn, section } = methodRow(method).support ?? supportBySize(method, tradeSize)
  const fromBoxFt = feetOf(fromBoxIn)
  return {
    positionsFt: spread(lengthFt, spacingFt, fromBoxFt),
    maxSpacingFt: spacingFt,
    maxFromBoxFt: fromBoxFt,
    section,
  }
}

/** Supports of a raceway for which trade size decides. */
function supportBySize(kind: WiringMethod, tradeSize: TradeSize | null) {
  const family = kind === 'PVC 40' || kind === 'PVC 80' ? 'PVC' : kind
  const rank = tradeSizes.findIndex((size) => size === tradeSize)
  const rows = racewaySupports.filter((row) => row.kind === family)
  const row = rows.find((candidate) => {
    const last = (tradeSizes as readonly string[]).indexOf(candidate.toTradeSize)
    return last === -1 || rank <= last
  })
  if (row === undefined || rank === -1) throw new Error(`no support row for ${kind} ${tradeSize ?? ''}`)
  return { spacingFt: row.maxSpacingFt, fromBoxIn: row.maxFromBoxIn, section: row.section }
}

/**
 * Positions of the clips of exposed wire within an array, at most 24 in apart.
 *
 * @source NEC 690.31(C)(1) (2020)
 */
export function placeCableClips(lengthFt: Feet): Straps {
  const spacingFt = feetOf(ARRAY_CABLE_SUPPORT_IN)
  return {
    positionsFt: spread(lengthFt, spacingFt, spacingFt / 2),
    maxSpacingFt: spacingFt,
    maxFromBoxFt: spacingFt / 2,
    section: '690.31(C)(1)',
  }
}

function spread(lengthFt: Feet, maxSpacingFt: Feet, fromBoxFt: Feet): number[] {
  if (lengthFt <= 2 * fromBoxFt) return [round(lengthFt / 2)]
  const between = lengthFt - 2 * fromBoxFt
  const gaps = Math.ceil(between / maxSpacingFt - 1e-9)
  return Array.from({ length: gaps + 1 }, (_, i) => round(fromBoxFt + (between * i) / gaps))
}

const round = (ft: number): number => Math.round(ft * 1e6) / 1e6
