import type { SourceStanding } from '../../worksheet/index.js'
import type { Edition } from './editions.js'
import { carriedStanding, EDITION_NOT_READ, CARRIED_FROM, type WrittenEdition } from './edition-2026.js'

/** Section of a topic in one edition and how far it was read; undefined where that edition has no such rule. */
export interface SectionPlace {
  readonly place: string
  readonly standing: SourceStanding
}

const read = (place: string): SectionPlace => ({ place, standing: 'read' })
const secondary = (place: string): SectionPlace => ({ place, standing: 'secondary' })
const memory = (place: string): SectionPlace => ({ place, standing: 'from memory' })

type ByEdition = Readonly<Record<Edition, SectionPlace | undefined>>

/** With 2026: the section of 2023, as no source reports another. */
function to2023(places: Readonly<Record<WrittenEdition, SectionPlace | undefined>>): ByEdition {
  const carried = places[CARRIED_FROM]
  return {
    ...places,
    [EDITION_NOT_READ]: carried && { place: carried.place, standing: carriedStanding(carried.standing) },
  }
}

/** The same section in all editions, read in 2017, 2020 (as adopted by a state) and 2023. */
const unchanged = (place: string): ByEdition =>
  to2023({
    'NEC 2011': memory(place),
    'NEC 2014': memory(place),
    'NEC 2017': read(place),
    'NEC 2020': read(place),
    'NEC 2023': read(place),
  })

/** The same table in all editions according to a source that covers the older ones too. */
const unchangedTable = (place: string): ByEdition => ({
  ...unchanged(place),
  'NEC 2011': secondary(place),
  'NEC 2014': secondary(place),
})

/** A rule that is new in 2026; the letter of its section was not found out. */
const since2026 = (place: string): ByEdition => ({
  'NEC 2011': undefined,
  'NEC 2014': undefined,
  'NEC 2017': undefined,
  'NEC 2020': undefined,
  'NEC 2023': undefined,
  'NEC 2026': secondary(place),
})

/**
 * Where each rule stands in each edition.
 *
 * @source The whole 2017 column was read in code text; 2020 articles 110 to 358 and 690 through a state code that adopts them;
 * 2023 chapters 1 to 4. Article 705 of 2020 and 2023 and article 690 of 2023: secondary. 2011 and 2014: restatements or memory.
 * 2026: nothing read; the sections of 2023, where no source reports another.
 */
export const editionSections = {
  ampacityTable: to2023({
    'NEC 2011': secondary('310.15(B)(16)'),
    'NEC 2014': secondary('310.15(B)(16)'),
    'NEC 2017': read('310.15(B)(16)'),
    'NEC 2020': read('310.16'),
    'NEC 2023': read('310.16'),
  }),
  freeAirAmpacity: to2023({
    'NEC 2011': secondary('310.15(B)(17)'),
    'NEC 2014': secondary('310.15(B)(17)'),
    'NEC 2017': read('310.15(B)(17)'),
    'NEC 2020': read('310.17'),
    'NEC 2023': read('310.17'),
  }),
  ambientCorrection: to2023({
    'NEC 2011': secondary('310.15(B)(2)(a)'),
    'NEC 2014': secondary('310.15(B)(2)(a)'),
    'NEC 2017': read('310.15(B)(2)(a)'),
    'NEC 2020': read('310.15(B)(1)'),
    'NEC 2023': read('310.15(B)(1)(1)'),
  }),
  moreThanThreeConductors: to2023({
    'NEC 2011': secondary('310.15(B)(3)(a)'),
    'NEC 2014': secondary('310.15(B)(3)(a)'),
    'NEC 2017': read('310.15(B)(3)(a)'),
    'NEC 2020': read('310.15(C)(1)'),
    'NEC 2023': read('310.15(C)(1)'),
  }),
  rooftopAdder: to2023({
    'NEC 2011': secondary('Table 310.15(B)(3)(c)'),
    'NEC 2014': secondary('Table 310.15(B)(3)(c)'),
    'NEC 2017': read('310.15(B)(3)(c)'),
    'NEC 2020': read('310.15(B)(2)'),
    'NEC 2023': read('310.15(B)(2)'),
  }),
  terminalTemperature: to2023({
    'NEC 2011': memory('110.14(C)'),
    'NEC 2014': memory('110.14(C)'),
    'NEC 2017': read('110.14(C)'),
    'NEC 2020': read('110.14(C)'),
    'NEC 2023': read('110.14(C)'),
  }),
  maxDcVoltage: to2023({
    'NEC 2011': memory('690.7'),
    'NEC 2014': memory('690.7'),
    'NEC 2017': read('690.7(A)'),
    'NEC 2020': read('690.7(A)'),
    'NEC 2023': secondary('690.7(A)'),
  }),
  sourceCircuitCurrent: to2023({
    'NEC 2011': memory('690.8(A)(1)'),
    'NEC 2014': memory('690.8(A)(1)'),
    'NEC 2017': read('690.8(A)(1)(1)'),
    'NEC 2020': read('690.8(A)(1)(a)(1)'),
    'NEC 2023': secondary('690.8(A)(1)(a)'),
  }),
  inverterOutputCurrent: to2023({
    'NEC 2011': memory('690.8(A)(3)'),
    'NEC 2014': memory('690.8(A)(3)'),
    'NEC 2017': read('690.8(A)(3)'),
    'NEC 2020': read('690.8(A)(1)(e)'),
    'NEC 2023': memory('690.8(A)(1)(c)'),
  }),
  dcDcConverterCurrent: to2023({
    'NEC 2011': undefined,
    'NEC 2014': memory('690.8(A)(5)'),
    'NEC 2017': read('690.8(A)(5)-(6)'),
    'NEC 2020': read('690.8(A)(1)(c)-(d)'),
    'NEC 2023': memory('690.8(A)(1)(b)'),
  }),
  dcConductorAmpacity: to2023({
    'NEC 2011': memory('690.8(B)(2)'),
    'NEC 2014': memory('690.8(B)'),
    'NEC 2017': read('690.8(B)'),
    'NEC 2020': read('690.8(B)'),
    'NEC 2023': secondary('690.8(B)'),
  }),
  dcOcpdRating: to2023({
    'NEC 2011': memory('690.8(B)(1)'),
    'NEC 2014': memory('690.9(B)'),
    'NEC 2017': read('690.9(B)'),
    'NEC 2020': read('690.9(B)'),
    'NEC 2023': secondary('690.9(B)'),
  }),
  acOutputSizing: to2023({
    'NEC 2011': memory('705.60'),
    'NEC 2014': memory('705.60'),
    'NEC 2017': read('705.60'),
    'NEC 2020': secondary('705.28'),
    'NEC 2023': secondary('705.28'),
  }),
  loadSideBusbar: to2023({
    'NEC 2011': secondary('705.12(D)'),
    'NEC 2014': secondary('705.12(D)(2)(3)'),
    'NEC 2017': read('705.12(B)(2)(3)'),
    'NEC 2020': secondary('705.12(B)(3)'),
    'NEC 2023': secondary('705.12(B)'),
  }),
  supplySide: to2023({
    'NEC 2011': memory('705.12(A)'),
    'NEC 2014': memory('705.12(A)'),
    'NEC 2017': read('705.12(A), 705.31'),
    'NEC 2020': secondary('705.11'),
    'NEC 2023': secondary('705.11'),
  }),
  feederConnection: to2023({
    'NEC 2011': memory('705.12(D)(2)'),
    'NEC 2014': memory('705.12(D)(2)(1)-(2)'),
    'NEC 2017': read('705.12(B)(2)(1)-(2)'),
    'NEC 2020': secondary('705.12(B)(1)-(2)'),
    'NEC 2023': secondary('705.12(A)(2)-(3)'),
  }),
  pvDisconnect: to2023({
    'NEC 2011': memory('690.13-690.17'),
    'NEC 2014': memory('690.13, 690.15, 690.17'),
    'NEC 2017': read('690.13, 690.15'),
    'NEC 2020': read('690.13, 690.15'),
    'NEC 2023': secondary('690.13, 690.15'),
  }),
  afciDc80V: to2023({
    'NEC 2011': memory('690.11 (on/penetrating building)'),
    'NEC 2014': memory('690.11'),
    'NEC 2017': read('690.11'),
    'NEC 2020': read('690.11'),
    'NEC 2023': secondary('690.11'),
  }),
  rapidShutdown: to2023({
    'NEC 2011': undefined,
    'NEC 2014': secondary('690.12'),
    'NEC 2017': read('690.12'),
    'NEC 2020': read('690.12'),
    'NEC 2023': secondary('690.12'),
  }),
  dcGroundFault: to2023({
    'NEC 2011': memory('690.5'),
    'NEC 2014': memory('690.5, 690.35'),
    'NEC 2017': read('690.41(B)'),
    'NEC 2020': read('690.41(B)'),
    'NEC 2023': secondary('690.41(B)'),
  }),
  equipmentGrounding: to2023({
    'NEC 2011': memory('690.43, 690.45, 690.46'),
    'NEC 2014': memory('690.43, 690.45, 690.46'),
    'NEC 2017': read('690.43, 690.45, 690.46'),
    'NEC 2020': read('690.43, 690.45'),
    'NEC 2023': secondary('690.43, 690.45'),
  }),
  arrayElectrode: to2023({
    'NEC 2011': secondary('removed'),
    'NEC 2014': secondary('690.47(D) required, auxiliary'),
    'NEC 2017': read('690.47(B) permitted'),
    'NEC 2020': read('690.47(B) permitted'),
    'NEC 2023': secondary('690.47(B) permitted'),
  }),
  dcInBuildings: to2023({
    'NEC 2011': memory('690.31(E)'),
    'NEC 2014': memory('690.31(G)'),
    'NEC 2017': read('690.31(G)'),
    'NEC 2020': read('690.31(D)'),
    'NEC 2023': secondary('690.31(D)'),
  }),
  arrayCableSupport: to2023({
    'NEC 2011': memory('338.10, 334.30'),
    'NEC 2014': memory('338.10, 334.30'),
    'NEC 2017': read('690.31(C)(1) -> 338.10(B)(4)(b), 334.30'),
    'NEC 2020': read('690.31(C)(1) 24 in'),
    'NEC 2023': memory('690.31(C)(1) 24 in'),
  }),
  acModules: to2023({
    'NEC 2011': memory('690.6'),
    'NEC 2014': memory('690.6'),
    'NEC 2017': read('690.6'),
    'NEC 2020': read('690.6'),
    'NEC 2023': secondary('690.6'),
  }),
  standardDevice: unchangedTable('240.6(A)'),
  nextSizeUp: unchanged('240.4(B)'),
  smallConductor: unchangedTable('240.4(D)'),
  listedEquipment: unchanged('110.3(B)'),
  wetRaceway: unchanged('300.9'),
  equipmentGroundSize: unchangedTable('Table 250.122'),
  equipmentGroundIncrease: unchanged('250.122(B)'),
  equipmentGroundProtection: unchanged('250.120(C)'),
  electrodeConductorSize: unchangedTable('250.66'),
  electrodeConductorUnspliced: unchanged('250.64(C)'),
  racewayFill: unchangedTable('Chapter 9 Table 1'),
  racewayArea: unchangedTable('Chapter 9 Table 4'),
  conductorArea: unchangedTable('Chapter 9 Table 5'),
  dcResistance: unchangedTable('Chapter 9 Table 8'),
  acImpedance: unchangedTable('Chapter 9 Table 9'),
  voltageDrop: to2023({
    'NEC 2011': memory('210.19(A)(1) informational note'),
    'NEC 2014': memory('210.19(A)(1) informational note'),
    'NEC 2017': read('210.19(A)(1) informational note 4'),
    'NEC 2020': memory('210.19(A) informational note'),
    'NEC 2023': read('210.19 informational note'),
  }),
  racewaySupport: unchanged('344.30, 352.30, 356.30, 358.30'),
  pvcExpansion: unchanged('352.44'),
  metalRacewayBonding: to2023({
    'NEC 2011': memory('250.86, 250.96(A)'),
    'NEC 2014': memory('250.86, 250.96(A)'),
    'NEC 2017': memory('250.86, 250.96(A)'),
    'NEC 2020': memory('250.86, 250.96(A)'),
    'NEC 2023': memory('250.86, 250.96(A)'),
  }),
  interruptingRating: to2023({
    'NEC 2011': memory('110.9'),
    'NEC 2014': memory('110.9'),
    'NEC 2017': read('705.16'),
    'NEC 2020': memory('110.9'),
    'NEC 2023': memory('110.9'),
  }),
  workingSpace: unchanged('110.26'),
  acDcSeparation: to2023({
    'NEC 2011': memory('690.4(B)'),
    'NEC 2014': memory('690.31(B)'),
    'NEC 2017': read('690.31(B)'),
    'NEC 2020': read('690.31(B)'),
    'NEC 2023': secondary('690.31(B)'),
  }),
  nipple: to2023({
    'NEC 2011': memory('310.15(B)(3)(a)(2), Chapter 9 note 4'),
    'NEC 2014': memory('310.15(B)(3)(a)(2), Chapter 9 note 4'),
    'NEC 2017': read('310.15(B)(3)(a)(2), Chapter 9 note 4'),
    'NEC 2020': secondary('310.15(C)(1)(b), Chapter 9 note 4'),
    'NEC 2023': secondary('310.15(C)(1)(b), Chapter 9 note 4'),
  }),
  lowerAmpacity: to2023({
    'NEC 2011': memory('310.15(A)(2) exception'),
    'NEC 2014': memory('310.15(A)(2) exception'),
    'NEC 2017': read('310.15(A)(2) exception'),
    'NEC 2020': memory('310.14(A)(2) exception'),
    'NEC 2023': read('310.14(A)(2) exception'),
  }),
  backfedBreaker: to2023({
    'NEC 2011': memory('705.12(D)(5)'),
    'NEC 2014': memory('705.12(D)(5)'),
    'NEC 2017': memory('705.12(B)(4)'),
    'NEC 2020': memory('705.30'),
    'NEC 2023': memory('705.30'),
  }),
  arrayWire: to2023({
    'NEC 2011': memory('690.31(B)'),
    'NEC 2014': memory('690.31(C)(1)'),
    'NEC 2017': read('690.31(C)(1)'),
    'NEC 2020': read('690.31(C)(1)'),
    'NEC 2023': secondary('690.31(C)(1)'),
  }),
  serviceConductor: unchanged('230.42, 230.90'),
  serviceDisconnectRating: unchanged('230.79(D)'),
  serviceOvercurrent: to2023({
    'NEC 2011': memory('230.91'),
    'NEC 2014': memory('230.91'),
    'NEC 2017': memory('230.91'),
    'NEC 2020': memory('230.91'),
    'NEC 2023': memory('230.91'),
  }),
  bondingJumper: to2023({
    'NEC 2011': memory('250.66, 12.5 percent'),
    'NEC 2014': memory('Table 250.102(C)(1)'),
    'NEC 2017': memory('Table 250.102(C)(1)'),
    'NEC 2020': memory('Table 250.102(C)(1)'),
    'NEC 2023': read('Table 250.102(C)(1)'),
  }),
  serviceGrounding: to2023({
    'NEC 2011': memory('250.24'),
    'NEC 2014': memory('250.24'),
    'NEC 2017': memory('250.24'),
    'NEC 2020': read('250.25, 250.24(A)-(D)'),
    'NEC 2023': read('250.25, 250.24(A)-(D)'),
  }),
  panelProtection: unchanged('408.36'),
  fractions: since2026('690.4, fractions of an ampere'),
  loadOnBusbar: unchanged('408.30, Article 220'),
  feederTap: unchanged('240.21(B)'),
  feederProtection: unchanged('240.21'),
  feederLoad: unchanged('215.2, 215.3'),
  leastDwellingService: unchanged('230.79(C)'),
  serviceLoad: unchanged('230.42, 230.79'),
  dwellingService: to2023({
    'NEC 2011': secondary('310.15(B)(7)'),
    'NEC 2014': secondary('310.15(B)(7)'),
    'NEC 2017': read('310.15(B)(7)'),
    'NEC 2020': read('310.12(A)'),
    'NEC 2023': read('310.12(A)'),
  }),
  boxFill: unchanged('314.16'),
  boxVolume: unchanged('Table 314.16(A)'),
  conduitBody: unchanged('314.16(C)'),
  pullBox: unchanged('314.28(A)'),
  boxAtJoint: unchanged('300.15'),
  bundledCables: unchanged('334.80'),
  cablesInInsulation: unchanged('334.80, 338.10(B)(4), 340.80, 320.80'),
} as const satisfies Readonly<Record<string, ByEdition>>

export type SectionTopic = keyof typeof editionSections
