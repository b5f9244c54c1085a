export interface PictureSize {
  readonly width: number
  readonly height: number
}

const MARK = [0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]
/** More would take much memory to unpack, pixels. */
const MOST_PIXELS = 16_000_000

/**
 * Size of a PNG, pixels; undefined when it is none, words when it is a bad one.
 *
 * @source PNG specification, section 11.2.2: IHDR comes first, with width and height (from memory)
 */
export function pngSize(bytes: Uint8Array): PictureSize | string | undefined {
  if (!MARK.every((byte, index) => bytes[index] === byte)) return undefined
  if (bytes.length < 57 || String.fromCharCode(...bytes.subarray(12, 16)) !== 'IHDR') return 'the PNG is damaged'
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const [width, height] = [view.getUint32(16), view.getUint32(20)]
  if (width === 0 || height === 0) return 'the PNG has no size'
  if (width * height > MOST_PIXELS) return `${width} x ${height} pixels are too many; at most 16 million`
  if (bytes[28] !== 0) return 'the PNG is interlaced; save it without'
  const end = String.fromCharCode(...bytes.subarray(-8, -4))
  return end === 'IEND' ? { width, height } : 'the PNG ends too early'
}
