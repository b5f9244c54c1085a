import type { Edition } from './editions.js'
import { CARRIED_FROM, carriedStanding, EDITION_NOT_READ, type WrittenEdition } from './edition-2026.js'
import type { SourceStanding } from '../../worksheet/index.js'

/** Section of one edition; undefined where that edition does not ask for the label. */
export interface LabelSection {
  readonly section: string
  readonly standing: SourceStanding
}

/**
 * When a project needs a label. `busbar rule asks for it`: the rule that the panel or combiner was judged by names the
 * label. `asked`: the project file does not tell, so it is a question for the authority (see label-questions).
 */
export type LabelCondition =
  | 'always'
  | 'dc strings'
  | 'load side'
  | 'busbar rule asks for it'
  | 'several kinds of rapid shutdown'
  | 'storage or backup'
  | 'asked'
  | 'fixed at the factory'
  | 'a rule for every label'

/**
 * What a label is fixed to. `pv_disconnect` is the panel where the backfed breaker is the disconnect;
 * `shutdown_initiator` is whatever starts the rapid shutdown.
 */
export type LabelSpot =
  | 'main_panel'
  | 'pv_disconnect'
  | 'combiner'
  | 'inverter'
  | 'dc_disconnect'
  | 'dc_raceway'
  | 'shutdown_initiator'

/** A label or placard: who asks for it, when and where; its words stand in label-words. The text is a gist except the signal words that the code itself prescribes. */
export interface LabelRule {
  readonly id: string
  readonly condition: LabelCondition
  readonly at: readonly LabelSpot[]
  readonly where: string
  readonly gist: string
  readonly sections: Readonly<Record<Edition, LabelSection | undefined>>
  readonly sizeAndColour: string
  readonly neededForModuleLevel: string
  readonly verifiedBy: string
}

interface WrittenRule extends Omit<LabelRule, 'sections'> {
  readonly sections: Readonly<Record<WrittenEdition, LabelSection | undefined>>
}

const rows: readonly WrittenRule[] = [
  {
    id: 'PV_DISC',
    condition: 'always',
    at: ['pv_disconnect'],
    where: 'each PV system disconnecting means',
    gist: 'PV SYSTEM DISCONNECT (or equivalent); must also show open/closed',
    sections: {
      'NEC 2011': { section: '690.14(C)(2)', standing: 'from memory' },
      'NEC 2014': { section: '690.13(B)', standing: 'from memory' },
      'NEC 2017': { section: '690.13(B)', standing: 'read' },
      'NEC 2020': { section: '690.13(B)', standing: 'read' },
      'NEC 2023': { section: '690.13(B)', standing: 'secondary' },
    },
    sizeAndColour: 'not fixed by section',
    neededForModuleLevel: 'yes',
    verifiedBy: 'NEC 2017, CEC 2022 text; 2011/2014 numbers memory, unverified',
  },
  {
    id: 'LINE_LOAD',
    condition: 'dc strings',
    at: ['dc_disconnect'],
    where: 'disconnect whose line AND load terminals can be live when open',
    gist: 'WARNING - shock hazard - terminals on line and load sides may be energised in open position',
    sections: {
      'NEC 2011': { section: '690.17', standing: 'from memory' },
      'NEC 2014': { section: '690.17(E)', standing: 'from memory' },
      'NEC 2017': { section: '690.13(B)', standing: 'read' },
      'NEC 2020': { section: '690.13(B)', standing: 'read' },
      'NEC 2023': { section: '690.13(B)', standing: 'secondary' },
    },
    sizeAndColour: '110.21(B)',
    neededForModuleLevel: 'only if it applies (ac-coupled disconnects normally do not stay live on the inverter side)',
    verifiedBy: 'NEC 2017, CEC 2022; 2011 label vendor',
  },
  {
    id: 'DC_RACEWAY',
    condition: 'dc strings',
    at: ['dc_raceway'],
    where: 'exposed dc raceways, trays, covers of pull/junction boxes, conduit bodies with unused openings',
    gist: '2011: PHOTOVOLTAIC POWER SOURCE; 2014-2017: WARNING: PHOTOVOLTAIC POWER SOURCE; 2020+: PHOTOVOLTAIC POWER SOURCE or SOLAR PV DC CIRCUIT',
    sections: {
      'NEC 2011': { section: '690.31(E)(3)-(4)', standing: 'from memory' },
      'NEC 2014': { section: '690.31(G)(3)-(4)', standing: 'from memory' },
      'NEC 2017': { section: '690.31(G)(3)-(4)', standing: 'read' },
      'NEC 2020': { section: '690.31(D)(2)', standing: 'read' },
      'NEC 2023': { section: '690.31(D)(2)', standing: 'secondary' },
    },
    sizeAndColour:
      'every <= 10 ft and each section cut by walls/ceilings/enclosures (all editions); 2014+: all capitals >= 3/8 in, white on red; reflective in 2014/2017, not in 2020; 2011: no size or colour fixed (IFC 2012 adds them)',
    neededForModuleLevel: 'no (unless dc raceways exist)',
    verifiedBy:
      'NEC 2017 and CEC 2022 text; 2011 words from memory, absence of size secondary; 2023 assumed as 2020; exact words in label-words.csv',
  },
  {
    id: 'DC_SOURCE',
    condition: 'dc strings',
    at: ['dc_disconnect'],
    where: 'dc PV system disconnect (and dc equipment disconnects in 2017)',
    gist: '2008-2014: Imp, Vmp, max system voltage, max circuit current; 2017: max voltage, max circuit current, controller/converter output; 2020+: highest max dc voltage only, at ONE of dc disconnect / power converter / distribution equipment',
    sections: {
      'NEC 2011': { section: '690.53', standing: 'from memory' },
      'NEC 2014': { section: '690.53', standing: 'from memory' },
      'NEC 2017': { section: '690.53', standing: 'read' },
      'NEC 2020': { section: '690.53', standing: 'read' },
      'NEC 2023': { section: '690.7(D)', standing: 'secondary' },
    },
    sizeAndColour: 'permanent, readily visible',
    neededForModuleLevel: '2017: no dc disconnect, so no; 2020+: one dc voltage label is arguable',
    verifiedBy: 'NEC 2017, CEC 2022; 2023 number from a label guide; 2008 list from engraver page',
  },
  {
    id: 'AC_POI',
    condition: 'always',
    at: ['pv_disconnect'],
    where: 'interconnection disconnect/backfed breaker, accessible location',
    gist: 'power source; rated ac output current (A) and nominal ac voltage (V)',
    sections: {
      'NEC 2011': { section: '690.54', standing: 'from memory' },
      'NEC 2014': { section: '690.54', standing: 'from memory' },
      'NEC 2017': { section: '690.54', standing: 'read' },
      'NEC 2020': { section: '690.54', standing: 'read' },
      'NEC 2023': undefined,
    },
    sizeAndColour: 'permanent',
    neededForModuleLevel: 'yes up to 2020',
    verifiedBy: 'NEC 2017, CEC 2022; deletion from trade article on the 2023 drafts',
  },
  {
    id: 'RSD_PLACARD',
    condition: 'always',
    at: ['main_panel'],
    where:
      'service equipment to which PV is connected (2017: on or within 3 ft of service disconnect; 2020: each service equipment location or approved readily visible place)',
    gist: '2014: PHOTOVOLTAIC SYSTEM EQUIPPED WITH RAPID SHUTDOWN; 2017+: SOLAR PV SYSTEM IS EQUIPPED WITH RAPID SHUTDOWN + turn switch to OFF + roof diagram + location of initiators',
    sections: {
      'NEC 2011': undefined,
      'NEC 2014': { section: '690.56(C)', standing: 'secondary' },
      'NEC 2017': { section: '690.56(C)(1)', standing: 'read' },
      'NEC 2020': { section: '690.56(C)', standing: 'read' },
      'NEC 2023': { section: '690.12(D)', standing: 'secondary' },
    },
    sizeAndColour:
      '2014: reflective capitals >= 3/8 in white on red (memory, unverified); 2017/2020: title capitals >= 3/8 in black on yellow, rest >= 3/16 in black on white; 2017 type (b) title white on red; 2023: any contrasting colours, not reflective (secondary), title 3/8 in (memory, unverified)',
    neededForModuleLevel: 'yes',
    verifiedBy: 'NEC 2017, CEC 2022',
  },
  {
    id: 'RSD_SWITCH',
    condition: 'always',
    at: ['shutdown_initiator'],
    where: 'on or within 3 ft of rapid shutdown switch',
    gist: 'RAPID SHUTDOWN SWITCH FOR SOLAR PV SYSTEM',
    sections: {
      'NEC 2011': undefined,
      'NEC 2014': undefined,
      'NEC 2017': { section: '690.56(C)(3)', standing: 'read' },
      'NEC 2020': { section: '690.56(C)(2)', standing: 'read' },
      'NEC 2023': { section: '690.12(D)(2)', standing: 'secondary' },
    },
    sizeAndColour: 'reflective, capitals >= 3/8 in, white on red',
    neededForModuleLevel: 'yes, on the ac disconnect/breaker that initiates',
    verifiedBy: 'NEC 2017, CEC 2022; 2023 number secondary',
  },
  {
    id: 'DIRECTORY',
    condition: 'always',
    at: ['main_panel', 'pv_disconnect'],
    where: 'each service equipment and each power-source disconnect',
    gist: 'location of every power source disconnecting means; 2020+ adds words CAUTION: MULTIPLE SOURCES OF POWER',
    sections: {
      'NEC 2011': { section: '705.10, 690.56(B)', standing: 'from memory' },
      'NEC 2014': { section: '705.10, 690.56(B)', standing: 'from memory' },
      'NEC 2017': { section: '705.10, 690.56(B)', standing: 'read' },
      'NEC 2020': { section: '705.10, 690.56(B)', standing: 'secondary' },
      'NEC 2023': { section: '705.10', standing: 'secondary' },
    },
    sizeAndColour: '110.21(B) (2017); 2023 adds emergency phone of an off-site operator',
    neededForModuleLevel: 'yes',
    verifiedBy:
      'NEC 2017 (words free); CAUTION words start in 2020 (legal explainer citing the 2021 ISEP reprint of NEC 2020, secondary); 2023 wording legal explainer and label vendor',
  },
  {
    id: 'BACKFED_BREAKER',
    condition: 'busbar rule asks for it',
    at: ['main_panel', 'combiner'],
    where: 'distribution equipment next to backfed breaker, when 120 % rule used',
    gist: 'WARNING - power source output connection - do not relocate this overcurrent device (2011: inverter output connection)',
    sections: {
      'NEC 2011': { section: '705.12(D)(7)', standing: 'secondary' },
      'NEC 2014': { section: '705.12(D)(2)(3)(b)', standing: 'secondary' },
      'NEC 2017': { section: '705.12(B)(2)(3)(b)', standing: 'read' },
      'NEC 2020': { section: '705.12(B)(3)(2)', standing: 'secondary' },
      'NEC 2023': { section: '705.12(B)(2)', standing: 'secondary' },
    },
    sizeAndColour: '110.21(B)',
    neededForModuleLevel: 'yes if load-side with 120 %',
    verifiedBy: 'NEC 2017; forum/label vendor others',
  },
  {
    id: 'SUM_RULE',
    condition: 'busbar rule asks for it',
    at: ['main_panel', 'combiner'],
    where: 'distribution equipment using sum-of-breakers rule',
    gist: 'WARNING - equipment fed by multiple sources - total rating of all overcurrent devices excluding main supply device shall not exceed busbar ampacity',
    sections: {
      'NEC 2011': undefined,
      'NEC 2014': { section: '705.12(D)(2)(3)(c)', standing: 'secondary' },
      'NEC 2017': { section: '705.12(B)(2)(3)(c)', standing: 'read' },
      'NEC 2020': { section: '705.12(B)(3)(3)', standing: 'secondary' },
      'NEC 2023': { section: '705.12(B)(3)', standing: 'secondary' },
    },
    sizeAndColour: '110.21(B)',
    neededForModuleLevel: 'yes for an ac combiner panel using that rule',
    verifiedBy: 'NEC 2017',
  },
  {
    id: 'SOURCES_PRESENT',
    condition: 'load side',
    at: ['main_panel'],
    where: 'equipment with breakers supplying a bus/conductor from several sources',
    gist: 'presence of all sources',
    sections: {
      'NEC 2011': { section: '705.12(D)(4)', standing: 'from memory' },
      'NEC 2014': { section: '705.12(D)(3)', standing: 'from memory' },
      'NEC 2017': { section: '705.12(B)(3)', standing: 'read' },
      'NEC 2020': { section: '705.12(B)(4)', standing: 'from memory' },
      'NEC 2023': { section: '705.30(C)', standing: 'from memory' },
    },
    sizeAndColour: '',
    neededForModuleLevel: 'yes',
    verifiedBy: 'NEC 2017',
  },
  {
    id: 'GFP_WARNING',
    condition: 'dc strings',
    at: ['inverter'],
    where: 'inverter of grounded array',
    gist: 'shock hazard if ground fault indicated; normally grounded conductors may be ungrounded and energised',
    sections: {
      'NEC 2011': { section: '690.5(C)', standing: 'secondary' },
      'NEC 2014': { section: '690.5(C)', standing: 'secondary' },
      'NEC 2017': undefined,
      'NEC 2020': undefined,
      'NEC 2023': undefined,
    },
    sizeAndColour: '',
    neededForModuleLevel: 'no',
    verifiedBy: 'label vendor page',
  },
  {
    id: 'AC_MODULE',
    condition: 'fixed at the factory',
    at: [],
    where: 'ac module nameplate',
    gist: 'nominal ac V, Hz, max ac W, max ac A, max OCPD for ac module protection',
    sections: {
      'NEC 2011': { section: '690.52', standing: 'from memory' },
      'NEC 2014': { section: '690.52', standing: 'from memory' },
      'NEC 2017': { section: '690.52', standing: 'read' },
      'NEC 2020': { section: '690.51 (per listing)', standing: 'read' },
      'NEC 2023': { section: '690.51', standing: 'secondary' },
    },
    sizeAndColour: 'factory',
    neededForModuleLevel: 'yes for AC modules',
    verifiedBy: 'NEC 2017, CEC 2022',
  },
  {
    id: 'DISC_PURPOSE',
    condition: 'load side',
    at: ['main_panel'],
    where: 'every disconnect',
    gist: 'its purpose (and source, other than 1-2 family in 2020+)',
    sections: {
      'NEC 2011': { section: '110.22(A)', standing: 'from memory' },
      'NEC 2014': { section: '110.22(A)', standing: 'from memory' },
      'NEC 2017': { section: '110.22(A)', standing: 'read' },
      'NEC 2020': { section: '110.22(A)', standing: 'read' },
      'NEC 2023': { section: '110.22(A)', standing: 'read' },
    },
    sizeAndColour: 'durable for environment',
    neededForModuleLevel: 'yes',
    verifiedBy: 'trade training page',
  },
  {
    id: 'MULTI_RSD',
    condition: 'several kinds of rapid shutdown',
    at: ['main_panel'],
    where: 'building with more than one RSD type',
    gist: 'roof plan with dotted line round areas that stay energised',
    sections: {
      'NEC 2011': undefined,
      'NEC 2014': undefined,
      'NEC 2017': { section: '690.56(C)(2)', standing: 'read' },
      'NEC 2020': { section: '690.56(C)(1)', standing: 'read' },
      'NEC 2023': { section: '690.12(D)(1)', standing: 'from memory' },
    },
    sizeAndColour: '',
    neededForModuleLevel: 'no',
    verifiedBy: 'NEC 2017, CEC 2022',
  },
  {
    id: 'GENERAL',
    condition: 'a rule for every label',
    at: [],
    where: 'all hazard labels',
    gist: 'must warn with effective words/colours/symbols, be permanently affixed, not hand written (except changeable data), durable for the environment',
    sections: {
      'NEC 2011': undefined,
      'NEC 2014': { section: '110.21(B)', standing: 'from memory' },
      'NEC 2017': { section: '110.21(B)', standing: 'read' },
      'NEC 2020': { section: '110.21(B)', standing: 'read' },
      'NEC 2023': { section: '110.21(B)', standing: 'read' },
    },
    sizeAndColour: 'ANSI Z535.4 by informational note',
    neededForModuleLevel: 'yes',
    verifiedBy:
      'first point and ANSI Z535.4 note: CEC 2022 text; hand-writing/permanence points memory, unverified; 2023 durability wording training page',
  },
  {
    id: 'ESS_DISC',
    condition: 'storage or backup',
    at: [],
    where: 'each energy storage system disconnect',
    gist: '2017: nominal voltage, maximum short-circuit current, clearing time, date; 2020+: ENERGY STORAGE SYSTEM DISCONNECT (electrical data only in other than dwellings)',
    sections: {
      'NEC 2011': undefined,
      'NEC 2014': undefined,
      'NEC 2017': { section: '706.7(D)', standing: 'read' },
      'NEC 2020': { section: '706.15(C)', standing: 'secondary' },
      'NEC 2023': { section: '706.15(C)', standing: 'secondary' },
    },
    sizeAndColour: '110.21(B)',
    neededForModuleLevel: 'only with storage',
    verifiedBy: 'NEC 2017 text; 2020/2023 trade summaries (secondary)',
  },
  {
    id: 'ESS_SHUTDOWN',
    condition: 'storage or backup',
    at: [],
    where: 'outside emergency shutdown device of a 1-2 family dwelling with storage',
    gist: 'identifies the emergency shutdown function (words not found)',
    sections: {
      'NEC 2011': undefined,
      'NEC 2014': undefined,
      'NEC 2017': undefined,
      'NEC 2020': undefined,
      'NEC 2023': { section: '706.15(B)', standing: 'secondary' },
    },
    sizeAndColour: '',
    neededForModuleLevel: 'only with storage',
    verifiedBy: 'secondary',
  },
  {
    id: 'EMERGENCY_DISC',
    condition: 'asked',
    at: [],
    where: 'outdoor emergency disconnect of a 1-2 family dwelling (new or replaced service)',
    gist: 'EMERGENCY DISCONNECT plus SERVICE DISCONNECT / METER DISCONNECT, NOT SERVICE EQUIPMENT / NOT SERVICE EQUIPMENT',
    sections: {
      'NEC 2011': undefined,
      'NEC 2014': undefined,
      'NEC 2017': undefined,
      'NEC 2020': { section: '230.85', standing: 'read' },
      'NEC 2023': { section: '230.85(E)', standing: 'read' },
    },
    sizeAndColour: '2023: white on red, letters >= 1/2 in; 2020: 110.21(B)',
    neededForModuleLevel: 'if the service is replaced or the PV disconnect serves as one',
    verifiedBy: 'CEC 2022 and NEC 2023 text',
  },
  {
    id: 'STANDBY_SIGN',
    condition: 'storage or backup',
    at: [],
    where: 'service equipment of a house with backup source',
    gist: 'type and location of each optional standby source',
    sections: {
      'NEC 2011': { section: '702.7(A)', standing: 'from memory' },
      'NEC 2014': { section: '702.7(A)', standing: 'from memory' },
      'NEC 2017': { section: '702.7(A)', standing: 'read' },
      'NEC 2020': { section: '702.7(A)', standing: 'from memory' },
      'NEC 2023': { section: '702.7(A)', standing: 'from memory' },
    },
    sizeAndColour: '',
    neededForModuleLevel: 'only with backup',
    verifiedBy: 'NEC 2017 text; other editions memory, unverified',
  },
]

/** With 2026: the section of 2023, as no source reports another. */
function withCarried(rule: WrittenRule): LabelRule {
  const carried = rule.sections[CARRIED_FROM]
  return {
    ...rule,
    sections: {
      ...rule.sections,
      [EDITION_NOT_READ]: carried && { section: carried.section, standing: carriedStanding(carried.standing) },
    },
  }
}

/** @source NEC sections as stated in each row; the authority may ask for more. */
export const labelRules: readonly LabelRule[] = rows.map(withCarried)
