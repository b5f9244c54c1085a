import type { RoofPlane } from '../project/index.js'
import type { FireAccessRules } from '../tables/fire-access/index.js'
import type { Finding } from '../worksheet/index.js'
import type { PlaneFireAccess } from './fire-access.js'
import { feetOf, type Feet } from '../values/index.js'

/** Pathways that one plane itself must leave free. */
export interface PathwayNeed {
  readonly count: number
  readonly widthFt: Feet
  /** Whether they may lie along a side only, because they straddle it. */
  readonly sidesOnly: boolean
}

/** Pathways that a plane with modules must leave free, after what the person says lies on the adjacent plane. */
export function pathwayNeed(
  plane: RoofPlane,
  fire: PlaneFireAccess | undefined,
  rules: FireAccessRules | undefined,
): PathwayNeed {
  if (fire === undefined || rules === undefined) return { count: 0, widthFt: 0, sidesOnly: false }
  const widthFt = feetOf(fire.pathwayIn.value)
  const count = fire.pathways.value
  const where = rules.adjacentPathwayAllowed ? (plane.fire_pathway ?? 'own') : 'own'
  if (where === 'adjacent') return { count: Math.max(0, count - 1), widthFt, sidesOnly: false }
  if (where === 'straddling') return { count, widthFt: widthFt / 2, sidesOnly: true }
  return { count, widthFt, sidesOnly: false }
}

/** What the person must know about a pathway that is said to lie partly or wholly beside the plane. */
export function adjacentPathwayFindings(
  planeId: string,
  plane: RoofPlane,
  fire: PlaneFireAccess,
  rules: FireAccessRules,
): Finding[] {
  const where = plane.fire_pathway ?? 'own'
  if (where === 'own' || fire.pathways.value === 0) return []
  const path = `roof_planes.${planeId}.fire_pathway`
  const { source } = fire.pathways
  if (!rules.adjacentPathwayAllowed) {
    return [
      {
        severity: 'warning',
        id: 'roof.pathway-adjacent-not-allowed',
        message: `${rules.edition} wants the pathways of plane ${planeId} on the plane itself, so fire_pathway ${where} is not used`,
        where: path,
        source,
        fix: 'Ask the authority, and state pathways_per_plane with waiver_note under roof_access if it agrees.',
      },
    ]
  }
  const share = where === 'adjacent' ? 'lies wholly' : 'lies by half its width'
  return [
    {
      severity: 'note',
      id: 'roof.pathway-adjacent',
      message: `the pathway of plane ${planeId} (${fire.pathwayIn.value} in) ${share} on the adjacent plane; that part is not checked here`,
      where: path,
      source,
      fix: 'Keep that strip of the adjacent plane free of modules and obstructions, and show it on the roof plan.',
    },
  ]
}
