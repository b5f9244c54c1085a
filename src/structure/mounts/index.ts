export { nearRafterShare, suctionOnNailsLb } from './deck-mount.js'
export { lagCapacity } from './lag-mount.js'
export { mountChecks } from './mount-checks.js'
export { allLayouts, evenLayout, fewestMounts, optimisedMounts, type LayoutProblem } from './mount-layout.js'
export {
  feelsRoofSuction,
  gridOf,
  lagsOf,
  NAIL_REACH_FT,
  type DeckMount,
  type LagMount,
  type LagScrews,
  type MountCheck,
  type MountGrid,
  type MountStrength,
  type SeamClampMount,
  type SheetStrength,
  type StructuralScrewMount,
  type TileHookMount,
} from './mount-strength.js'
export { clipCapacityLb, clipReactionLb } from './seam-clamp.js'
