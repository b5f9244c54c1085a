/** What a part of a sheet is to a program that reads it aloud. @source names of standard structure types, ISO 32000-1 14.8.4 (from memory) */
export type TagKind =
  | 'H1'
  | 'H2'
  | 'H3'
  | 'P'
  | 'L'
  | 'LI'
  | 'Lbl'
  | 'LBody'
  | 'Table'
  | 'TR'
  | 'TH'
  | 'TD'
  | 'Figure'
  | 'Artifact'

/** A part of what a sheet says. Parts lie in each other, and each is one object: what holds the same one belongs together. */
export interface Tag {
  readonly kind: TagKind
  readonly within?: Tag | undefined
  /** What a figure shows, or a heading says, in words. */
  readonly says?: string | undefined
  /** What the head of a table is the head of. */
  readonly scope?: 'Column' | 'Row' | undefined
  /** Of a row: what its cells are, from the left. */
  readonly cells?: readonly Cell[]
  /** Of a cell: which of its row it is, from 0. */
  readonly column?: number
}

/** What a cell of a table is. */
export interface Cell {
  readonly kind: 'TH' | 'TD'
  readonly scope?: 'Column' | 'Row'
}

/** What is not read aloud: frames, lines of tables, heads that are drawn again. */
export const ARTIFACT: Tag = { kind: 'Artifact' }

/** Cells of a row of a table: the row names them all, so that it is as wide as the others where nothing stands in them. */
export function rowCells(table: Tag, cells: readonly Cell[]): Tag[] {
  const row: Tag = { kind: 'TR', within: table, cells }
  return cells.map((cell, column): Tag => ({ ...cell, within: row, column }))
}
