/** Grounding electrode conductor for service conductors up to the stated cross-section. */
export interface ElectrodeConductorRow {
  /** Largest ungrounded service conductor of this row, thousand circular mils; Infinity in the last row. */
  readonly toCopperKcmil: number
  readonly toAluminumKcmil: number
  /** The row as printed. */
  readonly largestCopper: string
  readonly largestAluminum: string
  readonly copper: string
  readonly aluminum: string
}

/**
 * Grounding electrode conductor by the largest ungrounded service conductor.
 *
 * @source NEC Table 250.66. A conductor that goes only to a rod need not be larger than 6 AWG copper, 250.66(A).
 */
export const electrodeConductor: readonly ElectrodeConductorRow[] = [
  {
    toCopperKcmil: 66.36,
    toAluminumKcmil: 105.6,
    largestCopper: '2 or smaller',
    largestAluminum: '1/0 or smaller',
    copper: '8',
    aluminum: '6',
  },
  {
    toCopperKcmil: 105.6,
    toAluminumKcmil: 167.8,
    largestCopper: '1 or 1/0',
    largestAluminum: '2/0 or 3/0',
    copper: '6',
    aluminum: '4',
  },
  {
    toCopperKcmil: 167.8,
    toAluminumKcmil: 250,
    largestCopper: '2/0 or 3/0',
    largestAluminum: '4/0 or 250',
    copper: '4',
    aluminum: '2',
  },
  {
    toCopperKcmil: 350,
    toAluminumKcmil: 500,
    largestCopper: 'over 3/0 through 350',
    largestAluminum: 'over 250 through 500',
    copper: '2',
    aluminum: '1/0',
  },
  {
    toCopperKcmil: 600,
    toAluminumKcmil: 900,
    largestCopper: 'over 350 through 600',
    largestAluminum: 'over 500 through 900',
    copper: '1/0',
    aluminum: '3/0',
  },
  {
    toCopperKcmil: 1100,
    toAluminumKcmil: 1750,
    largestCopper: 'over 600 through 1100',
    largestAluminum: 'over 900 through 1750',
    copper: '2/0',
    aluminum: '4/0',
  },
  {
    toCopperKcmil: Infinity,
    toAluminumKcmil: Infinity,
    largestCopper: 'over 1100',
    largestAluminum: 'over 1750',
    copper: '3/0',
    aluminum: '250 kcmil',
  },
]
