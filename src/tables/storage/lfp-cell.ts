import type { Source } from '../../worksheet/index.js'

const CALENDAR: Source = {
  document: 'Naumann et al. 2018, J. Energy Storage 17',
  place: 'calendar ageing of LFP cells',
  standing: 'from memory',
}
const CYCLE: Source = {
  document: 'Naumann et al. 2020, J. Power Sources 451',
  place: 'cycle ageing of LFP cells',
  standing: 'from memory',
}

/** A published model of lithium iron phosphate cells: losses grow with the square root of time and of full cycles. */
export const LFP_CELL = {
  /** Fraction = k exp(-Ea / R (1/T - 1/T0)) (cubic (s - 0.5)^3 + offset) sqrt(seconds), s = filled, 0 to 1. */
  calendar: {
    k: 1.2571e-5,
    activationJ: 17_126,
    gasJ: 8.314,
    referenceK: 298.15,
    cubic: 2.8575,
    offset: 0.60225,
    source: CALENDAR,
  },
  /** Percent = (rate C + rateOffset) (cubic (D - middle)^3 + offset) sqrt(full cycles), C in 1/h, D = depth, 0 to 1. */
  cycle: { rate: 0.063, rateOffset: 0.0971, cubic: 4.0253, middle: 0.6, offset: 1.0923, source: CYCLE },
} as const
