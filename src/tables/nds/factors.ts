/** Load duration factor CD. @source NDS 2018 table 2.3.2, cap of 1.6 for connections in 11.3.2 (secondary) */
export const LOAD_DURATION = { dead: 0.9, live: 1.0, snow: 1.15, roofLive: 1.25, wind: 1.6 } as const

/** Wet service factor CM of lag screws in wood above 19 percent moisture. @source NDS 2018 table 11.3.3 (secondary) */
export const WET_SERVICE = { withdrawal: 0.7, lateral: 0.7 } as const

export type SustainedTemperature = 'up_to_100_f' | 'up_to_125_f' | 'up_to_150_f'

/** Temperature factor Ct of connections, dry and wet. @source NDS 2018 table 11.3.4 (secondary) */
export const TEMPERATURE: Readonly<Record<SustainedTemperature, { readonly dry: number; readonly wet: number }>> = {
  up_to_100_f: { dry: 1, wet: 1 },
  up_to_125_f: { dry: 0.8, wet: 0.7 },
  up_to_150_f: { dry: 0.7, wet: 0.5 },
}
