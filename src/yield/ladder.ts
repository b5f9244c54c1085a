/** Entries that follow from the weather of each step, before the losses that are the same at all times. */
const BY_STEP = [
  'horizontal',
  'plane',
  'shade',
  'reflection',
  'dirt',
  'snow',
  'bypass',
  'low_light',
  'temperature',
] as const

/** Entries that are summed step by step: the cables come after those that are the same at all times. */
export const SUMMED = [...BY_STEP, 'dc_cables'] as const

/**
 * The way from sunlight to AC, in order. Each entry is what is left AFTER the step it is named for, kWh a year, except
 * the first two, which are irradiation times rated power (the energy of loss-free modules under that light).
 */
export const LADDER = [
  ...BY_STEP,
  'rating_shortfall',
  'first_weeks_of_light',
  'years_in_use',
  'unequal_modules',
  'contacts',
  'dc_cables',
  'inverter',
  'clipping',
  'ac_cables',
  'out_of_order',
  'night',
] as const

export type LadderStep = (typeof LADDER)[number]

/** Energy left after each step, kWh a year. */
export type Ladder = Record<LadderStep, number>

export function emptyLadder(): Ladder {
  return Object.fromEntries(LADDER.map((step) => [step, 0])) as Ladder
}

/** Adds one ladder to another, in place. */
export function addLadder(into: Ladder, more: Ladder): void {
  for (const step of LADDER) into[step] += more[step]
}
