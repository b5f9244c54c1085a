/** When a holiday falls: a fixed day, or the nth weekday of a month (-1 = last). Weekday 0 = Sunday. */
export type HolidayRule =
  | { readonly month: number; readonly day: number }
  | { readonly month: number; readonly weekday: number; readonly nth: number }

/** Federal holidays that tariffs name. @source 5 USC 6103(a) (from memory) */
export const HOLIDAYS = {
  new_year: { month: 1, day: 1 },
  martin_luther_king: { month: 1, weekday: 1, nth: 3 },
  presidents: { month: 2, weekday: 1, nth: 3 },
  memorial: { month: 5, weekday: 1, nth: -1 },
  juneteenth: { month: 6, day: 19 },
  independence: { month: 7, day: 4 },
  labor: { month: 9, weekday: 1, nth: 1 },
  columbus: { month: 10, weekday: 1, nth: 2 },
  veterans: { month: 11, day: 11 },
  thanksgiving: { month: 11, weekday: 4, nth: 4 },
  christmas: { month: 12, day: 25 },
} as const satisfies Record<string, HolidayRule>

export type HolidayName = keyof typeof HOLIDAYS
