import { inches } from '../layout/index.js'
import { onLayer, xy, type Primitive, type XY } from '../model/index.js'
import type { AttachmentFacts } from './attachment-facts.js'
import { feetOf } from '../../values/index.js'
import { sectionNotes, type DetailNote, lagOf, SEAM_IN, CLAMP_HALF_IN } from './attachment-notes.js'

export interface Detail {
  /** In feet, as every viewport. */
  readonly primitives: readonly Primitive[]
  readonly notes: readonly DetailNote[]
  /** Least and greatest coordinates, in. */
  readonly low: XY
  readonly high: XY
}

const HALF_WIDTH_IN = 8
/** Height of the rail as drawn when there is room, in; its sheet, not this drawing, gives its profile. */
const RAIL_IN = 1.6

const ft = (x: number, y: number): XY => xy(feetOf(x), feetOf(y))
const box = (
  x: number,
  y: number,
  width: number,
  height: number,
  look: Partial<Primitive & { kind: 'path' }>,
): Primitive => ({
  kind: 'path',
  points: [ft(x, y), ft(x + width, y), ft(x + width, y + height), ft(x, y + height)],
  closed: true,
  pen: 'thin',
  ...look,
})

/** Section across a rafter at a mount, looking up the slope; the top of the rafter is at height 0. */
export function attachmentSection(facts: AttachmentFacts): Detail {
  const { breadthIn, depthIn, sheathingIn, coveringIn, baseIn, standoffIn, moduleIn, mount } = facts
  const roof = sheathingIn + coveringIn
  const frame = roof + standoffIn
  const railHigh = Math.min(RAIL_IN, Math.max(0.6, standoffIn - baseIn - 0.5))
  const lag = lagOf(mount)
  const seam = mount.kind === 'standing_seam_clamp'
  const head = roof + baseIn
  const lift = seam ? SEAM_IN * 0.3 : baseIn
  const tip = lag === undefined ? 0 : head - lag.length_in
  const lagHalf = lag === undefined ? 0.15 : sizeOf(lag.size) / 2
  const half = HALF_WIDTH_IN
  const thread = facts.threadInRafterIn
  const primitives: Primitive[] = [
    box(-breadthIn / 2, -depthIn, breadthIn, depthIn, {
      pen: 'heavy',
      hatch: { angleDeg: 60, gapPt: 7 },
      layer: 'rafter',
    }),
    box(-half, 0, 2 * half, sheathingIn, { pen: 'medium', hatch: { angleDeg: 30, gapPt: 5 } }),
    box(-half, sheathingIn, 2 * half, coveringIn, { pen: 'medium', fill: 'mid' }),
    ...breaks(half, roof),
    ...(seam ? onLayer('mount', seamWithClamp(roof)) : [flashing(roof, baseIn)]),
    ...(seam ? [] : [box(-1.6, roof, 3.2, Math.max(0.12, baseIn), { pen: 'medium', fill: 'light', layer: 'mount' })]),
    box(seam ? CLAMP_HALF_IN : 1.1, roof + lift, 0.28, frame - roof - lift - railHigh * 0.25, {
      pen: 'medium',
      fill: 'light',
      layer: 'mount',
    }),
    box(-half, frame - railHigh, 2 * half, railHigh, { pen: 'medium', fill: 'white', layer: 'rail' }),
    {
      kind: 'path',
      points: [ft(-half, frame - railHigh * 0.35), ft(half, frame - railHigh * 0.35)],
      pen: 'hair',
      layer: 'rail',
    },
    box(-half, frame, 2 * half, moduleIn, { pen: 'medium', fill: 'light', layer: 'module' }),
    {
      kind: 'path',
      points: [ft(-half, frame + moduleIn - 0.25), ft(half, frame + moduleIn - 0.25)],
      pen: 'hair',
      layer: 'module',
    },
    box(0.75, frame - railHigh * 0.78, 1, railHigh * 0.4, { pen: 'thin', fill: 'mid', layer: 'mount' }),
    ...onLayer('mount', holder(facts, { lagHalf, head, tip, roof })),
    dimension([-half, frame], [-half, roof], -14, inches(standoffIn)),
    dimension([-half, frame + moduleIn], [-half, frame], -14, inches(moduleIn)),
    dimension([-breadthIn / 2, 0], [-breadthIn / 2, -depthIn], -34, inches(depthIn)),
    dimension([-breadthIn / 2, -depthIn], [breadthIn / 2, -depthIn], -14, inches(breadthIn)),
    ...(thread === undefined || lag === undefined
      ? []
      : [dimension([breadthIn / 2, 0], [breadthIn / 2, -thread], 16, `${inches(thread)} of thread`)]),
  ]
  return {
    primitives,
    notes: sectionNotes(facts, { roof, frame, railHigh, head, tip }),
    low: xy(-half, -depthIn),
    high: xy(half, frame + moduleIn),
  }
}

/** A seam with the clamp on its upper part. */
function seamWithClamp(roof: number): Primitive[] {
  return [
    box(-CLAMP_HALF_IN, roof + SEAM_IN * 0.3, 2 * CLAMP_HALF_IN, SEAM_IN, { pen: 'medium', fill: 'light' }),
    box(-0.1, roof, 0.2, SEAM_IN, { pen: 'medium', fill: 'mid' }),
  ]
}

function flashing(roof: number, baseIn: number): Primitive {
  return box(-5, roof, 10, Math.max(0.08, baseIn * 0.4), { pen: 'medium', fill: 'white' })
}

/** What holds the mount: screws in the rafter, screws in the sheathing, or nothing that goes through the roof. */
function holder(
  { mount, sheathingIn }: AttachmentFacts,
  at: { readonly lagHalf: number; readonly head: number; readonly tip: number; readonly roof: number },
): Primitive[] {
  if (mount.kind === 'standing_seam_clamp') return []
  if (mount.kind === 'deck') return [-1.2, 1.2].flatMap((x) => [shank(x, at.head, at.roof - at.head - sheathingIn)])
  return screw(at.lagHalf, at.head, at.tip)
}

/** A wood screw through the sheathing, beside the middle. */
function shank(x: number, head: number, length: number): Primitive {
  return { kind: 'path', points: [ft(x, head), ft(x, head + length - 0.2)], pen: 'medium' }
}

type Inches2 = readonly [x: number, y: number]

function dimension(from: Inches2, to: Inches2, offsetPt: number, text: string): Primitive {
  return { kind: 'dimension', from: ft(...from), to: ft(...to), offsetPt, text }
}

function sizeOf(size: string): number {
  const [over = '1', under = '1'] = size.split('/')
  return Number(over) / Number(under)
}

function breaks(half: number, roof: number): Primitive[] {
  return [-half, half].map((x): Primitive => ({
    kind: 'path',
    points: [
      ft(x, -0.6),
      ft(x, roof * 0.3),
      ft(x - 0.25, roof * 0.45),
      ft(x + 0.25, roof * 0.6),
      ft(x, roof * 0.75),
      ft(x, roof + 0.5),
    ],
    pen: 'hair',
  }))
}

function screw(half: number, head: number, tip: number): Primitive[] {
  const threads = Array.from({ length: Math.max(0, Math.floor((head - tip) / 0.28) - 2) }, (_, index): Primitive => {
    const y = tip + 0.35 + index * 0.28
    return { kind: 'path', points: [ft(-half * 1.3, y), ft(half * 1.3, y + 0.1)], pen: 'hair' }
  })
  return [
    {
      kind: 'path',
      points: [ft(-half, head), ft(half, head), ft(half, tip + 0.3), ft(0, tip), ft(-half, tip + 0.3)],
      closed: true,
      pen: 'thin',
      fill: 'white',
    },
    ...threads,
    box(-half * 2, head, half * 4, 0.22, { pen: 'thin', fill: 'mid' }),
  ]
}
