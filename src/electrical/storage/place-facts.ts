import type { StorageCode, StoragePlaceKind } from '../../tables/storage/index.js'
import type { Feet, Inches, KilowattHours } from '../../values/index.js'

/** What is known of one place with storage units; what nobody has stated is undefined. */
export interface PlaceFacts {
  readonly id: string
  readonly where: string
  readonly kind: StoragePlaceKind
  readonly units: number
  readonly doorWindowFt: Feet | undefined
  readonly betweenUnitsFt: Feet | undefined
  readonly gasMeterFt: Feet | undefined
  readonly alarm: 'smoke' | 'heat' | 'none' | undefined
  readonly alarmInterconnected: boolean | undefined
  readonly vehiclePath: boolean | undefined
  readonly vehicleProtection: 'posts' | 'wheel_stop' | 'height' | 'side_wall' | 'none' | undefined
  readonly bottomIn: Inches | undefined
  readonly posts: PostFacts | undefined
  readonly unfinishedFraming: boolean | undefined
  readonly gypsumTypeXIn: Inches | undefined
  readonly selfClosingDoor: boolean | undefined
  readonly ventilated: boolean | undefined
  readonly clearDepthIn: Inches | undefined
  readonly clearWidthIn: Inches | undefined
  readonly clearHeightIn: Inches | undefined
}

export interface PostFacts {
  readonly diameterIn: Inches | undefined
  readonly spacingFt: Feet | undefined
  readonly depthFt: Feet | undefined
  readonly distanceFt: Feet | undefined
}

/** What all places share. */
export interface PlaceJob {
  readonly places: readonly PlaceFacts[]
  /** Nameplate energy of one unit, kWh; undefined where the sheet does not state it. */
  readonly unitKwh: KilowattHours | undefined
  readonly unitKwhWhere: string
  /** Number of units of the system. */
  readonly count: number
  /** Distance between units that listing and large-scale fire test allow, ft. */
  readonly listedSpacingFt: Feet | undefined
  readonly gasesInCharging: boolean | undefined
  readonly gasesWhere: string
  /** Marked for use in residential dwelling units. */
  readonly residentialMarking: boolean
  /** Code that rules the places; undefined where it is not stated or not in the tables. */
  readonly code: StorageCode | undefined
  /** Total that the authority allows on the property, kWh. */
  readonly authorityTotalKwh: KilowattHours | undefined
}
