/**
 * The way from sunlight to AC, in order. Each entry is what is left AFTER the step it is named for, kWh a year, except
 * the first two, which are irradiation times rated power (the energy of loss-free modules under that light).
 */
export const LADDER = [
  'horizontal',
  'plane',
  'shade',
  'reflection',
  'soiling',
  'snow',
  'bypass',
  'low_light',
  'temperature',
  'nameplate',
  'light_induced',
  'age',
  'mismatch',
  'connections',
  'dc_wiring',
  'inverter',
  'clipping',
  'ac_wiring',
  'availability',
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
