/** A document as the thread that works on it gets it. */
export interface DocumentBytes {
  readonly path: string
  readonly bytes: Uint8Array
  readonly title?: string | undefined
}

/** What the packet has to know of a document before it is drawn. */
export interface DocumentFacts {
  readonly pages: number
  readonly notes: readonly string[]
}

export const PRINT_AGAIN = 'print it to a new PDF and use that'
export const PRINT_SMALLER = 'print it to a new PDF with coarser pictures, or with the pages that are wanted alone'

/** What is needed to bind documents into a packet. */
export interface BoundInput {
  readonly packet: Uint8Array
  readonly stamps: Uint8Array
  readonly documents: readonly DocumentBytes[]
  readonly date: string
}
