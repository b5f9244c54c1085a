import type { SourceStanding } from '../../worksheet/index.js'
import type { Edition } from './editions.js'

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
