import type { Edition } from './editions.js'
import type { SectionPlace } from './edition-sections.js'

/**
 * Where a listed power control system may stand in for the busbar sums; undefined in editions that know none.
 *
 * @source NEC 705.13 (2020 to 2026): secondary; 2017 read: there is none
 */
export const powerControlSections: Readonly<Partial<Record<Edition, SectionPlace>>> = {
  'NEC 2020': { place: '705.13', standing: 'secondary' },
  'NEC 2023': { place: '705.13, 750.30', standing: 'secondary' },
  'NEC 2026': { place: '705.13, article 130 Part II', standing: 'secondary' },
}
