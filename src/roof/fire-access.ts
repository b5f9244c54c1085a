import type { RoofProject } from '../project/index.js'
import { FIRE_ACCESS_RULES, type FireAccessRules, type FireRule } from '../tables/fire-access/index.js'
import { StageError, type Source } from '../worksheet/index.js'
import type { RoofSurface } from './roof-surface.js'
import { pitchIn12Of } from '../values/index.js'

/** Which of the two ridge strips holds: `small` up to the coverage limit, `large` above it. */
export type RidgeCase = 'small' | 'large'

/** What fire access asks of one plane, in inches along the roof. */
export interface PlaneFireAccess {
  readonly exempt: boolean
  readonly ridgeIn: FireRule
  readonly hipValleyIn: FireRule
  readonly pathwayIn: FireRule
  readonly pathways: FireRule
}

/** The rules of the adopted edition with the values that the authority allowed instead. */
export interface FireAccess {
  readonly rules: FireAccessRules
  /** Largest coverage with the small ridge strip, percent of the plan-view roof; undefined when there is one strip only. */
  readonly limitPct: FireRule | undefined
  readonly overridden: readonly string[]
  forPlane(surface: RoofSurface, ridgeCase: RidgeCase): PlaneFireAccess
}

const OVERRIDES = ['ridge_setback_in', 'pathway_in', 'pathways_per_plane', 'hip_valley_setback_in'] as const

/**
 * Fire access rules for this project, or undefined when `codes.residential` is not stated.
 *
 * @throws StageError when a value replaces the code's without `waiver_note`.
 */
export function fireAccess(project: RoofProject): FireAccess | undefined {
  const access = project.roof_access ?? {}
  const edition = project.codes?.residential
  const overridden = OVERRIDES.filter((key) => access[key] !== undefined)
  const [first] = overridden
  if (first !== undefined && access.waiver_note === undefined) {
    throw new StageError(
      `roof_access.${first}`,
      `${first} replaces the code's value but roof_access.waiver_note does not say who allowed it`,
      'State in waiver_note who allowed or asked for it and when; ask the fire marshal or the building department.',
    )
  }
  if (edition === undefined) return undefined
  const rules = FIRE_ACCESS_RULES[edition]
  const stated = (key: (typeof OVERRIDES)[number], code: FireRule): FireRule => {
    const value = access[key]
    return value === undefined ? code : { value, source: overrideSource(key, access.waiver_note ?? '') }
  }
  return {
    rules,
    limitPct: access.sprinklered === true ? rules.ridge.sprinkleredLimitPct : rules.ridge.limitPct,
    overridden,
    forPlane(surface, ridgeCase) {
      const pitchIn12 = pitchIn12Of(surface.tiltDeg)
      const exempt = pitchIn12 <= rules.exemptPitchIn12.value + 1e-6
      const none: FireRule = { value: 0, source: rules.exemptPitchIn12.source }
      if (exempt) return { exempt, ridgeIn: none, hipValleyIn: none, pathwayIn: rules.pathwayIn, pathways: none }
      const hip = surface.edges.some((edge) => edge.kind === 'hip')
      return {
        exempt,
        ridgeIn: stated('ridge_setback_in', ridgeCase === 'small' ? rules.ridge.smallIn : rules.ridge.largeIn),
        hipValleyIn: stated('hip_valley_setback_in', rules.hipValleyIn ?? none),
        pathwayIn: stated('pathway_in', rules.pathwayIn),
        pathways: stated('pathways_per_plane', hip ? rules.pathwaysPerHipPlane : rules.pathwaysPerPlane),
      }
    },
  }
}

function overrideSource(key: string, note: string): Source {
  return { document: `roof_access.${key}: ${note}`, standing: 'project file' }
}
