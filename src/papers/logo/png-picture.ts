import { inflateSync } from 'node:zlib'
import { pngSize, type PictureSize } from './png-size.js'

export interface PngPicture extends PictureSize {
  /** The picture alone, without what else the file carries. */
  readonly bytes: Uint8Array
}

/** Values of a pixel, and how many bits each may have, by the type of colour. */
const COLOURS: Readonly<Record<number, { readonly values: number; readonly bits: readonly number[] }>> = {
  0: { values: 1, bits: [1, 2, 4, 8, 16] },
  2: { values: 3, bits: [8, 16] },
  3: { values: 1, bits: [1, 2, 4, 8] },
  4: { values: 2, bits: [8, 16] },
  6: { values: 4, bits: [8, 16] },
}
/** Parts that make the picture; all others, such as texts, are left out. */
const PICTURE = new Set(['IHDR', 'PLTE', 'tRNS', 'IDAT', 'IEND'])
const HIGHEST_FILTER = 4
const DAMAGED = 'the PNG is damaged'

/**
 * A PNG whose pixels are all there: what draws it unpacks them later, where an error would end the program.
 *
 * @returns undefined when it is none, words when it is a bad one.
 * @source PNG specification, sections 5.3, 9.2 and 11.2.2 (from memory)
 */
export function pngPicture(bytes: Uint8Array): PngPicture | string | undefined {
  const size = pngSize(bytes)
  if (size === undefined || typeof size === 'string') return size
  const chunks = chunksOf(bytes)
  if (chunks === undefined) return DAMAGED
  const [depth = 0, colour = 0, packing = 0, filtering = 0] = bytes.subarray(24, 28)
  const kind = COLOURS[colour]
  if (kind === undefined || !kind.bits.includes(depth) || packing !== 0 || filtering !== 0) return DAMAGED
  const palette = chunks.find(({ type }) => type === 'PLTE')
  if (colour === 3 && (palette === undefined || palette.data.length % 3 !== 0)) return DAMAGED
  const rowBytes = 1 + Math.ceil((size.width * depth * kind.values) / 8)
  const packed = Buffer.concat(chunks.filter(({ type }) => type === 'IDAT').map(({ data }) => data))
  const pixels = unpacked(packed, rowBytes * size.height)
  if (pixels === undefined) return DAMAGED
  for (let at = 0; at < pixels.length; at += rowBytes) if ((pixels[at] ?? 0) > HIGHEST_FILTER) return DAMAGED
  const kept = chunks.filter(({ type }) => PICTURE.has(type)).map(({ whole }) => whole)
  return { ...size, bytes: Buffer.concat([bytes.subarray(0, 8), ...kept]) }
}

interface Chunk {
  readonly type: string
  readonly data: Uint8Array
  /** With its length before it and its sum behind. */
  readonly whole: Uint8Array
}

/** @returns undefined when their lengths do not fit the file, or they do not begin and end as they must. */
function chunksOf(bytes: Uint8Array): Chunk[] | undefined {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const chunks: Chunk[] = []
  for (let at = 8; at < bytes.length;) {
    if (at + 12 > bytes.length) return undefined
    const end = at + 12 + view.getUint32(at)
    if (end > bytes.length) return undefined
    const type = String.fromCharCode(...bytes.subarray(at + 4, at + 8))
    chunks.push({ type, data: bytes.subarray(at + 8, end - 4), whole: bytes.subarray(at, end) })
    at = end
  }
  const heads = chunks.filter(({ type }) => type === 'IHDR')
  const isFramed = chunks[0]?.type === 'IHDR' && chunks[0].data.length === 13 && heads.length === 1
  return isFramed && chunks.findIndex(({ type }) => type === 'IEND') === chunks.length - 1 ? chunks : undefined
}

/** @returns undefined when they are no packed data of this length. */
function unpacked(packed: Uint8Array, length: number): Uint8Array | undefined {
  try {
    const bytes = inflateSync(packed, { maxOutputLength: length + 1 })
    return bytes.length === length ? bytes : undefined
  } catch {
    return undefined
  }
}
