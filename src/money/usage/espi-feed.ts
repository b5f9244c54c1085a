import { XMLParser, XMLValidator } from 'fast-xml-parser'
import { StageError } from '../../worksheet/index.js'
import { DEEPEST_METER, MOST_METER_ATTRIBUTES, MOST_METER_ELEMENTS, MOST_METER_NAMES } from '../../project/facts.js'
import { beyondXml, own } from '../../values/index.js'

/** A tree of an XML file: elements without prefix, all values text. */
export type XmlNode = string | XmlElement | readonly XmlNode[] | undefined
export interface XmlElement {
  readonly [name: string]: XmlNode
}

/** An Atom entry: its links and its payload. */
export interface FeedEntry {
  readonly self: string
  readonly up: string
  readonly related: readonly string[]
  readonly content: XmlElement
}

const LISTS = new Set(['entry', 'link', 'IntervalBlock', 'IntervalReading', 'ReadingQuality'])

export function elements(node: XmlNode): readonly XmlElement[] {
  if (node === undefined || typeof node === 'string') return []
  return Array.isArray(node) ? node.flatMap(elements) : [node as XmlElement]
}

/** Text of an element below, '' when missing. */
export function textOf(element: XmlElement | undefined, ...path: readonly string[]): string {
  let node: XmlNode = element
  for (const name of path) {
    const inner: XmlElement | undefined = elements(node)[0]
    node = own(inner, name)
  }
  return typeof node === 'string' ? node.trim() : ''
}

/** Number below an element, undefined when missing or not a whole number. */
export function wholeOf(element: XmlElement | undefined, ...path: readonly string[]): number | undefined {
  const text = textOf(element, ...path)
  return /^[+-]?\d+$/.test(text) ? Number(text) : undefined
}

/**
 * Entries of an ESPI (Green Button) feed. Titles, names and addresses are not kept.
 *
 * @throws StageError when the text is no XML or no feed.
 */
export function readFeed(xml: string): FeedEntry[] {
  const text = xml.startsWith('\ufeff') ? xml.slice(1) : xml
  const parser = new XMLParser({
    ignoreAttributes: false,
    attributeNamePrefix: '@',
    removeNSPrefix: true,
    parseTagValue: false,
    processEntities: false,
    isArray: (name) => LISTS.has(name),
  })
  const feed = elements(parseXml(parser, text)['feed'])[0]
  if (feed === undefined) throw noFeed('')
  return elements(feed['entry']).map((entry) => {
    const links = elements(entry['link'])
    const hrefs = (rel: string): string[] =>
      links.filter((link) => link['@rel'] === rel).map((link) => textOf(link, '@href').replace(/\/$/, ''))
    return {
      self: hrefs('self')[0] ?? '',
      up: hrefs('up')[0] ?? '',
      related: hrefs('related'),
      content: elements(entry['content'])[0] ?? {},
    }
  })
}

const BOUNDS = {
  elements: MOST_METER_ELEMENTS,
  attributes: MOST_METER_ATTRIBUTES,
  names: MOST_METER_NAMES,
  depth: DEEPEST_METER,
}

/** The parser refuses what is broken; what would cost it too much is refused before. */
function parseXml(parser: XMLParser, text: string): XmlElement {
  const beyond = beyondXml(text, BOUNDS)
  if (beyond !== undefined) throw noFeed(`: ${beyond}`)
  const valid = XMLValidator.validate(text)
  if (valid !== true) throw noFeed(`: line ${String(valid.err.line)}, ${valid.err.msg}`)
  try {
    return parser.parse(text) as XmlElement
  } catch (error) {
    throw noFeed(`: ${error instanceof Error ? error.message : String(error)}`)
  }
}

function noFeed(problem: string): StageError {
  return new StageError(
    'usage.green_button',
    `the file is no ESPI feed${problem}`,
    'Download the usage of your meter as Green Button XML from the site of the utility.',
  )
}
