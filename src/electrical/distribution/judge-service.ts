import { DWELLING_SERVICE_SHARE, LEAST_DWELLING_SERVICE_A } from '../../tables/nec/index.js'
import { mostByBreakers } from '../connection/index.js'
import { deviceProtects, supplySideRule } from '../system/index.js'
import { flowOnSupplySide } from './flows.js'
import { compare } from './node-rule.js'
import { SERVICE, type Tree } from './tree.js'
import { nodeVerdict, type NodeRule, type NodeVerdict } from './verdict.js'

/**
 * The service: its conductors, its least rating, its load, and the sources ahead of its disconnect.
 *
 * @source NEC 230.42, 230.79(C), 230.90, 310.12, 705.11 of the edition
 */
export function judgeService(tree: Tree): NodeVerdict {
  const { service } = tree
  const supply = flowOnSupplySide(tree)
  return nodeVerdict({
    id: SERVICE,
    kind: 'service',
    parent: undefined,
    name: 'service',
    where: service.where,
    busA: undefined,
    mainA: service.ratingA,
    inverterA: tree.sources
      .filter(({ runsInParallel }) => runsInParallel)
      .reduce((sum, { currentA }) => sum + currentA, 0),
    rules: [
      ...conductorRule(tree),
      ...leastRule(tree),
      ...loadRule(tree),
      ...(supply.sources.length === 0 ? [] : supplyRule(tree)),
    ],
  })
}

function conductorRule(tree: Tree): NodeRule[] {
  const { ratingA, ampacityA } = tree.service
  if (ratingA === undefined || ampacityA === undefined) return []
  const holds = deviceProtects(ratingA, ampacityA) || DWELLING_SERVICE_SHARE * ratingA <= ampacityA
  return [
    compare(tree.edition, {
      rule: 'service conductors',
      topic: 'dwellingService',
      formula: '0.83 x R <= Z',
      terms: { R: ratingA, Z: ampacityA },
      sumA: DWELLING_SERVICE_SHARE * ratingA,
      limitA: ampacityA,
      what: '83 percent of the rating of the service, against the ampacity of its conductors',
      holds,
    }),
  ]
}

function leastRule(tree: Tree): NodeRule[] {
  const { ratingA } = tree.service
  if (ratingA === undefined) return []
  return [
    compare(tree.edition, {
      rule: 'least service',
      topic: 'leastDwellingService',
      formula: '100 A <= R',
      terms: { R: ratingA },
      sumA: LEAST_DWELLING_SERVICE_A,
      limitA: ratingA,
      what: 'least service of a one-family dwelling, against the rating',
    }),
  ]
}

function loadRule(tree: Tree): NodeRule[] {
  const { loadA, ratingA } = tree.service
  if (loadA === undefined || ratingA === undefined) return []
  return [
    compare(tree.edition, {
      rule: 'load within service',
      topic: 'serviceLoad',
      formula: 'L <= R',
      terms: { L: loadA, R: ratingA },
      sumA: loadA,
      limitA: ratingA,
      what: 'calculated load, against the rating of the service',
    }),
  ]
}

/** All sources ahead of the service disconnect together. */
function supplyRule(tree: Tree): NodeRule[] {
  const rule = supplySideRule(tree.edition)
  const flow = flowOnSupplySide(tree)
  const devices = rule.compares === 'devices with service rating'
  const limitA = devices ? tree.service.ratingA : tree.service.ampacityA
  if (limitA === undefined) return []
  const landedA = flow.sources.flatMap((source) => source.devices).reduce((sum, { ratingA }) => sum + (ratingA ?? 0), 0)
  const sumA = devices ? landedA : flow.currentA
  return [
    {
      ...compare(tree.edition, {
        rule: 'supply side',
        topic: 'supplySide',
        formula: devices ? 'S <= R' : 'I <= Z',
        terms: devices ? { S: landedA, R: limitA } : { I: flow.currentA, Z: limitA },
        sumA,
        limitA,
        what: devices
          ? 'source devices, against the rating of the service'
          : 'source currents, against the service conductors',
        maxInverterA: devices ? mostByBreakers(limitA, landedA, flow.currentA).maxInverterA : limitA,
      }),
      section: rule.section,
      standing: rule.standing,
    },
  ]
}
