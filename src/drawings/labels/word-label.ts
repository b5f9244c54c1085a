import type { LabelColours, LabelWords } from '../../tables/nec/index.js'
import { contentWords } from './content-words.js'
import type { LabelFacts } from './label-facts.js'
import type { LabelPlace } from './label-places.js'
import type { LabelPart } from './label-style.js'
import type { Inches } from '../../values/index.js'

/** Heights and colours where the section sets none: practice, after ANSI Z535.4 for the signal words. */
const USUAL = { nameIn: 1 / 4, signalIn: 3 / 8, restIn: 3 / 16 } as const
const SIGNAL_COLOURS = { warning: ['black', 'orange'], caution: ['black', 'yellow'] } as const
const PLAIN_COLOURS: LabelColours = ['black', 'white']
/** Colours of some labels where their section leaves them open; the placard and the raceway label keep those of other editions. */
const USUAL_COLOURS: Readonly<Record<string, LabelColours>> = {
  PV_DISC: ['white', 'black'],
  DISC_PURPOSE: ['white', 'black'],
  RSD_PLACARD: ['black', 'yellow'],
  DC_RACEWAY: ['white', 'red'],
}
/** Labels that are the name of a device, in larger letters. */
const NAMES: ReadonlySet<string> = new Set(['PV_DISC', 'DISC_PURPOSE'])

/**
 * A label from top to bottom: the phrase of the code as it stands, then what the section wants filled in. Letters are
 * never lower than the section sets.
 *
 * @param words Words of the edition; undefined where none are at hand.
 * @param place Where it goes, for a label that says something else at each place.
 */
export function wordLabel(
  id: string,
  words: LabelWords | undefined,
  facts: LabelFacts,
  place?: LabelPlace,
): LabelPart[] {
  const phrase = words?.phrases?.[0]
  const fixed = words === undefined || phrase === undefined ? [] : phraseParts(id, words, phrase)
  const content = phrase === undefined || FILLED_IN.has(id) ? contentWords(id, facts, place) : undefined
  const colours = NAMES.has(id) ? (USUAL_COLOURS[id] ?? PLAIN_COLOURS) : PLAIN_COLOURS
  const filled =
    content === undefined ? [] : [part(content, colours, NAMES.has(id) ? USUAL.nameIn : USUAL.restIn, 'usual')]
  return [...fixed, ...filled, ...figure(id, facts)]
}

/** Labels whose phrase is followed by places that are filled in. */
const FILLED_IN: ReadonlySet<string> = new Set(['RSD_PLACARD', 'DIRECTORY'])

function phraseParts(id: string, words: LabelWords, phrase: string): LabelPart[] {
  const { letters, colours, signal } = words
  const [title, rest] = split(phrase, words.title)
  const heightIn = letters === undefined ? undefined : 'wholeIn' in letters ? letters.wholeIn : letters.titleIn
  const usualIn = NAMES.has(id) ? USUAL.nameIn : USUAL.signalIn
  const usual = signal === undefined ? (USUAL_COLOURS[id] ?? PLAIN_COLOURS) : SIGNAL_COLOURS[signal]
  const parts = [
    part(
      title,
      colours?.whole ?? colours?.title ?? usual,
      heightIn ?? usualIn,
      heightIn === undefined ? 'usual' : 'code',
    ),
  ]
  if (rest === '') return parts
  const restIn = letters !== undefined && 'restIn' in letters ? letters.restIn : undefined
  return [
    ...parts,
    part(rest, colours?.rest ?? PLAIN_COLOURS, restIn ?? USUAL.restIn, restIn === undefined ? 'usual' : 'code'),
  ]
}

/** The title with its colon or stop, and the rest with a line for every ` / `. */
function split(phrase: string, title: string | undefined): [title: string, rest: string] {
  if (title === undefined || title === 'whole') return [phrase, '']
  const rest = phrase.slice(title.length)
  const mark = /^[:.]?/u.exec(rest)?.[0] ?? ''
  const lines = rest
    .slice(mark.length)
    .split(' / ')
    .map((line) => line.trim())
    .filter((line) => line !== '')
  return [`${title}${mark}`, lines.join('\n')]
}

/** The placard shows the house since 2017; red is the array that stays live (2017 type (b)). */
function figure(id: string, facts: LabelFacts): LabelPart[] {
  if (id !== 'RSD_PLACARD' || facts.edition === 'NEC 2014') return []
  const live = facts.edition === 'NEC 2017' && facts.arrayStaysLive
  return [{ ...part('', PLAIN_COLOURS, USUAL.restIn, 'usual'), figure: live ? 'roof, array live' : 'roof' }]
}

function part(text: string, [ink, ground]: LabelColours, capsIn: Inches, heightBy: LabelPart['heightBy']): LabelPart {
  return { text, ground, ink, capsIn, heightBy }
}
