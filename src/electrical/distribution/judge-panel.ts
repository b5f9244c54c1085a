import { labelWords, onOneLine, SOURCE_FACTOR, type BusbarRule } from '../../tables/nec/index.js'
import { judgeBusbar, mostByBreakers, type Busbar, type FeedThrough, type RuleVerdict } from '../connection/index.js'
import type { Amperes } from '../../values/index.js'
import { addedA, feederTo, flowOnTaps, flowThroughFeeder, flowThroughPanel, panelById, type Flow } from './flows.js'
import { compare } from './node-rule.js'
import { powerControlRule } from './power-control.js'
import { PV_SOURCE, type BackfedDevice, type PanelNode, type Tree } from './tree.js'
import { nodeVerdict, type NodeRule, type NodeVerdict } from './verdict.js'

/**
 * A busbar under every rule of the edition, with all sources whose way to the utility crosses it.
 *
 * @source NEC 705.12, 408.36, 705.13
 */
export function judgePanel(tree: Tree, panel: PanelNode): NodeVerdict {
  const flow = flowThroughPanel(tree, panel)
  const feeder = feederTo(tree, panel.id)
  const bus = busbarOf(tree, panel, flow)
  const mainA = panel.mainA ?? feeder?.device.ratingA ?? bus?.mainA
  const base = {
    id: panel.id,
    kind: 'panel' as const,
    parent: feeder?.id ?? 'service',
    name: panel.name,
    where: panel.where,
    busA: panel.busA,
    mainA,
    inverterA: flow.currentA,
  }
  const rules = [...mainRules(tree, panel, bus?.mainA), ...loadRules(tree, panel, mainA)]
  if (flow.sources.length === 0) return nodeVerdict({ ...base, rules })
  if (bus === undefined) return nodeVerdict({ ...base, rules: [...rules, unprotected(tree)] })
  const control = powerControlRule(tree, panel, mainA ?? bus.mainA)
  return nodeVerdict({
    ...base,
    rules: [
      ...rules,
      ...judgeBusbar(tree.edition, bus).map((verdict) =>
        busbarRule({ ...verdict, maxInverterA: largestA(tree, panel, bus, verdict) }, panel, bus),
      ),
      ...(control === undefined ? [] : [control]),
    ],
  })
}

/** The busbar with what protects it and what stands on it; undefined when no device protects it. */
export function busbarOf(tree: Tree, panel: PanelNode, flow: Flow): Busbar | undefined {
  const mainA = protectedByA(tree, panel)
  if (mainA === undefined) return undefined
  const devices = backfedDevices(tree, panel)
  const idleSourcesA = ownDevices(tree, panel, false).reduce((sum, { ratingA }) => sum + (ratingA ?? 0), 0)
  const loadFeedersA = tree.feeders
    .filter((feeder) => feeder.from === panel.id && flowThroughFeeder(tree, feeder).sources.length === 0)
    .reduce((sum, { device, throughLugs }) => sum + (throughLugs ? 0 : (device.ratingA ?? 0)), 0)
  return {
    busA: panel.busA,
    mainA,
    mainPosition: panel.mainPosition,
    bothEnds: new Set(devices.map(({ where }) => where)).size > 1,
    oppositeEnd: devices.length > 0 && devices.every(({ oppositeEnd }) => oppositeEnd === true),
    inverterA: flow.currentA,
    sourceBreakersA: devices.reduce((sum, { ratingA }) => sum + (ratingA ?? 0), 0),
    firstBreakersA: flow.firstDevicesA,
    loadBreakersA: panel.loadBreakersA === undefined ? undefined : panel.loadBreakersA + loadFeedersA + idleSourcesA,
    feedThrough: lugsOf(tree, panel),
  }
}

/**
 * Largest sum of source currents that a rule takes. Where a rule counts breakers, those of feeders and of other sources stay
 * as they are, and only the devices of this project's system go with its current.
 */
function largestA(tree: Tree, panel: PanelNode, bus: Busbar, { rule, holds, maxInverterA }: RuleVerdict): Amperes {
  const counts = rule.expression === 'breakers' || rule.expression === 'breaker-sum'
  const pv = tree.sources.find(({ id }) => id === PV_SOURCE)
  if (!counts || pv === undefined || (maxInverterA === 0 && !holds)) return maxInverterA
  const lands = pv.at !== 'supply_side' && 'panel' in pv.at && pv.at.panel === panel.id
  const first = rule.expression === 'breakers'
  if (!first && !lands) return holds ? Infinity : 0
  const ownA = (first ? pv.firstDevicesA : pv.devices.map(({ ratingA }) => ratingA ?? 0)).reduce((sum, a) => sum + a, 0)
  const passes = flowThroughPanel(tree, panel).sources.includes(pv)
  if (!passes) return holds ? Infinity : 0
  const fixedA = (first ? bus.firstBreakersA : bus.sourceBreakersA + (bus.loadBreakersA ?? 0)) - ownA
  const leftA = (first ? rule.share * bus.busA - bus.mainA : bus.busA) - fixedA - (first ? 0 : lugsDeviceA(bus))
  const most = mostByBreakers(leftA, ownA, pv.currentA).maxInverterA + bus.inverterA - pv.currentA
  return bus.feedThrough === undefined ? most : Math.min(most, maxInverterA)
}

const lugsDeviceA = ({ feedThrough }: Busbar): Amperes => feedThrough?.deviceA ?? 0

/** Devices of this busbar through which sources feed: their own, and those of feeders with sources below. */
export function backfedDevices(tree: Tree, panel: PanelNode): BackfedDevice[] {
  const feeders = tree.feeders.filter(
    (feeder) => feeder.from === panel.id && flowThroughFeeder(tree, feeder).sources.length > 0,
  )
  return [...ownDevices(tree, panel, true), ...feeders.map(({ device }) => device)]
}

/** Devices of the sources that land on this busbar: of those that run beside the utility, or of those that cannot. */
function ownDevices(tree: Tree, panel: PanelNode, inParallel: boolean): BackfedDevice[] {
  return tree.sources.flatMap(({ at, devices, runsInParallel }) =>
    runsInParallel === inParallel && at !== 'supply_side' && 'panel' in at && at.panel === panel.id ? devices : [],
  )
}

/**
 * What protects a busbar from the side of the utility, A: its own main, else the device of its feeder with what sources
 * on taps of that feeder add behind it. Behind feed-through lugs without a device it is the one of the panel before, with
 * what sources put into that one.
 */
function protectedByA(tree: Tree, panel: PanelNode): Amperes | undefined {
  const feeder = feederTo(tree, panel.id)
  if (panel.mainA !== undefined) return panel.mainA
  if (feeder === undefined) return undefined
  if (feeder.device.ratingA !== undefined) return feeder.device.ratingA + addedA(tree, flowOnTaps(tree, feeder))
  const before = panelById(tree, feeder.from)
  const aheadA = before === undefined ? undefined : protectedByA(tree, before)
  if (before === undefined || aheadA === undefined) return undefined
  const all = flowThroughPanel(tree, before).currentA
  const below = flowThroughPanel(tree, panel).currentA
  return aheadA + SOURCE_FACTOR * (all - below)
}

function lugsOf(tree: Tree, panel: PanelNode): FeedThrough | undefined {
  if (panel.lugs !== undefined) return panel.lugs
  const lugs = tree.feeders.find(({ from, throughLugs }) => throughLugs && from === panel.id)
  if (lugs === undefined) return undefined
  const beyond = panelById(tree, lugs.to)
  const startA = lugs.device.ratingA
  return {
    ampacityA: lugs.conductor.ampacityA,
    deviceA: startA ?? beyond?.mainA,
    deviceAt: startA === undefined ? 'end' : 'start',
    panelBusA: beyond?.busA,
  }
}

function mainRules(tree: Tree, panel: PanelNode, mainA: Amperes | undefined): NodeRule[] {
  if (mainA === undefined) return []
  return [
    compare(tree.edition, {
      rule: 'device within busbar',
      topic: 'panelProtection',
      formula: 'M <= B',
      terms: { M: mainA, B: panel.busA },
      sumA: mainA,
      limitA: panel.busA,
      what: 'device that protects the busbar, with sources that join behind it, against its rating',
    }),
  ]
}

function loadRules(tree: Tree, panel: PanelNode, mainA: Amperes | undefined): NodeRule[] {
  const { loadA } = panel
  if (loadA === undefined) return []
  return [
    compare(tree.edition, {
      rule: 'load within busbar',
      topic: 'loadOnBusbar',
      formula: 'L <= min(B, M)',
      terms: { L: loadA, B: panel.busA, M: mainA ?? panel.busA },
      sumA: loadA,
      limitA: Math.min(panel.busA, mainA ?? Infinity),
      what: 'calculated load, against busbar and device',
    }),
  ]
}

function unprotected(tree: Tree): NodeRule {
  return {
    ...compare(tree.edition, {
      rule: 'protected busbar',
      topic: 'panelProtection',
      formula: 'a device protects the busbar',
      sumA: 0,
      limitA: 0,
      what: '',
      holds: false,
      maxInverterA: 0,
      why: 'no single device protects the busbar, so none of the sums can be made',
    }),
    sumA: undefined,
    limitA: undefined,
  }
}

/** Words of the label that a rule asks for, '' when it asks for none. */
function busbarLabel({ label, edition }: BusbarRule): string {
  return label === undefined ? '' : onOneLine(labelWords(label, edition)?.phrases?.[0] ?? '')
}

/** A way of the code for a busbar. The 120 percent ways also want the busbar to be large enough for its loads. */
export function busbarRule(verdict: RuleVerdict, panel: PanelNode, bus: Busbar): NodeRule {
  const { rule, holds, sumA, limitA, formula, why, maxInverterA } = verdict
  const overloaded = rule.share > 1 && panel.loadA !== undefined && panel.loadA > panel.busA
  return {
    rule: rule.rule,
    section: rule.section,
    standing: rule.standing,
    needed: 'one_of',
    holds: holds && !overloaded,
    sumA,
    limitA,
    formula,
    terms: { B: bus.busA, M: bus.mainA, I: bus.inverterA },
    why: overloaded ? `${why}; the calculated load of ${panel.loadA} A is above the busbar` : why,
    maxInverterA: overloaded ? 0 : maxInverterA,
    ...(verdict.maxBreakersA === undefined ? {} : { maxBreakersA: verdict.maxBreakersA }),
    label: busbarLabel(rule),
  }
}
