import { onOneLine, type LabelWords } from '../../tables/nec/index.js'
import { inches } from '../layout/index.js'
import type { Source, SourceStanding } from '../../worksheet/index.js'
import type { LabelPart } from './label-style.js'

const COLOUR_WORDS = {
  red: 'red',
  yellow: 'yellow',
  orange: 'orange',
  white: 'white',
  black: 'black',
  grey: 'grey',
  light: 'light grey',
  mid: 'grey',
  pine: 'dark green',
  sage: 'light green',
  mist: 'pale green',
  clay: 'brown',
  sand: 'pale brown',
} as const

/** Colours and letters in words: `white on red, capitals at least 3/8"`; says where they are ours. */
export function lookText(
  parts: readonly LabelPart[],
  words: LabelWords | undefined,
  on: 'sheet' | 'list' = 'list',
): string {
  const looks = parts
    .filter((part) => part.figure === undefined)
    .map(
      (part) =>
        `${COLOUR_WORDS[part.ink]} on ${COLOUR_WORDS[part.ground]}, capitals ${part.heightBy === 'code' ? 'at least ' : ''}${inches(part.capsIn)}`,
    )
  const coloursSet = words?.colours?.whole !== undefined || words?.colours?.title !== undefined
  const heightsSet = parts.some((part) => part.heightBy === 'code')
  const open = [...(coloursSet ? [] : ['colour']), ...(heightsSet ? [] : ['height'])]
  const letters = words?.letters
  const unsure =
    on === 'list' && letters !== undefined && !('wholeIn' in letters) && letters.standing !== undefined
      ? [`height ${letters.standing}, unverified`]
      : []
  return [
    ...new Set(looks),
    ...unsure,
    ...(open.length === 0 ? [] : [`the section sets no ${open.join(' or ')}`]),
  ].join('; ')
}

/** `reflective`, or that the section says nothing of it; '' where it is not asked. */
export function reflectiveText(words: LabelWords | undefined): string {
  if (words?.reflective === 'yes') return 'REFLECTIVE'
  return words?.reflective === 'not stated' ? 'reflective not stated in the section; the authority may want it' : ''
}

const STANDING = {
  read: '',
  secondary: 'secondary source',
  'from memory': 'from memory, unverified',
  'common practice, no source': 'common practice, no source',
  'project file': 'project file',
} as const satisfies Readonly<Record<SourceStanding, string>>

/**
 * How far the words are the code's, and which edition's.
 *
 * @param on A filed sheet says nothing of how far they were read; a list does.
 */
export function wordsText(words: LabelWords | undefined, edition: string, on: 'sheet' | 'list' = 'list'): string {
  if (words === undefined)
    return on === 'sheet'
      ? 'words proposed by the preparer'
      : `no words for ${edition} are at hand: ours, ask the authority`
  const from =
    words.edition === edition || on === 'sheet'
      ? words.edition
      : `${words.edition}, as those of ${edition} are not at hand`
  const standing =
    words.standing === 'read' || on === 'sheet'
      ? ''
      : ` (${[STANDING[words.standing], (words.standingNote ?? '').replaceAll(/[()]/gu, '')].filter((each) => each !== '').join(', ')})`
  const choice =
    (words.phrases?.length ?? 0) > 1 ? `; or: ${words.phrases?.slice(1).map(onOneLine).join('; or: ')}` : ''
  if (words.status === 'mandated') return `words mandated by ${from}${standing}${choice}`
  if (words.status === 'equivalent') return `words of ${from}${standing}, or equivalent`
  return `content prescribed by ${from}${standing}, words free`
}

/** What the section itself sets of letters, colours and material; '' when nothing. */
export function codeLook(words: LabelWords): string {
  const letters = words.letters !== undefined && 'wholeIn' in words.letters ? words.letters.wholeIn : undefined
  return [
    reflectiveText(words),
    words.colours?.whole?.join(' on ') ?? '',
    letters === undefined ? '' : `capitals at least ${inches(letters)}`,
  ]
    .filter((each) => each !== '')
    .join(', ')
}

/** The edition and section that words come from. */
export function wordsSource(words: LabelWords): Source {
  const [document = '', edition = ''] = words.edition.split(' ')
  return { document, edition, place: words.section, standing: words.standing }
}
