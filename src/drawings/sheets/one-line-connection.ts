import type { CircuitValues } from '../../electrical/index.js'
import { label, line, polyline, TYPE_PT } from '../layout/index.js'
import { blockHeightPt, wrapText, xy, type Primitive } from '../model/index.js'
import { drawDisconnect } from './one-line-disconnect.js'
import { bondingOf, neutralBar } from '../diagram/bonding.js'
import { grounding } from './one-line-grounding.js'
import { drawLanding, landingGround } from './one-line-landing.js'
import { lowestWordPt, spread, type DiagramJob, type Output } from './one-line-job.js'
import { breakerSymbol, meterSymbol, namedBox, tagSymbol } from '../diagram/one-line-symbols.js'
import { awg, lettered } from '../diagram/wire-tags.js'
import { torqueWords } from '../diagram/torque-words.js'
import { serviceWords } from '../diagram/service-words.js'

const SIZE = TYPE_PT.small

/** From the collected outputs over the disconnect to the panel, the meter and the utility. */
export function drawConnection(job: DiagramJob, outputs: readonly Output[], centre: number): Primitive[] {
  if (!job.withConnection) return offSheet(job, outputs)
  const { box, places, input } = job
  if (input.project.electrical?.distribution !== undefined) return drawLanding(job, outputs)
  const supply = input.project.electrical?.connection?.kind === 'supply_side'
  const panelX = box.x + box.width * places.panel
  const { top, low } = panelSpan(job, outputs, centre)
  return [
    ...outputs.flatMap((output) => wireToPanel(job, outputs, output, panelX)),
    ...drawDisconnect(job, outputs, box.x + box.width * places.disconnect, panelX),
    ...panel(job, outputs, { x: panelX, top, low, supply }),
    ...service(job, { x: panelX, top, supply, outputs }),
  ]
}

/** Heights of the wire of the service and of the lowest wire in the panel. */
function panelSpan({ box }: DiagramJob, outputs: readonly Output[], centre: number): { top: number; low: number } {
  const top = box.y + 40
  return { top, low: Math.max(centre, top + 96, ...outputs.map((each) => each.y)) }
}

/** The grounds below the diagram, and on a narrow sheet what is said of the panel. */
export function drawGrounds(job: DiagramJob, outputs: readonly Output[], centre: number, groundY: number): Primitive[] {
  if (!job.withConnection) return []
  const { box, places, input } = job
  if (input.project.electrical?.distribution !== undefined) return landingGround(job, groundY)
  const supply = input.project.electrical?.connection?.kind === 'supply_side'
  const panelX = box.x + box.width * places.panel
  const { top, low } = panelSpan(job, outputs, centre)
  return [
    ...grounding(job, groundY, supply ? { x: panelX + 7, y: top + 52 } : { x: panelX + 32, y: low + 16 }),
    ...panelNote(job, groundY),
  ]
}

/** Ratings of the panel under the line of the grounds; beside a narrow panel there is no room for them. */
function panelNote(job: DiagramJob, groundY: number): Primitive[] {
  const { box, places, input } = job
  if (!places.stacked || input.project.electrical?.distribution !== undefined) return []
  const supply = input.project.electrical?.connection?.kind === 'supply_side'
  const name = (input.project.electrical?.panel?.name ?? 'Main panel').toUpperCase()
  return [
    label(box.x + box.width * places.symbol + 30, groundY + 32, `${name}: ${panelFacts(job, supply).join(', ')}`, {
      sizePt: SIZE,
      maxWidthPt: box.width * (places.panel - places.symbol) - 40,
    }),
  ]
}

/** How far the ratings of the panel reach below the line of the grounds, points. */
export const panelNoteDepthPt = (job: DiagramJob): number => lowestWordPt(panelNote(job, 0))

/** A wire that goes on where the rest of the diagram is. */
function offSheet(job: DiagramJob, outputs: readonly Output[]): Primitive[] {
  return outputs.flatMap((output) => [
    line(output.x, output.y, output.x + 40, output.y, { pen: 'medium' }),
    {
      kind: 'path',
      points: [xy(output.x + 40, output.y - 4), xy(output.x + 48, output.y), xy(output.x + 40, output.y + 4)],
      closed: true,
      pen: 'thin',
      fill: 'black',
    } as const,
    label(
      output.x + 53,
      output.y,
      `${output.breakerA === null ? '' : `${output.breakerA} A BREAKER, `}${job.note ?? ''}`,
      { valign: 'middle', face: 'bold' },
    ),
  ])
}

function wireToPanel(job: DiagramJob, outputs: readonly Output[], output: Output, panelX: number): Primitive[] {
  const { box, places, tags, input } = job
  const supply = input.project.electrical?.connection?.kind === 'supply_side'
  const x = box.x + box.width * places.disconnect
  const own = output.circuitId === 'output' ? tags.filter((tag) => tag.circuits.includes('output')) : []
  // On the supply side the device is the end of the output circuit, and the conductors beyond it have a tag of their own.
  const before = supply ? own : own.slice(0, Math.ceil(own.length / 2))
  const tap = supplyTap(job)?.id ?? ''
  // Several outputs join ahead of one device, whose conductors are marked once.
  const first = outputs[0] === output
  const after = supply ? tags.filter((tag) => first && tag.circuits.includes(tap)) : own.slice(before.length)
  const last = supply ? box.x + box.width * places.tap : panelX + 8
  return [
    line(output.x, output.y, last, output.y, { pen: 'medium' }),
    ...spread(before, output.x + 2, x - 24, output.y),
    ...spread(after, x + 28, panelX, output.y),
  ]
}

/** The conductors ahead of the overcurrent device of a supply-side connection. */
const supplyTap = ({ wiring }: DiagramJob): CircuitValues | undefined =>
  wiring.circuits.find((circuit) => circuit.kind === 'ac_supply_tap')

function panel(
  job: DiagramJob,
  outputs: readonly Output[],
  at: { x: number; top: number; low: number; supply: boolean },
): Primitive[] {
  const { input, wiring } = job
  const { x, top, low, supply } = at
  const width = 64
  const busX = x + width / 2
  const bottom = supply ? Math.min(low, top + 76) - 24 : low + 16
  const name = input.project.electrical?.panel?.name ?? 'Main panel'
  const facts = panelFacts(job, supply).join('\n')
  const drawn: Primitive[] = [
    namedBox(x, top - 20, width, bottom - top + 20),
    label(x, top - 23, name.toUpperCase(), { face: 'bold', valign: 'bottom', maxWidthPt: 120 }),
    line(busX, top, busX, bottom - 8, { pen: 'heavy' }),
    line(busX, top, x + width + 6, top, { pen: 'medium' }),
    ...breakerSymbol(x + width - 14, top),
    label(x + width - 14, top - 7, wiring.panel.main_a === null ? '' : `${wiring.panel.main_a} A`, {
      sizePt: SIZE,
      align: 'center',
      valign: 'bottom',
    }),
    ...neutralBar(x + 41, top + 30, x + width, bondingOf(wiring).jumper?.tag),
    ...(job.places.stacked
      ? []
      : [
          supply
            ? label(x + 14, bottom + 4, facts, {
                sizePt: SIZE,
                maxWidthPt: supplyWordsPt(job),
              })
            : label(x + width + 5, top + 18 + utilityHeight(job, x + width), facts, {
                sizePt: SIZE,
                maxWidthPt: job.box.x + job.box.width - x - width - 8,
              }),
        ]),
  ]
  return [
    ...drawn,
    ...existingLoads(x, busX, top, bottom),
    ...(supply ? [] : outputs.flatMap((output) => outputBreaker(output, x, busX))),
  ]
}

/** Width of the words under the panel of a supply-side connection, points. */
const supplyWordsPt = ({ box, places }: DiagramJob): number => box.width * (places.tap - places.panel) - 20

/** How far below the top the words under the panel of a supply-side connection reach, points: its wire passes below them. */
export function supplyPanelPt(job: DiagramJob): number {
  if (job.places.stacked) return 96
  const lines = wrapText(panelFacts(job, true).join('\n'), SIZE, 'plain', supplyWordsPt(job)).length
  return 96 + blockHeightPt(lines, SIZE)
}

/** Ratings of the panel and of what feeds it. */
function panelFacts({ input, wiring, labels }: DiagramJob, supply: boolean): string[] {
  const { connection, service } = input.project.electrical ?? {}
  const atTheEnd = !supply && connection?.breaker_position === 'opposite_end'
  return [
    wiring.panel.bus_a === null ? '' : `${wiring.panel.bus_a} A bus`,
    wiring.panel.main_a === null ? '' : `${wiring.panel.main_a} A main breaker`,
    service?.rating_a === undefined ? '' : `service ${service.rating_a} A, ${serviceWords(service)}`,
    atTheEnd ? 'PV breaker at the end of the bus opposite the main' : '',
    lettered(wiring, 'S').length === 0 ? 'service conductors: size not stated' : '',
    wiring.fault_current === null ? '' : `${Math.round(wiring.fault_current.governs_a)} A fault current available`,
    input.project.electrical?.panel?.interrupting_rating_a === undefined
      ? ''
      : `breakers interrupt ${input.project.electrical.panel.interrupting_rating_a} A`,
    torqueWords(input.project.electrical?.panel?.terminal_torque_lb_in),
    labels('main_panel'),
  ].filter((each) => each !== '')
}

/** Breakers of the house on the left of the bus, as many as there is room for. */
function existingLoads(x: number, busX: number, top: number, bottom: number): Primitive[] {
  const breakers = [top + 20, top + 36].filter((y) => y < bottom - 14)
  return [
    ...breakers.flatMap((y) => [line(x + 6, y, busX, y, { pen: 'thin' }), ...breakerSymbol(x + 18, y)]),
    ...(bottom - 14 > top + 36
      ? [label(x - 4, top + 28, 'existing\nloads', { sizePt: SIZE, align: 'right', valign: 'middle' })]
      : []),
  ]
}

function outputBreaker({ y, breakerA }: Output, x: number, busX: number): Primitive[] {
  return [
    line(x + 8, y, busX, y, { pen: 'medium' }),
    ...breakerSymbol(x + 18, y),
    label(x + 35, y, breakerA === null ? 'PV' : `PV\n${breakerA} A`, { sizePt: SIZE, face: 'bold', valign: 'middle' }),
  ]
}

function utilityText({ input }: DiagramJob): string {
  return `TO ${input.project.parties?.utility?.name ?? 'the utility'}`
}

/** Height of the utility's name beside the meter, whose room begins at the right side of the panel. */
function utilityHeight(job: DiagramJob, fromX: number): number {
  const widthPt = job.box.x + job.box.width - fromX - 10
  return blockHeightPt(wrapText(utilityText(job), SIZE, 'plain', widthPt).length, SIZE)
}

function service(
  job: DiagramJob,
  at: { x: number; top: number; supply: boolean; outputs: readonly Output[] },
): Primitive[] {
  const { box, places } = job
  const meterX = box.x + box.width * places.meter
  const edge = box.x + box.width
  const y = at.top
  const tapX = box.x + box.width * places.tap
  const drawn: Primitive[] = [
    line(at.x + 70, y, edge - 8, y, { pen: 'medium' }),
    ...meterSymbol(meterX, y),
    ...lettered(job.wiring, 'S').flatMap(({ tag }) => tagSymbol((meterX + 11 + edge - 8) / 2, y, tag)),
    label(meterX, y - 23, job.labels('meter'), { sizePt: SIZE, align: 'center', valign: 'bottom' }),
    label(meterX, y - 14, 'METER', { sizePt: SIZE, face: 'bold', align: 'center', valign: 'bottom' }),
    {
      kind: 'path',
      points: [xy(edge - 8, y - 4), xy(edge, y), xy(edge - 8, y + 4)],
      closed: true,
      pen: 'thin',
      fill: 'black',
    },
    label(edge, y + 12, utilityText(job), {
      sizePt: SIZE,
      align: 'right',
      maxWidthPt: at.supply ? edge - tapX - 6 : edge - at.x - 74,
    }),
  ]
  if (!at.supply) return drawn
  const wire = supplyTap(job)?.segments[0]
  return [
    ...drawn,
    ...at.outputs.map((output) =>
      polyline(
        [
          [tapX, output.y],
          [tapX, y],
        ],
        { pen: 'medium' },
      ),
    ),
    { kind: 'circle', center: xy(tapX, y), radiusPt: 2, fill: 'black' },
    ...at.outputs.slice(0, 1).map((output) =>
      label(
        tapX + 5,
        output.y - 3,
        `supply-side connection${wire === undefined ? '' : `, ${awg(wire.size_awg)} ${wire.material === 'copper' ? 'Cu' : 'Al'} ${wire.insulation}`}`,
        {
          sizePt: SIZE,
          valign: 'bottom',
          maxWidthPt: edge - tapX - 6,
        },
      ),
    ),
  ]
}
