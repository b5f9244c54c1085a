import type { SkySteps } from '../sky-steps.js'
import { beamTable, type BeamTable } from './beam-table.js'
import { domeShares } from './dome.js'
import type { ModuleView } from './module-view.js'
import { sunGrid } from './sun-grid.js'
import { sunPath, type SunPath } from './sun-path.js'

/** Shade on one module, per sun position and month. */
export interface ModuleShade {
  /** Share of direct light that things which let some of it through leave, by sun position. */
  readonly through: Float64Array
  /** Share of what they leave that nothing solid takes from the face, by sun position. */
  readonly lit: Float64Array
  /** Bypass sections of the module. */
  readonly sections: number
  /**
   * Shares of the time of a step with 0, 1, ... all sections free of any shadow of a solid: entry
   * `sun * (sections + 1) + free`.
   */
  readonly time: Float64Array
  /** Share of the sky's light that arrives, twelve months. */
  readonly sky: Float64Array
  /** Share of the ground's light that arrives, twelve months. */
  readonly ground: Float64Array
  readonly beam: BeamTable
}

/**
 * Shade on one module for the whole year, beam, sky and ground.
 *
 * @param withDiffuse Whether the light of sky and ground is shaded too.
 */
export function moduleShade(steps: SkySteps, view: ModuleView, withDiffuse: boolean): ModuleShade {
  const beam = beamTable(sunGrid(steps.latitudeDeg), view)
  const diffuse = withDiffuse
    ? domeShares(view)
    : { sky: new Float64Array(12).fill(1), ground: new Float64Array(12).fill(1) }
  return { ...beamOfSteps(sunPath(steps), beam, view.sections), sections: view.sections, ...diffuse, beam }
}

function beamOfSteps(
  { from, place, share, month }: SunPath,
  { lit, sections: free, touched, behind }: BeamTable,
  sections: number,
): Pick<ModuleShade, 'through' | 'lit' | 'time'> {
  const suns = month.length
  const width = sections + 1
  const through = new Float64Array(suns).fill(1)
  const litBySun = new Float64Array(suns).fill(1)
  const time = new Float64Array(suns * width)
  for (let sun = 0; sun < suns; sun += 1) {
    if (touched === undefined || !isTouched(touched, place, from[sun]!, from[sun + 1]!)) {
      time[sun * width + sections] = 1
      continue
    }
    let passes = 0
    let arrives = 0
    for (let at = from[sun]!; at < from[sun + 1]!; at += 1) {
      const here = place[at]!
      let porous = 1
      for (const { transmittance, share: hides } of behind) {
        const hidden = hides[here]!
        if (hidden > 0) porous *= 1 - hidden * (1 - transmittance[month[sun]!]!)
      }
      const weight = share[at]!
      passes += weight * porous
      arrives += weight * porous * (lit === undefined ? 1 : lit[here]!)
      const index = sun * width + (free === undefined ? sections : free[here]!)
      time[index] = time[index]! + weight
    }
    through[sun] = passes
    litBySun[sun] = passes > 0 ? arrives / passes : 0
  }
  return { through, lit: litBySun, time }
}

function isTouched(touched: Uint8Array, place: Uint16Array, begin: number, end: number): boolean {
  for (let at = begin; at < end; at += 1) if (touched[place[at]!] === 1) return true
  return false
}
