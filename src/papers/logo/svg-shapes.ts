import { XMLParser, XMLValidator } from 'fast-xml-parser'
import type { Attributes } from './svg-attributes.js'
import { pathOf } from './svg-path.js'
import { lookOf, START_LOOK, type SvgLook } from './svg-look.js'
import { readMatrices, type Matrix } from './svg-transform.js'

/** A shape with its look, and what moves it, outermost first. */
export interface SvgShape extends SvgLook {
  readonly d: string
  readonly matrices: readonly Matrix[]
}

export interface SvgShapes {
  /** Left, top, width and height of the view box. */
  readonly box: readonly [number, number, number, number]
  readonly shapes: readonly SvgShape[]
}

/** One element as the parser tells it: its name with its children, and its attributes under `:@`. */
type Node = Readonly<Record<string, unknown>>

/** What says nothing that is drawn. */
const SKIPPED = new Set(['title', 'desc', 'metadata', '#comment', '#text'])
const SHAPES = new Set(['path', 'rect', 'circle', 'ellipse', 'polygon', 'polyline', 'line'])
const MOST_SHAPES = 4000
const MOST_DEPTH = 40
/** What moves one shape, with that of its groups. Each shape has its own list of them. */
const MOST_MOVES = 200
/** Shapes and their places in an SVG are far below this. */
const FARTHEST = 1e6

class Refused extends Error {}

/** Reads the shapes of an SVG; in words why it cannot be taken. Nothing but shapes in plain colours is understood. */
export function readSvgShapes(bytes: Uint8Array): SvgShapes | string {
  try {
    const text = new TextDecoder('utf-8', { fatal: true }).decode(bytes)
    if (!/<svg[\s>]/u.test(text)) return 'it is neither PNG nor SVG'
    if (/<!(?:DOCTYPE|ENTITY)/iu.test(text)) return 'it has a DOCTYPE; save it without'
    if (XMLValidator.validate(text) !== true) return 'the SVG is not well-formed XML'
    const parser = new XMLParser({
      preserveOrder: true,
      ignoreAttributes: false,
      attributeNamePrefix: '',
      processEntities: false,
      parseTagValue: false,
      parseAttributeValue: false,
    })
    const nodes = parser.parse(text) as Node[]
    const root = nodes.find((node) => node['svg'] !== undefined)
    if (root === undefined) return 'its outermost element is not svg'
    const shapes: SvgShape[] = []
    const attributes = attributesOf(root)
    checkAttributes(attributes)
    walk(root['svg'] as Node[], { matrices: [], look: lookIn(attributes, START_LOOK), depth: 0, shapes })
    if (shapes.length === 0) return 'it has no shapes'
    return { box: boxOf(attributes), shapes }
  } catch (error) {
    if (error instanceof Refused) return error.message
    if (error instanceof TypeError || error instanceof RangeError) return 'it cannot be read as SVG'
    throw error
  }
}

interface Walk {
  readonly matrices: readonly Matrix[]
  readonly look: SvgLook
  readonly depth: number
  readonly shapes: SvgShape[]
}

function walk(nodes: readonly Node[], at: Walk): void {
  if (at.depth > MOST_DEPTH) throw new Refused('its groups lie too deep in each other')
  for (const node of nodes) {
    const name = Object.keys(node).find((key) => key !== ':@') ?? ''
    if (SKIPPED.has(name) || name.startsWith('?')) continue
    const attributes = attributesOf(node)
    checkAttributes(attributes)
    const moved = readMatrices(attributes['transform'])
    if (moved === undefined) throw new Refused(`a transform cannot be read: ${short(attributes['transform'])}`)
    const matrices = [...at.matrices, ...moved]
    if (matrices.length > MOST_MOVES) throw new Refused(`a shape has more than ${MOST_MOVES} transforms`)
    const look = lookIn(attributes, at.look)
    if (name === 'g') walk(node['g'] as Node[], { ...at, matrices, look, depth: at.depth + 1 })
    else if (SHAPES.has(name)) {
      const d = pathOf(name, attributes)
      if (d === undefined) throw new Refused(`a ${name} has places that cannot be read`)
      if (d !== '') at.shapes.push({ d, matrices, ...look })
      if (at.shapes.length > MOST_SHAPES) throw new Refused(`it has more than ${MOST_SHAPES} shapes`)
    } else
      throw new Refused(
        `<${short(name)}> is not taken; use paths, rectangles, circles, lines and polygons alone, and turn texts into paths`,
      )
  }
}

/** What runs or fetches is refused by name; what is not known otherwise is left out. */
function checkAttributes(attributes: Attributes): void {
  for (const [name, value] of Object.entries(attributes)) {
    if (/^on/iu.test(name)) throw new Refused(`it has an event handler (${short(name)})`)
    if (/(?:^|:)href$/iu.test(name)) throw new Refused('it refers to something (href); shapes alone are taken')
    if (/url\s*\(|javascript:|data:|@import|expression\s*\(/iu.test(value))
      throw new Refused(`${short(name)} refers to something; plain colours alone are taken`)
  }
}

function lookIn(attributes: Attributes, before: SvgLook): SvgLook {
  const look = lookOf(attributes, before)
  if (typeof look === 'string') throw new Refused(look)
  return look
}

const attributesOf = (node: Node): Attributes => (node[':@'] ?? {}) as Attributes
const short = (text: string | undefined): string => (text ?? '').slice(0, 40)

function boxOf(attributes: Attributes): SvgShapes['box'] {
  const lengths = (text: string | undefined): number[] =>
    (text ?? '')
      .trim()
      .split(/[\s,]+/u)
      .map(Number)
  const box = lengths(attributes['viewBox'])
  const [left = NaN, top = NaN, width = NaN, height = NaN] =
    box.length === 4 ? box : [0, 0, size(attributes['width']), size(attributes['height'])]
  const isGood = [left, top, width, height].every((each) => Math.abs(each) < FARTHEST)
  if (!isGood || width <= 0 || height <= 0) throw new Refused('it has no viewBox and no width and height')
  return [left, top, width, height]
}

/** A length in the units of the drawing. */
const size = (text: string | undefined): number =>
  Number(/^\s*(?<n>[\d.]+)(?:px|pt|mm|cm|in)?\s*$/u.exec(text ?? '')?.groups?.['n'] ?? NaN)
