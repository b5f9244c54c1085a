import type { LagSize, SidePlate } from '../../tables/nds/index.js'
import type { LagInRafter } from '../fasteners/index.js'
import type { Feet, Inches, PoundInches, Pounds, PoundsPerSquareFoot } from '../../values/index.js'

/** What the sheet of any mount allows, at allowable stress level. */
export interface SheetStrength {
  readonly upliftLb: Pounds
  readonly downLb: Pounds
  /** Along the slope; undefined when the sheet does not say. */
  readonly lateralLb: Pounds | undefined
  /** Whether the sheet says that its values are multiplied by the load duration factor; not when undefined. */
  readonly timesDuration?: boolean
}

/** Lag screws in one rafter. */
export interface LagScrews {
  readonly lateralLb: Pounds | undefined
  readonly lagCount: number
  readonly lag: LagInRafter & { readonly size: LagSize }
  readonly specificGravity: number
  /** Steel under the head; undefined when it is another metal or a gap is bridged, then only the sheet's value counts. */
  readonly plate: SidePlate | undefined
  readonly wetFactor: number
  readonly temperatureFactor: number
}

/** A mount with lag screws into the rafter. */
export interface LagMount extends SheetStrength, LagScrews {
  readonly kind?: 'rafter_screw'
  readonly lateralLb: Pounds | undefined
}

/** A mount with screws of a maker's own design into the rafter, with the values of their report. */
export interface StructuralScrewMount extends SheetStrength {
  readonly kind: 'structural_screw'
  readonly screwCount: number
  /** Of one screw before load duration. */
  readonly withdrawalLb: Pounds
  readonly screwLateralLb: Pounds
  /** Of one screw, steel and head. */
  readonly tensionLb: Pounds
  /** Moisture and heat together. */
  readonly serviceFactor: number
}

/** A clamp on the seam of a metal roof, and the panel that it hangs on. */
export interface SeamClampMount extends SheetStrength {
  readonly kind: 'standing_seam_clamp'
  readonly lateralLb: Pounds
  readonly interactionExponent: number
  readonly panelWidthIn: Inches
  readonly clipSpacingIn: Inches
  /** Least distance of a clamp from a clip. */
  readonly clampFromClipIn: Inches
  /** Of the test of the panel; undefined when it gives none. */
  readonly clipSheetLb: Pounds | undefined
  /** Withdrawal of the screws of one clip before load duration; undefined when they are not stated. */
  readonly clipScrewsLb: Pounds | undefined
  readonly seamMomentLbIn: PoundInches | undefined
  readonly fixedPointLb: Pounds
}

/** A hook from the rafter out between the tiles. */
export interface TileHookMount extends SheetStrength {
  readonly kind: 'tile_hook'
  /** One screw holds the tension, as two stand one above the other along the grain. */
  readonly screws: LagScrews
  readonly armIn: Inches
  /** Load at right angles to the roof at which the neck bends to its allowable stress. */
  readonly neckLb: Pounds
  readonly screwLeverIn: Inches
  readonly heightIn: Inches
  /** Load at which the hook touches the tile below. */
  readonly tileContactLb: Pounds
}

/** A mount on the sheathing. */
export interface DeckMount extends SheetStrength {
  readonly kind: 'deck'
  readonly lateralLb: Pounds
  readonly interactionExponent: number
  readonly rafterSpacingIn: Inches
  /** From the middle of the nearest rafter. */
  readonly fromRafterIn: Inches
  /** Withdrawal of the nails of the sheathing within reach on one rafter, before load duration. */
  readonly nailsLb: Pounds
}

/** Everything that decides what one mount holds. */
export type MountStrength = LagMount | StructuralScrewMount | SeamClampMount | TileHookMount | DeckMount

/** Nails within this distance up and down the rafter hold a deck mount, ft. @source common practice, no source */
export const NAIL_REACH_FT: Feet = 1

/** Load on one mount in one combination. */
export interface MountLoad {
  /** At right angles to the roof; positive pulls the mount out, negative presses it down. */
  readonly normalLb: Pounds
  /** Along the slope, 0 or more. */
  readonly alongLb: Pounds
  /** CD of the combination. */
  readonly loadDuration: number
  /** Suction of wind on the roof itself beside the mount in this combination, 0 or more. */
  readonly roofUpliftPsf: PoundsPerSquareFoot
}

/** One way in which a mount can fail: what it must hold, and what it holds. */
export interface MountCheck {
  readonly name: string
  readonly demandLb: Pounds
  readonly capacityLb: Pounds
  readonly ratio: number
}

/** What the places of mounts follow. Only those on rafters bring their load straight into one. */
export type MountGrid = 'rafter' | 'seam' | 'deck'

export function gridOf(mount: MountStrength): MountGrid {
  if (mount.kind === 'standing_seam_clamp') return 'seam'
  return mount.kind === 'deck' ? 'deck' : 'rafter'
}

/** Lag screws of a mount, where it has any. */
export function lagsOf(mount: MountStrength): LagScrews | undefined {
  if (mount.kind === 'tile_hook') return mount.screws
  return mount.kind === undefined || mount.kind === 'rafter_screw' ? mount : undefined
}

/** Whether the wind on the roof itself loads what holds this mount. */
export function feelsRoofSuction(mount: MountStrength): boolean {
  return gridOf(mount) !== 'rafter'
}
