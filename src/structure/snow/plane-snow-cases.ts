import type { Finding } from '../../worksheet/index.js'
import { parapetDriftCases, slidingCases, stepDriftCases } from './drift-cases.js'
import { balancedCase, iceDamCases, lowSlopeCases, partialCases } from './even-cases.js'
import { scaledSnow } from './snow-case.js'
import { baseSnow, type SnowOnPlane, type WorkedSnow } from './snow-on-plane.js'
import { casesWithoutWind, unbalancedCases } from './unbalanced-cases.js'
import { isUnbalancedSlope } from './unbalanced-snow.js'

/** The cases of a plane, and what could not be worked out. */
export interface PlaneSnow {
  /** Balanced first. */
  readonly cases: readonly WorkedSnow[]
  readonly findings: readonly Finding[]
}

/**
 * All ways that snow may lie on a plane, at the level of the stated ground snow.
 *
 * @returns The balanced case alone where there is no ground snow; a case that needs the winter wind parameter and lacks it is an error
 *   finding.
 * @source ASCE 7-10, 7-16, 7-22 chapter 7 (secondary)
 * @limits Walls at the side load the whole plane; valleys, snow held by other things and drifts of tilted rows are not covered.
 */
export function planeSnowCases(on: SnowOnPlane): PlaneSnow {
  const balanced = balancedCase(on)
  const base = baseSnow(on)
  const findings: Finding[] = []
  const needsWind = <Cases>(cases: Cases | undefined, what: string, otherwise: Cases): Cases => {
    if (cases === undefined) findings.push(noWinterWind(on.plane, what))
    return cases ?? otherwise
  }
  const covered = on.ridge !== undefined && isUnbalancedSlope(on.snow.tiltDeg)
  const others =
    base.groundPsf <= 0
      ? []
      : [
          ...lowSlopeCases(on, base),
          ...needsWind(unbalancedCases(on, base), 'unbalanced snow', casesWithoutWind(on, base)),
          ...on.higherRoofs.flatMap((roof) => [
            ...needsWind(stepDriftCases(on, base, roof), `the drift below roof ${roof.id}`, []),
            ...slidingCases(on, base, roof),
          ]),
          ...on.parapets.flatMap((parapet) =>
            needsWind(parapetDriftCases(on, base, parapet), `the drift at parapet ${parapet.id}`, []),
          ),
          ...iceDamCases(on, base),
          ...(covered ? [] : partialCases(on, base)),
        ]
  return { cases: [balanced, ...others].map((worked) => atStatedLevel(worked, on)), findings }
}

function atStatedLevel(worked: WorkedSnow, { mapsOverStated }: SnowOnPlane): WorkedSnow {
  if (mapsOverStated === 1) return worked
  const factor = 1 / mapsOverStated
  return {
    ...worked,
    snowCase: scaledSnow(worked.snowCase, factor),
    formula: `${worked.formula}; then times ${factor.toFixed(2)} to the allowable level of the stated ground snow`,
  }
}

function noWinterWind(plane: string, what: string): Finding {
  return {
    severity: 'error',
    id: 'structure.snow-winter-wind',
    message: `plane '${plane}': ${what} is not checked, as the winter wind parameter W2 of ASCE 7-22 is not stated`,
    where: 'structure.snow.winter_wind_parameter',
    source: { document: 'ASCE 7-22', place: 'eq. 7.6-1', standing: 'secondary' },
    fix: 'Read it for the site from the hazard tool of the standard (0.25 to 0.65) and state it.',
  }
}
