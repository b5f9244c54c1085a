/** A key with `*` for an id of the person's own or a number in a list, and `**` at the end for all that lies below. */
export type WherePairs = readonly (readonly [pattern: string, where: string])[]
