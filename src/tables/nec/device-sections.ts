import type { Source } from '../../worksheet/index.js'
import type { Edition } from './editions.js'
import { necSource } from './section-of.js'
import type { SectionPlace } from './edition-sections.js'

const read = (place: string): SectionPlace => ({ place, standing: 'read' })
const memory = (place: string): SectionPlace => ({ place, standing: 'from memory' })

type Places = Readonly<Partial<Record<Edition, SectionPlace>>>

/** Sections of rules about devices on the DC side and about three phases; an edition without entry was not looked up. */
const deviceSections = {
  /** Disconnect at the output of a DC combiner above 30 A. */
  combinerDisconnect: { 'NEC 2020': read('690.15(D)(1)'), 'NEC 2023': memory('690.15(D)(1)') },
  /** Fuses in one pole, all in the same polarity. */
  onePoleFused: { 'NEC 2017': read('690.9(C)'), 'NEC 2020': read('690.9(C)'), 'NEC 2023': memory('690.9(C)') },
  /** Overcurrent devices and switches listed for PV DC. */
  listedForDc: {
    'NEC 2017': memory('690.9(B)'),
    'NEC 2020': read('690.9(B)'),
    'NEC 2023': memory('690.9(B)'),
  },
  /** Strings in parallel that no fuse has to protect. */
  noBackfeed: {
    'NEC 2017': read('690.9(A) Exception'),
    'NEC 2020': read('690.9(A)(1)'),
    'NEC 2023': memory('690.9(A)(1)'),
  },
  /** Highest voltage of strings with converters. */
  converterVoltage: {
    'NEC 2017': { place: '690.7(B)', standing: 'secondary' },
    'NEC 2020': { place: '690.7(B)', standing: 'secondary' },
    'NEC 2023': memory('690.7(B)'),
  },
  /** Single-phase sources spread over a three-phase service. */
  phaseBalance: {
    'NEC 2014': memory('705.100(A)'),
    'NEC 2017': read('705.100(A)'),
    'NEC 2020': memory('705.45(A)'),
    'NEC 2023': memory('705.45(A)'),
  },
  /** Three-phase sources stop in all phases when one is lost. */
  lostPhase: {
    'NEC 2014': memory('705.100(B)'),
    'NEC 2017': read('705.42, 705.100(B)'),
    'NEC 2020': memory('705.45(B)'),
    'NEC 2023': memory('705.45(B)'),
  },
} as const satisfies Readonly<Record<string, Places>>

export type DeviceTopic = keyof typeof deviceSections

/**
 * The section of a rule in an edition.
 *
 * @returns For an edition that was not looked up, the section of the newest one before it or of the oldest, from memory.
 */
export function deviceSection(edition: Edition, topic: DeviceTopic): Source {
  const places: Places = deviceSections[topic]
  const place = places[edition]
  if (place !== undefined) return necSource(edition, place.place, place.standing)
  const year = (name: string): number => Number(name.replace('NEC ', ''))
  const others = Object.entries(places)
  const near = others.findLast(([name]) => year(name) < year(edition)) ?? others[0]
  return necSource(edition, near?.[1].place ?? '', 'from memory')
}

/**
 * Largest output current of a DC combiner without a disconnect of its own, A.
 *
 * @source NEC 690.15(D)(1), 2020 read
 */
export const COMBINER_WITHOUT_SWITCH_A = 30

/**
 * Voltage that controlled conductors beyond the array boundary may keep after rapid shutdown, V.
 *
 * @source NEC 690.12(B)(1), 2017 and 2020 read; 2014 and 2023 secondary
 */
export const OUTSIDE_BOUNDARY_V = 30

/**
 * Voltage unbalance that single-phase sources may cause on a three-phase service, percent.
 *
 * @source NEC 705.100(A), 2017 read
 */
export const VOLTAGE_UNBALANCE_PCT = 3

/**
 * Rear irradiance of the two bifacial test conditions as a share of the 1000 W/m2 on the front: what a module's
 * bifaciality is multiplied by where no current is printed for them.
 *
 * @source IEC 61215-1: nameplate 135 W/m2, stress 300 W/m2 rear (secondary); single-side equivalent from memory
 */
export const REAR_SHARE = { nameplate: 0.135, stress: 0.3 } as const

/** Standing of the rear shares, as it is printed. */
export const REAR_SHARE_SOURCE: Source = {
  document: 'IEC 61215-1, bifacial nameplate and stress irradiance',
  standing: 'secondary',
}
