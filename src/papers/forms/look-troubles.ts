import type { Trouble } from './filling.js'

/** A text with characters that no font at hand has, or that would have to be joined or turned. */
export function noGlyph(name: string, missing: readonly string[]): Trouble {
  const codes = missing
    .map((one) => (/\p{C}|\p{M}/u.test(one) ? `U+${codeOf(one)}` : `'${one}' (U+${codeOf(one)})`))
    .join(', ')
  const message = `'${name}' cannot show ${codes}: no font at hand shows ${missing.length === 1 ? 'it' : 'them'} as ${missing.length === 1 ? 'it is' : 'they are'} written`
  return {
    severity: 'error',
    id: 'form.no-glyph',
    message,
    fix: 'Write it in Latin, Greek, Cyrillic, Armenian or Georgian letters',
  }
}

/** A text that its box or its place cannot show whole. */
export function doesNotFit(
  name: string,
  page: number | undefined,
  shown: string,
  why: string,
  severity: Trouble['severity'] = 'error',
): Trouble {
  const where = page === undefined ? '' : ` on page ${page}`
  const message = `'${name}'${where} cannot show '${shown}': ${why}`
  return { severity, id: 'form.does-not-fit', message, fix: 'State a shorter text, or a smaller size_pt' }
}

const codeOf = (character: string): string =>
  (character.codePointAt(0) ?? 0).toString(16).toUpperCase().padStart(4, '0')
