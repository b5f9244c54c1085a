import type { Project, RoofProject } from '../project/index.js'
import type { Feet } from '../values/index.js'
import { fitRequestOf } from './fit-array.js'
import type { ModulePlacement } from './placement.js'
import type { FitRank, RankedFit } from './ranked-fits.js'
import type { Trial } from './trial.js'

/** Another way to lay the modules of one array, its rails held by mounts on the rafters. */
export interface FitAlternative {
  /** Modules of the array. */
  readonly modules: readonly ModulePlacement[]
  readonly orientation: RankedFit['orientation']
  /** Mounts at the longest spans that the rail sheet allows, which is the fewest that there can be. */
  readonly leastMounts: number
  readonly rails: number
  readonly railFt: Feet
}

/** The next best layouts of each fitted array, best first; none for an array that shares its plane with another. */
export function fitAlternatives(project: RoofProject, trial: Trial): Record<string, readonly FitAlternative[]> {
  const alternatives: Record<string, readonly FitAlternative[]> = {}
  for (const [arrayId, { others }] of trial.fits) {
    const plane = project.arrays[arrayId]?.roof_plane
    const sharing = Object.values(project.arrays).filter((array) => array.roof_plane === plane).length
    if (others.length === 0 || sharing > 1) continue
    alternatives[arrayId] = others.map(({ modules, orientation, leastMounts, rails, railFt }) => ({
      modules,
      orientation,
      leastMounts,
      rails,
      railFt,
    }))
  }
  return alternatives
}

/** What comes first among the layouts of an array that is fitted. */
export function fitRankOf(project: RoofProject, arrayId: string): FitRank {
  return fitRequestOf(project, arrayId)?.rank ?? 'energy'
}

/** The project with another rank of layouts for all arrays that are fitted. */
export function withRank(project: Project, rank: FitRank): Project {
  const arrays = Object.entries(project.arrays).map(([id, array]) => {
    const request = fitRequestOf(project, id)
    return [id, request === undefined ? array : { ...array, arrangement: { fit: { ...request, rank } } }] as const
  })
  return { ...project, arrays: Object.fromEntries(arrays) }
}
