import type { WiringValues } from '../../electrical/index.js'
import { panelPlace, placeTitle } from '../labels/label-places.js'
import type { LabelPlace, RequiredLabel } from '../labels/required-labels.js'
import { label, line, TYPE_PT, type Block } from '../layout/index.js'
import { inPart, onLayer, textWidthPt, xy, type Primitive, inCapitals } from '../model/index.js'
import { clipName } from '../tree/clip-name.js'

const NAMES: Readonly<Partial<Record<LabelPlace, string>>> = {
  meter: 'METER',
  main_panel: 'MAIN PANEL',
  pv_disconnect: 'PV DISCONNECT',
  combiner: 'AC COMBINER',
  inverter: 'INVERTER',
  dc_disconnect: 'DC DISCONNECT',
  dc_raceway: 'DC RACEWAY',
  shutdown_switch: 'SHUTDOWN SWITCH',
  storage_disconnect: 'STORAGE DISCONNECT',
  storage_shutdown: 'STORAGE SHUTDOWN',
}

/** The same where a name has no room beside the next one. */
const SHORT_NAMES: typeof NAMES = {
  pv_disconnect: 'PV DISC.',
  dc_disconnect: 'DC DISC.',
  shutdown_switch: 'RSD SWITCH',
  storage_disconnect: 'ESS DISC.',
  storage_shutdown: 'ESS SWITCH',
}

/** From the array to the panels, which follow from the last to the one at the service, and the meter. */
const ORDER: readonly LabelPlace[] = [
  'dc_raceway',
  'dc_disconnect',
  'inverter',
  'combiner',
  'pv_disconnect',
  'shutdown_switch',
  'storage_disconnect',
  'storage_shutdown',
  'main_panel',
]

const HEIGHT = 150

/** The wall with the equipment, not to scale, and the numbers of the labels at each piece. */
export function labelElevation(labels: readonly RequiredLabel[], wiring: WiringValues): Block {
  const fixed = ORDER.filter(
    (place) => (place === 'combiner' && wiring.combiner !== null) || labels.some((each) => each.places.includes(place)),
  )
  const panels = wiring.distribution
    .filter(({ kind }) => kind === 'panel')
    .map(panelPlace)
    .filter((place) => place !== 'main_panel' && labels.some((each) => each.places.includes(place)))
  const used: LabelPlace[] = [...fixed, ...panels.toReversed(), 'meter']
  const nameOf = (place: LabelPlace): string => NAMES[place] ?? inCapitals(placeTitle(place, wiring))
  return {
    kind: 'figure',
    heightPt: HEIGHT,
    draw: (x, y, width) => {
      const step = width / used.length
      const wallTop = y + 34
      const drawn: Primitive[] = [
        {
          kind: 'path',
          points: [xy(x, wallTop), xy(x + width * 0.12, y + 6), xy(x + width * 0.88, y + 6), xy(x + width, wallTop)],
          pen: 'medium',
        },
        {
          kind: 'rectangle',
          x: x + width * 0.2,
          y: y + 12,
          width: width * 0.45,
          height: 14,
          pen: 'thin',
          hatch: { angleDeg: 90, gapPt: 12 },
        },
        label(x + width * 0.67, y + 19, 'ARRAY', { sizePt: TYPE_PT.small, valign: 'middle' }),
        line(x, wallTop, x + width, wallTop, { pen: 'medium' }),
        line(x, y + HEIGHT - 8, x + width, y + HEIGHT - 8, { pen: 'heavy' }),
        label(x, y + HEIGHT - 5, 'From the array to the meter, not to scale; numbers are those of the labels.', {
          sizePt: TYPE_PT.small,
          maxWidthPt: width,
        }),
      ]
      for (const [index, place] of used.entries()) {
        const middle = x + (index + 0.5) * step
        drawn.push(
          ...piece(
            { place, name: nameOf(place) },
            middle,
            wallTop,
            step,
            labels.filter((each) => each.places.includes(place)).map((each) => each.number),
          ),
        )
      }
      const each = used.map((place) => {
        const numbers = labels.filter(({ places }) => places.includes(place)).map(({ number }) => number)
        return `${nameOf(place)} ${numbers.length === 0 ? 'none' : numbers.join(', ')}`
      })
      const says = `Wall with the equipment from the array to the meter, not to scale, with the numbers of the labels at each: ${each.join('; ')}.`
      return inPart({ kind: 'Figure', says }, onLayer('equipment', drawn))
    },
  }
}

function piece(
  { place, name }: { readonly place: LabelPlace; readonly name: string },
  middle: number,
  wallTop: number,
  step: number,
  numbers: readonly number[],
): Primitive[] {
  const top = wallTop + 38
  const shape: Primitive =
    place === 'meter'
      ? { kind: 'circle', center: xy(middle, top + 16), radiusPt: 13, pen: 'medium' }
      : place === 'dc_raceway'
        ? { kind: 'rectangle', x: middle - 3, y: wallTop, width: 6, height: 74, pen: 'medium' }
        : {
            kind: 'rectangle',
            x: middle - 14,
            y: top,
            width: 28,
            height: place === 'main_panel' || place.startsWith('panel:') ? 42 : 32,
            pen: 'medium',
          }
  const room = Math.max(1, Math.floor((step - 4) / 12))
  const rows = Math.ceil(numbers.length / room)
  const balloons = numbers.flatMap((number, index): Primitive[] => {
    const row = Math.floor(index / room)
    const inRow = Math.min(room, numbers.length - row * room)
    const cx = place === 'dc_raceway' ? middle + 12 : middle + ((index % room) - (inRow - 1) / 2) * 12.5
    const cy = top - 9 - (rows - 1 - row) * 12.5
    return onLayer<Primitive>('symbol', [
      { kind: 'circle', center: xy(cx, cy), radiusPt: 5.8, pen: 'thin', fill: 'white' },
      label(cx, cy, String(number), { sizePt: TYPE_PT.small, face: 'bold', align: 'center', valign: 'middle' }),
    ])
  })
  return [
    shape,
    ...balloons,
    label(middle, top + 46, pieceName(place, name, step - 4), {
      sizePt: TYPE_PT.small,
      align: 'center',
      maxWidthPt: step - 4,
    }),
  ]
}

/** The name in two lines at most; shortened where a word of it is wider than its room. */
function pieceName(place: LabelPlace, name: string, widthPt: number): string {
  const isWide = name.split(' ').some((word) => textWidthPt(word, TYPE_PT.small) > widthPt)
  return clipName(isWide ? (SHORT_NAMES[place] ?? name) : name, TYPE_PT.small, 'plain', widthPt)
}
