import { label, line, TYPE_PT } from '../layout/index.js'
import { blockHeightPt, wrapText, type Primitive, inCapitals } from '../model/index.js'
import { bondingOf, neutralBar } from '../diagram/bonding.js'
import { type DiagramJob, type Output } from './one-line-job.js'
import { breakerSymbol, namedBox } from '../diagram/one-line-symbols.js'
import { lettered } from '../diagram/wire-tags.js'
import { torqueWords } from '../diagram/torque-words.js'
import { serviceWords } from '../diagram/service-words.js'

export const SIZE = TYPE_PT.small

export function panel(
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
    label(x, top - 23, inCapitals(name), { face: 'bold', valign: 'bottom', maxWidthPt: 120 }),
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
export function panelFacts({ input, wiring, labels }: DiagramJob, supply: boolean): string[] {
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

export function utilityText({ input }: DiagramJob): string {
  return `TO ${input.project.parties?.utility?.name ?? 'the utility'}`
}

/** Height of the utility's name beside the meter, whose room begins at the right side of the panel. */
function utilityHeight(job: DiagramJob, fromX: number): number {
  const widthPt = job.box.x + job.box.width - fromX - 10
  return blockHeightPt(wrapText(utilityText(job), SIZE, 'plain', widthPt).length, SIZE)
}
