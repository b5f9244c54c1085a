import { lineAt } from './line-at.js'

/** Most that an XML text may hold; an element or an attribute costs its reader 150 bytes and more, however short it is written. */
export interface XmlBounds {
  readonly elements: number
  readonly attributes: number
  /** Different names of elements; what is read becomes maps with a key for each. */
  readonly names: number
  readonly depth: number
}

/** More than any tag needs, characters; a reader takes a tag as a whole. */
export const LONGEST_TAG = 10_000
/** More than any text between tags needs; a reader puts it together character by character, for 30 bytes each. */
export const LONGEST_TEXT = 10_000

/**
 * What of an XML text is more than allowed, in words with its line; undefined when nothing is. Only marks are looked at, in one pass:
 * whether the text is well-formed is for its reader.
 */
export function beyondXml(text: string, { elements, attributes, names, depth }: XmlBounds): string | undefined {
  let [elementCount, attributeCount, level, end] = [0, 0, 0, 0]
  const seen = new Set<string>()
  while (end < text.length) {
    const next = text.indexOf('<', end)
    const at = next < 0 ? text.length : next
    if (at - end > LONGEST_TEXT) return `line ${lineAt(text, end)}, a text of more than ${LONGEST_TEXT} characters`
    if (next < 0) return undefined
    const skipped = endOfOther(text, at)
    if (skipped !== undefined) {
      if (skipped === 'declaration') return `line ${lineAt(text, at)}, a DOCTYPE, which is not read; save it without`
      end = skipped
      continue
    }
    if (text.charCodeAt(at + 1) === SLASH) {
      level -= 1
      const closed = text.indexOf('>', at)
      end = closed < 0 ? text.length : closed + 1
      continue
    }
    const tag = readTag(text, at)
    if (tag === undefined) return `line ${lineAt(text, at)}, a tag of more than ${LONGEST_TAG} characters`
    elementCount += 1
    seen.add(nameOf(text, at + 1, tag.end))
    attributeCount += tag.attributes
    if (!tag.isClosed) level += 1
    if (level > depth) return `line ${lineAt(text, at)}, nested more than ${depth} levels deep`
    if (seen.size > names) return `line ${lineAt(text, at)}, more than ${names} names of elements`
    if (elementCount > elements) return `line ${lineAt(text, at)}, more than ${elements} elements`
    if (attributeCount > attributes) return `line ${lineAt(text, at)}, more than ${attributes} attributes`
    end = tag.end
  }
  return undefined
}

const [SLASH, EQUALS, CLOSE, QUOTE, APOSTROPHE, BLANK] = [0x2f, 0x3d, 0x3e, 0x22, 0x27, 0x20]

/** Where a comment, plain text or an instruction ends that begins here; undefined when it is a tag. */
function endOfOther(text: string, at: number): number | 'declaration' | undefined {
  const after = (mark: string): number => {
    const end = text.indexOf(mark, at)
    return end < 0 ? text.length : end + mark.length
  }
  if (text.startsWith('<!--', at)) return after('-->')
  if (text.startsWith('<![CDATA[', at)) return after(']]>')
  if (text.startsWith('<?', at)) return after('?>')
  return text.startsWith('<!', at) ? 'declaration' : undefined
}

/** A tag up to its end outside quotes; undefined when it is too long. */
function readTag(
  text: string,
  from: number,
): { readonly end: number; readonly attributes: number; readonly isClosed: boolean } | undefined {
  let [attributes, quote] = [0, 0]
  const last = Math.min(text.length, from + LONGEST_TAG)
  for (let at = from + 1; at < last; at += 1) {
    const code = text.charCodeAt(at)
    if (quote !== 0) {
      if (code === quote) quote = 0
    } else if (code === QUOTE || code === APOSTROPHE) quote = code
    else if (code === EQUALS) attributes += 1
    else if (code === CLOSE) return { end: at + 1, attributes, isClosed: text.charCodeAt(at - 1) === SLASH }
  }
  return last === text.length ? { end: last, attributes, isClosed: true } : undefined
}

function nameOf(text: string, from: number, end: number): string {
  let at = from
  while (at < end && text.charCodeAt(at) > BLANK && text.charCodeAt(at) !== CLOSE && text.charCodeAt(at) !== SLASH)
    at += 1
  return text.slice(from, at)
}
