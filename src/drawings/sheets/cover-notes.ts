import type { PacketInput } from '../inputs.js'
import { label, line, TYPE_PT, type Block } from '../layout/index.js'
import { onLayer, xy, type Primitive } from '../model/index.js'

export function generalNotes(input: PacketInput): string[] {
  const edition = input.project.codes?.electrical ?? 'the adopted electrical code'
  return [
    `All work follows ${edition}, the codes named on this sheet and the local amendments; the authority having jurisdiction decides.`,
    'Equipment is listed for its use and installed as its instructions and listing say.',
    'Breakers that are backfed are suitable for it and carry no LINE or LOAD mark.',
    'Metal parts of modules, rails, boxes and raceways are bonded; fittings outdoors are rain-tight.',
    'Raceways on the roof stand clear of its surface as the conductor schedule says, and keep the fire access pathways free.',
    'Penetrations are flashed and sealed; cut roofing is made good.',
    'Work at height is secured against falls. Modules make voltage whenever there is light on them, and the line side of the main breaker stays live with the main off.',
    'A licensed electrician makes or checks the final connection where the law asks for it.',
    ...(input.documents.length === 0
      ? []
      : ['Data sheets of the makers follow the drawings, each page with its sheet number.']),
  ]
}

export function legend(): Block {
  const rows: readonly (readonly [string, (x: number, y: number) => Primitive])[] = [
    ['Outline, wire', (x, y) => line(x, y, x + 30, y, { pen: 'medium' })],
    ['Cut or main outline', (x, y) => line(x, y, x + 30, y, { pen: 'heavy' })],
    ['Raceway on a plan', (x, y) => line(x, y, x + 30, y, { pen: 'heavy', dash: 'dashed' })],
    ['Equipment ground on the diagram', (x, y) => line(x, y, x + 30, y, { pen: 'thin', dash: 'dashed' })],
    ['Centre line, lot line', (x, y) => line(x, y, x + 30, y, { pen: 'thin', dash: 'center' })],
    [
      'Number of a conductor or raceway',
      (x, y) => ({ kind: 'circle', center: xy(x + 15, y), radiusPt: 5, pen: 'thin' }),
    ],
  ]
  return {
    kind: 'figure',
    heightPt: rows.length * 13,
    draw: (x, y, width) =>
      onLayer(
        'legend',
        rows.flatMap(([text, draw], index) => [
          draw(x, y + 6 + index * 13),
          label(x + 38, y + 6 + index * 13, text, { sizePt: TYPE_PT.small, valign: 'middle', maxWidthPt: width - 38 }),
        ]),
      ),
  }
}

export function approval(): Block[] {
  return [
    { kind: 'heading', text: 'For the authority having jurisdiction' },
    {
      kind: 'figure',
      heightPt: 120,
      draw: (x, y, width) => [
        { kind: 'rectangle', x, y, width, height: 118, pen: 'medium' },
        label(x + 5, y + 5, 'APPROVAL', { sizePt: TYPE_PT.small, face: 'bold', color: 'grey' }),
      ],
    },
  ]
}
