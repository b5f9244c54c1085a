import { CONTINUOUS_FACTOR } from '../../tables/nec/index.js'
import { isStorageCode } from '../../tables/storage/index.js'
import { feetOf } from '../../values/index.js'
import type { Circuit, Job } from '../system/index.js'
import type { DisconnectFacts } from './disconnect-rules.js'
import type { PlaceFacts, PlaceJob } from './place-facts.js'
import type { StorageSystem } from './storage-unit.js'

/** What the project states of places, as the rules of places take it. */
export function placeJobOf({ project }: Job, system: StorageSystem): PlaceJob {
  const { unit, unitWhere, count, stated } = system
  const { installation } = stated
  const code = installation?.place_code ?? project.codes?.residential
  const spacingIn = unit.listed?.ul_9540a_spacing_in
  const { chemistry } = unit
  return {
    places: placesOf(installation),
    unitKwh: unit.nameplate_kwh,
    unitKwhWhere: `${unitWhere}.nameplate_kwh`,
    count,
    listedSpacingFt: spacingIn === undefined ? undefined : feetOf(spacingIn),
    gasesInCharging:
      chemistry === 'lead_acid' ? true : chemistry === undefined || chemistry === 'other' ? undefined : false,
    gasesWhere: `${unitWhere}.chemistry`,
    residentialMarking: unit.listed?.dwelling_use === true,
    code: isStorageCode(code) ? code : undefined,
    authorityTotalKwh: installation?.authority_total_kwh,
  }
}

function placesOf(installation: StorageSystem['stated']['installation']): PlaceFacts[] {
  return Object.entries(installation?.places ?? {}).map(([id, place]) => ({
    id,
    where: `storage.installation.places.${id}`,
    kind: place.location,
    units: place.units,
    doorWindowFt: place.to_door_or_window_ft,
    betweenUnitsFt: place.between_units_ft,
    gasMeterFt: place.to_gas_meter_ft,
    alarm: place.alarm,
    alarmInterconnected: place.alarm_interconnected,
    vehiclePath: place.in_vehicle_path,
    vehicleProtection: place.vehicle_protection,
    bottomIn: place.bottom_above_floor_in,
    posts:
      place.posts === undefined
        ? undefined
        : {
            diameterIn: place.posts.diameter_in,
            spacingFt: place.posts.spacing_ft,
            depthFt: place.posts.depth_ft,
            distanceFt: place.posts.distance_ft,
          },
    unfinishedFraming: place.unfinished_framing,
    gypsumTypeXIn: place.gypsum_type_x_in,
    selfClosingDoor: place.self_closing_door,
    ventilated: place.ventilated,
    clearDepthIn: place.clear_depth_in,
    clearWidthIn: place.clear_width_in,
    clearHeightIn: place.clear_height_in,
  }))
}

/** What the project states of the disconnect. */
export function disconnectFactsOf({ stated, count }: StorageSystem, circuits: readonly Circuit[]): DisconnectFacts {
  const { installation } = stated
  const disconnect = installation?.disconnect
  const ac = circuits.filter(({ kind }) => kind === 'ac_storage')
  return {
    at: installation?.disconnect_at,
    ratingA: disconnect?.rating_a,
    requiredA:
      ac.length === 0 ? undefined : CONTINUOUS_FACTOR * ac.reduce((sum, { continuousA }) => sum + continuousA, 0),
    distanceFt: disconnect?.distance_ft,
    visible: disconnect?.visible,
    readilyAccessible: disconnect?.readily_accessible,
    lockable: disconnect?.lockable,
    opensAll: disconnect?.opens_all_units,
    throughWall: disconnect?.through_wall,
    secondAtEquipment: disconnect?.second_at_equipment,
    outside: disconnect?.outside,
    outsideInitiator: installation?.outside_initiator,
    units: count,
  }
}
