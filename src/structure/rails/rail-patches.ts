import type { ModulePlacement, RailLine } from '../../roof/index.js'
import type { LineLoad } from '../beam/index.js'
import { feetOf, inchesOf, type Feet, type Inches } from '../../values/index.js'

/** A wind zone with or without the array edge factor. */
export interface WindKey {
  readonly zone: string
  readonly exposed: boolean
}

/** A length of rail over which the carried roof area per zone does not change. */
export interface RailPatch {
  readonly fromIn: Inches
  readonly toIn: Inches
  /** Width of roof that this rail carries in each zone, ft; a few percent may be negative where the module overhangs the other rail. */
  readonly widths: readonly { readonly key: WindKey; readonly widthFt: Feet }[]
  readonly totalWidthFt: Feet
}

const CELL_IN = 3
const ROWS = 16

/** Wind keys of the small pieces of a module, column by column from left to right, each from its lower edge up. */
export type ModuleKeys = readonly WindKey[]

const cellsOf = (module: ModulePlacement): number => Math.max(1, Math.round(inchesOf(module.widthFt) / CELL_IN))

const edgeIn = (module: ModulePlacement, cell: number, cells: number): Inches =>
  inchesOf(module.xFt + (module.widthFt * cell) / cells)

const rowFt = (module: ModulePlacement, row: number): Feet => module.yFt + (module.heightFt * (row + 0.5)) / ROWS

/** @param keyAt Zone and exposure at a point of the plane, ft; the same object for the same answer. */
export function moduleKeys(module: ModulePlacement, keyAt: (xFt: number, yFt: number) => WindKey): ModuleKeys {
  const cells = cellsOf(module)
  const keys: WindKey[] = []
  for (let c = 0; c < cells; c++) {
    const xFt = (edgeIn(module, c, cells) + edgeIn(module, c + 1, cells)) / 24
    for (let r = 0; r < ROWS; r++) keys.push(keyAt(xFt, rowFt(module, r)))
  }
  return keys
}

/**
 * Loads a rail by real areas: every module is a beam across its two rails, and each bit of it belongs to the zone it lies in.
 *
 * @param keysOf What `moduleKeys` gives for a module of the rail.
 * @source statics: share of a load at y on the rail at r with the other at o is (o - y) / (o - r)
 */
export function railPatches(rail: RailLine, keysOf: (module: ModulePlacement) => ModuleKeys): RailPatch[] {
  const patches: RailPatch[] = []
  for (const module of rail.modules) {
    const cells = cellsOf(module)
    const keys = keysOf(module)
    let widths: RailPatch['widths'] = []
    for (let c = 0; c < cells; c++) {
      // Most columns are like the one before.
      if (c === 0 || !isLikeBefore(keys, c)) widths = widthsAt(rail, module, keys, c)
      push(patches, {
        fromIn: edgeIn(module, c, cells),
        toIn: edgeIn(module, c + 1, cells),
        widths,
        totalWidthFt: widths.reduce((sum, w) => sum + w.widthFt, 0),
      })
    }
  }
  return patches
}

function isLikeBefore(keys: ModuleKeys, column: number): boolean {
  for (let i = column * ROWS; i < (column + 1) * ROWS; i++) if (keys[i] !== keys[i - ROWS]) return false
  return true
}

function widthsAt(rail: RailLine, module: ModulePlacement, keys: ModuleKeys, column: number): RailPatch['widths'] {
  const [own, other] = [feetOf(rail.yIn), feetOf(rail.partnerYIn)]
  const found: { key: WindKey; widthFt: Feet }[] = []
  for (let r = 0; r < ROWS; r++) {
    const key = keys[column * ROWS + r]
    if (key === undefined) break
    const share = ((other - rowFt(module, r)) / (other - own)) * (module.heightFt / ROWS)
    const held = found.find((one) => one.key === key)
    if (held === undefined) found.push({ key, widthFt: share })
    else held.widthFt += share
  }
  return found
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
    a === b ||
    (a.length === b.length &&
      a.every(({ key, widthFt }, index) => {
        const other = b[index]
        return (
          other !== undefined &&
          other.key.zone === key.zone &&
          other.key.exposed === key.exposed &&
          Math.abs(other.widthFt - widthFt) < 1e-9
        )
      }))
  )
}

/** Keeps the logarithm finite for a part that carries next to nothing, ft2; all lines are flat there. */
export const LEAST_AREA_FT2 = 0.5

/** Line loads from a pressure that depends on the zone, lb per in. */
export function patchLoads(
  patches: readonly RailPatch[],
  lbPerFt: (key: WindKey, widthFt: Feet) => number,
): LineLoad[] {
  return patches.map((patch) => ({
    fromIn: patch.fromIn,
    toIn: patch.toIn,
    lbPerIn: patch.widths.reduce((sum, w) => sum + lbPerFt(w.key, w.widthFt), 0) / 12,
  }))
}
