import type { SourceStanding } from '../../worksheet/index.js'
import { editions, type Edition } from './editions.js'
import { labelWordRows } from './label-word-rows.js'

/** Ink and ground. */
export type LabelColours = readonly [ink: 'white' | 'black', ground: 'red' | 'yellow' | 'orange' | 'white' | 'black']

/** Words of one label in one edition, and what the section says of letters, colours and place. */
export interface LabelWords {
  /** Id of the label rule, or of one form of it: `RSD_PLACARD_A`. */
  readonly id: string
  readonly edition: Edition | 'IFC 2012/2015'
  readonly section: string
  /** Phrases to print as they stand, ` / ` between lines; of several, one. Missing where only the content is prescribed. */
  readonly phrases?: readonly string[]
  readonly wordsNote?: string
  /** What has to stand on it where the section has no phrase. */
  readonly content?: string
  /** mandated: these words; equivalent: these or like words; free: the content only; no label: the section is gone. */
  readonly status: 'mandated' | 'equivalent' | 'free' | 'no label'
  readonly statusNote?: string
  /** First words that are set apart, or `whole` where all of the phrase is title. */
  readonly title?: string
  /** Signal word by which it is coloured where the section has no colours. */
  readonly signal?: 'warning' | 'caution'
  /** Least height of capitals, in. */
  readonly letters?:
    | { readonly wholeIn: number }
    | { readonly titleIn: number; readonly restIn?: number; readonly standing?: SourceStanding }
  readonly colours?: {
    readonly whole?: LabelColours
    readonly title?: LabelColours
    readonly rest?: LabelColours
    readonly note?: string
  }
  /** Missing where the source of this table is silent. */
  readonly reflective?: 'yes' | 'no' | 'not stated'
  readonly where: string
  /** Largest distance from one to the next along a raceway, ft. */
  readonly spacingFt?: number
  readonly standing: SourceStanding
  readonly standingNote?: string
  readonly source: string
}

/**
 * The words of a label in an edition; where its own are not at hand, those of the nearest later edition that was read,
 * else of the nearest later one, else of the latest before. Words of a fire code stand for every edition.
 *
 * @returns undefined when no edition has words for it. The row's own `edition` tells where the words come from.
 */
export function labelWords(id: string, edition: Edition): LabelWords | undefined {
  const rows = labelWordRows
    .filter((row) => row.id === id)
    .map((row) => ({ row, at: editions.findIndex((each) => each === row.edition) }))
    .sort((a, b) => a.at - b.at)
  const at = editions.indexOf(edition)
  const later = rows.filter((each) => each.at > at && each.row.status !== 'no label')
  return (
    rows.find((each) => each.at === at) ??
    later.find((each) => each.row.standing === 'read') ??
    later[0] ??
    rows.findLast((each) => each.at >= 0 && each.at < at && each.row.status !== 'no label') ??
    rows.find((each) => each.at < 0)
  )?.row
}

/** A phrase of the code on one line. */
export function onOneLine(phrase: string): string {
  return phrase.replaceAll(' / ', ' ')
}
