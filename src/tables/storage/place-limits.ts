import type { Source } from '../../worksheet/index.js'

/** One row of the limits for storage at houses of one and two families. */
export interface StorageLimit {
  readonly value: number
  readonly unit: 'kWh' | 'ft' | 'in'
  readonly source: Source
}

const SAFE: Source['standing'] = 'secondary'

const limit = (value: number, unit: StorageLimit['unit'], document: string, place: string): StorageLimit => ({
  value,
  unit,
  source: { document, place, standing: SAFE },
})

const RESIDENTIAL = 'IRC 2021 and 2024, IFC 2021, NFPA 855'

/**
 * Limits for storage at houses of one and two families; where two readings exist the safe one.
 *
 * @source residential and fire codes as quoted by officials, bulletins and course summaries: secondary; none read in the code
 */
export const storageLimits = {
  unit_energy_max: limit(20, 'kWh', RESIDENTIAL, 'R328.5, R330.5, 1207.11, chapter 15'),
  aggregate_inside_utility: limit(40, 'kWh', RESIDENTIAL, 'R328.5, 15.5.2'),
  aggregate_garage: limit(80, 'kWh', RESIDENTIAL, 'R328.5, 15.5.2'),
  aggregate_exterior_wall: limit(80, 'kWh', RESIDENTIAL, 'R328.5, 15.5.2'),
  aggregate_outdoor_ground: {
    value: 80,
    unit: 'kWh',
    source: { document: RESIDENTIAL, place: 'R328.5', standing: 'from memory' },
  },
  aggregate_whole_dwelling: limit(80, 'kWh', RESIDENTIAL, 'one cap for the property, the safe side of two readings'),
  unit_spacing: limit(3, 'ft', RESIDENTIAL, 'R328.3, 1207.11'),
  door_window_distance: limit(3, 'ft', 'IRC 2021, CRC', 'R328.4, R327.4'),
  garage_height_no_barrier: limit(48, 'in', 'guide of a permit programme, 2021', 'step 4'),
  bollard_pipe_diameter: limit(4, 'in', 'IFC', '312'),
  bollard_spacing_max: limit(4, 'ft', 'IFC', '312'),
  bollard_depth_min: limit(3, 'ft', 'IFC', '312'),
  bollard_distance_min: limit(3, 'ft', 'IFC', '312'),
  inside_wall_gypsum_type_x: limit(0.625, 'in', 'IRC 2021, NFPA 855', 'R328.4'),
  ess_disconnect_distance: limit(10, 'ft', 'NEC 2023', '706.15(B)(2)'),
  partition_distance: {
    value: 5,
    unit: 'ft',
    source: { document: 'NEC 2017', place: '706.7(E), 706.21(F)', standing: 'read' },
  },
  article_706_threshold: limit(1, 'kWh', 'NEC 2020 and later', '706.1'),
} as const satisfies Readonly<Record<string, StorageLimit>>

export type StorageLimitId = keyof typeof storageLimits

/** Sum of the limits of all places, kWh: the reading by which each place has its own. */
export const EACH_PLACE_KWH =
  storageLimits.aggregate_inside_utility.value +
  storageLimits.aggregate_garage.value +
  storageLimits.aggregate_exterior_wall.value +
  storageLimits.aggregate_outdoor_ground.value

/** Codes that rule where storage stands. */
export const storageCodes = [
  'IRC 2018',
  'IRC 2021',
  'IRC 2024',
  'IFC 2021',
  'CRC 2019',
  'CRC 2022',
  'NFPA 855-2020',
  'NFPA 855-2023',
] as const

export type StorageCode = (typeof storageCodes)[number]

/** What a code asks of places. */
export interface StorageCodeRule {
  /** Section that rules storage at houses. */
  readonly place: string
  /** Whether it limits energy, spacing and distances; IRC 2018 asks for listing, place, ventilation and commissioning only. */
  readonly limits: boolean
}

/** @source bulletins on the 2018 and 2021 residential codes, officials quoting the others: secondary */
export const storageCodeRules: Readonly<Record<StorageCode, StorageCodeRule>> = {
  'IRC 2018': { place: 'R327', limits: false },
  'IRC 2021': { place: 'R328', limits: true },
  'IRC 2024': { place: 'R330', limits: true },
  'IFC 2021': { place: '1207.11', limits: true },
  'CRC 2019': { place: 'R327', limits: true },
  'CRC 2022': { place: 'R328', limits: true },
  'NFPA 855-2020': { place: 'chapter 15', limits: true },
  'NFPA 855-2023': { place: 'chapter 15', limits: true },
}

export const isStorageCode = (text: string | undefined): text is StorageCode =>
  storageCodes.some((code) => code === text)
