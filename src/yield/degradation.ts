import type { Project } from '../project/index.js'
import { LOSS_DEFAULTS } from '../tables/losses/index.js'
import type { Worksheet } from '../worksheet/index.js'

export { lifeOutput, meanOutput, outputOfYear } from './degradation-law.js'

/**
 * Loss of output per year of age as the project states it, %: `finance` wins over `losses`, as in the payback.
 *
 * @returns The value and the path that states it; undefined when neither does.
 */
export function statedDegradation(
  project: Pick<Project, 'finance' | 'losses'>,
): { readonly pctPerYear: number; readonly path: string } | undefined {
  for (const room of ['finance', 'losses'] as const) {
    const pctPerYear = project[room]?.degradation_pct_per_year
    if (pctPerYear !== undefined) return { pctPerYear, path: `${room}.degradation_pct_per_year` }
  }
  return undefined
}

/** Loss of output per year of age: as stated, or the default as an assumption. */
export function degradationOf(
  project: Pick<Project, 'finance' | 'losses'>,
  worksheet: Worksheet,
): { readonly pctPerYear: number; readonly path: string } {
  const stated = statedDegradation(project)
  if (stated !== undefined) return stated
  const path = 'losses.degradation_pct_per_year'
  const usual = LOSS_DEFAULTS.degradation_pct_per_year
  const { why, source } = usual
  return { pctPerYear: worksheet.assume({ path, value: usual.stringPct, unit: '%/year', why, source }), path }
}
