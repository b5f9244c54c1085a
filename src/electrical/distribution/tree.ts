import type { FeedThrough } from '../connection/index.js'
import type { ConductorMaterial, ConductorSize, Edition } from '../../tables/nec/index.js'
import type { Amperes, Feet } from '../../values/index.js'

/** Id of the PV system of the project among the sources. */
export const PV_SOURCE = 'pv'

/** Id of the service among the nodes. */
export const SERVICE = 'service'

/** Breaker that carries current backwards. */
export interface BackfedDevice {
  readonly ratingA: Amperes | undefined
  readonly type: 'standard' | 'gfci' | 'afci' | 'gfci_afci'
  readonly markedForBackfeed: boolean
  readonly markedLineLoad: boolean
  readonly oppositeEnd: boolean | undefined
  readonly where: string
}

/** A busbar with what stands on it. */
export interface PanelNode {
  readonly id: string
  readonly name: string
  readonly where: string
  readonly busA: Amperes
  /** Its own main device, A; undefined for main lugs only. */
  readonly mainA: Amperes | undefined
  readonly mainPosition: 'end' | 'centre'
  /** Load breakers, A, without feeders and sources; undefined when they are not stated. */
  readonly loadBreakersA: Amperes | undefined
  readonly loadA: Amperes | undefined
  readonly spacesFree: number | undefined
  readonly interruptingA: Amperes | undefined
  readonly terminalC: 60 | 75
  readonly location: 'indoors' | 'outdoors' | undefined
  /** What hangs on feed-through lugs of the short form. */
  readonly lugs: FeedThrough | undefined
}

/** Copper or aluminum with its ampacity. */
export interface NodeConductor {
  readonly size: ConductorSize
  readonly material: ConductorMaterial
  readonly sets: number
  readonly insulation: string
  readonly ampacityA: Amperes
  /** How the ampacity comes about, in one line. */
  readonly how: string
  /** Whether the person named the size. */
  readonly named: boolean
}

export interface FeederNode {
  readonly id: string
  readonly where: string
  readonly from: string
  readonly to: string
  readonly device: BackfedDevice
  readonly throughLugs: boolean
  readonly conductor: NodeConductor
  readonly groundAwg: ConductorSize | undefined
  readonly method: string | undefined
  readonly lengthFt: Feet
}

export interface TapNode {
  readonly id: string
  readonly where: string
  readonly feeder: string
  readonly position: 'far_end' | 'along'
  readonly conductor: NodeConductor
  readonly method: string | undefined
  readonly lengthFt: Feet
  readonly endDeviceA: Amperes | undefined
  readonly endDevices: number
  readonly loadA: Amperes | undefined
  readonly leavesEnclosure: boolean
  readonly outdoors: boolean
}

/** Where a source lands. */
export type Landing = { readonly panel: string } | { readonly tap: string } | 'supply_side'

export interface SourceNode {
  readonly id: string
  readonly name: string
  readonly kind: 'pv' | 'storage' | 'generator'
  readonly where: string
  readonly at: Landing
  /** Rated continuous output, A. */
  readonly currentA: Amperes
  /** Devices that land there, A. */
  readonly devices: readonly BackfedDevice[]
  /** First devices after the inverters, A. */
  readonly firstDevicesA: readonly Amperes[]
  readonly runsInParallel: boolean
}

export interface ServiceNode {
  readonly where: string
  readonly ratingA: Amperes | undefined
  readonly conductor: NodeConductor | undefined
  /** Size and metal as stated, where the insulation is not and so the ampacity is not known. */
  readonly bare: Pick<NodeConductor, 'size' | 'material' | 'sets'> | undefined
  /** Stated, else of the conductor, A. */
  readonly ampacityA: Amperes | undefined
  readonly loadA: Amperes | undefined
}

/** A power control system as the sums use it. */
export interface PowerControlNode {
  readonly settingA: Amperes
  readonly panels: readonly string[]
  readonly uncontrolled: readonly string[]
  /** Why it does not count; undefined when its listing is shown and its setting is locked. */
  readonly fault: string | undefined
}

/** The installation from the utility inwards. */
export interface Tree {
  readonly edition: Edition
  readonly service: ServiceNode
  /** Those fed by the service first; a panel after the one that feeds it. */
  readonly panels: readonly PanelNode[]
  readonly feeders: readonly FeederNode[]
  readonly taps: readonly TapNode[]
  readonly sources: readonly SourceNode[]
  readonly powerControl: PowerControlNode | undefined
}
