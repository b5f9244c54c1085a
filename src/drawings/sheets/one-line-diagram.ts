import type { WiringValues } from '../../electrical/index.js'
import type { Disconnect } from '../../project/index.js'
import { label, line, plainNumber, polyline, TYPE_PT } from '../layout/index.js'
import { blockHeightPt, wrapText, xy, type Primitive } from '../model/index.js'
import { own } from '../../values/index.js'
import { drawConnection, drawGrounds, panelNoteDepthPt, supplyPanelPt } from './one-line-connection.js'
import { groundingDepthPt } from './one-line-grounding.js'
import { lowestWordPt, spread, type DiagramJob, type Output } from './one-line-job.js'
import type { Places } from './one-line-places.js'
import { drawShutdown } from './one-line-shutdown.js'
import type { OneLineSource } from './one-line-sources.js'
import {
  breakerSymbol,
  converterSymbol,
  fusedSwitchSymbol,
  inverterSymbol,
  namedBox,
  shutdownUnitSymbol,
  sourceSymbol,
  switchSymbol,
} from '../diagram/one-line-symbols.js'

const SIZE = TYPE_PT.small
/** Room above the first row, and least distance from the top to the first wire into the panel, points. */
const HEAD_PT = 26
const CONNECTION_PT = { load_side_breaker: 126, feeder_tap: 168, supply_side: 168 } as const
const LANDING_PT = 56
/** From words over a row to its wire, and from there to the next row, points. */
const ABOVE_WIRE_PT = 22
const BELOW_WIRE_PT = 16

/** Least distance from the top to the first wire: the short form draws its panel beside the rows. */
function connectionPt(job: DiagramJob): number {
  const { connection, distribution } = job.input.project.electrical ?? {}
  if (distribution === undefined && connection?.kind === 'supply_side')
    return Math.max(CONNECTION_PT.supply_side, supplyPanelPt(job) + 10)
  return distribution === undefined ? CONNECTION_PT[connection?.kind ?? 'load_side_breaker'] : LANDING_PT
}

/** Height of one row of the diagram, points: that of its text, or at least enough for the symbols. */
export function rowHeightPt(source: OneLineSource, widthPt: number, places: Places): number {
  const words = sourceTextHeight(source, wordsPt(source, widthPt, places))
  return places.stacked ? words + ABOVE_WIRE_PT + BELOW_WIRE_PT : Math.max(42, words + 12)
}

/** Width of the words of a row: up to its modules, or up to the ground that comes down from its junction box. */
function wordsPt({ unit }: OneLineSource, widthPt: number, places: Places): number {
  if (!places.stacked) return widthPt * places.symbol - 12
  return widthPt * (unit === undefined ? places.acJunction : places.dcJunction) - 20
}

function sourceTextHeight(source: OneLineSource, width: number): number {
  const title = wrapText(source.title, TYPE_PT.text, 'bold', width)
  const lines = source.lines.flatMap((each) => wrapText(each, SIZE, 'plain', width))
  return blockHeightPt(title.length, TYPE_PT.text) + lines.length * SIZE * 1.22 + 2
}

/** The rows of the diagram with their collector and, on the first sheet, the connection to the house; and how far down it goes. */
export function oneLineDiagram(
  job: DiagramJob,
  sources: readonly OneLineSource[],
): { readonly drawn: readonly Primitive[]; readonly bottom: number } {
  const { box, places } = job
  const heights = sources.map((source) => rowHeightPt(source, box.width, places) + job.spreadPt)
  const wireAt = (height: number): number => (places.stacked ? height - BELOW_WIRE_PT - job.spreadPt / 2 : height / 2)
  const rowsFrom = (top: number): { source: OneLineSource; y: number }[] =>
    sources.map((source, index) => ({
      source,
      y: top + heights.slice(0, index).reduce((sum, height) => sum + height, 0) + wireAt(heights[index] ?? 0),
    }))
  // The first wire must reach the panel below the breakers that are in it already.
  const first = Math.min(...gather(job, rowsFrom(box.y + HEAD_PT)).map((output) => output.y))
  const top = box.y + HEAD_PT + (job.withConnection ? Math.max(0, box.y + connectionPt(job) - first) : 0)
  const rows = rowsFrom(top)
  const bottom = top + heights.reduce((sum, height) => sum + height, 0)
  const outputs = gather(job, rows)
  const ys = outputs.map((output) => output.y)
  const centre = (Math.min(...ys) + Math.max(...ys)) / 2
  const connection = drawConnection(job, outputs, centre)
  const groundY = Math.max(
    lowestWordPt([...outputs.flatMap((output) => output.drawn), ...connection]) + 6,
    bottom + 14,
    centre + 96,
    Math.max(...ys) + (job.further > 0 ? 64 : 40),
    // The words under a combiner that goes on, or under a string inverter.
    lowest(rows) + (job.further > 0 || rows.some(({ source }) => source.unit !== undefined) ? 66 : 0),
  )
  const drawn = [
    ...rows.flatMap(({ source, y }) => drawSource(job, source, y, groundY)),
    ...outputs.flatMap((output) => output.drawn),
    ...connection,
    ...drawGrounds(job, outputs, centre, groundY),
    ...drawShutdown(job, rows, outputs),
  ]
  return {
    drawn,
    bottom: job.withConnection ? groundY + Math.max(34, groundingDepthPt(job), panelNoteDepthPt(job)) : bottom,
  }
}

function lowest(rows: readonly { readonly y: number }[]): number {
  return Math.max(...rows.map((row) => row.y))
}

function drawSource(job: DiagramJob, source: OneLineSource, y: number, groundY: number): Primitive[] {
  const { box, places } = job
  const width = wordsPt(source, box.width, places)
  const symbolX = box.x + box.width * places.symbol
  const micro = source.unit === undefined
  const { device } = source
  const start = symbolX + (micro ? 54 : device === undefined ? 26 : 50)
  const junctionX = Math.max(box.x + box.width * (micro ? places.acJunction : places.dcJunction), start + 30)
  const title = wrapText(source.title, TYPE_PT.text, 'bold', width)
  const height = sourceTextHeight(source, width)
  const top = y - (places.stacked ? height + ABOVE_WIRE_PT : height / 2)
  const left = box.x + (places.stacked ? 12 : 0)
  // What leaves a DC combiner is marked on the wire of its first string.
  const onWire = [source.circuit.id, ...combinersOf(job.wiring, source.circuit.id)]
  const tags = job.tags.filter((tag) => tag.circuits.some((id) => onWire.includes(id)))
  const [array, onward] = [tags.filter((tag) => tag.inArray), tags.filter((tag) => !tag.inArray)]
  const end = box.x + box.width * (micro ? places.combiner : places.inverter)
  const outside = micro
    ? undefined
    : Object.entries(job.input.project.electrical?.disconnects ?? {}).find(([, each]) => each.kind === 'dc')
  const switchX = end - 28
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
    { kind: 'rectangle', x: junctionX - 9, y: y - 7, width: 18, height: 14, pen: 'medium', fill: 'white' },
    label(junctionX, y, 'JB', { sizePt: SIZE, align: 'center', valign: 'middle' }),
    ...spread(array, start + 4, junctionX - 8, y),
    ...spread(onward, junctionX + 8, outside === undefined ? end - (micro ? 26 : 6) : switchX - 18, y),
    ...(outside === undefined ? [] : dcSwitch(switchX, y, outside, job.labels('dc_disconnect'))),
    ...(job.withConnection ? [line(junctionX, y + 7, junctionX, groundY, { pen: 'hair', dash: 'dashed' })] : []),
  ]
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

/** Brings the rows together: strings into their inverters, branches and inverter outputs into the combiner. */
function gather(job: DiagramJob, rows: readonly { readonly source: OneLineSource; readonly y: number }[]): Output[] {
  const { wiring } = job
  const sides = inverterOutputs(job, rows)
  const branches = rows
    .filter(({ source }) => source.unit === undefined)
    .map(({ source, y }): Output => ({
      circuitId: source.circuit.id,
      x: job.box.x + job.box.width * job.places.combiner,
      y,
      breakerA: source.circuit.breaker_a,
      drawn: [],
    }))
  const all = [...sides, ...branches]
  const combined = wiring.circuits.find((circuit) => circuit.kind === 'ac_combined_output')
  return combined === undefined || !job.withConnection ? all : [combiner(job, all, combined)]
}

function inverterOutputs(
  job: DiagramJob,
  rows: readonly { readonly source: OneLineSource; readonly y: number }[],
): Output[] {
  const { box, places, wiring, input } = job
  const units = [...new Set(rows.flatMap(({ source }) => source.unit ?? []))]
  const x = box.x + box.width * places.inverter
  const isCombined = wiring.combiner !== null || !places.stacked
  const end = box.x + box.width * (isCombined ? places.combiner : places.disconnect) - (isCombined ? 0 : 24)
  return units.map((unit) => {
    const ownRows = rows.filter(({ source }) => source.unit === unit)
    const ys = ownRows.map((row) => row.y)
    const [low, high] = [Math.min(...ys), Math.max(...ys)]
    const y = (low + high) / 2
    const id = own(input.project.inverter_units, unit)?.inverter ?? ''
    const inverter = own(input.project.equipment.inverters, id)
    const circuit = wiring.circuits.find((each) => each.id === unit)
    const tags = job.tags.filter((tag) => tag.circuits.includes(unit))
    const height = high - low + 40
    const ratings = `${inverter?.name ?? id}, ${inverter?.ac_power_w ?? '?'} W, ${plainNumber(circuit?.continuous_a ?? 0)} A at ${plainNumber(circuit?.voltage_v ?? 240, 0)} V${inverter?.dc_disconnect === true ? ', with DC disconnect' : ''}${inverterMarks(job)}`
    const withSwitch = inverter?.dc_disconnect === true
    const drawn: Primitive[] = [
      namedBox(x, y - height / 2, 66, height),
      ...inverterSymbol(x + 40, y),
      ...(ownRows.some(({ source }) => source.shutdown === 'inverter')
        ? [label(x + 50, y - 12, 'RS', { sizePt: SIZE, align: 'center', valign: 'bottom' })]
        : []),
      ...ownRows.flatMap((row, index) =>
        inverterInput(x, row.y, withSwitch, inputOf(job, row.source, index), Math.abs(row.y - y) < 14),
      ),
      label(x, y - height / 2 - 3, `INVERTER ${unit}`, { face: 'bold', valign: 'bottom' }),
      label(x, y + height / 2 + 3, ratings, {
        sizePt: SIZE,
        maxWidthPt: end - x - 8,
      }),
      line(x + 66, y, end, y, { pen: 'medium' }),
      ...spread(tags, x + 68, end - (isCombined ? 24 : 0), y),
    ]
    return { circuitId: unit, x: end, y, breakerA: circuit?.breaker_a ?? null, drawn }
  })
}

/** Labels of the inverter, and of the DC raceway and disconnect that lead to it. */
function inverterMarks({ labels, input }: DiagramJob): string {
  const outside = Object.values(input.project.electrical?.disconnects ?? {}).some(({ kind }) => kind === 'dc')
  const marks = [
    ['', labels('inverter')],
    ['DC raceway ', labels('dc_raceway')],
    ['DC disconnect ', outside ? '' : labels('dc_disconnect')],
  ]
  return marks.flatMap(([of = '', at = '']) => (at === '' ? [] : [`\n${of}${at}`])).join('')
}

/** One input of a string inverter: the switch that it may hold, and the number of the input. */
function inverterInput(x: number, y: number, withSwitch: boolean, input: number, beside: boolean): Primitive[] {
  return [
    line(x, y, x + 26, y, { pen: 'medium' }),
    ...(withSwitch ? switchSymbol(x + 13, y, 'left') : []),
    { kind: 'circle', center: xy(x + 26, y), radiusPt: 1.5, fill: 'black' },
    // Over the switch where the symbol of the inverter stands right of it.
    label(beside ? x + 4 : x + 30, beside ? y - 10 : y - 3, `in ${input}`, { sizePt: SIZE, valign: 'bottom' }),
  ]
}

function inputOf(job: DiagramJob, source: OneLineSource, index: number): number {
  const arrayId = Object.keys(source.circuit.modules)[0] ?? ''
  const at = Number(/_s(\d+)$/.exec(source.circuit.id)?.[1] ?? '1') - 1
  return own(job.input.project.arrays, arrayId)?.strings?.[at]?.input ?? index + 1
}

function combiner(job: DiagramJob, inputs: readonly Output[], combined: WiringValues['circuits'][number]): Output {
  const { box, places, wiring, input } = job
  const x = box.x + box.width * places.combiner
  const ys = inputs.map((each) => each.y)
  const [low, high] = [Math.min(...ys), Math.max(...ys)]
  const y = (low + high) / 2
  const busX = x + 26
  // Up to the disconnect.
  const wordsWidth = box.width * (places.disconnect - places.combiner) - 4
  const name = input.project.electrical?.combiner?.name ?? 'AC combiner'
  const ratings = wiring.combiner?.bus_a === null || wiring.combiner === null ? '' : `${wiring.combiner.bus_a} A bus`
  const maxWidthPt = Math.min(100, wordsWidth)
  const words = [ratings, `${plainNumber(combined.continuous_a)} A out`, job.labels('combiner')]
    .filter((each) => each !== '')
    .join(', ')
  const further = job.further === 0 ? [] : [`and ${job.further} further circuits, on the sheets that follow`]
  return {
    circuitId: combined.id,
    x: busX + 14,
    y,
    breakerA: combined.breaker_a,
    drawn: [
      ...inputs.flatMap((each) => each.drawn),
      namedBox(x - 24, low - 26, 64, high - low + 46),
      ...inputs.flatMap((each) => [
        line(each.x, each.y, busX, each.y, { pen: 'medium' }),
        ...breakerSymbol(x + 6, each.y),
        label(x + 6, each.y - 7, each.breakerA === null ? '' : `${each.breakerA} A`, {
          sizePt: SIZE,
          align: 'center',
          valign: 'bottom',
        }),
      ]),
      polyline(
        [
          [busX, low - 8],
          [busX, high + 10],
        ],
        { pen: 'heavy' },
      ),
      label(x - 24, low - 29, name.toUpperCase(), {
        face: 'bold',
        valign: 'bottom',
        maxWidthPt: Math.min(110, wordsWidth),
      }),
      label(x - 24, high + 23, words, { sizePt: SIZE, maxWidthPt }),
      ...further.map((text) =>
        label(x - 24, high + 24 + blockHeightPt(wrapText(words, SIZE, 'plain', maxWidthPt).length, SIZE), text, {
          sizePt: SIZE,
          maxWidthPt,
        }),
      ),
      line(busX, y, busX + 14, y, { pen: 'medium' }),
      { kind: 'circle', center: xy(busX, y), radiusPt: 1.6, fill: 'black' },
    ],
  }
}
