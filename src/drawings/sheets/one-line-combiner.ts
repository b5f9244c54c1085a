import type { WiringValues } from '../../electrical/index.js'
import { label, line, plainNumber, polyline, TYPE_PT } from '../layout/index.js'
import { blockHeightPt, wrapText, xy, inCapitals } from '../model/index.js'
import type { DiagramJob, Output } from './one-line-job.js'
import { breakerSymbol, namedBox } from '../diagram/one-line-symbols.js'

const SIZE = TYPE_PT.small

/** The AC combiner with a breaker for each output that it takes. */
export function combiner(
  job: DiagramJob,
  inputs: readonly Output[],
  combined: WiringValues['circuits'][number],
): Output {
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
      label(x - 24, low - 29, inCapitals(name), {
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
