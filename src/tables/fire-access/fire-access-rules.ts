import type { Source } from '../../worksheet/index.js'

export type FireAccessEdition = 'IFC 2012' | 'IFC 2015' | 'IRC 2018' | 'IRC 2021'

/** A number of a fire access rule with the section that says it. */
export interface FireRule {
  readonly value: number
  readonly source: Source
}

/** Access rules of one edition for dwellings, in inches along the roof. */
export interface FireAccessRules {
  readonly edition: FireAccessEdition
  /** Roofs of this slope or flatter are exempt, inches of rise in 12. */
  readonly exemptPitchIn12: FireRule
  /** Width of a pathway from the lowest roof edge to the ridge, in. */
  readonly pathwayIn: FireRule
  /** Pathways for a plane with modules that has a hip. */
  readonly pathwaysPerHipPlane: FireRule
  /** Pathways for a plane with modules that has no hip. */
  readonly pathwaysPerPlane: FireRule
  /** Whether the plane's pathway may lie on the adjacent plane or straddle the edge between them. */
  readonly adjacentPathwayAllowed: boolean
  /** Pathways on separate planes that the building needs, one on the street or driveway side. */
  readonly pathwaysOfBuilding?: FireRule
  /** Free strip below a ridge: `small` up to the share of the whole roof, `large` above it. */
  readonly ridge: {
    readonly smallIn: FireRule
    readonly largeIn: FireRule
    /** Share of the total plan-view roof area, percent; missing when the strip does not depend on it. */
    readonly limitPct?: FireRule
    readonly sprinkleredLimitPct?: FireRule
  }
  /** Free strip along hips and valleys with modules on both sides. */
  readonly hipValleyIn?: FireRule
  /** Roof below an emergency escape opening stays free, with a pathway to it of the pathway's width. */
  readonly rescueOpening?: Source
}

function rule(value: number, document: string, place: string, standing: Source['standing']): FireRule {
  const [name = document, edition = ''] = document.split(' ')
  return { value, source: { document: name, edition, place, standing } }
}

/*
 * The fire code's 2012 and 2015 text as quoted by a code forum, a code site, a trade journal's summary and a state
 * fire marshal's guideline. For 2015 the rows of single-ridge roofs and of hips and valleys were not found quoted.
 */
function ifc(edition: 'IFC 2012' | 'IFC 2015'): FireAccessRules {
  const old = edition === 'IFC 2012'
  const prefix = old ? '605.11.3.2' : '605.11.1.2'
  const carried = old ? 'secondary' : 'from memory'
  const section = (in2012: number, in2015: number) => `${prefix}.${old ? in2012 : in2015}`
  return {
    edition,
    exemptPitchIn12: rule(2, edition, section(1, 2), 'secondary'),
    pathwayIn: rule(36, edition, section(1, 2), 'secondary'),
    pathwaysPerHipPlane: rule(1, edition, section(1, 2), 'secondary'),
    pathwaysPerPlane: rule(2, edition, section(2, 3), carried),
    adjacentPathwayAllowed: false,
    ridge: {
      smallIn: rule(36, edition, section(4, 5), 'secondary'),
      largeIn: rule(36, edition, section(4, 5), 'secondary'),
    },
    hipValleyIn: rule(18, edition, section(3, 4), carried),
  }
}

/*
 * The residential code's R324.6 from a page scan of 2018, a fire-code summary, a practitioners' list and a state
 * amendment. The sprinklered alternative was seen only as a mention; its numbers are unverified.
 */
function irc(edition: 'IRC 2018' | 'IRC 2021'): FireAccessRules {
  return {
    edition,
    exemptPitchIn12: rule(2, edition, 'R324.6', 'secondary'),
    pathwayIn: rule(36, edition, 'R324.6.1', 'secondary'),
    pathwaysPerHipPlane: rule(1, edition, 'R324.6.1', 'secondary'),
    pathwaysPerPlane: rule(1, edition, 'R324.6.1', 'secondary'),
    adjacentPathwayAllowed: true,
    pathwaysOfBuilding: rule(2, edition, 'R324.6.1', 'secondary'),
    ridge: {
      smallIn: rule(18, edition, 'R324.6.2', 'secondary'),
      largeIn: rule(36, edition, 'R324.6.2', 'secondary'),
      limitPct: rule(33, edition, 'R324.6.2', 'secondary'),
      sprinkleredLimitPct: rule(66, edition, 'R324.6.2.1', 'from memory'),
    },
    rescueOpening: rule(0, edition, edition === 'IRC 2018' ? 'R324.6.2.2' : 'R324.6.3', 'secondary').source,
  }
}

/** Fire access rules by edition. */
export const FIRE_ACCESS_RULES: Readonly<Record<FireAccessEdition, FireAccessRules>> = {
  'IFC 2012': ifc('IFC 2012'),
  'IFC 2015': ifc('IFC 2015'),
  'IRC 2018': irc('IRC 2018'),
  'IRC 2021': irc('IRC 2021'),
}
