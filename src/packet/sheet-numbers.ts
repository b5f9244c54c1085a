import { documentPageId, drawPacket, type PacketInput } from '../drawings/index.js'

/** Numbers of all pages of a packet: its drawings, then each page of the documents. */
export function sheetNumbers(input: Omit<PacketInput, 'draft'>): string[] {
  const pages = input.documents.reduce((sum, document) => sum + document.pages, 0)
  return [
    ...drawPacket({ ...input, draft: false }).map(({ id }) => id),
    ...Array.from({ length: pages }, (_, index) => documentPageId(index + 1)),
  ]
}
