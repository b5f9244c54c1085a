import type { WiringValues } from '../../electrical/index.js'
import type { Disconnect } from '../../project/index.js'
import { label, line, TYPE_PT } from '../layout/index.js'
import { blockHeightPt, wrapText, type Primitive } from '../model/index.js'
import type { WireTag } from '../diagram/wire-tags.js'
import { sharedPt, spread, type DiagramJob } from './one-line-job.js'
import type { Places } from './one-line-places.js'
import type { OneLineSource } from './one-line-sources.js'
import {
  converterSymbol,
  fusedSwitchSymbol,
  inverterSymbol,
  junctionBox,
  shutdownUnitSymbol,
  sourceSymbol,
  switchSymbol,
} from '../diagram/one-line-symbols.js'

const SIZE = TYPE_PT.small
/** From words over a row to its wire, and from there to the next row, points. */
const ABOVE_WIRE_PT = 22
export const BELOW_WIRE_PT = 16
/** Share of the width that words over a wire take where nothing comes down beside them. */
const FREE_SHARE = 0.6

/** Height of one row of the diagram, points: that of its text, or at least enough for the symbols. */
export function rowHeightPt(source: OneLineSource, widthPt: number, places: Places, withConnection: boolean): number {
  const words = sourceTextHeight(source, wordsPt(source, widthPt, places, withConnection))
  return places.stacked ? words + ABOVE_WIRE_PT + BELOW_WIRE_PT : Math.max(42, words + 12)
}

/** Width of the words of a row: up to its modules, or up to the ground that comes down from its junction box where one does. */
function wordsPt({ unit }: OneLineSource, widthPt: number, places: Places, withConnection: boolean): number {
  if (!places.stacked) return widthPt * places.symbol - 12
  if (!withConnection && unit === undefined) return widthPt * FREE_SHARE
  return widthPt * (unit === undefined ? places.acJunction : places.dcJunction) - 20
}

function sourceTextHeight(source: OneLineSource, width: number): number {
  const title = wrapText(source.title, TYPE_PT.text, 'bold', width)
  const lines = source.lines.flatMap((each) => wrapText(each, SIZE, 'plain', width))
  return blockHeightPt(title.length, TYPE_PT.text) + lines.length * SIZE * 1.22 + 2
}

/** One row: modules with what hangs on them, junction box and the wire to the collector. */
export function drawSource(job: DiagramJob, source: OneLineSource, y: number, groundY: number): Primitive[] {
  const { box, places } = job
  const width = wordsPt(source, box.width, places, job.withConnection)
  const symbolX = box.x + box.width * places.symbol
  const micro = source.unit === undefined
  const { device } = source
  const start = symbolX + (micro ? 54 : device === undefined ? 26 : 50)
  const title = wrapText(source.title, TYPE_PT.text, 'bold', width)
  const height = sourceTextHeight(source, width)
  const top = y - (places.stacked ? height + ABOVE_WIRE_PT : height / 2)
  const left = box.x + (places.stacked ? 12 : 0)
  const tags = tagsOf(job, source.circuit.id)
  const [array, onward] = [tags.filter((tag) => tag.inArray), tags.filter((tag) => !tag.inArray)]
  const end = box.x + box.width * (micro ? places.combiner : places.inverter)
  const outside = micro
    ? undefined
    : Object.entries(job.input.project.electrical?.disconnects ?? {}).find(([, each]) => each.kind === 'dc')
  const switchX = end - 28
  const tagsEnd = outside === undefined ? end - (micro ? 26 : 6) : switchX - 18
  const usualX = box.x + box.width * (micro ? places.acJunction : places.dcJunction)
  const junctionX = Math.max(Math.min(usualX, tagsEnd - 8 - onwardPt(job, micro)), start + (array.length > 0 ? 30 : 12))
  return [
    label(left, top, title.join('\n'), { face: 'bold' }),
    label(left, top + blockHeightPt(title.length, TYPE_PT.text) + 2, source.lines.join('\n'), {
      sizePt: SIZE,
      maxWidthPt: width,
    }),
    line(start, y, end, y, { pen: 'medium' }),
    ...sourceSymbol(symbolX, y),
    ...(micro ? [line(symbolX + 26, y, symbolX + 32, y, { pen: 'medium' }), ...inverterSymbol(symbolX + 33, y)] : []),
    ...(device === undefined
      ? []
      : [line(symbolX + 26, y, start, y, { pen: 'medium' }), ...DEVICE[device](symbolX + 32, y)]),
    ...(source.shutdown === 'modules'
      ? [label(symbolX + (micro ? 43 : 41), y - 12, 'RS', { sizePt: SIZE, align: 'center', valign: 'bottom' })]
      : []),
    ...junctionBox(junctionX, y),
    ...spread(array, start + 4, junctionX - 8, y),
    ...spread(onward, junctionX + 8, tagsEnd, y),
    ...(outside === undefined ? [] : dcSwitch(switchX, y, outside, job.labels('dc_disconnect'))),
    ...(job.withConnection ? [line(junctionX, y + 7, junctionX, groundY, { pen: 'hair', dash: 'dashed' })] : []),
  ]
}

/** Tags on the wire of a circuit; what leaves a DC combiner is marked on the wire of its first string. */
function tagsOf({ wiring, tags }: DiagramJob, id: string): WireTag[] {
  const onWire = [id, ...combinersOf(wiring, id)]
  return tags.filter(({ circuits }) => circuits.some((each) => onWire.includes(each)))
}

/** Room for the tags behind the junction box where several of them share one box; the same in each row. */
function onwardPt(job: DiagramJob, micro: boolean): number {
  const rows = job.wiring.circuits.filter(({ kind }) => kind === (micro ? 'ac_branch' : 'dc_string'))
  return Math.max(0, ...rows.map(({ id }) => sharedPt(tagsOf(job, id).filter(({ inArray }) => !inArray))))
}

const DEVICE = { converter: converterSymbol, 'shutdown unit': shutdownUnitSymbol } as const

/** DC combiners whose first string is a circuit. */
const combinersOf = ({ dc_combiners: combiners = [] }: WiringValues, id: string): string[] =>
  combiners.filter(({ strings }) => strings[0] === id).map((each) => each.id)

function dcSwitch(x: number, y: number, [id, stated]: readonly [string, Disconnect], marks: string): Primitive[] {
  const rating = stated.rating_a === undefined ? '' : ` ${stated.rating_a} A`
  const fused = stated.fused === true
  const right = x + (fused ? 22 : 16)
  return [
    { kind: 'rectangle', x: x - 16, y: y - 12, width: right - x + 16, height: 20, pen: 'medium', fill: 'white' },
    line(x - 16, y, right, y, { pen: 'medium' }),
    // Modules are live while there is light.
    ...(fused ? fusedSwitchSymbol(x, y, 'left') : switchSymbol(x, y, 'left')),
    label(right, y + 10, marks, { sizePt: SIZE, align: 'right' }),
    label(x + 16, y - 14, `DC ${id.replaceAll('_', ' ')}${rating}`, { sizePt: SIZE, align: 'right', valign: 'bottom' }),
  ]
}
