import { own, type Degrees } from '../values/index.js'
import type { ArrayOfModules, Project } from './project-types.generated.js'
import { tiltDegOf } from './tilt.js'

/** Two strings in parallel on one tracker input that do not belong together. */
export interface UnlikeStrings {
  /** `error`: they hold each other at a wrong voltage; `warning`: they only lose a little. */
  readonly severity: 'error' | 'warning'
  /** Path of the second string. */
  readonly where: string
  readonly message: string
  readonly fix: string
}

interface StringPlace {
  /** As the wiring names it: `south_s1`. */
  readonly id: string
  readonly where: string
  readonly input: string
  readonly modules: number
  readonly moduleId: string
  /** Its converters, which free it from the voltage of its neighbours. */
  readonly optimiser: string | undefined
  readonly tiltDeg: Degrees | undefined
  readonly azimuthDeg: Degrees | undefined
}

/**
 * Strings in parallel on one tracker input that differ from the first one there. A tracker holds all of them at one
 * voltage, so each needs the same number of the same module; strings in different directions differ in current only.
 *
 * Strings with the same converters may differ: each converter finds its own best point. An input that is not stated counts
 * as input 1.
 */
export function unlikeStrings(project: Project): UnlikeStrings[] {
  const firsts = new Map<string, StringPlace>()
  return stringPlaces(project).flatMap((string) => {
    const first = firsts.get(string.input)
    if (first !== undefined) return difference(first, string)
    firsts.set(string.input, string)
    return []
  })
}

function stringPlaces(project: Project): StringPlace[] {
  return Object.entries(project.arrays).flatMap(([arrayId, array]) =>
    (array.strings ?? []).map((string, i): StringPlace => ({
      id: `${arrayId}_s${i + 1}`,
      where: `arrays.${arrayId}.strings[${i}]`,
      input: `${string.inverter_unit} input ${string.input ?? 1}`,
      modules: string.modules,
      moduleId: array.module,
      optimiser: array.optimiser,
      ...directionOf(project, array),
    })),
  )
}

function directionOf(project: Project, array: ArrayOfModules): Pick<StringPlace, 'tiltDeg' | 'azimuthDeg'> {
  const plane = own(project.roof_planes, array.roof_plane)
  return {
    tiltDeg: array.module_tilt_deg ?? (plane === undefined ? undefined : tiltDegOf(plane)),
    azimuthDeg: array.module_azimuth_deg ?? plane?.azimuth_deg,
  }
}

function difference(first: StringPlace, other: StringPlace): UnlikeStrings[] {
  const place = { where: other.where, fix: 'Give each its own input (input: 1, input: 2), or make the strings alike' }
  const both = (of: (string: StringPlace) => string): string =>
    `${first.id} has ${of(first)}, ${other.id} has ${of(other)}, and both lie in parallel on ${first.input}`
  if (first.optimiser !== other.optimiser) {
    const message = `${both(({ optimiser }) => (optimiser === undefined ? 'no converters' : `converters ${optimiser}`))}: one tracker holds them at one voltage, which is wrong for one of them`
    return [{ severity: 'error', message, ...place }]
  }
  if (first.optimiser !== undefined) return []
  if (first.modules !== other.modules || first.moduleId !== other.moduleId) {
    const message = `${both(({ modules, moduleId }) => `${modules} modules ${moduleId}`)}: one tracker holds them at one voltage, which is wrong for one of them`
    return [{ severity: 'error', message, ...place }]
  }
  if (first.tiltDeg === other.tiltDeg && first.azimuthDeg === other.azimuthDeg) return []
  const message = both(({ tiltDeg, azimuthDeg }) => `a tilt of ${shown(tiltDeg)} to ${shown(azimuthDeg)} deg`)
  return [{ severity: 'warning', message: `${message}: one tracker loses a little on them`, ...place }]
}

const shown = (degrees: number | undefined): string =>
  degrees === undefined ? '?' : String(Number(degrees.toFixed(1)))
