import type { Project } from '../../src/project/index.js'

/** Steps of the net on which places are tried, ft. */
const STEP = { x: 0.2, y: 0.25 } as const

interface Size {
  readonly w: number
  readonly h: number
  readonly inset: number
}

/**
 * Most modules on the plane of a random roof (a rectangle or a hip) on a net of places: every height, every group of modules in a
 * row, every set of rafters. What a net misses, a search over all places may still find, so this is a lower bound.
 */
export function bruteForceFit(project: Project, orientations: readonly ('portrait' | 'landscape')[]): number {
  const plane = project.roof_planes['south']
  const depth = plane?.outline?.depth_ft ?? 0
  const sizes = orientations.map((orientation): Size => {
    const [w, h, zone] = orientation === 'portrait' ? [44.6, 67.8, [10, 20]] : [67.8, 44.6, [4, 10]]
    const inset = Math.min(Math.max(0.207 * h, zone[0] ?? 0), zone[1] ?? 0, h / 2 - 1)
    return { w: w / 12, h: h / 12, inset: inset / 12 }
  })
  const heights = Math.floor(depth / STEP.y)
  const clear = (plane?.edge_clearance_in ?? 0) / 12
  // Rows rest on the net counted from the clearance at the eave.
  const yOf = (k: number): number => clear + k * STEP.y
  const best: number[] = Array.from({ length: heights + 2 }, () => 0)
  for (let k = heights; k >= 0; k--) {
    let most = best[k + 1] ?? 0
    for (const size of sizes) {
      if (yOf(k) + size.h > depth) continue
      const next = k + Math.ceil((size.h + 0.5 / 12) / STEP.y - 1e-9)
      most = Math.max(most, rowOf(project, size, yOf(k)) + (best[Math.min(next, heights + 1)] ?? 0))
    }
    best[k] = most
  }
  return best[0] ?? 0
}

function rowOf(project: Project, size: Size, y: number): number {
  const width = project.roof_planes['south']?.outline?.width_ft ?? 0
  const columns = Math.floor(width / STEP.x)
  const rail = project.equipment.rails?.['rail40']
  const end = (rail?.end_allowance_in ?? 0) / 12
  const gap = 0.5 / 12
  const rafters = raftersOf(project, size, y)
  const best: number[] = Array.from({ length: columns + 2 }, () => 0)
  for (let k = columns; k >= 0; k--) {
    const x = k * STEP.x
    let most = best[k + 1] ?? 0
    for (let n = 1; ; n++) {
      const right = x + n * (size.w + gap) - gap
      if (right > width) break
      if (!isFree(project, x - end, right + end, y, y + size.h)) break
      if (!rafters.every((usable) => isHeld(project, 12 * (x - end), 12 * (right + end), usable))) continue
      const next = k + Math.ceil((right - x + 1.001) / STEP.x)
      most = Math.max(most, n + (best[Math.min(next, columns + 1)] ?? 0))
    }
    best[k] = most
  }
  return best[0] ?? 0
}

/** Distances of a point from the sides of the plane, ft; negative outside. */
function insets(project: Project, x: number, y: number): number[] {
  const outline = project.roof_planes['south']?.outline
  const [w, d] = [outline?.width_ft ?? 0, outline?.depth_ft ?? 0]
  const side = outline?.shape === 'hip' ? (w - (outline.ridge_ft ?? 0)) / 2 : 0
  const slant = Math.hypot(side, d)
  return [y, d - y, (x * d - y * side) / slant, ((w - x) * d - y * side) / slant]
}

function isFree(project: Project, x0: number, x1: number, y0: number, y1: number): boolean {
  const plane = project.roof_planes['south']
  const clear = (plane?.edge_clearance_in ?? 0) / 12
  const corners = [
    [x0, y0],
    [x1, y0],
    [x0, y1],
    [x1, y1],
  ] as const
  if (corners.some(([x, y]) => insets(project, x, y).some((inset) => inset < clear - 1e-9))) return false
  return Object.values(plane?.obstructions ?? {}).every((o) => {
    const keep = (o.clearance_in ?? 0) / 12
    return (
      x1 <= o.x_ft - keep ||
      x0 >= o.x_ft + o.width_ft + keep ||
      y1 <= o.y_ft - keep ||
      y0 >= o.y_ft + o.length_ft + keep
    )
  })
}

/** Rafters of the lower and of the upper rail, in; those of both where they are aligned. */
function raftersOf(project: Project, size: Size, y: number): number[][] {
  const { structure } = project
  const framing = structure?.framing?.['south']
  const width = 12 * (project.roof_planes['south']?.outline?.width_ft ?? 0)
  const at = (railY: number): number[] => {
    const found: number[] = []
    for (let x = framing?.first_offset_in ?? 0; x <= width; x += framing?.spacing_in ?? 16) {
      const clear = insets(project, x / 12, railY).every(
        (inset) => 12 * inset >= (structure?.mount_edge_in ?? 3) - 1e-9,
      )
      const free = Object.values(project.roof_planes['south']?.obstructions ?? {}).every((o) => {
        const keep = Math.max(structure?.mount_clearance_in ?? 6, o.clearance_in ?? 0) / 12
        const [rx, ry] = [x / 12, railY]
        return (
          rx <= o.x_ft - keep ||
          rx >= o.x_ft + o.width_ft + keep ||
          ry <= o.y_ft - keep ||
          ry >= o.y_ft + o.length_ft + keep
        )
      })
      if (clear && free) found.push(x)
    }
    return found
  }
  const both = [at(y + size.inset), at(y + size.h - size.inset)]
  if (structure?.mount_layout !== 'aligned') return both
  return [(both[0] ?? []).filter((x) => both[1]?.includes(x))]
}

/** Whether any set of rafters keeps spans and free ends, by trying all. */
function isHeld(project: Project, start: number, end: number, rafters: readonly number[]): boolean {
  const rail = project.equipment.rails?.['rail40']
  const usable = rafters.filter((x) => x >= start && x <= end)
  const [c, q, s] = [
    rail?.max_cantilever_in ?? 0,
    rail?.max_cantilever_of_span ?? Infinity,
    Math.min(rail?.max_span_in ?? 0, project.structure?.mount_spacing_in ?? Infinity),
  ]
  for (let bits = 1; bits < 2 ** usable.length; bits++) {
    const set = usable.filter((_, i) => (bits >> i) & 1)
    const [first, second, before, last] = [set[0] ?? 0, set[1] ?? 0, set.at(-2) ?? 0, set.at(-1) ?? 0]
    if (set.length < 2 || first - start > Math.min(c, q * (second - first))) continue
    if (end - last > Math.min(c, q * (last - before))) continue
    if (set.every((x, i) => i === 0 || x - (set[i - 1] ?? 0) <= s)) return true
  }
  return false
}
