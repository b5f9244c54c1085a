import { flattenSheet, type Sheet } from '../model/index.js'

/** A drawn sheet as somebody reads it who looks for words. */
export interface SheetWords {
  readonly id: string
  /** All its text in capitals, one space between words. */
  readonly words: string
  /** Whether it has a drawing to scale. */
  readonly toScale: boolean
  readonly sheet: Sheet
}

/** The text of each sheet; lines that were set together stand together. */
export function sheetWords(sheets: readonly Sheet[]): SheetWords[] {
  return sheets.map((sheet) => {
    const blocks = new Map<number, string[]>()
    for (const mark of flattenSheet(sheet).marks) {
      if (mark.kind !== 'text') continue
      const lines = blocks.get(mark.block) ?? []
      blocks.set(mark.block, lines)
      lines.push(mark.text)
    }
    return {
      id: sheet.id,
      words: readable([...blocks.values()].flat().join(' ')),
      toScale: sheet.viewports.some(({ primitives }) => primitives.length > 0),
      sheet,
    }
  })
}

/** As words are compared: in capitals, one space between. */
export const readable = (text: string): string => text.replaceAll(/\s+/gu, ' ').trim().toUpperCase()
