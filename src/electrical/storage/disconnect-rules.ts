import { storageSection, type Edition, type StorageDisconnectRule } from '../../tables/nec/index.js'
import type { Amperes, Feet } from '../../values/index.js'
import { answerStated, compareStated, type StorageCheck } from './storage-check.js'

/** What is known of the disconnect of a storage system; what nobody has stated is undefined. */
export interface DisconnectFacts {
  readonly at: 'in_unit' | 'within_10_ft' | 'lockable_elsewhere' | undefined
  readonly ratingA: Amperes | undefined
  /** Current that it carries without end with its 125 percent, A; undefined where no AC circuit is the storage's own. */
  readonly requiredA: Amperes | undefined
  readonly distanceFt: Feet | undefined
  readonly visible: boolean | undefined
  readonly readilyAccessible: boolean | undefined
  readonly lockable: boolean | undefined
  readonly opensAll: boolean | undefined
  readonly throughWall: boolean | undefined
  readonly secondAtEquipment: boolean | undefined
  readonly outside: boolean | undefined
  readonly outsideInitiator: boolean | undefined
  readonly units: number
}

const AT = 'storage.installation.disconnect'

/** Whether the disconnect of the storage is where the edition wants it, and what stands outside. */
export function disconnectRules(facts: DisconnectFacts, rule: StorageDisconnectRule, edition: Edition): StorageCheck[] {
  const source = storageSection(edition, 'disconnect')
  if (facts.at === undefined)
    return [
      {
        id: 'disconnect',
        where: 'storage.installation.disconnect_at',
        says: 'where the disconnect of the storage is, is not stated',
        verdict: 'not_stated',
        source,
        fix: 'State in_unit, within_10_ft or lockable_elsewhere',
      },
      ...outside(facts, rule, edition),
    ]
  return [
    answerStated({
      id: 'disconnect-accessible',
      where: `${AT}.readily_accessible`,
      answer: facts.readilyAccessible,
      yes: 'the disconnect of the storage is readily accessible',
      no: 'the disconnect of the storage is not readily accessible',
      missing: 'whether the disconnect of the storage is readily accessible is not stated',
      source,
      fix: 'Put it where it is reached without a ladder, tools or moving things',
    }),
    ...place(facts, rule, edition),
    ...rating(facts, edition),
    ...severalUnits(facts, edition),
    ...partition(facts, rule, edition),
    ...outside(facts, rule, edition),
  ]
}

function place(facts: DisconnectFacts, rule: StorageDisconnectRule, edition: Edition): StorageCheck[] {
  const source = storageSection(edition, 'disconnect')
  if (facts.at === 'in_unit')
    return [
      {
        id: 'disconnect',
        where: 'storage.installation.disconnect_at',
        says: 'the disconnect is in the unit',
        verdict: 'pass',
        source,
        fix: '',
      },
    ]
  if (facts.at === 'lockable_elsewhere')
    return [
      answerStated({
        id: 'disconnect',
        where: `${AT}.lockable`,
        answer: facts.lockable,
        yes: 'the disconnect stands elsewhere and can be locked open',
        no: 'the disconnect stands elsewhere and cannot be locked open',
        missing: 'the disconnect stands elsewhere; whether it can be locked open is not stated',
        source,
        fix: 'Use one that can be locked open, or put it beside the units',
      }),
    ]
  return [
    answerStated({
      id: 'disconnect',
      where: `${AT}.visible`,
      answer: facts.visible,
      yes: `the disconnect is ${rule.seen} of the units`.replace('visible of', 'visible from'),
      no: `the disconnect is not ${rule.seen} of the units`.replace('visible of', 'visible from'),
      missing: `whether the disconnect is ${rule.seen} of the units is not stated`.replace(
        'visible of',
        'visible from',
      ),
      source,
      fix: 'Put it where one sees it from the units, or lock it open elsewhere',
    }),
    ...(rule.withinFt === undefined
      ? []
      : [
          compareStated({
            id: 'disconnect',
            where: `${AT}.distance_ft`,
            what: 'distance of the disconnect from the units',
            value: facts.distanceFt,
            limit: rule.withinFt,
            unit: 'ft',
            relation: '<=',
            source,
            fix: 'Put it nearer, or use one that can be locked open (disconnect_at: lockable_elsewhere)',
          }),
        ]),
  ]
}

function rating({ at, ratingA, requiredA }: DisconnectFacts, edition: Edition): StorageCheck[] {
  if (requiredA === undefined || at === 'in_unit') return []
  return [
    compareStated({
      id: 'disconnect-rating',
      where: `${AT}.rating_a`,
      what: 'rating of the disconnect of the storage',
      value: ratingA,
      limit: Number(requiredA.toFixed(2)),
      unit: 'A',
      relation: '>=',
      source: storageSection(edition, 'overcurrent'),
      fix: 'Use a larger one; it carries 125 percent of the rated current of all units',
    }),
  ]
}

function severalUnits({ units, opensAll, at }: DisconnectFacts, edition: Edition): StorageCheck[] {
  if (units < 2 || at === 'in_unit') return []
  return [
    answerStated({
      id: 'disconnect-all-units',
      where: `${AT}.opens_all_units`,
      answer: opensAll,
      yes: 'one disconnect opens all units',
      no: 'the disconnect does not open all units, and others are not stated',
      missing: 'whether the disconnect opens all units is not stated',
      source: storageSection(edition, 'disconnect'),
      fix: 'Use one that opens all units, or one for each and state it',
    }),
  ]
}

/** A second disconnect where the first is far from what it feeds or behind a wall. */
function partition(facts: DisconnectFacts, rule: StorageDisconnectRule, edition: Edition): StorageCheck[] {
  const { at, distanceFt, throughWall, secondAtEquipment, visible } = facts
  if (at === 'in_unit' || rule.partitionFt === undefined) return []
  const source = storageSection(edition, 'disconnect')
  if (throughWall === undefined)
    return [
      {
        id: 'disconnect-partition',
        where: `${AT}.through_wall`,
        says: 'whether conductors between units and disconnect pass through a wall is not stated',
        verdict: 'not_stated',
        source,
        fix: 'State through_wall',
      },
    ]
  if (visible === true && !throughWall) return []
  if (!throughWall && distanceFt === undefined)
    return [
      {
        id: 'disconnect-partition',
        where: `${AT}.distance_ft`,
        says: 'how far the disconnect is from the units is not stated, nor that it is within sight of them',
        verdict: 'not_stated',
        source,
        fix: 'State distance_ft, or visible',
      },
    ]
  if (!throughWall && (distanceFt ?? Infinity) <= rule.partitionFt) return []
  return [
    answerStated({
      id: 'disconnect-partition',
      where: `${AT}.second_at_equipment`,
      answer: secondAtEquipment,
      yes: 'a second disconnect with directories stands at the other end',
      no: `units and disconnect are ${throughWall ? 'on two sides of a wall' : `${distanceFt ?? 0} ft apart and not within sight`}, and there is no second disconnect`,
      missing: `units and disconnect are more than ${rule.partitionFt} ft apart or on two sides of a wall; whether a second one stands there is not stated`,
      source,
      fix: `Put a disconnect at the units and a second one at the equipment, with directories at both, when they are more than ${rule.partitionFt} ft apart or a wall is between them`,
    }),
  ]
}

/** What houses of one and two families have outside. */
function outside(facts: DisconnectFacts, rule: StorageDisconnectRule, edition: Edition): StorageCheck[] {
  const source = storageSection(edition, 'outside')
  if (rule.outside === 'none') return []
  if (rule.outside === 'disconnect')
    return [
      answerStated({
        id: 'outside-shutdown',
        where: `${AT}.outside`,
        answer: facts.outside,
        yes: 'the disconnect of the storage, or its remote control, is outside the house',
        no: 'neither the disconnect of the storage nor its remote control is outside the house',
        missing: 'whether the disconnect of the storage, or its remote control, is outside the house is not stated',
        source,
        fix: 'Put it, or its remote control, at a readily accessible place outside; some authorities want a switch that breaks the load',
      }),
    ]
  return [
    answerStated({
      id: 'outside-shutdown',
      where: 'storage.installation.outside_initiator',
      answer: facts.outsideInitiator,
      yes: 'an emergency shutdown of the storage is started outside the house',
      no: 'no emergency shutdown of the storage is started outside the house',
      missing: 'whether an emergency shutdown of the storage is started outside the house is not stated',
      source,
      fix: 'Put an initiation device at a readily accessible place outside that plainly shows off; it stops the storage from feeding the house',
    }),
  ]
}
