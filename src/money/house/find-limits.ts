import type { Project } from '../../project/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import type { Share } from './share-modules.js'
import { acLimits, dcLoad, modulesByTotal } from './size-limits.js'
import type { SizeLot } from './size-lots.js'

/** A limit, and the most modules that it lets through. */
export interface SizeLimit {
  readonly limit: string
  readonly modules: number
  /** Whether it lets more through than the other limits leave to try. */
  readonly or_more: boolean
}

export interface FoundLimits {
  /** The tightest first. */
  readonly limits: readonly SizeLimit[]
  readonly allowed: (modules: number) => boolean
  readonly branchesOf: (modules: number) => number | undefined
}

/**
 * What roof, strings, inverters and panel allow.
 *
 * @param shares Modules by lot for each total that roof and strings allow.
 * @param unmeasured Arrays of which nobody knows what else fits.
 */
export function findLimits(
  project: Project,
  lots: readonly SizeLot[],
  shares: ReadonlyMap<number, Share>,
  unmeasured: readonly string[],
  worksheet: Worksheet,
): FoundLimits {
  const sizes = modulesByTotal(lots, shares)
  const loads = new Map([...sizes].map(([total, modules]) => [total, dcLoad(project, modules)]))
  const hasModuleLevel = Object.values(project.arrays).some(({ inverter }) => inverter !== undefined)
  const ac = hasModuleLevel ? acLimits(project, sizes, worksheet) : undefined
  const most = (passes: (modules: number) => boolean): number => Math.max(0, ...[...sizes.keys()].filter(passes))
  const onRoof = lots.reduce((sum, lot) => sum + lot.kwhOfFirst.length - 1, 0)
  const onStrings = lots.reduce((sum, lot) => sum + Math.min(lot.kwhOfFirst.length - 1, lot.stringLimit), 0)
  const fitsDc = (modules: number): boolean => (loads.get(modules)?.share ?? 0) <= 1 + 1e-9
  const fitsPanel = (modules: number): boolean => ac?.fits?.has(modules) ?? true
  const byDc = most(fitsDc)
  const byPanel = most(fitsPanel)
  const unit = [...loads.values()].find((load) => load !== undefined)?.unit
  const tried = Math.max(0, ...sizes.keys())
  const limits: SizeLimit[] = [
    { limit: roofWords(unmeasured), modules: onRoof, or_more: false },
    ...(onStrings < onRoof
      ? [{ limit: 'the longest strings that voltages allow', modules: onStrings, or_more: false }]
      : []),
    ...(unit === undefined
      ? []
      : [{ limit: `the DC power that inverter ${unit} takes`, modules: byDc, or_more: byDc === tried }]),
    ...(ac?.fits === undefined ? [] : [{ limit: ac.limit, modules: byPanel, or_more: byPanel === tried }]),
  ]
  tellUnmeasured(unmeasured, worksheet)
  return {
    limits: limits.toSorted((a, b) => a.modules - b.modules || Number(a.or_more) - Number(b.or_more)),
    allowed: (modules) => fitsPanel(modules) && fitsDc(modules),
    branchesOf: (modules) => ac?.branches.get(modules) || undefined,
  }
}

function roofWords(unmeasured: readonly string[]): string {
  return unmeasured.length === 0 ? 'the roof' : 'the roof as far as it is measured'
}

function tellUnmeasured(unmeasured: readonly string[], worksheet: Worksheet): void {
  for (const id of unmeasured) {
    worksheet.find({
      severity: 'warning',
      id: 'size.roof-unmeasured',
      message: `what else fits beside array ${id} is not known, because its roof plane has no outline or its module no dimensions`,
      where: `arrays.${id}`,
      fix: 'State the outline of the plane, and length and width of the module.',
    })
  }
}
