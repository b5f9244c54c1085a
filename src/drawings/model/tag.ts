import type { Primitive } from './primitive.js'

/** What a part of a sheet is to a program that reads it aloud. @source names of standard structure types, ISO 32000-1 14.8.4 (from memory) */
export type TagKind =
  | 'H1'
  | 'H2'
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
  /** Parts that are there even where nothing is drawn for them, in their order. */
  readonly parts?: readonly Tag[]
}

/** What is not read aloud: frames, lines of tables, heads that are drawn again. */
export const ARTIFACT: Tag = { kind: 'Artifact' }

/** Puts primitives into a part where they are in none yet. */
export function inPart<P extends Primitive>(tag: Tag, primitives: readonly P[]): P[] {
  return primitives.map((each) => (each.tag === undefined ? { ...each, tag } : each))
}

/** Takes primitives out of what is read aloud. */
export function asArtifact<P extends Primitive>(primitives: readonly P[]): P[] {
  return primitives.map((each) => ({ ...each, tag: ARTIFACT }))
}

/** A row of a table with its cells, all of them, so that every row is as wide as the others. */
export function rowCells(table: Tag, cells: readonly Pick<Tag, 'kind' | 'scope'>[]): Tag[] {
  const parts: Tag[] = []
  const row: Tag = { kind: 'TR', within: table, parts }
  parts.push(...cells.map((cell): Tag => ({ ...cell, within: row })))
  return parts
}
