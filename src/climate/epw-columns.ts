/** Columns that are read, counted from 0 (EnergyPlus Auxiliary Programs, EPW data dictionary). */
export const EPW_COLUMN = {
  month: 1,
  day: 2,
  hour: 3,
  dryBulb: 6,
  ghi: 13,
  dni: 14,
  dhi: 15,
  wind: 21,
  snowDepth: 30,
} as const
