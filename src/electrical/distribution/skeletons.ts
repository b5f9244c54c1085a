import type { TapNode } from './tree.js'

/** Stands in the tree until a conductor is found. */
export const NO_CONDUCTOR = {
  size: '14',
  material: 'copper',
  sets: 1,
  insulation: '',
  ampacityA: 0,
  how: '',
  named: false,
} as const

/** A tap before its conductor and its end are known: enough to follow what flows through it. */
export const tapSkeleton = (id: string, feeder: string, position: TapNode['position'] | undefined): TapNode => ({
  id,
  where: '',
  feeder,
  position: position ?? 'along',
  conductor: NO_CONDUCTOR,
  method: undefined,
  lengthFt: 0,
  endDeviceA: undefined,
  endDevices: 1,
  loadA: undefined,
  leavesEnclosure: true,
  outdoors: false,
})
