import { inches } from '../layout/index.js'
import { onLayer, xy, type Primitive, type XY } from '../model/index.js'
import type { Framing, Mount } from '../../project/index.js'
import type { AttachmentFacts } from './attachment-facts.js'
import { feetOf } from '../../values/index.js'

/** A note at a point of the detail, in. */
export interface DetailNote {
  readonly at: XY
  readonly text: string
}

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

/** Lag screws of a mount that they hold. */
function lagOf({ kind, lag }: Mount): Mount['lag'] {
  return kind === 'standing_seam_clamp' || kind === 'deck' ? undefined : lag
}

/** Height of a seam as drawn, in; the roof, not this drawing, gives its profile. */
const SEAM_IN = 1.2

/** Half the width of a clamp as drawn, in; its sheet gives its shape. */
const CLAMP_HALF_IN = 0.6

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

interface Heights {
  readonly roof: number
  readonly frame: number
  readonly railHigh: number
  readonly head: number
  readonly tip: number
}

/** How water is kept out at a mount of this kind. */
function waterNote({ kind, deck }: Mount, roof: number): DetailNote {
  if (kind === 'standing_seam_clamp') {
    return {
      at: xy(0.1, roof + SEAM_IN * 0.8),
      text: 'Seam of the panels; the clamp holds it with setscrews and makes no hole',
    }
  }
  if (kind === 'tile_hook')
    return { at: xy(4.6, roof + 0.05), text: 'Hook between tiles; underlay sealed round its base' }
  if (kind === 'deck') {
    return {
      at: xy(1.2, roof - 0.1),
      text: `${deck?.screws ?? ''} wood screws ${deck?.screw_size ?? ''} in the sheathing, base sealed as its sheet shows`,
    }
  }
  return { at: xy(4.6, roof + 0.05), text: 'Flashing, its upper edge under the course above, sealed at the hole' }
}

function mountTip({ mount, baseIn }: AttachmentFacts, roof: number): XY {
  return mount.kind === 'standing_seam_clamp' ? xy(CLAMP_HALF_IN * 0.7, roof + SEAM_IN) : xy(1.3, roof + baseIn + 0.7)
}

function rafterWord({ kind }: Mount, framing: Framing): string {
  const member = framing.kind === 'truss' ? 'Top chord of a truss' : 'Rafter'
  return kind === 'standing_seam_clamp' || kind === 'deck' ? `${member}, not under each mount,` : member
}

function sectionNotes(facts: AttachmentFacts, at: Heights): DetailNote[] {
  const { framing, mount, rail, module, sheathingIn, coveringIn } = facts
  const lag = lagOf(mount)
  const spacing = framing.spacing_in === undefined ? '' : ` at ${inches(framing.spacing_in)} on centre`
  const species = [framing.species, framing.grade].filter((each) => each !== undefined).join(', ')
  const hole = lag?.lead_hole_in === undefined ? '' : `, lead hole ${inches(lag.lead_hole_in)}`
  return [
    {
      at: xy(6.5, at.frame + facts.moduleIn / 2),
      text: `Module ${module.name ?? ''}, frame ${inches(facts.moduleIn)} high`,
    },
    { at: xy(6.2, at.frame - at.railHigh / 2), text: `Rail ${rail.name ?? facts.railId}; profile by its maker` },
    { at: xy(1.25, at.frame - at.railHigh * 0.6), text: 'Bolt of the rail maker, tightened as its sheet says' },
    { at: mountTip(facts, at.roof), text: `Mount ${mount.name ?? facts.mountId}` },
    waterNote(mount, at.roof),
    {
      at: xy(7, sheathingIn + coveringIn / 2),
      text: `${(framing.covering ?? 'roof covering').replaceAll('_', ' ')}, ${inches(coveringIn)}`,
    },
    { at: xy(7, sheathingIn / 2), text: `Sheathing ${inches(sheathingIn)}` },
    ...(lag === undefined
      ? []
      : [
          {
            at: xy(0.05, at.tip + 0.6),
            text: `${lag.count} lag screw ${lag.size} x ${inches(lag.length_in)} in the middle of the rafter${hole}`,
          },
        ]),
    {
      at: xy(facts.breadthIn / 4, -facts.depthIn * 0.85),
      text: `${rafterWord(mount, framing)} ${framing.nominal_size ?? ''}${spacing}${species === '' ? '' : `, ${species}`}`,
    },
  ]
}
