import type { Primitive } from '../model/index.js'

export interface TableColumn {
  readonly heading: string
  /** Share of the width; the shares of a table need not sum to 1. */
  readonly share: number
  readonly align?: 'left' | 'right' | 'center'
  readonly bold?: boolean
}

/** What a page of text and tables is made of, in reading order. */
export type Block =
  | { readonly kind: 'heading'; readonly text: string }
  /** Goes on in the next column where a page has at least so many. */
  | { readonly kind: 'break'; readonly columns: number }
  | { readonly kind: 'text'; readonly text: string; readonly bold?: boolean }
  | {
      readonly kind: 'list'
      readonly items: readonly string[]
      readonly numbered?: boolean
      /** Whether all of it stands in one column. */
      readonly whole?: boolean
    }
  | { readonly kind: 'facts'; readonly facts: readonly (readonly [label: string, value: string])[] }
  | {
      readonly kind: 'table'
      readonly columns: readonly TableColumn[]
      readonly rows: readonly (readonly string[])[]
      /** Whether it goes to the next column as a whole, with its heading, where it fits there. */
      readonly whole?: boolean
    }
  | {
      readonly kind: 'figure'
      readonly heightPt: number
      /** Room above it; 8 when missing. */
      readonly gapPt?: number
      /** Whether what follows stands in the same column. */
      readonly keep?: boolean
      /** Draws it; x and y are its upper left corner on paper. */
      readonly draw: (x: number, y: number, widthPt: number) => readonly Primitive[]
    }
