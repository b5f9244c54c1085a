import { SOURCE_FACTOR } from '../../tables/nec/index.js'
import { mostByBreakers } from '../connection/index.js'
import { equipmentGroundSize, largerOf } from '../conductors/index.js'
import { deviceProtects } from '../system/index.js'
import type { Amperes } from '../../values/index.js'
import { addedA, flowAlong, flowThroughFeeder, panelById, type Flow } from './flows.js'
import { compare } from './node-rule.js'
import type { FeederNode, PanelNode, Tree } from './tree.js'
import { nodeVerdict, type NodeRule, type NodeVerdict } from './verdict.js'

/** Share of a conductor that main device and source devices may reach together. @source NEC 705.12(D)(2) (2011): secondary */
const SHARE_2011 = 1.2

/**
 * A feeder: its device, what sources feed into it, the part beyond a source that joins along it, its load and its ground.
 *
 * Behind feed-through lugs without a device the busbar rule judges the conductors.
 *
 * @source NEC 215.2, 215.3, 240.4, 250.122, 705.12 of the edition
 */
export function judgeFeeder(tree: Tree, feeder: FeederNode): NodeVerdict {
  const flow = flowThroughFeeder(tree, feeder)
  const along = flowAlong(tree, feeder)
  const beyond = panelById(tree, feeder.to)
  const deviceA = feeder.device.ratingA
  const rules = [
    ...(deviceA === undefined ? deviceMissing(tree, feeder, beyond) : protection(tree, feeder, deviceA)),
    ...(flow.sources.length === 0 ? [] : sourceRules(tree, feeder, flow)),
    ...(along.sources.length === 0 ? [] : [partBeyond(tree, feeder, flow, beyond)]),
    ...loadRule(tree, feeder, beyond),
    ...groundRule(tree, feeder),
  ]
  return nodeVerdict({
    id: feeder.id,
    kind: 'feeder',
    parent: feeder.from,
    name: `feeder to ${beyond?.name ?? feeder.to}`,
    where: feeder.where,
    busA: undefined,
    mainA: deviceA,
    inverterA: flow.currentA,
    rules,
  })
}

function protection(tree: Tree, feeder: FeederNode, deviceA: Amperes): NodeRule[] {
  const { ampacityA } = feeder.conductor
  return [
    compare(tree.edition, {
      rule: 'overcurrent device of the feeder',
      topic: 'nextSizeUp',
      formula: 'D <= Z, or D is the next standard size above Z',
      terms: { D: deviceA, Z: ampacityA },
      sumA: deviceA,
      limitA: ampacityA,
      what: 'device, against the ampacity of the conductors (the next standard size above it may protect them)',
      holds: deviceProtects(deviceA, ampacityA),
      why: deviceProtects(deviceA, ampacityA)
        ? `the ${deviceA} A device protects conductors of ${ampacityA.toFixed(1)} A`
        : `the ${deviceA} A device does not protect conductors of ${ampacityA.toFixed(1)} A`,
    }),
  ]
}

/** A feeder from a breaker needs its rating; one from lugs is protected by the panel before, or at its end. */
function deviceMissing(tree: Tree, feeder: FeederNode, beyond: PanelNode | undefined): NodeRule[] {
  if (feeder.throughLugs) return []
  const endA = beyond?.mainA
  return [
    {
      ...compare(tree.edition, {
        rule: 'overcurrent device of the feeder',
        topic: 'feederProtection',
        formula: 'a device stands at the start of the feeder',
        sumA: 0,
        limitA: 0,
        what: '',
        holds: false,
        maxInverterA: 0,
        why: `the device at its start is not stated${endA === undefined ? '' : `; the ${endA} A at its end does not protect it from faults`}`,
      }),
      sumA: undefined,
      limitA: undefined,
    },
  ]
}

/** What sources put through it: conductors and device carry 125 percent of it, and in 2011 the sum of all devices is limited. */
function sourceRules(tree: Tree, feeder: FeederNode, flow: Flow): NodeRule[] {
  const { ampacityA } = feeder.conductor
  const { edition } = tree
  const deviceA = feeder.device.ratingA
  const own = edition === 'NEC 2011' || edition === 'NEC 2014' || edition === 'NEC 2017'
  const carries = compare(edition, {
    rule: 'feeder carries the sources',
    topic: own ? 'acOutputSizing' : 'feederConnection',
    formula: '1.25 x I <= Z',
    terms: { I: flow.currentA, Z: ampacityA },
    sumA: flow.requiredA,
    limitA: ampacityA,
    what: '125 percent of the sources, against the ampacity',
    maxInverterA: ampacityA / SOURCE_FACTOR,
  })
  const device =
    deviceA === undefined
      ? []
      : [
          compare(edition, {
            rule: 'feeder device carries the sources',
            topic: 'acOutputSizing',
            formula: '1.25 x I <= D',
            terms: { I: flow.currentA, D: deviceA },
            sumA: flow.requiredA,
            limitA: deviceA,
            what: '125 percent of the sources, against the device',
            maxInverterA: deviceA / SOURCE_FACTOR,
          }),
        ]
  return [carries, ...device, ...(edition === 'NEC 2011' ? sumOfDevices(tree, feeder, flow) : [])]
}

function sumOfDevices(tree: Tree, feeder: FeederNode, flow: Flow): NodeRule[] {
  const { ampacityA } = feeder.conductor
  const mainA = supplyA(tree, feeder)
  if (mainA === undefined) return []
  return [
    compare(tree.edition, {
      rule: '120 percent of the conductor',
      topic: 'feederConnection',
      formula: 'D + S <= 1.2 x Z',
      terms: { D: mainA, S: flow.firstDevicesA, Z: ampacityA },
      sumA: mainA + flow.firstDevicesA,
      limitA: SHARE_2011 * ampacityA,
      what: 'device and source devices, against 120 percent of the ampacity',
      maxInverterA: mostByBreakers(SHARE_2011 * ampacityA - mainA, flow.firstDevicesA, flow.currentA).maxInverterA,
    }),
  ]
}

/** Device at the start of a feeder, or ahead of the lugs that it starts at, A. */
export function supplyA(tree: Tree, feeder: FeederNode): Amperes | undefined {
  return feeder.device.ratingA ?? panelById(tree, feeder.from)?.mainA
}

/**
 * The part beyond a source that joins along the feeder: as large as device and sources together, or protected at its end.
 *
 * @source NEC 705.12(B)(2)(1) (2017, read), (D)(2)(1) (2014), 705.12(B)(2) (2020), (A)(2) (2023); the next standard size
 * above the ampacity is not used
 */
function partBeyond(tree: Tree, feeder: FeederNode, flow: Flow, beyond: PanelNode | undefined): NodeRule {
  const { ampacityA } = feeder.conductor
  const mainA = supplyA(tree, feeder) ?? Infinity
  const sourcesA = addedA(tree, flow)
  const endA = beyond?.mainA
  const guarded = endA !== undefined && endA <= ampacityA
  const sumA = guarded ? endA : mainA + sourcesA
  return {
    ...compare(tree.edition, {
      rule: 'part beyond the connection',
      topic: 'feederConnection',
      formula: guarded ? 'E <= Z' : 'D + S <= Z',
      terms: guarded ? { E: endA, Z: ampacityA } : { D: mainA, S: sourcesA, Z: ampacityA },
      sumA: Number.isFinite(sumA) ? sumA : 0,
      limitA: ampacityA,
      what: guarded
        ? 'device at the end, against the ampacity'
        : 'device and 125 percent of the sources, against the ampacity',
      holds: guarded || mainA + sourcesA <= ampacityA,
      maxInverterA: guarded ? Infinity : (ampacityA - mainA) / SOURCE_FACTOR,
    }),
  }
}

function loadRule(tree: Tree, feeder: FeederNode, beyond: PanelNode | undefined): NodeRule[] {
  const loadsA = [beyond, ...tree.taps.filter((tap) => tap.feeder === feeder.id)]
    .map((each) => each?.loadA)
    .filter((loadA) => loadA !== undefined)
  if (loadsA.length === 0) return []
  const loadA = loadsA.reduce((sum, each) => sum + each, 0)
  return [
    compare(tree.edition, {
      rule: 'feeder carries its load',
      topic: 'feederLoad',
      formula: 'L <= min(D, Z)',
      terms: { L: loadA, D: feeder.device.ratingA ?? feeder.conductor.ampacityA, Z: feeder.conductor.ampacityA },
      sumA: loadA,
      limitA: Math.min(feeder.conductor.ampacityA, feeder.device.ratingA ?? Infinity),
      what: 'calculated load of its panel and taps, against device and conductors',
    }),
  ]
}

function groundRule(tree: Tree, feeder: FeederNode): NodeRule[] {
  const deviceA = supplyA(tree, feeder)
  if (feeder.groundAwg === undefined || deviceA === undefined) return []
  const least = equipmentGroundSize(deviceA, `${feeder.where}.breaker_a`)
  const holds = largerOf(feeder.groundAwg, least) === feeder.groundAwg
  return [
    {
      ...compare(tree.edition, {
        rule: 'equipment ground of the feeder',
        topic: 'equipmentGroundSize',
        formula: 'size by the device',
        sumA: 0,
        limitA: 0,
        what: '',
        holds,
        why: `${feeder.groundAwg} AWG ${holds ? 'is not below' : 'is below'} the ${least} AWG copper that ${deviceA} A need`,
      }),
      sumA: undefined,
      limitA: undefined,
    },
  ]
}
