import { label, line, TYPE_PT } from '../layout/index.js'
import { blockHeightPt, onLayer, wrapText, type Primitive } from '../model/index.js'
import { bondingList, bondingOf } from '../diagram/bonding.js'
import type { DiagramJob } from './one-line-job.js'
import { earthSymbol, tagSymbol } from '../diagram/one-line-symbols.js'
import { awg } from '../diagram/wire-tags.js'

const SIZE = TYPE_PT.small

/** Grounds of the PV system to the electrode of the house, and what bonds the service. */
export function grounding(job: DiagramJob, y: number, leaves: { readonly x: number; readonly y: number }): Primitive[] {
  const { box, wiring } = job
  const end = leaves.x
  const { electrode, others } = bondingOf(wiring)
  const widthPt = box.x + box.width - end - 14
  const electrodeText = `array electrode: ${awg(wiring.grounding.electrode.size_awg ?? '')}`
  const words = ['existing grounding electrode system']
  if (wiring.grounding.electrode.size_awg !== null) words.push(electrodeText)
  return onLayer('ground', [
    ...groundLine(job, y, end),
    line(end, leaves.y, end, y, { pen: 'thin', dash: 'dashed' }),
    ...(electrode === undefined ? [] : tagSymbol(end, (leaves.y + y) / 2, electrode.tag)),
    ...earthSymbol(end, y),
    ...words.map((text, index) => label(end + 12, y + 6 + 18 * index, text, { sizePt: SIZE, maxWidthPt: widthPt })),
    ...bondingList(others, end + 12, bondingTop(job, y, end), widthPt).drawn,
  ])
}

/** The dashed line that the ground of every circuit comes down to, with what it is made of. */
export function groundLine({ box, places, wiring }: DiagramJob, y: number, end: number): Primitive[] {
  const { grounding: facts } = wiring
  const left = box.x + box.width * places.symbol + 12
  const size = facts.equipment.map((each) => awg(each.size_awg))
  const text = `Equipment grounding conductor with each circuit (${[...new Set(size)].join(', ') || 'see schedule'}); rails and frames bonded with ${awg(facts.array.size_awg)} ${facts.array.material}, unspliced along the array`
  const { array } = bondingOf(wiring)
  return onLayer('ground', [
    line(left, y, end, y, { pen: 'thin', dash: 'dashed' }),
    ...(array === undefined ? [] : tagSymbol(left + 7, y, array.tag)),
    label(left + 18, y + 4, text, { sizePt: SIZE, maxWidthPt: end - left - 38 }),
  ])
}

const bondingTop = (job: DiagramJob, y: number, endX: number): number => {
  const widthPt = job.box.x + job.box.width - endX - 14
  const lines = wrapText('existing grounding electrode system', SIZE, 'plain', widthPt).length
  return y + 8 + blockHeightPt(lines, SIZE) + (job.wiring.grounding.electrode.size_awg === null ? 0 : 18)
}

/** How far the words beside the electrode reach below the line of the grounds, points. */
export function groundingDepthPt(job: DiagramJob): number {
  if (!job.withConnection) return 0
  const { box, places, input } = job
  const end = box.x + box.width * places.panel + (input.project.electrical?.connection?.kind === 'supply_side' ? 7 : 32)
  const widthPt = box.x + box.width - end - 14
  return bondingTop(job, 0, end) + bondingList(bondingOf(job.wiring).others, 0, 0, widthPt).heightPt
}
