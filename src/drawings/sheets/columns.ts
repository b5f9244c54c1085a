import type { TableColumn } from '../layout/index.js'

/** Columns of a table with their shares of its width. */
export const columns = (...each: readonly (readonly [heading: string, share: number])[]): TableColumn[] =>
  each.map(([heading, share]) => ({ heading, share }))
