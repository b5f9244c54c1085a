import {
  LOAD_COMBINATIONS,
  ROOF_COMBINATIONS,
  type LoadCombination,
  type LoadEdition,
} from '../../tables/asce7/index.js'
import { LOAD_DURATION } from '../../tables/nds/index.js'
import { radiansOf, type Degrees, type PoundsPerSquareFoot } from '../../values/index.js'

/** Loads on the plane before they are combined, psf. */
export interface PlaneLoads {
  /** Dead load of the array per surface area. */
  readonly deadPsf: PoundsPerSquareFoot
  /** Snow per horizontal area. */
  readonly snowPsf: PoundsPerSquareFoot
  readonly tiltDeg: Degrees
}

/** One combination resolved: at right angles to the roof without wind, and along the slope, psf of surface. */
export interface CombinedLoad {
  readonly name: string
  readonly direction: 'down' | 'uplift'
  /** Into the roof, from dead load and snow. */
  readonly normalPsf: PoundsPerSquareFoot
  /** Down the slope. */
  readonly alongPsf: PoundsPerSquareFoot
  /** Factor to put on the wind pressure. */
  readonly windFactor: number
  /** Load duration factor CD of wood. */
  readonly loadDuration: number
  readonly standing: LoadCombination['standing']
}

/**
 * Resolves the combinations of allowable stress design to the directions of the roof plane.
 *
 * @param groundSnowIsAllowable Whether the snow is at allowable level although the edition's maps are at strength level.
 * @source ASCE 7 section 2.4.1 by edition; snow on the horizontal projection by statics: ps cos2 normal, ps cos sin along
 */
export function combinedLoads(edition: LoadEdition, loads: PlaneLoads, groundSnowIsAllowable: boolean): CombinedLoad[] {
  const angle = radiansOf(loads.tiltDeg)
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  return LOAD_COMBINATIONS[tableOf(edition, groundSnowIsAllowable)].map((row) => ({
    name: row.name,
    direction: row.direction,
    normalPsf: row.dead * loads.deadPsf * cos + row.snow * loads.snowPsf * cos * cos,
    alongPsf: row.dead * loads.deadPsf * sin + row.snow * loads.snowPsf * cos * sin,
    windFactor: row.wind,
    loadDuration: loadDurationOf(row, { live: false, snow: loads.snowPsf > 0, wind: true }),
    standing: row.standing,
  }))
}

/** The table whose snow factor fits the level of the ground snow. */
const tableOf = (edition: LoadEdition, groundSnowIsAllowable: boolean): LoadEdition =>
  edition === 'ASCE 7-22' && groundSnowIsAllowable ? 'ASCE 7-16' : edition

/**
 * Combinations of a rafter with the level of the ground snow in their snow factor.
 *
 * @param groundSnowIsAllowable Whether the snow is at allowable level although the edition's maps are at strength level.
 */
export function roofCombinations(edition: LoadEdition, groundSnowIsAllowable: boolean): readonly LoadCombination[] {
  return ROOF_COMBINATIONS[tableOf(edition, groundSnowIsAllowable)]
}

/** Load duration factor CD of the shortest load in a combination that is there at all. @source NDS 2018 2.3.2 (secondary) */
export function loadDurationOf(
  row: LoadCombination,
  there: { readonly live: boolean; readonly snow: boolean; readonly wind: boolean },
): number {
  if (row.wind > 0 && there.wind) return LOAD_DURATION.wind
  if (row.live > 0 && there.live) return LOAD_DURATION.roofLive
  return row.snow > 0 && there.snow ? LOAD_DURATION.snow : LOAD_DURATION.dead
}
