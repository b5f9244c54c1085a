import type { Source } from '../../worksheet/index.js'
import { editionSections, type SectionTopic } from './edition-sections.js'
import type { Edition } from './editions.js'

/**
 * The section of an edition that rules a topic, as a source with its standing.
 *
 * @param detail Appended to the section: `(1)`.
 * @returns A source that says so when that edition has no such rule.
 */
export function sectionOf(edition: Edition, topic: SectionTopic, detail = ''): Source {
  const place = editionSections[topic][edition]
  return place === undefined
    ? { ...necSource(edition, 'no such rule'), standing: 'read' }
    : necSource(edition, `${place.place}${detail}`, place.standing)
}

/** A place in an edition of the National Electrical Code. */
export function necSource(edition: Edition, place: string, standing: Source['standing'] = 'read'): Source {
  return { document: 'NEC', edition: edition.replace('NEC ', ''), place, standing }
}
