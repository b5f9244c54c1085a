/** Attributes of an element as they are written. */
export type Attributes = Readonly<Record<string, string>>
