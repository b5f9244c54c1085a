import { necSource, powerControlSections, SOURCE_FACTOR } from '../../tables/nec/index.js'
import type { Amperes } from '../../values/index.js'
import type { Source } from '../../worksheet/index.js'
import { flowThroughPanel } from './flows.js'
import type { PanelNode, Tree } from './tree.js'
import { within, type NodeRule } from './verdict.js'

/**
 * Share of a busbar rating that its devices carry without end; they are seldom listed for the whole.
 *
 * @source common practice, no source: the careful reading of 705.13 (B)
 */
const CONTINUOUS_SHARE = 0.8

/**
 * A listed power control system as a way for a busbar: its setting, with the sources that it does not control, within 80
 * percent of the busbar, and the setting within the device that protects it.
 *
 * @returns undefined where none watches this busbar.
 * @source NEC 705.13 (2020 and later): secondary; what is not controlled is subtracted, the safe side of two readings
 */
export function powerControlRule(tree: Tree, panel: PanelNode, mainA: Amperes): NodeRule | undefined {
  const { powerControl, edition } = tree
  if (powerControl === undefined || !powerControl.panels.includes(panel.id)) return undefined
  const place = powerControlSections[edition]
  const flow = flowThroughPanel(tree, panel)
  const outsideA = flow.sources
    .filter(({ id }) => powerControl.uncontrolled.includes(id))
    .reduce((sum, source) => {
      const devicesA = source.firstDevicesA.reduce((total, deviceA) => total + deviceA, 0)
      return sum + Math.max(devicesA, SOURCE_FACTOR * source.currentA)
    }, 0)
  const sumA = powerControl.settingA + outsideA
  const limitA = CONTINUOUS_SHARE * panel.busA
  const fault =
    place === undefined
      ? 'this edition knows no power control system'
      : (powerControl.fault ??
        (mainA > panel.busA
          ? 'the main device is above the busbar rating'
          : within(powerControl.settingA, mainA)
            ? undefined
            : `the setting of ${powerControl.settingA} A is above the ${mainA} A device`))
  const holds = fault === undefined && within(sumA, limitA)
  return {
    rule: 'power control system',
    section: place?.place ?? 'no such rule',
    standing: place?.standing ?? 'read',
    needed: 'one_of',
    holds,
    sumA,
    limitA,
    formula: 'S + U <= 0.8 x B, and S <= M <= B',
    terms: { S: powerControl.settingA, U: outsideA, B: panel.busA, M: mainA },
    why: fault ?? `${sumA.toFixed(1)} A ${holds ? '<=' : '>'} ${limitA.toFixed(1)} A`,
    // It limits what flows, not what is installed; so it frees what is there, and no more is promised.
    maxInverterA: holds ? flow.currentA : 0,
    label: holds ? `POWER CONTROL SYSTEM: OUTPUTS CONTROLLED TO ${powerControl.settingA} A ON THIS PANEL` : '',
  }
}

/** Where the edition rules power control systems; undefined in one that knows none. */
export function powerControlSource(edition: Tree['edition']): Source | undefined {
  const place = powerControlSections[edition]
  return place === undefined ? undefined : necSource(edition, place.place, place.standing)
}
