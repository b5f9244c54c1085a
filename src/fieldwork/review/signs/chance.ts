import { REVIEW_DESIGN } from '../../../tables/fieldwork/index.js'

/**
 * Chance that a sign is a fault: how many systems have such a fault in a year against how many healthy ones would show the sign.
 *
 * @param falseAlarms Healthy systems that would show so strong a sign in a year, as a share.
 */
export function chanceOfFault(falseAlarms: number): number {
  return REVIEW_DESIGN.faultsPerYear / (REVIEW_DESIGN.faultsPerYear + falseAlarms)
}

/** Healthy systems that show a drop of this much evidence in a year, as a share: an exponential through the simulated years. */
export function falseDrops(evidence: number, least: number): number {
  const { falseDropsAtLeast, evidencePerE } = REVIEW_DESIGN
  return falseDropsAtLeast * Math.exp(-(evidence - least) / evidencePerE)
}
