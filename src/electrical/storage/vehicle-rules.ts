import { storageLimits, storagePlaceRules } from '../../tables/storage/index.js'
import type { PlaceFacts, PostFacts } from './place-facts.js'
import { answerStated, compareStated, type StorageCheck } from './storage-check.js'

const WAYS = 'posts, wheel stops, a bottom at 48 in or higher, or a place on a side wall'

/** Whether a car can run into the units, and what keeps it away. */
export function vehicleRules(place: PlaceFacts): StorageCheck[] {
  const { where, kind, vehiclePath, vehicleProtection } = place
  const { indoors, garage } = storagePlaceRules[kind]
  if (indoors && !garage) return []
  const source = { document: 'IRC 2024', place: 'R330.8', standing: 'secondary' } as const
  if (vehiclePath === undefined)
    return [
      {
        id: 'vehicle-path',
        where: `${where}.in_vehicle_path`,
        says: 'whether a car can run into the units is not stated',
        verdict: 'not_stated',
        source,
        fix: `Look where cars drive; in their path units need ${WAYS}`,
      },
    ]
  if (!vehiclePath)
    return [{ id: 'vehicle-path', where, says: 'no car can run into the units', verdict: 'pass', source, fix: '' }]
  return [
    answerStated({
      id: 'vehicle-path',
      where: `${where}.vehicle_protection`,
      answer: vehicleProtection === undefined ? undefined : vehicleProtection !== 'none',
      yes: `a car can run into the units; protected by ${WORDS[vehicleProtection ?? 'none']}`,
      no: 'a car can run into the units, and nothing keeps it away',
      missing: 'a car can run into the units, and what keeps it away is not stated',
      source,
      fix: `Use ${WAYS}`,
    }),
    ...(vehicleProtection === 'height'
      ? [
          compareStated({
            id: 'vehicle-height',
            where: `${where}.bottom_above_floor_in`,
            what: 'height of the lower edge above the floor',
            value: place.bottomIn,
            limit: storageLimits.garage_height_no_barrier.value,
            unit: 'in',
            relation: '>=',
            source: storageLimits.garage_height_no_barrier.source,
            fix: 'Hang it higher, or use posts; codes differ between 36 and 48 in, 48 in is the safe side',
          }),
        ]
      : []),
    ...(vehicleProtection === 'posts' ? posts(`${where}.posts`, place.posts) : []),
  ]
}

const WORDS = {
  posts: 'posts',
  wheel_stop: 'a wheel stop',
  height: 'their height',
  side_wall: 'their place on a side wall',
  none: 'nothing',
} as const

function posts(where: string, facts: PostFacts | undefined): StorageCheck[] {
  const one = (
    key: string,
    what: string,
    value: number | undefined,
    { value: limit, unit, source }: (typeof storageLimits)[keyof typeof storageLimits],
    relation: '<=' | '>=',
  ): StorageCheck =>
    compareStated({
      id: 'vehicle-posts',
      where: `${where}.${key}`,
      what: `${what} of the posts`,
      value,
      limit,
      unit,
      relation,
      source,
      fix: 'Set posts as the fire code describes them: 4 in steel pipe filled with concrete, 4 ft on centre at most, 3 ft deep, 3 ft from the units',
    })
  return [
    one('diameter_in', 'diameter', facts?.diameterIn, storageLimits.bollard_pipe_diameter, '>='),
    one('spacing_ft', 'spacing', facts?.spacingFt, storageLimits.bollard_spacing_max, '<='),
    one('depth_ft', 'depth', facts?.depthFt, storageLimits.bollard_depth_min, '>='),
    one('distance_ft', 'distance', facts?.distanceFt, storageLimits.bollard_distance_min, '>='),
  ]
}
