import type { CircuitValues } from '../../electrical/index.js'
import { label, line, polyline } from '../layout/index.js'
import { xy, type Primitive, inCapitals } from '../model/index.js'
import { drawDisconnect } from './one-line-disconnect.js'
import { grounding } from './one-line-grounding.js'
import { drawLanding, landingGround } from './one-line-landing.js'
import { lowestWordPt, spread, type DiagramJob, type Output } from './one-line-job.js'
import { meterSymbol, tagSymbol } from '../diagram/one-line-symbols.js'
import { awg, lettered } from '../diagram/wire-tags.js'
import { panel, panelFacts, utilityText, SIZE } from './one-line-panel.js'

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
  const name = inCapitals(input.project.electrical?.panel?.name ?? 'Main panel')
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
    label(edge, y + 14.5, utilityText(job), {
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
