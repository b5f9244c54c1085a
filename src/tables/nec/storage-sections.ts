import type { Source } from '../../worksheet/index.js'
import type { Edition } from './editions.js'
import { carriedStanding, CARRIED_FROM, EDITION_NOT_READ, type WrittenEdition } from './edition-2026.js'
import type { SectionPlace } from './edition-sections.js'
import { necSource } from './section-of.js'

const read = (place: string): SectionPlace => ({ place, standing: 'read' })
const secondary = (place: string): SectionPlace => ({ place, standing: 'secondary' })
const memory = (place: string): SectionPlace => ({ place, standing: 'from memory' })

type Places = Readonly<Partial<Record<Edition, SectionPlace>>>

/** With 2026: the section of 2023, as no source reports another. */
function to2023(places: Readonly<Partial<Record<WrittenEdition, SectionPlace>>>): Places {
  const last = places[CARRIED_FROM]
  if (last === undefined) return places
  return { ...places, [EDITION_NOT_READ]: { place: last.place, standing: carriedStanding(last.standing) } }
}

/** Article 706 began in 2017; 2020 and 2023 have one place. */
const since2017 = (of2017: string, later: SectionPlace): Places =>
  to2023({ 'NEC 2017': read(of2017), 'NEC 2020': later, 'NEC 2023': later })

/**
 * Sections of rules about storage; an edition without an entry has no such rule, or it was not looked up.
 *
 * @source NEC 2017 article 706, 702, 705, 710: read; 706 of 2020 and 2023: training courses and trade magazines, secondary
 */
const storageSections = {
  /** Current that counts: nameplate, inverter output, input at the lowest voltage. */
  ratedCurrent: since2017('706.20(A)', secondary('706.30(A)')),
  /** Conductors not below the rated current, nor below the device. */
  conductor: since2017('706.20(B)', secondary('706.30(B)')),
  overcurrent: since2017('706.21(B)', secondary('706.31')),
  dcDevices: since2017('706.21(C)', secondary('706.31(C)')),
  currentLimiting: since2017('706.21(D)', secondary('706.31(D)')),
  deviceAtUnit: since2017('706.21(F)', secondary('706.31(F)')),
  listed: since2017('706.5', secondary('706.5')),
  disconnect: since2017('706.7', secondary('706.15')),
  outside: to2023({ 'NEC 2020': secondary('706.15'), 'NEC 2023': secondary('706.15(B)') }),
  /** 2026 is reported to have deleted 706.16. */
  interactive: { 'NEC 2017': read('706.8'), 'NEC 2020': memory('706.16'), 'NEC 2023': memory('706.16') },
  workingSpace: since2017('706.10(C), 110.26', memory('110.26')),
  dwellingVoltage: since2017('706.30(A)', memory('706.20(B)')),
  transfer: to2023({ 'NEC 2017': read('702.5'), 'NEC 2020': memory('702.5'), 'NEC 2023': memory('702.5') }),
  backupCapacity: to2023({ 'NEC 2017': read('702.4(B)'), 'NEC 2020': memory('702.4(B)'), 'NEC 2023': memory('702.4') }),
  backupSign: to2023({ 'NEC 2017': read('702.7(A)'), 'NEC 2020': memory('702.7(A)'), 'NEC 2023': memory('702.7(A)') }),
  /** A supply that is smaller than the calculated load; 2026 is reported to size backup by 702.4 only. */
  standAlone: {
    'NEC 2017': read('710.15(A)'),
    'NEC 2020': memory('710.15(A)'),
    'NEC 2023': memory('710.15(A)'),
    'NEC 2026': secondary('702.4'),
  },
  /** One supply of 120 V on equipment for 120/240 V. */
  singleSupply: to2023({
    'NEC 2017': secondary('710.15(C)'),
    'NEC 2020': memory('710.15(C)'),
    'NEC 2023': memory('710.15(C)'),
  }),
  isolatingDevice: to2023({
    'NEC 2017': read('705.170'),
    'NEC 2020': memory('705.170'),
    'NEC 2023': memory('705.170'),
  }),
  shutdownInIsland: to2023({
    'NEC 2017': read('690.12(C)(3) note'),
    'NEC 2020': read('690.12(C)(3) note'),
    'NEC 2023': memory('690.12(C)(3)'),
  }),
  storageRoomWiring: to2023({ 'NEC 2023': read('334.12(A)(7), 348.12(3)') }),
} as const satisfies Readonly<Record<string, Places>>

export type StorageTopic = keyof typeof storageSections

/** Where a storage rule stands in an edition; undefined where it has none. */
export const storagePlace = (edition: Edition, topic: StorageTopic): SectionPlace | undefined => {
  const places: Places = storageSections[topic]
  return places[edition]
}

/** The section of a storage rule as a source; one that says so where the edition has no such rule. */
export function storageSection(edition: Edition, topic: StorageTopic): Source {
  const place = storagePlace(edition, topic)
  return place === undefined
    ? necSource(edition, 'no such rule', 'from memory')
    : necSource(edition, place.place, place.standing)
}

/** How an edition rules the disconnect of a storage system. */
export interface StorageDisconnectRule {
  /** Farthest that a disconnect within sight may be, ft; undefined where the edition names no distance. */
  readonly withinFt: number | undefined
  /** Word of the edition for a disconnect that one sees from the unit. */
  readonly seen: 'within sight' | 'visible'
  /** Whether a disconnect elsewhere does when it can be locked open. */
  readonly lockable: boolean
  /** Distance from the unit from which a second disconnect stands at the equipment, ft. */
  readonly partitionFt: number | undefined
  /** What houses of one and two families need outside. */
  readonly outside: 'none' | 'disconnect' | 'shutdown_function'
}

/**
 * Disconnects of storage systems by edition; none before 2017, when storage stood in 690.71 and 480.
 *
 * @source NEC 706.7, 2017 read; 706.15 of 2020, 2023 and 2026: training courses and trade magazines, secondary
 */
export const storageDisconnectRules: Readonly<Partial<Record<Edition, StorageDisconnectRule>>> = {
  'NEC 2017': { withinFt: undefined, seen: 'within sight', lockable: true, partitionFt: 5, outside: 'none' },
  'NEC 2020': { withinFt: 10, seen: 'within sight', lockable: true, partitionFt: 5, outside: 'disconnect' },
  'NEC 2023': { withinFt: 10, seen: 'within sight', lockable: true, partitionFt: 5, outside: 'shutdown_function' },
  'NEC 2026': { withinFt: 10, seen: 'visible', lockable: true, partitionFt: 5, outside: 'shutdown_function' },
}

/**
 * Energy from which storage falls under article 706, kWh; all permanent storage in 2017.
 *
 * @source NEC 706.1, 2020 and later: training course, secondary
 */
export const STORAGE_ARTICLE_KWH = 1
