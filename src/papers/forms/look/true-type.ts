/** What is needed of a TrueType font to print and to embed it. */
export interface TrueType {
  readonly unitsPerEm: number
  readonly ascent: number
  readonly descent: number
  readonly box: readonly [number, number, number, number]
  readonly glyphCount: number
  /** Number of the glyph of a character, undefined when the font has none. */
  readonly glyphOf: (codePoint: number) => number | undefined
  /** Units of the font. */
  readonly widthOf: (glyph: number) => number
  /** The font with the outlines of these glyphs only; their numbers stay. */
  readonly subset: (glyphs: ReadonlySet<number>) => Uint8Array
}

/** Tables that a font in a PDF needs. */
const KEPT = ['cvt ', 'fpgm', 'glyf', 'head', 'hhea', 'hmtx', 'loca', 'maxp', 'prep']

/**
 * Reads a TrueType font of ours.
 *
 * @source The TrueType reference and ISO/IEC 14496-22 (tables cmap, glyf, head, hhea, hmtx, loca, maxp); from memory.
 */
export function readTrueType(bytes: Uint8Array): TrueType {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  const tables = new Map<string, DataView>()
  for (let i = 0; i < view.getUint16(4); i++) {
    const at = 12 + 16 * i
    const tag = String.fromCharCode(...bytes.subarray(at, at + 4))
    tables.set(tag, new DataView(bytes.buffer, bytes.byteOffset + view.getUint32(at + 8), view.getUint32(at + 12)))
  }
  const table = (tag: string): DataView => {
    const found = tables.get(tag)
    if (found === undefined) throw new Error(`the font has no table ${tag}`)
    return found
  }
  const [head, hhea, hmtx, loca, glyf] = ['head', 'hhea', 'hmtx', 'loca', 'glyf'].map(table) as [
    DataView,
    DataView,
    DataView,
    DataView,
    DataView,
  ]
  const glyphCount = table('maxp').getUint16(4)
  const metricCount = hhea.getUint16(34)
  const isLong = head.getInt16(50) === 1
  const offsetOf = (glyph: number): number => (isLong ? loca.getUint32(4 * glyph) : 2 * loca.getUint16(2 * glyph))
  const outlineOf = (glyph: number): Uint8Array => {
    const start = offsetOf(glyph)
    return new Uint8Array(glyf.buffer, glyf.byteOffset + start, offsetOf(glyph + 1) - start)
  }
  return {
    unitsPerEm: head.getUint16(18),
    ascent: hhea.getInt16(4),
    descent: hhea.getInt16(6),
    box: [head.getInt16(36), head.getInt16(38), head.getInt16(40), head.getInt16(42)],
    glyphCount,
    glyphOf: readCharacters(table('cmap')),
    widthOf: (glyph) => hmtx.getUint16(4 * Math.min(glyph, metricCount - 1)),
    subset: (glyphs) => {
      const kept = withParts(glyphs, outlineOf)
      const outlines = Array.from({ length: glyphCount }, (_, glyph) =>
        kept.has(glyph) ? outlineOf(glyph) : new Uint8Array(0),
      )
      return writeFont(tables, outlines)
    },
  }
}

/** Characters of a subtable of format 4: those of the basic plane. */
function readCharacters(cmap: DataView): (codePoint: number) => number | undefined {
  let at: number | undefined
  for (let i = 0; i < cmap.getUint16(2); i++) {
    const offset = cmap.getUint32(8 + 8 * i)
    if (cmap.getUint16(4 + 8 * i) === 3 && cmap.getUint16(offset) === 4) at = offset
  }
  if (at === undefined) throw new Error('the font has no table of characters that can be read')
  const start = at
  const count = cmap.getUint16(start + 6) / 2
  const [ends, starts] = [start + 14, start + 16 + 2 * count]
  const [deltas, offsets] = [starts + 2 * count, starts + 4 * count]
  return (codePoint) => {
    for (let i = 0; i < count; i++) {
      const [from, to] = [cmap.getUint16(starts + 2 * i), cmap.getUint16(ends + 2 * i)]
      if (codePoint < from || codePoint > to) continue
      const delta = cmap.getUint16(deltas + 2 * i)
      const offset = cmap.getUint16(offsets + 2 * i)
      const own = offset === 0 ? codePoint : cmap.getUint16(offsets + 2 * i + offset + 2 * (codePoint - from))
      const glyph = own === 0 ? 0 : (own + delta) % 65_536
      return glyph === 0 ? undefined : glyph
    }
    return undefined
  }
}

/** With the glyphs that others are put together from, and the one for what is missing. */
function withParts(glyphs: ReadonlySet<number>, outlineOf: (glyph: number) => Uint8Array): Set<number> {
  const kept = new Set([0, ...glyphs])
  for (const glyph of kept) {
    const outline = outlineOf(glyph)
    const view = new DataView(outline.buffer, outline.byteOffset, outline.byteLength)
    if (outline.length < 10 || view.getInt16(0) >= 0) continue
    for (let at = 10, more = true; more;) {
      const flags = view.getUint16(at)
      kept.add(view.getUint16(at + 2))
      at += 4 + ((flags & 1) === 0 ? 2 : 4)
      at += (flags & 0x08) !== 0 ? 2 : (flags & 0x40) !== 0 ? 4 : (flags & 0x80) !== 0 ? 8 : 0
      more = (flags & 0x20) !== 0
    }
  }
  return kept
}

function writeFont(tables: ReadonlyMap<string, DataView>, outlines: readonly Uint8Array[]): Uint8Array {
  const offsets = new DataView(new ArrayBuffer(4 * (outlines.length + 1)))
  let end = 0
  for (const [glyph, outline] of outlines.entries()) {
    offsets.setUint32(4 * glyph, end)
    end += (outline.length + 3) & ~3
  }
  offsets.setUint32(4 * outlines.length, end)
  const glyf = new Uint8Array(end)
  for (const [glyph, outline] of outlines.entries()) glyf.set(outline, offsets.getUint32(4 * glyph))
  const contentOf = (tag: string, table: DataView): Uint8Array => {
    if (tag === 'glyf') return glyf
    if (tag === 'loca') return new Uint8Array(offsets.buffer)
    const copy = new Uint8Array(table.buffer, table.byteOffset, table.byteLength).slice()
    if (tag === 'head') new DataView(copy.buffer).setInt16(50, 1)
    return copy
  }
  const kept = KEPT.flatMap((tag) => {
    const table = tables.get(tag)
    return table === undefined ? [] : [{ tag, content: contentOf(tag, table) }]
  })
  const start = 12 + 16 * kept.length
  const size = kept.reduce((sum, { content }) => sum + ((content.length + 3) & ~3), start)
  const font = new Uint8Array(size)
  const view = new DataView(font.buffer)
  const power = Math.floor(Math.log2(kept.length))
  view.setUint32(0, 0x0001_0000)
  view.setUint16(4, kept.length)
  view.setUint16(6, 16 * 2 ** power)
  view.setUint16(8, power)
  view.setUint16(10, 16 * (kept.length - 2 ** power))
  let at = start
  for (const [i, { tag, content }] of kept.entries()) {
    const entry = 12 + 16 * i
    for (const [j, character] of Array.from(tag).entries()) font[entry + j] = character.codePointAt(0) ?? 0
    font.set(content, at)
    view.setUint32(entry + 4, checksum(font.subarray(at, (at + content.length + 3) & ~3)))
    view.setUint32(entry + 8, at)
    view.setUint32(entry + 12, content.length)
    at += (content.length + 3) & ~3
  }
  return font
}

function checksum(bytes: Uint8Array): number {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  let sum = 0
  for (let at = 0; at + 4 <= bytes.length; at += 4) sum = (sum + view.getUint32(at)) >>> 0
  return sum
}
