import {
  WORKING_HEIGHT_IN,
  WORKING_WIDTH_IN,
  workingSpace,
  type Edition,
  storageSection,
} from '../../tables/nec/index.js'
import { storageCodeRules, storageLimits, storagePlaceRules } from '../../tables/storage/index.js'
import type { Source } from '../../worksheet/index.js'
import { inchesOf } from '../../values/index.js'
import { energyRules } from './energy-rules.js'
import { alarmRules, enclosureRules } from './indoor-rules.js'
import type { PlaceFacts, PlaceJob } from './place-facts.js'
import { answerStated, compareStated, type StorageCheck } from './storage-check.js'
import { vehicleRules } from './vehicle-rules.js'

/**
 * Every rule about where storage units stand: energy, places, distances, alarms, cars, gypsum, working space.
 *
 * @param edition Edition of the electrical code, for the working space.
 */
export function placeRules(job: PlaceJob, edition: Edition): StorageCheck[] {
  return [
    ...codeKnown(job),
    ...energyRules(job),
    ...allPlaced(job),
    ...job.places.flatMap((place) => [
      ...placeAllowed(job, place),
      ...distances(job, place),
      ...vehicleRules(place),
      ...alarmRules(place),
      ...enclosureRules(job, place),
      ...space(place, edition),
    ]),
  ]
}

function codeKnown({ code }: PlaceJob): StorageCheck[] {
  if (code !== undefined) return []
  return [
    {
      id: 'place-code',
      where: 'storage.installation.place_code',
      says: 'the code that rules where storage stands is not stated or not in the tables, so the limits of later residential and fire codes are held to, the safe side',
      verdict: 'not_stated',
      source: { document: 'residential or fire code', standing: 'project file' },
      fix: 'Ask the building department which residential and fire code it has adopted',
    },
  ]
}

/** Every unit has a place, and no place more than there are. */
function allPlaced({ places, count }: PlaceJob): StorageCheck[] {
  const placed = places.reduce((sum, { units }) => sum + units, 0)
  const source: Source = { document: 'plan-review checklists', standing: 'secondary' }
  const where = 'storage.installation.places'
  const fix = 'State under storage.installation.places where the units stand'
  if (places.length === 0)
    return [
      {
        id: 'units-placed',
        where,
        says: 'where the units stand is not stated, so no rule about places was checked',
        verdict: 'not_stated',
        source,
        fix,
      },
    ]
  return [
    answerStated({
      id: 'units-placed',
      where,
      answer: placed === count,
      yes: `every unit has a place (${count})`,
      no: `${placed} units have places, the system has ${count}`,
      missing: '',
      source,
      fix,
    }),
  ]
}

function placeAllowed({ residentialMarking, code }: PlaceJob, { kind, where }: PlaceFacts): StorageCheck[] {
  const { words, group } = storagePlaceRules[kind]
  const source: Source =
    kind === 'bathroom' || kind === 'clothes_closet'
      ? { document: 'NEC', place: '240.24(D), (E)', standing: 'from memory' }
      : {
          document: code ?? 'IRC 2021',
          place: code === undefined ? 'R328' : storageCodeRules[code].place,
          standing: 'secondary',
        }
  return [
    answerStated({
      id: 'place-forbidden',
      where: `${where}.location`,
      answer: group !== undefined,
      yes: `${words}: a place where storage may stand`,
      no: `${words}: no place for storage${residentialMarking ? '; the unit is marked for use in dwelling units, and the authority may let it stand there by the exception of R328.1, which this program does not apply' : ''}`,
      missing: '',
      source,
      fix: 'Put it in a garage, in a utility space, on an outside wall or on the ground outdoors',
    }),
  ]
}

function distances(job: PlaceJob, place: PlaceFacts): StorageCheck[] {
  const { code, listedSpacingFt } = job
  const { where, kind, units, betweenUnitsFt, doorWindowFt, gasMeterFt } = place
  const { indoors } = storagePlaceRules[kind]
  if (code !== undefined && !storageCodeRules[code].limits) return []
  const spacing = storageLimits.unit_spacing
  const door = storageLimits.door_window_distance
  return [
    ...(units > 1
      ? [
          compareStated({
            id: 'unit-spacing',
            where: `${where}.between_units_ft`,
            what: 'distance between units',
            value: betweenUnitsFt,
            limit: listedSpacingFt ?? spacing.value,
            unit: 'ft',
            relation: '>=',
            source: spacing.source,
            fix: 'Move the units apart, or state the distance that the fire test of the listing and the installation manual allow (listed.ul_9540a_spacing_in)',
          }),
        ]
      : []),
    ...(indoors
      ? []
      : [
          compareStated({
            id: 'door-window',
            where: `${where}.to_door_or_window_ft`,
            what: 'distance to the nearest door or window into the dwelling',
            value: doorWindowFt,
            limit: door.value,
            unit: 'ft',
            relation: '>=',
            source: door.source,
            fix: 'Move the units along the wall',
          }),
          answerStated({
            id: 'gas-meter',
            where: `${where}.to_gas_meter_ft`,
            answer: gasMeterFt === undefined ? undefined : true,
            yes: `the gas meter is ${gasMeterFt ?? 0} ft away; the site plan shows it, and utility and maker set the least distance`,
            no: '',
            missing: 'the distance to the gas meter is not stated; permit offices ask for it on the plan',
            source: { document: 'permit checklists of a city and a county', standing: 'secondary' },
            fix: 'Measure it; state 200 where the house has no gas',
          }),
        ]),
  ]
}

/** Working space in front of the units, condition 1. */
function space({ where, clearDepthIn, clearWidthIn, clearHeightIn }: PlaceFacts, edition: Edition): StorageCheck[] {
  const depthIn = inchesOf(Math.max(...workingSpace.map(({ conditionFt: [first] }) => first)))
  const source = storageSection(edition, 'workingSpace')
  const one = (key: string, what: string, value: number | undefined, limit: number): StorageCheck =>
    compareStated({
      id: 'working-space',
      where: `${where}.${key}`,
      what: `clear ${what} in front of the units`,
      value,
      limit,
      unit: 'in',
      relation: '>=',
      source,
      fix: 'Keep the space in front free, or put the units elsewhere',
    })
  return [
    one('clear_depth_in', 'depth', clearDepthIn, depthIn),
    one('clear_width_in', 'width', clearWidthIn, WORKING_WIDTH_IN),
    one('clear_height_in', 'height', clearHeightIn, WORKING_HEIGHT_IN),
  ]
}
