import { isAnnotation, type LayerKey } from './layers.js'
import type { XY } from './geometry.js'
import type { Primitive } from './primitive.js'

/** The layer of what no sheet has put on one. */
const USUAL: Readonly<Record<Primitive['kind'], LayerKey>> = {
  path: 'symbol',
  rectangle: 'symbol',
  circle: 'symbol',
  text: 'text',
  dimension: 'dimension',
  leader: 'note',
}

export const layerOf = (primitive: Primitive): LayerKey => primitive.layer ?? USUAL[primitive.kind]

/**
 * Puts on a layer what is on none yet. Texts, dimensions and leaders go to a layer of annotation only: what is written
 * beside a thing does not vanish with the thing.
 */
export function onLayer<P extends Primitive>(layer: LayerKey, primitives: readonly P[]): P[] {
  return primitives.map((each) => {
    const isWritten = each.kind === 'text' || each.kind === 'dimension' || each.kind === 'leader'
    return each.layer !== undefined || (isWritten && !isAnnotation(layer)) ? each : { ...each, layer }
  })
}

/**
 * Makes primitives one symbol, so that a CAD program can pick, count and exchange it; symbols among them become a part of it.
 *
 * @param name Capitals, digits and hyphens.
 * @param at Its place, in the units of the primitives.
 */
export function asSymbol<P extends Primitive>(name: string, at: XY, primitives: readonly P[]): P[] {
  const symbol = { name, at }
  return primitives.map((each) => ({ ...each, symbol }))
}
