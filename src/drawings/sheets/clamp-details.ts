import { inches } from '../layout/index.js'
import { onLayer, xy, type Primitive, type XY } from '../model/index.js'
import type { AttachmentFacts } from './attachment-facts.js'
import type { Detail } from './attachment-section.js'
import { feetOf } from '../../values/index.js'

const RAIL_IN = 1.6
const ft = (x: number, y: number): XY => xy(feetOf(x), feetOf(y))
const box = (
  x: number,
  y: number,
  width: number,
  height: number,
  look: Partial<Primitive & { kind: 'path' }> = {},
): Primitive => ({
  kind: 'path',
  points: [ft(x, y), ft(x + width, y), ft(x + width, y + height), ft(x, y + height)],
  closed: true,
  pen: 'medium',
  ...look,
})

function frameEnd(x: number, width: number, high: number): Primitive[] {
  return onLayer('module', [
    box(x, 0, width, high, { fill: 'light' }),
    { kind: 'path', points: [ft(x, high - 0.3), ft(x + width, high - 0.3)], pen: 'hair' },
  ])
}

/** Two modules side by side with the clamp between them, looking up the slope. */
export function midClamp(facts: AttachmentFacts): Detail {
  const high = facts.moduleIn
  const gap = facts.gapIn ?? 0.5
  const wide = 4
  return {
    primitives: [
      box(-gap / 2 - wide, -RAIL_IN, 2 * wide + gap, RAIL_IN, { fill: 'white', layer: 'rail' }),
      {
        kind: 'path',
        points: [ft(-gap / 2 - wide, -RAIL_IN * 0.35), ft(gap / 2 + wide, -RAIL_IN * 0.35)],
        pen: 'hair',
        layer: 'rail',
      },
      ...frameEnd(-gap / 2 - wide, wide, high),
      ...frameEnd(gap / 2, wide, high),
      box(-0.13, -RAIL_IN * 0.6, 0.26, high + RAIL_IN * 0.6, { pen: 'thin', fill: 'white' }),
      box(-gap / 2 - 0.35, high, gap + 0.7, 0.16, { fill: 'mid' }),
      box(-0.25, high + 0.16, 0.5, 0.25, { pen: 'thin', fill: 'mid' }),
      ...(facts.gapIn === undefined
        ? []
        : [
            {
              kind: 'dimension',
              from: ft(-gap / 2, high),
              to: ft(gap / 2, high),
              offsetPt: 30,
              text: inches(gap),
            } as const,
          ]),
    ],
    notes: [
      { at: xy(0.3, high + 0.08), text: 'Clamp between two modules, listed for this rail and this frame' },
      { at: xy(wide * 0.8, high * 0.5), text: 'Module frame' },
      { at: xy(wide * 0.8, -RAIL_IN * 0.6), text: 'Rail' },
    ],
    low: xy(-gap / 2 - wide, -RAIL_IN),
    high: xy(gap / 2 + wide, high + 0.5),
  }
}

/** The end of a rail with the clamp at the last module. */
export function endClamp(facts: AttachmentFacts): Detail {
  const high = facts.moduleIn
  const past = facts.rail.end_allowance_in
  const end = past ?? 1.5
  const wide = 5
  return {
    primitives: [
      box(-wide, -RAIL_IN, wide + end, RAIL_IN, { fill: 'white', layer: 'rail' }),
      { kind: 'path', points: [ft(-wide, -RAIL_IN * 0.35), ft(end, -RAIL_IN * 0.35)], pen: 'hair', layer: 'rail' },
      ...frameEnd(-wide, wide, high),
      box(0, 0, 0.14, high, { pen: 'thin', fill: 'mid' }),
      box(-0.35, high, 0.95, 0.16, { fill: 'mid' }),
      box(0.25, -RAIL_IN * 0.6, 0.26, high + RAIL_IN * 0.6, { pen: 'thin', fill: 'white' }),
      box(0.13, high + 0.16, 0.5, 0.25, { pen: 'thin', fill: 'mid' }),
      ...(past === undefined
        ? []
        : [
            {
              kind: 'dimension',
              from: ft(0, -RAIL_IN),
              to: ft(end, -RAIL_IN),
              offsetPt: -16,
              text: inches(past),
            } as const,
          ]),
    ],
    notes: [
      { at: xy(0.5, high + 0.08), text: 'Clamp at the end of a row' },
      { at: xy(-wide * 0.2, high * 0.5), text: 'Module frame; clamps within the zones of its sheet' },
      { at: xy(end * 0.8, -RAIL_IN * 0.6), text: 'Rail past the last frame' },
    ],
    low: xy(-wide, -RAIL_IN),
    high: xy(end, high + 0.5),
  }
}
