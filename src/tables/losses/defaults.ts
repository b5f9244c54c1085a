import type { Source } from '../../worksheet/index.js'

export interface LossDefault {
  /** Percent, for module-level inverters and for strings. */
  readonly moduleLevelPct: number
  readonly stringPct: number
  readonly why: string
  readonly source: Source
}

const MEMORY: Source = {
  document: 'engineering range of the trade',
  place: 'no open source with numbers was readable',
  standing: 'from memory',
}

/** Losses that apply unless the project states its own. */
export const LOSS_DEFAULTS = {
  dirt_pct: {
    moduleLevelPct: 2,
    stringPct: 2,
    why: 'rain keeps a pitched roof fairly clean; 2 to 5 % is usual, up to 7 % in the dry southwest',
    source: MEMORY,
  },
  unequal_modules_pct: {
    moduleLevelPct: 0,
    stringPct: 1,
    why: 'module-level inverters track each module; strings lose 1 to 2 %',
    source: MEMORY,
  },
  dc_cables_pct: {
    moduleLevelPct: 0,
    stringPct: 1,
    why: 'at rated current; a module-level inverter hangs on the module leads',
    source: MEMORY,
  },
  ac_cables_pct: {
    moduleLevelPct: 1,
    stringPct: 1,
    why: 'at rated current; DC and AC wiring together 1 to 3 %',
    source: MEMORY,
  },
  contacts_pct: { moduleLevelPct: 0.5, stringPct: 0.5, why: 'connectors and diodes', source: MEMORY },
  first_weeks_of_light_pct: {
    moduleLevelPct: 1.5,
    stringPct: 1.5,
    why: '1 to 3 % in the first days for p-type silicon',
    source: MEMORY,
  },
  rating_shortfall_pct: { moduleLevelPct: 0.5, stringPct: 0.5, why: '0 to 1 % below the nameplate', source: MEMORY },
  out_of_order_pct: { moduleLevelPct: 1, stringPct: 1, why: '0.5 to 3 % of the time out of order', source: MEMORY },
  degradation_pct_per_year: {
    moduleLevelPct: 0.5,
    stringPct: 0.5,
    why: 'median of nearly 2,000 published rates; the mean is 0.8 to 0.9 %',
    source: {
      document: 'Jordan & Kurtz, Prog. Photovolt. 21:12-29',
      edition: '2013',
      place: 'abstract',
      standing: 'read',
    },
  },
} as const satisfies Readonly<Record<string, LossDefault>>
