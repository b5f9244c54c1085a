import { inches } from '../layout/index.js'
import { xy, type XY } from '../model/index.js'
import type { Framing, Mount } from '../../project/index.js'
import type { AttachmentFacts } from './attachment-facts.js'

/** A note at a point of the detail, in. */
export interface DetailNote {
  readonly at: XY
  readonly text: string
}

/** Lag screws of a mount that they hold. */
export function lagOf({ kind, lag }: Mount): Mount['lag'] {
  return kind === 'standing_seam_clamp' || kind === 'deck' ? undefined : lag
}

/** Height of a seam as drawn, in; the roof, not this drawing, gives its profile. */
export const SEAM_IN = 1.2

/** Half the width of a clamp as drawn, in; its sheet gives its shape. */
export const CLAMP_HALF_IN = 0.6

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

export function sectionNotes(facts: AttachmentFacts, at: Heights): DetailNote[] {
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
