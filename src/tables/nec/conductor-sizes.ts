/** Conductor sizes of the tables, smallest first: AWG number, or kcmil. */
export const conductorSizes = [
  '14',
  '12',
  '10',
  '8',
  '6',
  '4',
  '3',
  '2',
  '1',
  '1/0',
  '2/0',
  '3/0',
  '4/0',
  '250 kcmil',
  '300 kcmil',
  '350 kcmil',
  '400 kcmil',
  '500 kcmil',
] as const

export type ConductorSize = (typeof conductorSizes)[number]

/** Trade sizes of raceways that raceways are chosen from, smallest first. */
export const tradeSizes = ['1/2', '3/4', '1', '1-1/4', '1-1/2', '2', '2-1/2', '3'] as const

export type TradeSize = (typeof tradeSizes)[number]

export type ConductorMaterial = 'copper' | 'aluminum'
