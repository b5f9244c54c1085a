import { feetOf, inchesOf, type Feet } from '../values/index.js'
import { restingHeights, type ModuleGrid } from './fit-rows.js'
import type { RailGround } from './rail-ground.js'
import { RAIL_HALF_IN } from './rail-lines.js'
import { rowCapacity, rowIntervals, type Field } from './row-intervals.js'
import {
  canPlace,
  likenessOf,
  mostOnRafters,
  placeOnRafters,
  type RowGroup,
  type RowOnRafters,
} from './row-on-rafters.js'
import { shareRows } from './share-rows.js'
import { stackRows, type RowKind, type StackedRow } from './stack-rows.js'

/** Sizes of one orientation in a field. */
export interface OrientedGrid extends ModuleGrid {
  readonly orientation: 'portrait' | 'landscape'
}

/** A row whose groups have their places. */
export interface PlacedRow extends OrientedGrid {
  readonly yFt: number
  readonly groups: readonly RowGroup[]
}

/** Rows of a field for a set of orientations. */
export interface StackOnRafters {
  readonly capacity: number
  /** Places a number of modules, fewer where the rails of no way to share them out over the rows are held. */
  readonly place: (count: number, centered: boolean) => PlacedRow[]
}

/** Fits rows of one or both orientations into one field, each with rails that mounts on the rafters can hold. */
export class FieldOnRafters {
  readonly #field: Field
  readonly #ground: RailGround
  readonly #rows = new Map<string, RowOnRafters>()
  readonly #kinds = new Map<string, RowKind>()

  constructor(field: Field, ground: RailGround) {
    this.#field = field
    this.#ground = ground
  }

  /** No fewer modules than any rows of these orientations hold, without regard to rafters. */
  plainCapacity(grid: OrientedGrid): number {
    const kind = this.#kindOf(grid)
    const rows = stackRows([{ ...kind, capacityAt: kind.boundAt }], grid.rowGapFt, this.#highestFt())
    return rows.reduce((sum, row) => sum + row.capacity, 0)
  }

  /** The best rows of the orientations. */
  stack(grids: readonly OrientedGrid[]): StackOnRafters {
    const [first] = grids
    const kinds = grids.map((grid) => this.#kindOf(grid))
    const rows = first === undefined ? [] : stackRows(kinds, first.rowGapFt, this.#highestFt())
    return {
      capacity: rows.reduce((sum, row) => sum + row.capacity, 0),
      place: (count, centered) => this.#place(rows, grids, count, centered),
    }
  }

  #highestFt(): number {
    return Math.max(...this.#field.corners.map((corner) => corner.yFt))
  }

  #place(rows: readonly StackedRow[], grids: readonly OrientedGrid[], count: number, centered: boolean): PlacedRow[] {
    let nearFt: number | undefined
    const placed: PlacedRow[] = []
    const gridOf = (row: StackedRow) => grids.find((one) => one.orientation === row.orientation)
    const holds = (row: StackedRow, amount: number): boolean => {
      const grid = gridOf(row)
      return grid !== undefined && canPlace(this.#rowAt(grid, row.yFt), amount)
    }
    for (const share of shareRows(rows, count, holds)) {
      const grid = gridOf(share)
      const groups =
        grid === undefined ? undefined : placeOnRafters(this.#rowAt(grid, share.yFt), share.count, { nearFt, centered })
      if (grid === undefined || groups === undefined) continue
      nearFt ??= groups[0]?.fromFt
      placed.push({ ...grid, yFt: share.yFt, groups })
    }
    return placed
  }

  #rowAt(grid: OrientedGrid, yFt: number): RowOnRafters {
    const key = `${grid.orientation},${yFt}`
    const held = this.#rows.get(key)
    if (held !== undefined) return held
    const { widthFt, heightFt, gapFt, endFt } = grid
    const insetFt = this.#ground.insetFt(grid.orientation, heightFt) ?? 0
    const railsIn = [inchesOf(yFt) + inchesOf(insetFt), inchesOf(yFt + heightFt) - inchesOf(insetFt)]
    const all = railsIn.map((yIn) => this.#ground.raftersAt(yIn))
    const shared = (all[0] ?? []).filter((x) => all.every((rafters) => rafters.includes(x)))
    const same = all.every((rafters) => rafters.length === shared.length)
    const row: RowOnRafters = {
      intervals: rowIntervals(this.#field, yFt, grid),
      widthFt,
      gapFt,
      endIn: inchesOf(endFt),
      railsIn,
      rafters: this.#ground.aligned || same ? [shared] : all,
      ground: this.#ground,
    }
    this.#rows.set(key, row)
    return row
  }

  #kindOf(grid: OrientedGrid): RowKind {
    const held = this.#kinds.get(grid.orientation)
    if (held !== undefined) return held
    const plain = new Map<number, number>()
    const plainAt = (yFt: number): number => {
      const most = plain.get(yFt) ?? rowCapacity(rowIntervals(this.#field, yFt, grid), grid.widthFt + grid.gapFt)
      plain.set(yFt, most)
      return most
    }
    const known = new Map<string, number>()
    const kind: RowKind = {
      orientation: grid.orientation,
      heightFt: grid.heightFt,
      restingFt: [...restingHeights(this.#field, grid, plainAt), ...this.#railHeights(grid)],
      boundAt: plainAt,
      capacityAt: (yFt) => {
        const row = this.#rowAt(grid, yFt)
        const key = likenessOf(row)
        const most = known.get(key) ?? mostOnRafters(row)
        known.set(key, most)
        return most
      },
    }
    this.#kinds.set(grid.orientation, kind)
    return kind
  }

  /** Heights of rows at which a rail just passes above an obstruction, or its mounts do. */
  #railHeights({ orientation, heightFt }: OrientedGrid): Feet[] {
    const insetFt = this.#ground.insetFt(orientation, heightFt) ?? 0
    const heights: Feet[] = []
    for (const o of this.#ground.obstructions) {
      const keeps = [(o.clearance_in ?? 0) + RAIL_HALF_IN, this.#ground.keepIn(o)]
      for (const keepIn of keeps) {
        const topFt = o.y_ft + o.length_ft + feetOf(keepIn)
        heights.push(topFt - insetFt, topFt - heightFt + insetFt)
      }
    }
    const lowest = Math.min(...this.#field.corners.map((corner) => corner.yFt))
    return heights.filter((yFt) => yFt >= lowest)
  }
}
