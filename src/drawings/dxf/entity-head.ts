import { LAYERS, type LayerKey, type Linetype, type XY } from '../model/index.js'
import type { Pair } from './pairs.js'

/** Gives each record of a file its number. */
export interface Handles {
  readonly next: () => string
  /** A number above all that were given. */
  readonly seed: () => string
}

/** @param from First number that is given. */
export function makeHandles(from: number): Handles {
  let at = from
  const hex = (value: number): string => value.toString(16).toUpperCase()
  return { next: () => hex(at++), seed: () => hex(at) }
}

/** Where an entity stands. */
export interface Owner {
  /** Handle of the record of its block. */
  readonly record: string
  readonly onPaper: boolean
}

/** A line type as its table names it. */
export const linetypeName = (linetype: Linetype): string => (linetype === 'CONTINUOUS' ? 'Continuous' : linetype)

/** A point by its group code. */
export const at = (code: number, { x, y }: XY): Pair[] => [
  [code, x],
  [code + 10, y],
  [code + 20, 0],
]

interface Extra {
  readonly linetype?: Linetype | undefined
  readonly dashScale?: number | undefined
  readonly color?: number | undefined
}

/** What every entity begins with. */
export function head(type: string, handle: string, owner: Owner, layer: LayerKey, extra: Extra = {}): Pair[] {
  const { linetype, dashScale = 1, color } = extra
  return [
    [0, type],
    [5, handle],
    [330, owner.record],
    [100, 'AcDbEntity'],
    ...(owner.onPaper ? [[67, 1] as const] : []),
    [8, LAYERS[layer].name],
    ...(linetype === undefined ? [] : [[6, linetypeName(linetype)] as const]),
    ...(color === undefined ? [] : [[62, color] as const]),
    ...(Math.abs(dashScale - 1) < 1e-9 ? [] : [[48, dashScale] as const]),
  ]
}
