import type { Primitive } from '../../drawings/index.js'

/** A column of a table on a page. */
export interface PageColumn {
  readonly heading: string
  /** Share of the width; the shares of a table need not sum to 1. */
  readonly share: number
  readonly align?: 'left' | 'right' | 'center'
  /** Whether its cells are heads of their rows. */
  readonly bold?: boolean
}

/** A table of texts. */
export interface PageTable {
  readonly columns: readonly PageColumn[]
  readonly rows: readonly (readonly string[])[]
}

/** A vector figure with what it shows in words. */
export interface PageFigure {
  readonly kind: 'figure'
  /** What it shows, for people who do not see it. */
  readonly says: string
  readonly caption?: string
  readonly heightPt: number
  /** Draws it; x and y are its upper left corner on paper, y down. Same input, same primitives. */
  readonly draw: (x: number, y: number, widthPt: number) => readonly Primitive[]
  /** The numbers behind it: a web page shows them on request. */
  readonly data?: PageTable & { readonly heading: string }
}

/** What a paper is made of, in reading order. Texts may hold `\n`. Sizes are points of type on paper. */
export type PageBlock =
  | { readonly kind: 'title'; readonly text: string; readonly below?: string }
  | { readonly kind: 'heading'; readonly text: string; readonly level?: 2 | 3 }
  | {
      readonly kind: 'text'
      readonly text: string
      readonly sizePt?: number
      readonly bold?: boolean
      readonly keepNext?: boolean
    }
  /** `boxes` are squares to tick. */
  | { readonly kind: 'list'; readonly items: readonly string[]; readonly mark?: 'dots' | 'numbers' | 'boxes' }
  | { readonly kind: 'facts'; readonly facts: readonly (readonly [label: string, value: string])[] }
  | (PageTable & {
      readonly kind: 'table'
      /** Whether the last row is a sum. */
      readonly total?: boolean
      /** Least height of a row, points: room to write by hand. */
      readonly leastRowPt?: number
      /** Whether lines stand between columns, as a table that is filled in by hand needs. */
      readonly ruled?: boolean
    })
  | PageFigure
  /** A callout; every line of it has the stated size. */
  | {
      readonly kind: 'box'
      readonly title?: string
      readonly lines: readonly string[]
      readonly sizePt?: number
      readonly tone?: 'plain' | 'warning'
    }
  /** Lines to write on, each row of labels across the page. */
  | { readonly kind: 'blanks'; readonly rows: readonly (readonly string[])[] }
  /** A line to sign and one for the date for each person. */
  | { readonly kind: 'signatures'; readonly people: readonly Signer[]; readonly dateLabel: string }
  | { readonly kind: 'page-break' }

export interface Signer {
  /** What the line is for: `Customer's signature`. */
  readonly label: string
  /** Printed below the line. */
  readonly name?: string
}

/** A picture of the user's own at the head of the first page; not read aloud, as the name stands beside it in words. */
export interface PageLogo {
  readonly widthPt: number
  readonly heightPt: number
  /** Draws it into a page of a document of pdfkit, whose types a user of the library need not have; x and y are its upper left corner. */
  readonly drawPdf: (doc: never, x: number, y: number) => void
  /** As text for `src` of an image in a web page: `data:image/...`. */
  readonly dataUri: string
}

/** A paper that people are handed: content, and what stands at the head and foot of every page. */
export interface Paper {
  readonly title: string
  /** BCP 47: `en-US`, `es-US`. */
  readonly language: string
  readonly author: string
  readonly subject: string
  /** Date of issue, year-month-day; the only date that the file holds. */
  readonly date: string
  readonly blocks: readonly PageBlock[]
  /** Height of running text, tables, labels and foot, points; 10 when missing. */
  readonly textPt?: number
  /** Large at the head of each page: `DRAFT`; nothing when left out. */
  readonly stamp?: string
  /** Left in the foot of each page. */
  readonly foot: string
  /** Right in the foot: `page 2 of 4`. */
  readonly pageWords: (page: number, pages: number) => string
  readonly logo?: PageLogo | undefined
}
