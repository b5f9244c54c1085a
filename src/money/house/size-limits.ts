import { branchesAtSize, connectionAtSize } from '../../electrical/index.js'
import type { Project } from '../../project/index.js'
import { StageError, type Worksheet } from '../../worksheet/index.js'
import { own } from '../../values/index.js'
import type { Share } from './share-modules.js'
import type { SizeLot } from './size-lots.js'

/** Modules by array of the person. */
export type ModulesByArray = Readonly<Record<string, number>>

/** Modules by array for each total number of modules. */
export function modulesByTotal(
  lots: readonly SizeLot[],
  shares: ReadonlyMap<number, Share>,
): ReadonlyMap<number, ModulesByArray> {
  return new Map(
    [...shares].map(([modules, share]) => [
      modules,
      Object.fromEntries(lots.map((lot, i) => [lot.arrayId, share[i] ?? 0])),
    ]),
  )
}

/** Largest share of its allowed DC power that a string inverter gets, with its id under inverter_units. */
export function dcLoad(
  project: Project,
  modules: ModulesByArray,
): { readonly share: number; readonly unit: string } | undefined {
  const dcW = new Map<string, number>()
  for (const [arrayId, count] of Object.entries(modules)) {
    const array = own(project.arrays, arrayId)
    const strings = array?.strings ?? []
    if (array === undefined || count === 0) continue
    const pmaxW = own(project.equipment.modules, array.module)?.pmax_w ?? 0
    for (const { inverter_unit: unit } of strings) {
      dcW.set(unit, (dcW.get(unit) ?? 0) + (count * pmaxW) / strings.length)
    }
  }
  let worst: ReturnType<typeof dcLoad>
  for (const [unit, watts] of dcW) {
    const limitW = own(project.equipment.inverters, own(project.inverter_units, unit)?.inverter)?.max_dc_power_w
    const share = limitW === undefined ? 0 : watts / limitW
    if (limitW !== undefined && share > (worst?.share ?? 0)) worst = { share, unit }
  }
  return worst
}

/** What the wiring stage says of every size. */
export interface AcLimits {
  /** Sizes whose panel and combiner take the sources; undefined where that is not known. */
  readonly fits: ReadonlySet<number> | undefined
  /** In words, with the section: `the connection to the panel (705.12(B)(3)(2))`. */
  readonly limit: string
  /** Branch circuits by size; empty where their number is not known. */
  readonly branches: ReadonlyMap<number, number>
}

/** Branches and connection of every size, by the wiring stage; a finding where it cannot run. */
export function acLimits(project: Project, sizes: ReadonlyMap<number, ModulesByArray>, worksheet: Worksheet): AcLimits {
  const branches = attempt(
    () => new Map([...sizes].map(([total, modules]) => [total, branchesAtSize(project, modules)])),
    (error) =>
      worksheet.find({
        severity: 'warning',
        id: 'size.branches-unknown',
        message: `how many branches a size needs is not known, so its price counts one: ${error.message}`,
        where: error.where,
        fix: error.fix,
      }),
  )
  const [smallest] = sizes.values()
  const known = attempt(
    () => smallest !== undefined && connectionAtSize(project, smallest),
    (error) =>
      worksheet.find({
        severity: 'warning',
        id: 'size.panel-not-checked',
        message: `whether the panel takes the larger sizes is not checked: ${error.message}`,
        where: error.where,
        fix: error.fix,
      }),
  )
  if (known === undefined) return { fits: undefined, limit: '', branches: branches ?? new Map() }
  // A larger size that the wiring stage refuses, as beyond its tables, does not fit.
  const verdicts = [...sizes].map(([total, modules]) => ({
    total,
    connection: attempt(
      () => connectionAtSize(project, modules),
      () => undefined,
    ),
  }))
  const fits = verdicts.filter(({ connection }) => holds(connection)).map(({ total }) => total)
  const most = Math.max(0, ...fits)
  // The first size beyond tells which busbar stops it; without one, the largest tells the rule.
  const judged = verdicts.filter(({ connection }) => connection !== undefined)
  const ruling = (judged.find(({ total }) => total > most) ?? judged.at(-1))?.connection
  const stopsAtCombiner = ruling?.panel.complies === true && ruling.combiner?.complies === false
  const section = (stopsAtCombiner ? ruling.combiner?.section : ruling?.panel.section) ?? ''
  worksheet.note({
    id: 'size.panel',
    says: 'Most modules whose inverters and breakers the connection takes, each size judged as the wiring stage judges it',
    formula: 'largest size for which a connection rule holds on every busbar',
    inputs: [
      { symbol: 'sizes tried', value: verdicts.length, unit: '', from: 'roof and strings' },
      { symbol: 'sizes that hold', value: fits.length, unit: '', from: section },
    ],
    result: { symbol: 'n', value: most, unit: 'modules' },
    source: { document: project.codes?.electrical ?? 'NEC', place: section, standing: 'secondary' },
  })
  return {
    fits: new Set(fits),
    limit: stopsAtCombiner
      ? `the busbar of the combiner panel (${section})`
      : `the connection to the panel (${section})`,
    branches: branches ?? new Map(),
  }
}

function holds(connection: ReturnType<typeof connectionAtSize> | undefined): boolean {
  return connection?.panel.complies === true && connection.combiner?.complies !== false
}

function attempt<T>(make: () => T, tell: (error: StageError) => void): T | undefined {
  try {
    return make()
  } catch (error) {
    if (!(error instanceof StageError)) throw error
    tell(error)
    return undefined
  }
}
