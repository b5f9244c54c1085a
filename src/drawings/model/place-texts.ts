import { radiansOf } from '../../values/index.js'
import { boundsOf, figuresOverlap, type Box, type XY } from './geometry.js'
import { makeGrid, type Grid } from './grid.js'
import { roundedPoint, type Mark, type TextMark } from './mark.js'
import { isInside, isNearer, leaderLine, runsAlong } from './leader-line.js'
import { addObstacle, LETTERS_ONLY, lieOn, type Obstacles } from './obstacles.js'
import type { TextPrimitive } from './primitive.js'
import { textFigure, textMarks } from './text-block.js'
import type { Belonging, Waiting } from './waiting.js'

/** What a later place of those that a text names costs, next to lying on hatch. */
const RANK_COST = 0.2
/** What each line costs that a leader runs through. */
const CROSSING_COST = 0.25
/** What it costs to stand nearer to what another text names, and to have a leader along a line that it begins on. */
const ASTRAY_COST = 1
/** Radius of the dot at the end of a leader, points. */
const DOT_PT = 1.3
/** Width of a text that stands aside, heights of type. */
const MOST_ASIDE = 14

type Figure = readonly XY[]

/** Room round a text that no other text enters, points. */
const MARGIN_PT = 0.6
/** Distances at which a text that stands aside is tried, points, near ones first. */
const ASIDE = [12, 18, 26, 36, 48, 62, 78, 96, 118, 144, 176, 214, 260, 320]
/** Directions in which it is tried: level ones first, then those that slant. */
const DIRECTIONS = [0, 180, 30, 150, 330, 210, 60, 120, 300, 240, 90, 270].map(radiansOf)

/** Finds places on a drawing for texts, one after the other. */
export class TextPlaces {
  readonly #taken: Grid<Figure> = makeGrid()
  readonly #lines: Grid<readonly [XY, XY]> = makeGrid()
  readonly #placed = new Map<number, readonly TextMark[]>()
  readonly #belongs = new Map<number, Belonging>()
  readonly #leaders: (readonly [block: number, mark: Mark])[] = []
  readonly #obstacles: Obstacles
  readonly #order: number

  /** @param order Number of marks that the obstacles were made of. */
  constructor(obstacles: Obstacles, order: number) {
    this.#obstacles = obstacles
    this.#order = order
  }

  /** Puts a text where it is, free or not; tells whether it is. */
  fix(index: number, { text, at, within, belongs }: Waiting): boolean {
    this.#belongs.set(index, belongs)
    const marks = textMarks(text, at, index)
    const isFree = this.#isFree(marks, within)
    this.#settle(index, marks)
    return isFree
  }

  /** Puts a text at the best of the places that it names: early ones, on nothing rather than on quiet lines or in an area. */
  settleBeside(index: number, { text, at, within, belongs }: Waiting): boolean {
    this.#belongs.set(index, belongs)
    const shifts = text.shifts === undefined || text.shifts.length === 0 ? [{ x: 0, y: 0 }] : text.shifts
    const tries = shifts.flatMap((shift, rank) => {
      const marks = textMarks(text, { x: at.x + shift.x, y: at.y + shift.y }, index)
      const cost = this.#cost(marks, within)
      return cost === undefined ? [] : [{ marks, cost: cost + RANK_COST * rank }]
    })
    return this.#take(index, tries)
  }

  /**
   * Puts a text aside, with a line to what it names: near, on nothing, the line through as little as can be.
   *
   * @param others What other texts that stand aside name.
   */
  settleAside(index: number, { text, at, within, belongs }: Waiting, others: readonly XY[] = []): boolean {
    this.#belongs.set(index, belongs)
    const level: TextPrimitive = {
      ...text,
      rotationDeg: 0,
      align: 'center',
      valign: 'middle',
      maxWidthPt: Math.min(text.maxWidthPt ?? Infinity, MOST_ASIDE * text.sizePt),
    }
    const box = boundsOf(textMarks(level, at, index).flatMap((mark) => textFigure(mark)))
    const tries: { marks: readonly TextMark[]; cost: number; line: [XY, XY] }[] = []
    let least = Infinity
    for (const [rank, distance] of ASIDE.entries()) {
      // What lies farther off cannot be better.
      if (least <= RANK_COST * rank) break
      for (const turn of DIRECTIONS) {
        const [cos, sin] = [Math.cos(turn), Math.sin(turn)]
        const spot = { x: at.x + cos * (distance + box.width / 2), y: at.y - sin * (distance + box.height / 2) }
        const marks = textMarks(level, spot, index)
        const lying = this.#cost(marks, within)
        const line = leaderLine(at, spot, box)
        if (lying === undefined || this.#crosses(line)) continue
        const isAstray =
          text.aside === true &&
          (isNearer(others, at, boundsOf(marks.flatMap((mark) => textFigure(mark)))) ||
            runsAlong(this.#obstacles, line))
        const cost = lying + RANK_COST * rank + CROSSING_COST * this.#crossed(line) + (isAstray ? ASTRAY_COST : 0)
        least = Math.min(least, cost)
        tries.push({ marks, cost, line })
      }
    }
    return this.#take(index, tries, text.aside !== true)
  }

  /** Whether a figure lies within a part of the paper, on nothing but quiet lines. */
  isClear(figure: Figure, within: Box): boolean {
    const box = boundsOf(figure)
    const lie = lieOn(this.#obstacles, figure)
    return (
      isInside(box, within, MARGIN_PT) &&
      lie.cuts === undefined &&
      !lie.isOnFill &&
      !lie.isOnQuiet &&
      !this.#taken.near(box).some((other) => figuresOverlap(figure, other))
    )
  }

  /** Puts texts and figures where there is room. */
  put(texts: readonly TextMark[], figures: readonly Mark[], room: Figure): void {
    const [first] = texts
    if (first === undefined) return
    this.#placed.set(first.block, [...(this.#placed.get(first.block) ?? []), ...texts])
    this.#leaders.push(...figures.map((figure) => [first.block, figure] as const))
    this.#taken.add(boundsOf(room), room)
  }

  /** All texts in the order of their numbers, and the lines to what they name. */
  result(): { readonly texts: TextMark[]; readonly leaders: readonly Mark[] } {
    const texts = [...this.#placed]
      .toSorted(([a], [b]) => a - b)
      .flatMap(([index, marks]) => marks.map((mark) => ({ ...mark, ...this.#belongs.get(index) })))
    return { texts, leaders: this.#leaders.map(([index, mark]) => ({ ...mark, ...this.#belongs.get(index) })) }
  }

  #take(
    index: number,
    tries: readonly { readonly marks: readonly TextMark[]; readonly cost: number; readonly line?: [XY, XY] }[],
    withDot = true,
  ): boolean {
    const least = Math.min(...tries.map(({ cost }) => cost))
    const best = tries.find(({ cost }) => cost === least)
    if (best === undefined) return false
    this.#settle(index, best.marks)
    if (best.line !== undefined) this.#drawLeader(index, best.line, withDot)
    return true
  }

  #settle(index: number, marks: readonly TextMark[]): void {
    // A white ground is printed only where it hides quiet lines and nothing else.
    const shown = marks.map((mark) => {
      const lie = mark.halo ? lieOn(this.#obstacles, textFigure(mark)) : undefined
      return lie === undefined ? mark : { ...mark, halo: lie.isOnQuiet && !lie.isOnFill }
    })
    this.#placed.set(index, shown)
    for (const mark of marks) {
      const figure = textFigure(mark, MARGIN_PT)
      this.#taken.add(boundsOf(figure), figure)
    }
  }

  #drawLeader(index: number, line: [XY, XY], withDot: boolean): void {
    const [tip, end] = line.map(roundedPoint)
    if (tip === undefined || end === undefined) return
    const look = { layer: 'note', dash: 'solid', color: 'black' } as const
    const marks: Mark[] = [{ kind: 'path', points: [tip, end], closed: false, pen: 'hair', ...look }]
    if (withDot) marks.push({ kind: 'circle', center: tip, radius: DOT_PT, fill: 'black', ...look })
    for (const mark of marks) addObstacle(this.#obstacles, mark, this.#order)
    this.#leaders.push(...marks.map((mark) => [index, mark] as const))
    this.#lines.add(boundsOf(line), line)
  }

  #isFree(marks: readonly TextMark[], within: Box): boolean {
    return marks.every((mark) => {
      const figure = textFigure(mark, MARGIN_PT)
      const box = boundsOf(figure)
      return isInside(box, within, MARGIN_PT) && !this.#taken.near(box).some((other) => figuresOverlap(figure, other))
    })
  }

  /** 0 on nothing, less than 1 on quiet lines or within an area; undefined where the text may not lie. */
  #cost(marks: readonly TextMark[], within: Box): number | undefined {
    if (!this.#isFree(marks, within)) return undefined
    let cost = 0
    for (const mark of marks) {
      const lie = lieOn(this.#obstacles, textFigure(mark, LETTERS_ONLY * mark.sizePt))
      if (lie.cuts !== undefined) return undefined
      // A white ground would hide a part of the area.
      const isNearFill = lie.isOnQuiet && lieOn(this.#obstacles, textFigure(mark)).isOnFill
      if (lie.isOnQuiet && (isNearFill || !mark.halo)) return undefined
      cost = Math.max(cost, lie.isOnFill ? 0.15 : lie.isOnQuiet ? 0.3 : 0)
    }
    return cost
  }

  /** Lines that may not be cut which a leader runs through. */
  #crossed(line: readonly [XY, XY]): number {
    const found = this.#obstacles.strokes.near(boundsOf(line)).filter((stroke) => !stroke.isQuiet)
    return Math.min(9, found.filter(({ points }) => figuresOverlap(line, points, 0)).length)
  }

  #crosses(line: readonly [XY, XY]): boolean {
    const box = boundsOf(line)
    return (
      this.#taken.near(box).some((figure) => figuresOverlap(line, figure)) ||
      this.#lines.near(box).some((other) => figuresOverlap(line, other, 0))
    )
  }
}
