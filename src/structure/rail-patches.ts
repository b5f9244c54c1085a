import type { LineLoad } from './continuous-beam.js'
import type { RailLine } from './rail-lines.js'

/** A wind zone with or without the array edge factor. */
export interface WindKey {
  readonly zone: string
  readonly exposed: boolean
}

/** A length of rail over which the carried roof area per zone does not change. */
export interface RailPatch {
  readonly fromIn: number
  readonly toIn: number
  /** Width of roof that this rail carries in each zone, ft; a few percent may be negative where the module overhangs the other rail. */
  readonly widths: readonly { readonly key: WindKey; readonly widthFt: number }[]
  readonly totalWidthFt: number
}

const CELL_IN = 3
const ROWS = 16

/**
 * Loads a rail by real areas: every module is a beam across its two rails, and each bit of it belongs to the zone it lies in.
 *
 * @param keyAt Zone and exposure at a point of the plane, ft.
 * @source statics: share of a load at y on the rail at r with the other at o is (o - y) / (o - r)
 */
export function railPatches(rail: RailLine, keyAt: (xFt: number, yFt: number) => WindKey): RailPatch[] {
  const patches: RailPatch[] = []
  for (const module of rail.modules) {
    const cells = Math.max(1, Math.round((module.widthFt * 12) / CELL_IN))
    for (let c = 0; c < cells; c++) {
      const fromIn = (module.xFt + (module.widthFt * c) / cells) * 12
      const toIn = (module.xFt + (module.widthFt * (c + 1)) / cells) * 12
      const widths = widthsAt(rail, module.yFt, module.heightFt, (yFt) => keyAt((fromIn + toIn) / 24, yFt))
      push(patches, { fromIn, toIn, widths, totalWidthFt: widths.reduce((sum, w) => sum + w.widthFt, 0) })
    }
  }
  return patches
}

function widthsAt(rail: RailLine, yFt: number, heightFt: number, keyOf: (yFt: number) => WindKey): RailPatch['widths'] {
  const [own, other] = [rail.yIn / 12, rail.partnerYIn / 12]
  const found = new Map<string, { key: WindKey; widthFt: number }>()
  for (let r = 0; r < ROWS; r++) {
    const y = yFt + (heightFt * (r + 0.5)) / ROWS
    const key = keyOf(y)
    const name = `${key.zone}${key.exposed ? '+' : ''}`
    const share = ((other - y) / (other - own)) * (heightFt / ROWS)
    const held = found.get(name)
    if (held === undefined) found.set(name, { key, widthFt: share })
    else held.widthFt += share
  }
  return [...found.values()]
}

/** Joins equal neighbours, so that the beam has few loads. */
function push(patches: RailPatch[], next: RailPatch): void {
  const last = patches.at(-1)
  if (last !== undefined && Math.abs(last.toIn - next.fromIn) < 1e-6 && sameWidths(last.widths, next.widths)) {
    patches[patches.length - 1] = { ...last, toIn: next.toIn }
  } else patches.push(next)
}

function sameWidths(a: RailPatch['widths'], b: RailPatch['widths']): boolean {
  return (
    a.length === b.length &&
    a.every(({ key, widthFt }, index) => {
      const other = b[index]
      return (
        other !== undefined &&
        other.key.zone === key.zone &&
        other.key.exposed === key.exposed &&
        Math.abs(other.widthFt - widthFt) < 1e-9
      )
    })
  )
}

/** Keeps the logarithm finite for a part that carries next to nothing, ft2; all lines are flat there. */
export const LEAST_AREA_FT2 = 0.5

/** Line loads from a pressure that depends on the zone, lb per in. */
export function patchLoads(
  patches: readonly RailPatch[],
  lbPerFt: (key: WindKey, widthFt: number) => number,
): LineLoad[] {
  return patches.map((patch) => ({
    fromIn: patch.fromIn,
    toIn: patch.toIn,
    lbPerIn: patch.widths.reduce((sum, w) => sum + lbPerFt(w.key, w.widthFt), 0) / 12,
  }))
}
