import { designTemperatures } from '../climate/index.js'
import type { Electrical, Project } from '../project/index.js'
import { Worksheet } from '../worksheet/index.js'
import { branchSources, statedBranchesFit, buildSources } from './circuits/index.js'
import { newJob, type Job, resolveEdition, type PanelValues } from './system/index.js'
import { checkConnection, failingOnWay } from './distribution/index.js'

/**
 * Number of branch circuits that the wiring stage makes for other numbers of modules.
 *
 * @param modules Number of modules by array id, of every array.
 * @throws StageError when inverter or trunk cable do not say what a branch may hold.
 */
export function branchesAtSize(project: Project, modules: Readonly<Record<string, number>>): number {
  return branchSources(jobAtSize(project, modules)).length
}

/**
 * What main panel and combiner say of other numbers of modules: the verdict of the wiring stage. Conductors of a
 * supply-side connection are chosen for the size.
 *
 * @param modules Number of modules by array id, of every array; above 0 together.
 * @throws StageError as the wiring stage, when a rating is missing.
 */
export function connectionAtSize(
  project: Project,
  modules: Readonly<Record<string, number>>,
): { readonly panel: PanelValues; readonly combiner: PanelValues | null } {
  const job = jobAtSize(project, modules)
  const { panel, combiner, tree, verdicts } = checkConnection(job, buildSources(job), [])
  // Whatever stops it further towards the utility counts as the panel's.
  const [stop] = failingOnWay(tree, verdicts).filter(({ id }) => id !== 'combiner')
  return {
    panel: stop === undefined ? panel : { ...panel, complies: false, section: stop.governs?.section ?? '' },
    combiner,
  }
}

/** Branches as stated where they hold just these modules, else split as where none are stated. */
function jobAtSize(project: Project, modules: Readonly<Record<string, number>>): Job {
  // Only conductors under distribution or of the service are chosen or derated here.
  const derates =
    project.electrical?.distribution !== undefined || project.electrical?.service?.conductor_size !== undefined
  const context = {
    designTemperatures: derates
      ? designTemperatures(project.site, new Worksheet())
      : { extremeLow: undefined, high2pct: undefined, high0p4pct: undefined },
    arrangement: { modules },
  }
  const worksheet = new Worksheet()
  const edition = resolveEdition(project, undefined)
  const job = newJob(project, edition, context, worksheet)
  if (job.electrical.branches === undefined || statedBranchesFit(job)) return job
  return newJob({ ...project, electrical: withoutBranches(job.electrical) }, edition, context, worksheet)
}

/** The cable of the stated branches stays where all use the same. */
function withoutBranches({ branches, ...electrical }: Electrical): Electrical {
  const [cable, ...others] = new Set(Object.values(branches ?? {}).map((branch) => branch.trunk))
  if (electrical.trunk !== undefined || cable === undefined || others.length > 0) return electrical
  return { ...electrical, trunk: cable }
}
