import { SOURCE_FACTOR, tapRules, type TapRule } from '../../tables/nec/index.js'
import { largestStandardDeviceA } from '../system/index.js'
import type { Amperes } from '../../values/index.js'
import { feederById, flowOnTap, flowThroughFeeder, type Flow } from './flows.js'
import { supplyA } from './judge-feeder.js'
import { compare } from './node-rule.js'
import type { TapNode, Tree } from './tree.js'
import { nodeVerdict, within, type NodeRule, type NodeVerdict } from './verdict.js'

/**
 * A feeder tap under the ways of 240.21(B), with what the edition adds for a feeder that carries sources.
 *
 * The next standard size above the ampacity is not used for taps.
 *
 * @source NEC 240.21(B); 705.12 of the edition
 */
export function judgeTap(tree: Tree, tap: TapNode): NodeVerdict {
  const flow = flowOnTap(tree, tap)
  return nodeVerdict({
    id: tap.id,
    kind: 'tap',
    parent: tap.feeder,
    name: `tap ${tap.id}`,
    where: tap.where,
    busA: undefined,
    mainA: tap.endDeviceA,
    inverterA: flow.currentA,
    rules: [...sourceRules(tree, tap, flow), ...tapRules.map((rule) => judgeWay(tree, tap, rule, flow))],
  })
}

/** What the device of a feeder counts with for a tap, A; undefined where it is not stated. */
function countedA(tree: Tree, tap: TapNode): Amperes | undefined {
  const feeder = feederById(tree, tap.feeder)
  const deviceA = feeder === undefined ? undefined : supplyA(tree, feeder)
  if (feeder === undefined || deviceA === undefined) return undefined
  const flow = flowThroughFeeder(tree, feeder)
  return deviceA + (countsDevices(tree) ? Math.max(flow.firstDevicesA, landedA(flow)) : flow.requiredA)
}

/**
 * 2023 and later count the ratings of the source devices, 2014 to 2020 125 percent of the currents. 2011 knows neither;
 * the ratings are added as some authorities want it, which is on the safe side.
 */
const countsDevices = ({ edition }: Tree): boolean =>
  !(edition === 'NEC 2014' || edition === 'NEC 2017' || edition === 'NEC 2020')

const landedA = ({ sources }: Flow): Amperes =>
  sources.flatMap(({ devices }) => devices).reduce((sum, { ratingA }) => sum + (ratingA ?? 0), 0)

function sourceRules(tree: Tree, tap: TapNode, flow: Flow): NodeRule[] {
  if (flow.sources.length === 0) return []
  const { ampacityA } = tap.conductor
  return [
    compare(tree.edition, {
      rule: 'tap carries the sources',
      topic: 'acOutputSizing',
      formula: '1.25 x I <= Z',
      terms: { I: flow.currentA, Z: ampacityA },
      sumA: flow.requiredA,
      limitA: ampacityA,
      what: '125 percent of the sources, against the ampacity',
      maxInverterA: ampacityA / SOURCE_FACTOR,
    }),
  ]
}

function judgeWay(tree: Tree, tap: TapNode, rule: TapRule, flow: Flow): NodeRule {
  const { ampacityA } = tap.conductor
  const feederA = countedA(tree, tap)
  const ratioA =
    rule.ratio === undefined || (rule.onlyOutside && !tap.leavesEnclosure) ? 0 : rule.ratio * (feederA ?? 0)
  const neededA = Math.max(tap.endDeviceA ?? 0, ratioA, rule.countsLoad ? (tap.loadA ?? 0) : 0)
  const fault = faultOf(tap, rule, feederA)
  const holds = fault === undefined && within(neededA, ampacityA)
  return compare(tree.edition, {
    rule: rule.rule,
    topic: 'feederTap',
    detail: rule.detail,
    formula: rule.formula,
    terms: { E: tap.endDeviceA ?? 0, L: tap.loadA ?? 0, F: feederA ?? 0, Z: ampacityA },
    needed: 'one_of',
    sumA: neededA,
    limitA: ampacityA,
    what: '',
    holds,
    why: `${neededA.toFixed(1)} A needed ${within(neededA, ampacityA) ? '<=' : '>'} ${ampacityA.toFixed(1)} A${fault === undefined ? '' : `; ${fault}`}`,
    maxInverterA: fault === undefined ? mostA(tree, tap, rule, flow, holds) : 0,
  })
}

function faultOf(tap: TapNode, rule: TapRule, feederA: Amperes | undefined): string | undefined {
  if (tap.endDeviceA === undefined) return 'the device that it ends in is not stated'
  if (feederA === undefined) return 'the device of the feeder is not stated'
  if (rule.withinFt !== undefined && tap.lengthFt > rule.withinFt)
    return `${tap.lengthFt} ft are more than ${rule.withinFt} ft`
  if (rule.outdoors && !tap.outdoors) return 'it is not stated to lie outdoors all the way'
  if (rule.oneDevice && tap.endDevices !== 1) return `it ends in ${tap.endDevices} devices and not in one`
  if (rule.raceway && tap.method === undefined) return 'the raceway or cable that it lies in is not stated'
  if (rule.raceway && CABLES.has(tap.method ?? '')) return `${tap.method} is a cable and no raceway`
  return undefined
}

const CABLES = new Set(['MC', 'SE', 'NM', 'UF'])

/** Largest source current that a way takes: none of ours where the sources on its feeder do not enter. */
function mostA(tree: Tree, tap: TapNode, rule: TapRule, flow: Flow, holds: boolean): Amperes {
  const { ampacityA } = tap.conductor
  const feeder = feederById(tree, tap.feeder)
  const deviceA = feeder === undefined ? 0 : (supplyA(tree, feeder) ?? 0)
  const byDevice = largestStandardDeviceA(ampacityA) / SOURCE_FACTOR
  const left = rule.ratio === undefined ? Infinity : ampacityA / rule.ratio - deviceA
  const onFeederA = feeder === undefined ? 0 : flowThroughFeeder(tree, feeder).currentA - flow.currentA
  const byRatio =
    left === Infinity
      ? Infinity
      : (countsDevices(tree) ? largestStandardDeviceA(Math.max(0, left)) : left) / SOURCE_FACTOR - onFeederA
  return Math.max(holds ? flow.currentA : 0, Math.min(byDevice, byRatio))
}
