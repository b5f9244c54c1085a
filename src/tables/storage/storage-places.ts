import { storageLimits, type StorageLimit } from './place-limits.js'

/** Kinds of places where storage units stand or hang. */
export const storagePlaceKinds = [
  'exterior_wall',
  'outdoors_on_ground',
  'attached_garage',
  'detached_garage',
  'detached_structure',
  'utility_space',
  'utility_closet',
  'basement',
  'attic',
  'habitable_space',
  'sleeping_room',
  'clothes_closet',
  'bathroom',
] as const

export type StoragePlaceKind = (typeof storagePlaceKinds)[number]

/** What is asked of a kind of place. */
export interface StoragePlaceRule {
  readonly words: string
  /** Group whose units share one limit of energy; undefined where no unit may stand. */
  readonly group: StorageGroup | undefined
  readonly indoors: boolean
  readonly garage: boolean
}

export type StorageGroup = 'inside' | 'garage' | 'exterior_wall' | 'outdoor_ground'

const allowed = (words: string, group: StorageGroup, more: Partial<StoragePlaceRule> = {}): StoragePlaceRule => ({
  words,
  group,
  indoors: false,
  garage: false,
  ...more,
})

const forbidden = (words: string): StoragePlaceRule => ({ words, group: undefined, indoors: true, garage: false })

/**
 * Places of storage at houses of one and two families.
 *
 * @source residential codes R327 to R330, NFPA 855 chapter 15: secondary; bathrooms and clothes closets NEC 240.24(D), (E): from memory
 */
export const storagePlaceRules: Readonly<Record<StoragePlaceKind, StoragePlaceRule>> = {
  exterior_wall: allowed('exterior wall', 'exterior_wall'),
  outdoors_on_ground: allowed('outdoors on the ground', 'outdoor_ground'),
  attached_garage: allowed('attached garage', 'garage', { indoors: true, garage: true }),
  detached_garage: allowed('detached garage', 'garage', { indoors: true, garage: true }),
  detached_structure: allowed('detached structure', 'garage', { indoors: true }),
  utility_space: allowed('storage or utility space', 'inside', { indoors: true }),
  utility_closet: allowed('utility closet', 'inside', { indoors: true }),
  basement: allowed('basement', 'inside', { indoors: true }),
  attic: forbidden('attic'),
  habitable_space: forbidden('habitable space'),
  sleeping_room: forbidden('sleeping room'),
  clothes_closet: forbidden('clothes closet'),
  bathroom: forbidden('bathroom'),
}

/** Largest energy of all units in a group of places. */
export const groupLimits: Readonly<Record<StorageGroup, StorageLimit>> = {
  inside: storageLimits.aggregate_inside_utility,
  garage: storageLimits.aggregate_garage,
  exterior_wall: storageLimits.aggregate_exterior_wall,
  outdoor_ground: storageLimits.aggregate_outdoor_ground,
}

export const groupWords: Readonly<Record<StorageGroup, string>> = {
  inside: 'utility closets, basement, storage and utility spaces',
  garage: 'garages and detached structures',
  exterior_wall: 'exterior walls',
  outdoor_ground: 'outdoors on the ground',
}
