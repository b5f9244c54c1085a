import type { Source } from '../../worksheet/index.js'

/** What a standard says about the inverters of an application. */
export interface StandardFact {
  readonly id: string
  readonly says: string
  readonly source: Source
}

/** Facts for who fills in the rows on standards. Trip settings stand nowhere: an application names a profile only. */
export const STANDARD_FACTS: readonly StandardFact[] = [
  {
    id: 'editions',
    says: 'UL 1741 is in its third edition of 2021-09-28; inverters are tested to IEEE 1547-2018 (amended 2020) by IEEE 1547.1-2020',
    source: { document: 'interconnection guide on UL 1741 and IEEE 1547', standing: 'read' },
  },
  {
    id: 'supplements',
    says: 'UL 1741 Supplement SA (2016) is functions by the older tests; Supplement SB is certified to IEEE 1547-2018 and asked for state by state since 2022 to 2023. A vendor article tells it the other way round; on the safe side ask for SB',
    source: {
      document: 'UL 1741',
      place: 'Supplements SA and SB, pages of the laboratory and of a council on interconnection',
      standing: 'read',
    },
  },
  {
    id: 'normal',
    says: 'normal performance category A is the least, B is for high shares of solar power; reactive capability of B is 44 % of the kVA both ways, of A 44 % injecting and 25 % absorbing',
    source: { document: 'IEEE 1547', edition: '2018', place: 'normal performance categories', standing: 'from memory' },
  },
  {
    id: 'abnormal',
    says: 'abnormal performance categories are I, II and III; III rides through the longest and is usual for PV',
    source: {
      document: 'IEEE 1547',
      edition: '2018',
      place: 'abnormal performance categories',
      standing: 'from memory',
    },
  },
  {
    id: 'enter_service',
    says: 'after an outage the inverters wait, by default 300 s; the utility may set it otherwise',
    source: { document: 'IEEE 1547.1', place: 'Table 11, as a test code quotes it', standing: 'secondary' },
  },
  {
    id: 'settings',
    says: 'no setting of voltage, frequency or time is written on an application: the inverters get the profile that the utility names',
    source: {
      document: 'interconnection practice',
      place: 'settings by the name of a profile',
      standing: 'from memory',
    },
  },
]
