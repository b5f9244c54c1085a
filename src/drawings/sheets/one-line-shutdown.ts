import { label, line, polyline, TYPE_PT } from '../layout/index.js'
import type { Primitive } from '../model/index.js'
import { boxedSwitch } from '../diagram/one-line-symbols.js'
import type { DiagramJob, Output } from './one-line-job.js'
import type { OneLineSource } from './one-line-sources.js'

const SIZE = TYPE_PT.small
const LOOK = { pen: 'thin', dash: 'hidden' } as const
/** From the top of the diagram to the control line that runs along it, points. */
const DOWN_PT = 10

interface Row {
  readonly source: OneLineSource
  readonly y: number
}

/**
 * The control line of the rapid shutdown, from what starts it to the equipment that it acts on; nothing where the project
 * states no shutdown.
 *
 * @source NEC 690.12 (2014 and later)
 */
export function drawShutdown(job: DiagramJob, rows: readonly Row[], outputs: readonly Output[]): Primitive[] {
  const { box, places, input, withConnection } = job
  const stated = input.project.electrical?.rapid_shutdown
  const initiator = stated?.initiator
  if (initiator === undefined) return []
  const y = box.y + DOWN_PT
  const starts = branches(job, rows)
  if (starts.length === 0) {
    const left = box.x + box.width * places.symbol
    return [
      label(left, y, 'rapid shutdown: no equipment listed for it is stated', { sizePt: SIZE, valign: 'middle' }),
      ...(withConnection && initiator === 'switch' ? endOf(job, outputs, initiator).drawn : []),
    ]
  }
  const left = Math.min(...starts.map(({ x }) => x))
  const right = Math.max(...starts.map(({ x }) => x))
  const transmitters = stated?.equipment?.transmitters
  const words = `rapid-shutdown control${transmitters === undefined ? '' : `, ${transmitters} transmitter${transmitters === 1 ? '' : 's'}`}`
  const drawn = starts.flatMap(({ x, ys, reach }) => [
    line(x, y, x, Math.max(...ys), LOOK),
    ...ys.map((each) => line(x, each, x + reach, each, LOOK)),
  ])
  if (!withConnection)
    return [
      ...drawn,
      line(left, y, right + 40, y, LOOK),
      label(right + 44, y, 'rapid-shutdown control, from sheet E-601', { sizePt: SIZE, valign: 'middle' }),
    ]
  const end = endOf(job, outputs, initiator)
  return [
    ...drawn,
    polyline([[left, y], [end.x, y], ...end.down], LOOK),
    label(left + 4, y - 2, words, { sizePt: SIZE, valign: 'bottom' }),
    ...end.drawn,
  ]
}

/** Vertical pieces of the control line, with the heights at which it reaches equipment. */
function branches({ box, places }: DiagramJob, rows: readonly Row[]): { x: number; ys: number[]; reach: number }[] {
  const atModules = rows.filter(({ source }) => source.shutdown === 'modules').map(({ y }) => y)
  const units = [...new Set(rows.flatMap(({ source }) => (source.shutdown === 'inverter' ? [source.unit] : [])))]
  const tops = units.map((unit) => Math.min(...rows.flatMap(({ source, y }) => (source.unit === unit ? [y] : []))) - 17)
  return [
    ...(atModules.length === 0 ? [] : [{ x: box.x + box.width * places.symbol - 6, ys: atModules, reach: 6 }]),
    ...(tops.length === 0 ? [] : [{ x: box.x + box.width * places.inverter - 6, ys: tops, reach: 6 }]),
  ]
}

interface End {
  readonly x: number
  /** Points after the level piece. */
  readonly down: readonly (readonly [number, number])[]
  readonly drawn: readonly Primitive[]
}

type Initiator = 'service_disconnect' | 'pv_disconnect' | 'switch'

/** Where the control line ends: at the disconnect or panel of the diagram, at a switch of its own, or in words. */
function endOf({ box, places, input, labels }: DiagramJob, outputs: readonly Output[], initiator: Initiator): End {
  const { electrical } = input.project
  const y = box.y + DOWN_PT
  const disconnectX = box.x + box.width * places.disconnect
  const drawnDisconnect =
    electrical?.connection?.kind === 'supply_side' ||
    Object.values(electrical?.disconnects ?? {}).some(({ kind }) => kind === 'pv_system')
  if (initiator === 'switch')
    return {
      x: disconnectX - 16,
      down: [],
      drawn: [
        ...boxedSwitch(disconnectX, y),
        label(
          disconnectX - 16,
          y + 9,
          [`${INITIATOR_WORDS}: SWITCH`, labels('shutdown_switch')].filter((each) => each !== '').join(', '),
          { sizePt: SIZE, face: 'bold', maxWidthPt: box.width * (places.panel - places.disconnect) + 8 },
        ),
      ],
    }
  if (initiator === 'pv_disconnect' && drawnDisconnect) {
    const top = Math.min(...outputs.map((each) => each.y)) - 12
    const [x, side] = [disconnectX - 28, disconnectX - 22]
    return {
      x,
      down: [
        [x, top],
        [side, top],
      ],
      drawn: [
        label(x + 4, y, `to ${INITIATOR_WORDS}`, {
          sizePt: SIZE,
          valign: 'middle',
          maxWidthPt: box.x + box.width * places.panel - x - 8,
        }),
      ],
    }
  }
  if (initiator === 'service_disconnect' && electrical?.distribution === undefined) {
    const [panelX, top] = [box.x + box.width * places.panel, box.y + 28]
    return {
      x: panelX - 8,
      down: [
        [panelX - 8, top],
        [panelX, top],
      ],
      drawn: [label(panelX - 12, y - 2, `to ${INITIATOR_WORDS}`, { sizePt: SIZE, align: 'right', valign: 'bottom' })],
    }
  }
  const what = initiator === 'service_disconnect' ? 'service disconnect' : 'PV breaker, which is the disconnect'
  return {
    x: disconnectX,
    down: [],
    drawn: [label(disconnectX + 4, y, `to ${INITIATOR_WORDS}: ${what}`, { sizePt: SIZE, valign: 'middle' })],
  }
}

const INITIATOR_WORDS = 'SHUTDOWN INITIATOR'
