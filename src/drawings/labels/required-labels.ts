import { labelsOfEdition, type WiringValues } from '../../electrical/index.js'
import type { Project } from '../../project/index.js'
import { labelQuestions, labelWords, onOneLine, type LabelWords } from '../../tables/nec/index.js'
import { formatSource, type Source } from '../../worksheet/index.js'
import { sheetSource } from '../sheet-source.js'
import { pvBreakers } from './content-words.js'
import { conditionHolds, EMERGENCY_LABEL, labelPlaces } from './label-conditions.js'
import { labelFacts, type LabelFacts } from './label-facts.js'
import { codeLook, lookText, reflectiveText, wordsSource, wordsText } from './label-look.js'
import type { LabelPart } from './label-style.js'
import { controlLabel, type LabelOrigin } from './control-label.js'
import { placeTitle, type LabelPlace } from './label-places.js'
import { racewayPieces, type RacewayPieces } from './raceway-pieces.js'
import { wordLabel } from './word-label.js'
import type { Feet, Inches } from '../../values/index.js'

export type { LabelPlace } from './label-places.js'

/** A label that the project needs, with its words and where it goes. */
export interface RequiredLabel {
  /** Id of the rule: `RSD_SWITCH`. */
  readonly id: string
  readonly number: number
  readonly parts: readonly LabelPart[]
  /** All its text on one line. */
  readonly text: string
  /** Width that it is laid out for, in. */
  readonly widthIn: Inches
  readonly places: readonly LabelPlace[]
  /** Names of the places, in their order. */
  readonly placeTitles: readonly string[]
  readonly count: number
  /** How the count comes about. */
  readonly counted: string
  /** Whether the edition asks for reflective material. */
  readonly reflective: boolean
  /** Largest distance from one to the next along a raceway, ft. */
  readonly spacingFt: Feet | undefined
  /** Where they go along raceways; empty for the others. */
  readonly along: readonly RacewayPieces[]
  /** Reflective material, spacing, colours and letters in words, for sheet, bill and work plan. */
  readonly look: string
  /** Whose words they are: mandated, equivalent or free, of which edition, how far read. */
  readonly wording: string
  /** What the code says of the place. */
  readonly where: string
  readonly source: string
  readonly ruleSource: Source
  /** Look, wording and source as a filed sheet has them: without how far somebody read them. */
  readonly onSheet: { readonly look: string; readonly wording: string; readonly source: string }
}

/** A label that hangs on something that the project file does not tell. */
export interface LabelAsk {
  readonly when: string
  readonly phrases: readonly string[]
  readonly look: string
  readonly source: string
  readonly wordSources: readonly Source[]
  /** Source as a filed sheet cites it. */
  readonly onSheet: { readonly source: string }
}

/** The labels and placards of the project's code edition, in the order of the rules, each with words filled in. */
export function requiredLabels(project: Project, wiring: WiringValues): RequiredLabel[] {
  const facts = labelFacts(project, wiring)
  const origins: LabelOrigin[] = labelsOfEdition(facts.edition).map(({ rule, source }) => ({
    rule,
    places: labelPlaces(rule, facts),
    source,
  }))
  const needed = [...origins, ...controlLabel(facts)].flatMap(({ rule, places, source }) =>
    placesTogether(rule.id, places).flatMap((same) => {
      const words = labelWords(wordsId(rule.id, facts), facts.edition)
      const parts = wordLabel(rule.id, words, facts, same[0])
      if (parts.length === 0) return []
      const along = words?.spacingFt === undefined ? [] : racewayPieces(facts, words.spacingFt)
      return [
        {
          id: rule.id,
          parts,
          text: textOf(parts),
          widthIn: widthOf(parts),
          places: same,
          placeTitles: same.map((place) => placeTitle(place, wiring)),
          ...countOf(rule.id, same, along, facts),
          reflective: words?.reflective === 'yes',
          spacingFt: words?.spacingFt,
          along,
          look: lookOf(parts, words),
          wording: wordsText(words, facts.edition),
          where:
            words !== undefined && words.edition === facts.edition && words.where !== '' ? words.where : rule.where,
          source: formatSource(source),
          ruleSource: source,
          onSheet: {
            look: lookOf(parts, words, 'sheet'),
            wording: wordsText(words, facts.edition, 'sheet'),
            source: sheetSource(source),
          },
        },
      ]
    }),
  )
  return needed.map((each, index) => ({ number: index + 1, ...each }))
}

function textOf(parts: readonly LabelPart[]): string {
  return parts
    .map((part) => part.text.replaceAll('\n', ' ').trim())
    .filter((text) => text !== '')
    .join(' / ')
}

/** Places that get the same label; the sources of a panel are its own. */
function placesTogether(id: string, places: readonly LabelPlace[]): LabelPlace[][] {
  if (places.length === 0) return []
  return id === 'SOURCES_PRESENT' ? places.map((place) => [place]) : [[...places]]
}

/** Labels to ask the authority about, with their words. */
export function labelsToAsk(project: Project, wiring: WiringValues): LabelAsk[] {
  const facts = labelFacts(project, wiring)
  return (
    labelQuestions
      .filter(({ editions, condition }) => editions.includes(facts.edition) && conditionHolds(condition, facts))
      // What the project states of the emergency disconnect of its house is not asked again.
      .filter(
        ({ words }) =>
          !words.includes('EMERGENCY_DISC_1') || project.existing_house?.emergency_disconnect === undefined,
      )
      .map(({ words: ids, when }) => {
        const rows = ids.flatMap((id) => labelWords(id, facts.edition) ?? [])
        const wordSources = rows.map(wordsSource)
        return {
          when,
          phrases: rows.flatMap((row) => row.phrases?.map(onOneLine) ?? [row.content ?? '']),
          look: [...new Set(rows.map(codeLook))].filter((each) => each !== '').join('; '),
          source: [...new Set(wordSources.map(formatSource))].join('; '),
          wordSources,
          onSheet: { source: [...new Set(wordSources.map(sheetSource))].join('; ') },
        }
      })
  )
}

/** Characters from which a label is laid out wide. */
const LONG_TEXT = 150

/** Width to lay a label out for, in: wider for large letters and long lists, so that none is higher than a page. */
function widthOf(parts: readonly LabelPart[]): number {
  const [title] = parts
  if (parts.reduce((sum, { text }) => sum + text.length, 0) > LONG_TEXT) return 7
  if (title === undefined || title.capsIn < 3 / 8 || title.text.length <= 18) return 4
  return parts.some((part) => part.figure !== undefined) ? 7 : 5.2
}

/** The placard of 2017 has one form for arrays that are brought down and one for arrays that stay live. */
function wordsId(ruleId: string, facts: LabelFacts): string {
  if (ruleId === EMERGENCY_LABEL) return EMERGENCY_WORDS[facts.project.existing_house?.emergency_disconnect ?? 'none']
  if (ruleId !== 'RSD_PLACARD' || facts.edition !== 'NEC 2017') return ruleId
  return facts.arrayStaysLive ? 'RSD_PLACARD_B' : 'RSD_PLACARD_A'
}

/** Words of the label of an emergency disconnect by its kind. */
const EMERGENCY_WORDS = {
  none: EMERGENCY_LABEL,
  service_disconnect: 'EMERGENCY_DISC_1',
  meter_disconnect: 'EMERGENCY_DISC_2',
  other: 'EMERGENCY_DISC_3',
} as const

function lookOf(parts: readonly LabelPart[], words: LabelWords | undefined, on: 'sheet' | 'list' = 'list'): string {
  const spacing = words?.spacingFt === undefined ? '' : `every ${words.spacingFt} ft and on each section`
  return [reflectiveText(words), spacing, lookText(parts, words, on)].filter((each) => each !== '').join('; ')
}

/** How many, and why: one at each place, along raceways, or at each breaker. */
function countOf(
  id: string,
  places: readonly LabelPlace[],
  along: readonly RacewayPieces[],
  facts: LabelFacts,
): { readonly count: number; readonly counted: string } {
  if (places[0] === 'dc_raceway') {
    const pieces = along.reduce((sum, each) => sum + each.atFt.length, 0)
    if (pieces === 0) return { count: 1, counted: 'one where the direct-current wiring leaves the array' }
    const lengths = along.map((each) => `${each.lengthFt} ft`).join(', ')
    return {
      count: pieces + along.length,
      counted: `${pieces} along ${lengths} of raceway, at both ends of a section and between them, and ${along.length} on the cover of the box where each begins`,
    }
  }
  if (id === 'DISC_PURPOSE') {
    const count = Math.max(1, pvBreakers(facts).length)
    return { count, counted: 'one at each PV breaker in the panel' }
  }
  const count = places.reduce((sum, place) => sum + (place === 'pv_disconnect' ? facts.disconnects : 1), 0)
  return { count, counted: 'one at each place' }
}
