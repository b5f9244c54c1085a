/**
 * Where a number or a rule comes from.
 *
 * `standing` says how far the source itself was read when the number was carried into this project:
 * - `read`: the source (or a true copy of it) was read;
 * - `secondary`: a text that quotes the source was read;
 * - `from memory`: nobody read it for this project, treat as unverified;
 * - `common practice, no source`: a habit of the trade that no document was found for;
 * - `project file`: the person stated it.
 */
export interface Source {
  readonly document: string
  readonly edition?: string
  readonly place?: string
  readonly standing: SourceStanding
}

export type SourceStanding = 'read' | 'secondary' | 'from memory' | 'common practice, no source' | 'project file'

/** One line for people: `NEC 2020 690.8(B)(1)` or `Erbs, Klein & Duffie 1982, eq. 1 (from memory, unverified)`. */
export function formatSource(source: Source): string {
  const name = [source.document, source.edition, source.place].filter((part) => part !== undefined).join(', ')
  switch (source.standing) {
    case 'read':
    case 'project file':
      return name
    case 'secondary':
      return `${name} (secondary source)`
    case 'from memory':
      return `${name} (from memory, unverified)`
    case 'common practice, no source':
      return name === '' ? 'common practice, no source' : `${name} (common practice, no source)`
  }
}
