import type { FitRequest, Project } from '../project/index.js'
import type { Worksheet } from '../worksheet/index.js'
import { feetOf, own, type Point } from '../values/index.js'
import { fitRows, type FittedRow, type ModuleGrid } from './fit-rows.js'
import { moduleGapFt } from './module-gap.js'
import { moduleSize, sizeOnPlane } from './module-size.js'
import type { Pathway } from './pathways.js'
import type { ModulePlacement } from './placement.js'
import { railEndIn } from './rail-end.js'
import { packRow, rowIntervals, type Field } from './row-intervals.js'

/** What the fit of one array found. */
export interface ArrayFit {
  readonly modules: readonly ModulePlacement[]
  readonly pathways: readonly Pathway[]
  /** Most modules that the field takes, whatever was asked. */
  readonly capacity: number
}

/** The request behind an array's arrangement, or undefined when it is not to be fitted. */
export function fitRequestOf(project: Project, arrayId: string): FitRequest | undefined {
  const arrangement = own(project.arrays, arrayId)?.arrangement
  if (arrangement === 'fit') return { orientation: 'either' }
  return typeof arrangement === 'object' && 'fit' in arrangement ? arrangement.fit : undefined
}

/**
 * Places the modules of one array: the number asked, or as many as there is room for.
 *
 * @param corners Outline of the plane, ft.
 * @param keepOuts Convex figures that stay free, pathways left out, ft.
 * @param choices Sets of pathways of which one must stay free; the first that leaves room for the most modules is taken.
 * @param atMost Most modules to place.
 */
export function fitArray(
  project: Project,
  arrayId: string,
  request: FitRequest,
  area: {
    readonly corners: readonly Point[]
    readonly keepOuts: readonly (readonly Point[])[]
    readonly choices: readonly (readonly Pathway[])[]
    readonly atMost: number
  },
  worksheet: Worksheet,
): ArrayFit {
  const gapFt = moduleGapFt(request.gap_in, `arrays.${arrayId}.arrangement.fit.gap_in`, worksheet)
  const rowGapFt = request.row_gap_in === undefined ? gapFt : feetOf(request.row_gap_in)
  const endFt = feetOf(railEndIn(project, worksheet))
  const size = moduleSize(project, arrayId)
  const orientations = request.orientation === 'either' ? (['portrait', 'landscape'] as const) : [request.orientation]
  let best: { score: number; capacity: number; pathways: readonly Pathway[]; pack: () => ModulePlacement[] } | undefined
  for (const orientation of orientations) {
    const grid: ModuleGrid = { ...sizeOnPlane(size, orientation), gapFt, rowGapFt, endFt }
    for (const pathways of area.choices) {
      const figures = pathways.flatMap((pathway) => pathway.figures)
      const field = { corners: area.corners, keepOuts: [...area.keepOuts, ...figures] }
      const rows = fitRows(field, grid)
      const capacity = rows.reduce((sum, row) => sum + row.capacity, 0)
      const score = Math.min(capacity, area.atMost)
      if (best !== undefined && score <= best.score) continue
      const pack = () => {
        const chosen = shareOut(rows, score)
        return placeRows(project, { arrayId, orientation, field, grid, centered: request.centered === true }, chosen)
      }
      best = { score, capacity, pathways, pack }
    }
  }
  return { modules: best?.pack() ?? [], pathways: best?.pathways ?? [], capacity: best?.capacity ?? 0 }
}

/** Shares a number of modules out over the fewest neighbouring rows that take them, as evenly as the rows allow. */
function shareOut(rows: readonly FittedRow[], count: number): FittedRow[] {
  for (let length = 1; length <= rows.length; length++) {
    for (let from = 0; from + length <= rows.length; from++) {
      const chosen = rows.slice(from, from + length)
      if (chosen.reduce((sum, row) => sum + row.capacity, 0) >= count) return evenly(chosen, count)
    }
  }
  return []
}

function evenly(rows: readonly FittedRow[], count: number): FittedRow[] {
  let level = Math.ceil(count / Math.max(1, rows.length))
  while (rows.reduce((sum, row) => sum + Math.min(row.capacity, level), 0) < count) level++
  let excess = rows.reduce((sum, row) => sum + Math.min(row.capacity, level), 0) - count
  const shared = rows.toReversed().map((row) => {
    const full = Math.min(row.capacity, level)
    const less = full === level && excess > 0 ? 1 : 0
    excess -= less
    return { yFt: row.yFt, capacity: full - less }
  })
  return shared.toReversed().filter((row) => row.capacity > 0)
}

/** How the modules of an array lie in its field. */
interface FieldLayout {
  readonly arrayId: string
  readonly orientation: 'portrait' | 'landscape'
  readonly field: Field
  readonly grid: ModuleGrid
  readonly centered: boolean
}

function placeRows(project: Project, layout: FieldLayout, rows: readonly FittedRow[]): ModulePlacement[] {
  const { arrayId, orientation, field, grid, centered } = layout
  const { widthFt, heightFt, gapFt } = grid
  return rows.flatMap(({ yFt, capacity }, index) => {
    const intervals = rowIntervals(field, yFt, grid)
    return packRow(intervals, widthFt + gapFt, capacity, centered).map((xFt, column) => ({
      id: `${arrayId}.r${index + 1}c${column + 1}`,
      array: arrayId,
      roofPlane: own(project.arrays, arrayId)?.roof_plane ?? '',
      block: 'fit',
      row: index + 1,
      column: column + 1,
      orientation,
      xFt,
      yFt,
      widthFt,
      heightFt,
    }))
  })
}
