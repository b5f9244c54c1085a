import { own } from '../../values/index.js'
import { label, line, plainNumber, TYPE_PT } from '../layout/index.js'
import { blockHeightPt, wrapText, xy, type Primitive } from '../model/index.js'
import { spread, type DiagramJob, type Output } from './one-line-job.js'
import type { OneLineSource } from './one-line-sources.js'
import { inverterSymbol, namedBox, switchSymbol } from '../diagram/one-line-symbols.js'

const SIZE = TYPE_PT.small

/** The string inverters with the rows that lead into each, and what comes out of them. */
export function inverterOutputs(
  job: DiagramJob,
  rows: readonly { readonly source: OneLineSource; readonly y: number }[],
): Output[] {
  const { wiring, input, box, places } = job
  const units = [...new Set(rows.flatMap(({ source }) => source.unit ?? []))]
  const x = box.x + box.width * places.inverter
  const { end, isCombined } = reachOf(job)
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
      label(x, y + height / 2 + 3, ratingWords(job, unit), { sizePt: SIZE, maxWidthPt: wordsWidthPt(job) }),
      line(x + 66, y, end, y, { pen: 'medium' }),
      ...spread(tags, x + 68, end - (isCombined ? 24 : 0), y),
    ]
    return { circuitId: unit, x: end, y, breakerA: circuit?.breaker_a ?? null, drawn }
  })
}

/** Where the output of an inverter ends: at the combiner, or short of the disconnect. */
function reachOf({ box, places, wiring }: DiagramJob): { readonly end: number; readonly isCombined: boolean } {
  const isCombined = wiring.combiner !== null || !places.stacked
  const end = box.x + box.width * (isCombined ? places.combiner : places.disconnect) - (isCombined ? 0 : 24)
  return { end, isCombined }
}

/** Half the height of an inverter on one row, and the height of its name, points. */
const HALF_PT = 20
const NAME_PT = 16

/** Width of the words under an inverter: up to the box of the combiner, or to the end of its wire. */
function wordsWidthPt(job: DiagramJob): number {
  const { box, places, wiring } = job
  return reachOf(job).end - box.x - box.width * places.inverter - (wiring.combiner === null ? 8 : 30)
}

/** Least distance from the last row of an inverter to the first of the next, for the words between them, points. */
export function inverterStepPt(job: DiagramJob, unit: string): number {
  const lines = wrapText(ratingWords(job, unit), SIZE, 'plain', wordsWidthPt(job)).length
  return 2 * HALF_PT + 3 + blockHeightPt(lines, SIZE) + NAME_PT
}

function ratingWords(job: DiagramJob, unit: string): string {
  const { input, wiring } = job
  const id = own(input.project.inverter_units, unit)?.inverter ?? ''
  const inverter = own(input.project.equipment.inverters, id)
  const circuit = wiring.circuits.find((each) => each.id === unit)
  return `${inverter?.name ?? id}, ${inverter?.ac_power_w ?? '?'} W, ${plainNumber(circuit?.continuous_a ?? 0)} A at ${plainNumber(circuit?.voltage_v ?? 240, 0)} V${inverter?.dc_disconnect === true ? ', with DC disconnect' : ''}${inverterMarks(job)}`
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
