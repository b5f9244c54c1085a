import type { XY } from '../model/index.js'
import { at, head, type Owner } from './entity-head.js'
import type { Pair } from './pairs.js'

/** A window of the sheet onto the model. */
export function viewportEntity(
  window: { readonly center: XY; readonly width: number; readonly height: number },
  view: { readonly center: XY; readonly height: number },
  id: number,
  handle: string,
  owner: Owner,
): Pair[] {
  return [
    ...head('VIEWPORT', handle, owner, 'noPlot'),
    [100, 'AcDbViewport'],
    ...at(10, window.center),
    [40, window.width],
    [41, window.height],
    [68, id],
    [69, id],
    [12, view.center.x],
    [22, view.center.y],
    [13, 0],
    [23, 0],
    [14, 1],
    [24, 1],
    [15, 1],
    [25, 1],
    [16, 0],
    [26, 0],
    [36, 1],
    [17, 0],
    [27, 0],
    [37, 0],
    [42, 50],
    [43, 0],
    [44, 0],
    [45, view.height],
    [50, 0],
    [51, 0],
    [72, 1000],
    // Shown, its scale locked.
    [90, 32864 + 16384],
    [1, ''],
    [281, 0],
    [71, 1],
    [74, 0],
    ...at(110, { x: 0, y: 0 }),
    ...at(111, { x: 1, y: 0 }),
    ...at(112, { x: 0, y: 1 }),
    [79, 0],
    [146, 0],
  ]
}
