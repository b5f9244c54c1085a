import type { FitRequest, RoofProject } from '../project/index.js'
import type { Worksheet } from '../worksheet/index.js'
import { feetOf, own } from '../values/index.js'
import type { FitArea } from './fit-area.js'
import type { OrientedGrid } from './fit-on-rafters.js'
import { fitRows, type FittedRow } from './fit-rows.js'
import { moduleGapFt } from './module-gap.js'
import { moduleSize, sizeOnPlane } from './module-size.js'
import type { Pathway } from './pathways.js'
import type { ModulePlacement } from './placement.js'
import { railEndIn } from './rail-end.js'
import { rankedFits, type RankedFit } from './ranked-fits.js'
import { modulesOfRow, type ArrayPlace } from './row-modules.js'
import { packRow, rowIntervals, type Field } from './row-intervals.js'

/** What the fit of one array found. */
export interface ArrayFit {
  readonly modules: readonly ModulePlacement[]
  readonly pathways: readonly Pathway[]
  /** Most modules that the field takes, whatever was asked. */
  readonly capacity: number
  /** Most modules that there is room for without regard to rafters, where rails were fitted to rafters. */
  readonly room?: number
  /** Further layouts, the next best first; none where modules are placed without regard to rafters. */
  readonly others: readonly RankedFit[]
}

/** The request behind an array's arrangement, or undefined when it is not to be fitted. */
export function fitRequestOf(project: RoofProject, arrayId: string): FitRequest | undefined {
  const arrangement = own(project.arrays, arrayId)?.arrangement
  if (arrangement === 'fit') return { orientation: 'either' }
  return typeof arrangement === 'object' && 'fit' in arrangement ? arrangement.fit : undefined
}

/** Places the modules of one array: the number asked, or as many as there is room for. */
export function fitArray(
  project: RoofProject,
  arrayId: string,
  request: FitRequest,
  area: FitArea,
  worksheet: Worksheet,
): ArrayFit {
  const gapFt = moduleGapFt(request.gap_in, `arrays.${arrayId}.arrangement.fit.gap_in`, worksheet)
  const rowGapFt = request.row_gap_in === undefined ? gapFt : feetOf(request.row_gap_in)
  const endFt = feetOf(railEndIn(project, worksheet))
  const size = moduleSize(project, arrayId)
  const orientations = request.orientation === 'either' ? (['portrait', 'landscape'] as const) : [request.orientation]
  const grids = orientations.map((orientation) => ({
    ...sizeOnPlane(size, orientation),
    gapFt,
    rowGapFt,
    endFt,
    orientation,
  }))
  const places = { arrayId, roofPlane: own(project.arrays, arrayId)?.roof_plane ?? '' }
  const centered = request.centered === true
  const { ground } = area
  if (ground === undefined) return plainFit(places, grids, area, centered)
  const [best, ...others] = rankedFits(
    places,
    grids,
    { ...area, ground },
    {
      centered,
      rank: request.rank ?? 'energy',
    },
  )
  if (best === undefined) {
    const { capacity: room, pathways } = plainFit(places, grids, area, centered)
    return { modules: [], pathways, capacity: 0, room, others }
  }
  return { modules: best.modules, pathways: best.pathways, capacity: best.capacity, room: best.room, others }
}

/** Fits rows of one orientation without regard to rafters. */
function plainFit(places: ArrayPlace, grids: readonly OrientedGrid[], area: FitArea, centered: boolean): ArrayFit {
  let best: { score: number; capacity: number; pathways: readonly Pathway[]; pack: () => ModulePlacement[] } | undefined
  for (const grid of grids) {
    for (const pathways of area.choices) {
      const figures = pathways.flatMap((pathway) => pathway.figures)
      const field = { corners: area.corners, keepOuts: [...area.keepOuts, ...figures] }
      const rows = fitRows(field, grid)
      const capacity = rows.reduce((sum, row) => sum + row.capacity, 0)
      const score = Math.min(capacity, area.atMost)
      if (best !== undefined && score <= best.score) continue
      const pack = () => placeRows(places, { field, grid, centered }, shareOut(rows, score))
      best = { score, capacity, pathways, pack }
    }
  }
  return {
    modules: best?.pack() ?? [],
    pathways: best?.pathways ?? [],
    capacity: best?.capacity ?? 0,
    others: [],
  }
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
  readonly field: Field
  readonly grid: OrientedGrid
  readonly centered: boolean
}

function placeRows(places: ArrayPlace, layout: FieldLayout, rows: readonly FittedRow[]): ModulePlacement[] {
  const { field, grid, centered } = layout
  return rows.flatMap(({ yFt, capacity }, index) => {
    const intervals = rowIntervals(field, yFt, grid)
    const lefts = packRow(intervals, grid.widthFt + grid.gapFt, capacity, centered)
    return modulesOfRow(places, grid, { number: index + 1, yFt }, lefts)
  })
}
