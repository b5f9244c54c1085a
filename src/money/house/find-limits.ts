import type { Project } from '../../project/index.js'
import type { Worksheet } from '../../worksheet/index.js'
import type { Share } from './share-modules.js'
import { acDemand, panelLimit } from './size-limits.js'
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
  const demands = new Map(
    [...shares].map(([modules, share]) => [
      modules,
      acDemand(project, new Map(lots.map((lot, i) => [lot.arrayId, share[i] ?? 0]))),
    ]),
  )
  const most = (passes: (modules: number) => boolean): number =>
    Math.max(0, ...[...shares.keys()].filter((modules) => passes(modules)))
  const onRoof = lots.reduce((sum, lot) => sum + lot.kwhOfFirst.length - 1, 0)
  const onStrings = lots.reduce((sum, lot) => sum + Math.min(lot.kwhOfFirst.length - 1, lot.stringLimit), 0)
  const byDc = most((modules) => (demands.get(modules)?.dcLoad?.share ?? 0) <= 1 + 1e-9)
  const hasModuleLevel = [...demands.values()].some((demand) => demand.inverterA > 0)
  const panel = hasModuleLevel ? panelLimit(project, worksheet) : undefined
  const fitsPanel = (modules: number): boolean =>
    panel === undefined || (demands.get(modules)?.inverterA ?? 0) <= panel.maxInverterA + 1e-9
  const byPanel = most(fitsPanel)
  const unit = [...demands.values()].find((demand) => demand.dcLoad !== undefined)?.dcLoad?.unit
  const tried = Math.max(0, ...shares.keys())
  const limits: SizeLimit[] = [
    { limit: roofWords(unmeasured), modules: onRoof, or_more: false },
    ...(onStrings < onRoof
      ? [{ limit: 'the longest strings that voltages allow', modules: onStrings, or_more: false }]
      : []),
    ...(unit === undefined
      ? []
      : [{ limit: `the DC power that inverter ${unit} takes`, modules: byDc, or_more: byDc === tried }]),
    ...(panel === undefined
      ? []
      : [{ limit: `the connection to the panel (${panel.section})`, modules: byPanel, or_more: byPanel === tried }]),
  ]
  tellUnmeasured(unmeasured, worksheet)
  return {
    limits: limits.toSorted((a, b) => a.modules - b.modules || Number(a.or_more) - Number(b.or_more)),
    allowed: (modules) => fitsPanel(modules) && (demands.get(modules)?.dcLoad?.share ?? 0) <= 1 + 1e-9,
    branchesOf: (modules) => {
      const branches = demands.get(modules)?.branches
      return branches === 0 ? undefined : branches
    },
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
