import { combinerHouse, optimiserHouse, wyeProject } from '../electrical/devices-demo.js'
import { hipHouse, manyBranches, microHouse, noCombiner, stringHouse } from './demo-packet.js'
import { knownService, longTree, subpanelHouse, supplyTree, tapHouse, threeLevels } from './tree-houses.js'

/** Invented houses whose wiring differs in kind, each with a name for it: what every diagram has to draw. */
export const wiredHouses = [
  ['two branches', microHouse],
  ['four branches', hipHouse],
  ['breakers in the panel', noCombiner],
  ['fifteen branches on several sheets', manyBranches],
  ['a known service', knownService],
  ['strings ahead of the service', stringHouse],
  ['a subpanel', subpanelHouse],
  ['three levels with a tap and older sources', threeLevels],
  ['a feeder tap', tapHouse],
  ['strings ahead of two panels', supplyTree],
  ['long names', longTree],
  ['converters behind modules', () => optimiserHouse()],
  ['strings in a DC combiner', () => combinerHouse(3)],
  ['three phases with a branch on all lines', () => wyeProject()],
] as const
