import { boundsOf, cornersOf, textFigure, type Mark, type Part, type XY } from '../model/index.js'
import { maskOf, type Mask } from './cut.js'
import { dimensionEntity, insertEntity, shapeEntity } from './entities.js'
import type { Handles, Owner } from './entity-head.js'
import type { Pair } from './pairs.js'
import { movedBy, reachOf, shapesOf, type Shape, type Space } from './shapes.js'

/** A block: its name, the handle of its record and what is in it. */
export interface Block {
  readonly name: string
  readonly record: string
  readonly isAnonymous: boolean
  readonly pairs: readonly Pair[]
}

/** Entities of one space of a file. */
export interface Drawn {
  readonly pairs: Pair[]
  /** Points that the drawing reaches to. */
  readonly reach: XY[]
}

/** Marks of one space, and how they are shown there. */
export interface Batch {
  readonly marks: readonly Mark[]
  readonly space: Space
  readonly owner: Owner
  /** Whether what is drawn later hides what lies under it. */
  readonly hides: boolean
  readonly dimStyle: string
}

/** Draws marks into spaces of a file and keeps the blocks that they use. */
export function makeDrawer(handles: Handles): {
  readonly blocks: Block[]
  readonly draw: (batch: Batch, into: Drawn) => void
} {
  const blocks: Block[] = []
  const known = new Map<string, string>()
  const counts = new Map<string, number>()

  const addBlock = (name: string, shapes: readonly Shape[], isAnonymous: boolean): void => {
    const record = handles.next()
    const pairs = shapes.flatMap((shape) => shapeEntity(shape, handles.next(), { record, onPaper: false }))
    blocks.push({ name, record, isAnonymous, pairs })
  }

  /** The block of a symbol; those that look alike share one. */
  const symbolBlock = (name: string, shapes: readonly Shape[]): string => {
    const key = `${name} ${JSON.stringify(shapes, (_, value: unknown) => (typeof value === 'number' ? Math.round(value * 1e4) / 1e4 + 0 : value))}`
    const found = known.get(key)
    if (found !== undefined) return found
    const count = (counts.get(name) ?? 0) + 1
    counts.set(name, count)
    const block = count === 1 ? name : `${name}-${count}`
    known.set(key, block)
    addBlock(block, shapes, false)
    return block
  }

  const drawPart = (part: Part, marks: readonly Mark[], batch: Batch, into: Drawn): void => {
    const { space, owner, hides } = batch
    const shapes = marks.flatMap((mark, index) => shapesOf(mark, space, masksAfter(marks, index), hides))
    const [first] = shapes
    if (first === undefined) return
    into.reach.push(...shapes.flatMap(reachOf))
    if (part.kind === 'symbol') {
      const place = space.point(part.at)
      const block = symbolBlock(
        part.name,
        shapes.map((shape) => movedBy(shape, place)),
      )
      into.pairs.push(...insertEntity(block, place, first.layer, handles.next(), owner))
      return
    }
    counts.set('*D', (counts.get('*D') ?? 0) + 1)
    const block = `*D${counts.get('*D')}`
    addBlock(block, shapes, true)
    const facts = dimensionFacts(part, marks, space, block, batch.dimStyle)
    into.pairs.push(...dimensionEntity(facts, first.layer, handles.next(), owner))
  }

  const draw = (batch: Batch, into: Drawn): void => {
    const { marks, space, owner, hides } = batch
    const parts = new Map<Part, Mark[]>()
    for (const mark of marks) {
      if (mark.part !== undefined) parts.set(mark.part, [...(parts.get(mark.part) ?? []), mark])
    }
    const begun = new Set<Part>()
    for (const [index, mark] of marks.entries()) {
      const { part } = mark
      if (part !== undefined) {
        if (!begun.has(part)) drawPart(part, parts.get(part) ?? [], batch, into)
        begun.add(part)
        continue
      }
      for (const shape of shapesOf(
        mark,
        space,
        hides || mark.kind === 'hatch' ? masksAfter(marks, index) : [],
        hides,
      )) {
        into.pairs.push(...shapeEntity(shape, handles.next(), owner))
        into.reach.push(...reachOf(shape))
      }
    }
  }
  return { blocks, draw }
}

/** What is drawn after a mark and hides what lies under it. */
function masksAfter(marks: readonly Mark[], index: number): Mask[] {
  const mark = marks[index]
  if (mark === undefined || mark.kind === 'text' || mark.kind === 'circle') return []
  // A hatch leaves room for the words on it; what else lies on it has lines of its own.
  const over = marks.slice(index + 1).filter(({ kind }) => mark.kind !== 'hatch' || kind === 'text')
  return over.flatMap((each) => {
    const figure = hidingFigure(each)
    return figure === undefined ? [] : [maskOf(figure)]
  })
}

const ROUND = Array.from({ length: 24 }, (_, index) => (index * Math.PI) / 12)

function hidingFigure(mark: Mark): readonly XY[] | undefined {
  switch (mark.kind) {
    case 'hatch':
      return undefined
    case 'text':
      return mark.halo ? textFigure(mark) : undefined
    case 'rectangle':
      return mark.fill === undefined ? undefined : cornersOf(mark)
    case 'path':
      return mark.fill === undefined ? undefined : mark.points
    case 'circle': {
      const { center, radius, fill } = mark
      return fill === undefined
        ? undefined
        : ROUND.map((turn) => ({ x: center.x + radius * Math.cos(turn), y: center.y + radius * Math.sin(turn) }))
    }
  }
}

function dimensionFacts(
  part: Extract<Part, { kind: 'dimension' }>,
  marks: readonly Mark[],
  { point }: Space,
  block: string,
  style: string,
): Parameters<typeof dimensionEntity>[0] {
  const text = marks.find((mark) => mark.kind === 'text')
  const box = text === undefined ? undefined : boundsOf(textFigure(text))
  const [a, b] = [part.lineFrom, part.lineTo]
  const middle =
    box === undefined
      ? { x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 }
      : { x: box.x + box.width / 2, y: box.y + box.height / 2 }
  return {
    block,
    style,
    text: text === undefined ? '' : part.text,
    from: point(part.from),
    to: point(part.to),
    lineTo: point(b),
    middle: point(middle),
  }
}
