import type { Finding } from '../worksheet/index.js'
import { flattenSheet, type Sheet } from './model/index.js'

/** Most texts, or sheets, that a finding names. */
const MOST_NAMED = 5
/** On so many sheets a text is one of their title strip, and is told once. */
const MANY_SHEETS = 3

/**
 * Sheets that have no room for all of their texts, not even as keyed notes: each stops the packet, since an overprint may hide
 * what a reviewer must read. Texts without room on many sheets are one finding for all of them.
 */
export function doesNotFit(sheets: readonly Sheet[]): Finding[] {
  const found = sheets.map((sheet) => ({ sheet, texts: textsOf(sheet) }))
  const sheetsOf = new Map<string, Sheet[]>()
  for (const { sheet, texts } of found)
    for (const text of texts) sheetsOf.set(text, [...(sheetsOf.get(text) ?? []), sheet])
  const isCommon = (text: string): boolean => (sheetsOf.get(text)?.length ?? 0) >= MANY_SHEETS
  const common = [...sheetsOf.keys()].filter(isCommon)
  const ofCommon = sheets.filter((sheet) => common.some((text) => sheetsOf.get(text)?.includes(sheet)))
  return [
    ...(common.length === 0 ? [] : [finding(ofCommon, common)]),
    ...found.flatMap(({ sheet, texts }) => {
      const own = texts.filter((text) => !isCommon(text))
      return own.length === 0 ? [] : [finding([sheet], own)]
    }),
  ]
}

/** Texts that lie on something, each once and on one line. */
function textsOf(sheet: Sheet): string[] {
  const texts = flattenSheet(sheet).collisions.map((text) => text.replaceAll(/\s+/gu, ' ').trim())
  return [...new Set(texts)].filter((text) => text !== '')
}

function finding(sheets: readonly Sheet[], texts: readonly string[]): Finding {
  const [first] = sheets
  const ids = listed(sheets.map(({ id }) => id))
  const named = listed(texts.map((text) => `'${text}'`))
  return {
    severity: 'error',
    id: 'drawings.does-not-fit',
    where: 'drawings',
    message: `${sheets.length === 1 ? `sheet ${ids}` : `sheets ${ids}`} on ${first?.size.name ?? ''} paper ${sheets.length === 1 ? 'has' : 'have'} no room for ${named}`,
    fix: 'Draw on larger paper with --size, shorten the names, or lower drawings.least_text_in if the authority allows it.',
  }
}

function listed(words: readonly string[]): string {
  const more = words.length > MOST_NAMED ? ` and ${words.length - MOST_NAMED} more` : ''
  return `${words.slice(0, MOST_NAMED).join(', ')}${more}`
}
