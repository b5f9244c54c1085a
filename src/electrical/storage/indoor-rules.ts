import { storageLimits, storagePlaceRules } from '../../tables/storage/index.js'
import type { PlaceFacts, PlaceJob } from './place-facts.js'
import { answerStated, compareStated, type StorageCheck } from './storage-check.js'

const ALARMS = { document: 'CRC, IFC 2021', place: 'R327.7, 1207.11.6', standing: 'secondary' } as const

/** Alarm in the space of the units: smoke, in garages heat, sounding together with the smoke alarms of the house. */
export function alarmRules({ where, kind, alarm, alarmInterconnected }: PlaceFacts): StorageCheck[] {
  const { indoors, garage, words } = storagePlaceRules[kind]
  if (!indoors) return []
  const wanted = garage ? 'heat' : 'smoke'
  const fix = `Put a listed ${wanted} alarm into the space, interconnected with the smoke alarms of the house`
  const holds = garage ? alarm === 'heat' : alarm === 'smoke' || alarm === 'heat'
  return [
    answerStated({
      id: 'alarm',
      where: `${where}.alarm`,
      answer: alarm === undefined ? undefined : holds,
      yes: `${words}: a ${alarm ?? ''} alarm is there`,
      no: `${words}: ${alarm === 'none' ? 'no alarm' : 'a smoke alarm, which is seldom listed for a garage'}`,
      missing: `${words}: whether an alarm is there is not stated`,
      source: ALARMS,
      fix,
    }),
    ...(alarm === 'none'
      ? []
      : [
          answerStated({
            id: 'alarm-interconnected',
            where: `${where}.alarm_interconnected`,
            answer: alarmInterconnected,
            yes: 'its alarm sounds together with those of the house',
            no: 'its alarm does not sound together with those of the house',
            missing: 'whether its alarm sounds together with those of the house is not stated',
            source: ALARMS,
            fix,
          }),
        ]),
  ]
}

/** Walls, door and ventilation of an indoor space. */
export function enclosureRules({ code, gasesInCharging, gasesWhere }: PlaceJob, place: PlaceFacts): StorageCheck[] {
  const { where, kind, unfinishedFraming, gypsumTypeXIn, selfClosingDoor, ventilated } = place
  const { indoors } = storagePlaceRules[kind]
  if (!indoors) return []
  const joined = kind !== 'detached_garage' && kind !== 'detached_structure'
  const gypsum = storageLimits.inside_wall_gypsum_type_x
  const bare = kind === 'attached_garage' || unfinishedFraming !== false
  return [
    ...(joined && bare
      ? [
          compareStated({
            id: 'gypsum',
            where: `${where}.gypsum_type_x_in`,
            what: 'Type X gypsum board on walls and ceiling',
            value: gypsumTypeXIn,
            limit: gypsum.value,
            unit: 'in',
            relation: '>=',
            source: gypsum.source,
            fix: 'Cover bare framing with 5/8 in Type X board; state unfinished_framing: false where there is none (an attached garage needs the board in any case here, the safe side)',
          }),
        ]
      : []),
    ...(joined && code === 'IRC 2024'
      ? [
          answerStated({
            id: 'self-closing-door',
            where: `${where}.self_closing_door`,
            answer: selfClosingDoor,
            yes: 'the door into the house closes by itself',
            no: 'the door into the house does not close by itself',
            missing: 'whether the door into the house closes by itself is not stated',
            source: { document: 'IRC 2024', place: 'R330.4(4)', standing: 'secondary' },
            fix: 'Fit a closer',
          }),
        ]
      : []),
    ...ventilation({ where, gasesInCharging, gasesWhere, ventilated }),
  ]
}

function ventilation({
  where,
  gasesInCharging,
  gasesWhere,
  ventilated,
}: Pick<PlaceFacts, 'where' | 'ventilated'> & Pick<PlaceJob, 'gasesInCharging' | 'gasesWhere'>): StorageCheck[] {
  const source = { document: 'IRC', place: 'M1307.4 as R327 to R330 name it', standing: 'secondary' } as const
  if (gasesInCharging === false) return []
  if (gasesInCharging === undefined)
    return [
      {
        id: 'ventilation',
        where: gasesWhere,
        says: 'the chemistry of the cells is not stated, so whether the space needs ventilation is not known',
        verdict: 'not_stated',
        source,
        fix: 'State the chemistry; it stands on the data sheet',
      },
    ]
  return [
    answerStated({
      id: 'ventilation',
      where: `${where}.ventilated`,
      answer: ventilated,
      yes: 'the cells give off gas in charging, and the space is ventilated',
      no: 'the cells give off gas in charging, and the space is not ventilated',
      missing: 'the cells give off gas in charging; whether the space is ventilated is not stated',
      source,
      fix: 'Ventilate the space as the mechanical part of the residential code asks',
    }),
  ]
}
