import { torqueWords } from '../diagram/torque-words.js'
import type { PanelPart } from './tree-parts.js'

/**
 * Ratings of a panel in words, and what does not comply.
 *
 * @param marks Numbers of the labels at it.
 */
export function panelFacts({ node, ownMainA, interruptingA, torqueLbIn, location }: PanelPart, marks = ''): string {
  return [
    node.bus_a === null ? '' : `${node.bus_a} A bus`,
    ownMainA === undefined ? `main lugs, behind ${node.main_a ?? '?'} A` : `${ownMainA} A main breaker`,
    node.fault_current_a === null ? '' : `${Math.round(node.fault_current_a)} A fault current`,
    interruptingA === undefined ? '' : `breakers interrupt ${interruptingA} A`,
    torqueWords(torqueLbIn),
    location ?? '',
    marks,
    'EXISTING',
    node.complies ? '' : 'DOES NOT COMPLY',
  ]
    .filter((each) => each !== '')
    .join(', ')
}
