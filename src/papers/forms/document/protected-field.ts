import type { FormField } from './form-field.js'
import { AGREEING_WORDS, SIGNING_PHRASES, SIGNING_WORDS } from './protected-words.js'

/** How near the heights of two fields are that stand in one line, points. */
const SAME_LINE_PT = 14

/** Fields that are never filled, by name, each with the reason as a clause. */
export function protectedFields(fields: readonly FormField[]): ReadonlyMap<string, string> {
  const found = new Map<string, string>()
  for (const field of fields) {
    const why = reasonOf(field)
    if (why !== undefined) found.set(field.name, why)
  }
  const signed = fields.filter((field) => field.kind !== 'check box' && found.has(field.name))
  for (const field of fields) {
    const beside = found.has(field.name) || !isDate(field) ? undefined : signed.find((one) => inOneLine(one, field))
    if (beside !== undefined) {
      found.set(field.name, `it is the date beside '${beside.name}', and dates of signing are written by who signs`)
    }
  }
  return found
}

function reasonOf(field: FormField): string | undefined {
  if (field.kind === 'signature') return 'it is a signature'
  return protectedText(`${field.name} ${field.tooltip ?? ''}`, field.kind !== 'text')
}

/**
 * Why a text is one that only the person who signs may say; undefined when it is not.
 *
 * @param agrees Whether it stands at a box, a button or a choice, where it says yes to something.
 */
export function protectedText(text: string, agrees: boolean): string | undefined {
  const words = wordsOf(text)
  const said = (word: string): string =>
    `its name or tooltip says '${word}', and what is signed, dated or declared so is
    left to the person`.replaceAll(/\s+/gu, ' ')
  const word = words.find((one) => SIGNING_WORDS.has(one) || (agrees && AGREEING_WORDS.has(one)))
  if (word !== undefined) return said(word)
  const line = ` ${words.join(' ')} `
  const phrase = SIGNING_PHRASES.find((one) => line.includes(` ${one} `))
  if (phrase !== undefined) return said(phrase)
  // `Initial here`, `owner initial`; not an initial cost.
  return /\binitial (?:$|here|box|date|field|\d)/u.test(line.trimStart()) ? said('initial') : undefined
}

/** Words of a name as programs and people write them: `ownerSignature_1`, `Owner signature`. */
export function wordsOf(text: string): string[] {
  return text
    .replaceAll(/(\p{Ll})(\p{Lu})/gu, '$1 $2')
    .replaceAll(/(\p{Lu})(\p{Lu}\p{Ll})/gu, '$1 $2')
    .replaceAll(/(\p{L})(\p{N})/gu, '$1 $2')
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== '')
}

function isDate({ kind, name, tooltip }: FormField): boolean {
  return kind === 'text' && wordsOf(`${name} ${tooltip ?? ''}`).some((word) => /^dated?$/u.test(word))
}

function inOneLine(one: FormField, other: FormField): boolean {
  return one.widgets.some((a) =>
    other.widgets.some(
      (b) =>
        a.page === b.page &&
        a.rect !== undefined &&
        b.rect !== undefined &&
        Math.abs(a.rect[1] - b.rect[1]) <= SAME_LINE_PT,
    ),
  )
}
