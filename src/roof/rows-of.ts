import type { ModulePlacement } from './placement.js'

/** One row of one block, its modules from left to right. */
export interface ModuleRow {
  readonly array: string
  readonly block: string
  readonly row: number
  readonly modules: readonly ModulePlacement[]
}

/** Groups modules into rows, in the order array, block, row; within a row from left to right. */
export function rowsOf(modules: readonly ModulePlacement[]): ModuleRow[] {
  const rows = new Map<string, ModulePlacement[]>()
  for (const module of modules) {
    const key = JSON.stringify([module.array, module.block, module.row])
    const row = rows.get(key)
    if (row === undefined) rows.set(key, [module])
    else row.push(module)
  }
  return [...rows.values()].flatMap((row) => {
    const modules = row.toSorted((a, b) => a.xFt - b.xFt)
    const [first] = modules
    return first === undefined ? [] : [{ array: first.array, block: first.block, row: first.row, modules }]
  })
}

/** Centre of a module in plane coordinates, ft. */
export interface ModuleCentre {
  readonly id: string
  readonly xFt: number
  readonly yFt: number
}

/** Centres of modules in plane coordinates, ft, in the order given; the distances between them lay out a trunk cable. */
export function moduleCentresFt(modules: readonly ModulePlacement[]): ModuleCentre[] {
  return modules.map((module) => ({
    id: module.id,
    xFt: module.xFt + module.widthFt / 2,
    yFt: module.yFt + module.heightFt / 2,
  }))
}
