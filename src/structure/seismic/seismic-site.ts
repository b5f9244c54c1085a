import type { Project } from '../../project/index.js'
import { DESIGN_SHARE, LEAST_FA_UNKNOWN_SITE, type LoadEdition } from '../../tables/asce7/index.js'
import type { SeismicFacts } from './exemption.js'
import type { WeighedPart } from './lateral-change.js'

type Stated = NonNullable<NonNullable<Project['structure']>['seismic']>

/** Earthquake as the project states it. */
export interface SeismicSite extends SeismicFacts {
  readonly heightRatio: number
  readonly stated: Stated
  /** Where SDS comes from. */
  readonly sdsFrom: string
  /** Parts of the house with area and weight; empty when not stated. */
  readonly parts: readonly WeighedPart[]
  /** Parts of which only one of the two is stated. */
  readonly halfStated: readonly string[]
}

/** Reads the earthquake of the project; what is not stated stays undefined. */
export function seismicSite(project: Project, edition: LoadEdition): SeismicSite {
  const stated = project.structure?.seismic ?? {}
  const { sdsG, from } = designShaking(stated, edition)
  return {
    stated,
    dwelling: stated.dwelling,
    category: stated.design_category,
    ssG: stated.ss_g,
    sdsG,
    sdsFrom: from,
    heightRatio: stated.height_ratio ?? 1,
    ...weighed(stated.weights),
  }
}

/** SDS as stated or as 2/3 Fa Ss, the larger of both. */
function designShaking(stated: Stated, edition: LoadEdition): { sdsG: number | undefined; from: string } {
  const { sds_g: sds, ss_g: ss, fa, site_class: siteClass } = stated
  const unknownSite = siteClass === undefined || siteClass === 'default'
  const leastFa = unknownSite ? (LEAST_FA_UNKNOWN_SITE[edition] ?? 0) : 0
  const mapped = ss === undefined || fa === undefined ? undefined : DESIGN_SHARE * Math.max(fa, leastFa) * ss
  if (mapped === undefined) return { sdsG: sds, from: 'structure.seismic.sds_g' }
  if (sds !== undefined && sds >= mapped) return { sdsG: sds, from: 'structure.seismic.sds_g' }
  const floor = fa !== undefined && leastFa > fa ? `, Fa at least ${leastFa} for a site of unknown class` : ''
  return { sdsG: mapped, from: `2/3 Fa Ss of structure.seismic.ss_g and fa${floor}` }
}

function weighed(weights: Stated['weights']): Pick<SeismicSite, 'parts' | 'halfStated'> {
  if (weights === undefined) return { parts: [], halfStated: [] }
  const rows = [
    { name: 'roof', areaFt2: weights.roof_area_ft2, psf: weights.roof_psf },
    { name: 'ceiling', areaFt2: weights.ceiling_area_ft2, psf: weights.ceiling_psf },
    { name: 'wall', areaFt2: weights.wall_area_ft2, psf: weights.wall_psf },
    { name: 'partition', areaFt2: weights.partition_area_ft2, psf: weights.partition_psf },
  ]
  return {
    parts: rows.flatMap(({ name, areaFt2, psf }) =>
      areaFt2 === undefined || psf === undefined ? [] : [{ name, areaFt2, psf }],
    ),
    halfStated: rows
      .filter(({ areaFt2, psf }) => (areaFt2 === undefined) !== (psf === undefined))
      .map(({ name }) => name),
  }
}
