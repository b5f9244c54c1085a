import type { ModulePlacement } from '../../roof/index.js'
import { ROOFTOP_SOLAR, type LoadEdition } from '../../tables/asce7/index.js'
import type { Finding, Source } from '../../worksheet/index.js'
import type { PlaneEdgeKind, PlaneGeometry } from '../model/index.js'
import { inchesOf, type Degrees, type Feet, type Inches } from '../../values/index.js'

/** The array on one plane as section 29.4.4 asks about it. */
export interface SolarArrayGeometry {
  readonly edition: LoadEdition
  readonly plane: PlaneGeometry
  readonly array: string
  readonly modules: readonly ModulePlacement[]
  /** Angle between modules and roof, degrees. */
  readonly tiltToRoofDeg: Degrees
  /** h2, in. */
  readonly topHeightIn: Inches
  readonly moduleLengthFt: Feet
}

/**
 * Conditions of the method for modules parallel to the roof; every one that is not met is a finding.
 *
 * @source ASCE 7-16 and 7-22 section 29.4.4 (secondary; the 2 h2 of 7-16 from memory). Under 7-10 tilt and height are judged alike,
 * since its components-and-cladding pressures also presume modules that follow the roof.
 */
export function solarConditions(geometry: SolarArrayGeometry): Finding[] {
  const { edition, array, topHeightIn, tiltToRoofDeg, moduleLengthFt } = geometry
  const hasClause = edition !== 'ASCE 7-10'
  const source: Source = {
    document: hasClause ? edition : 'ASCE 7-16',
    place: 'section 29.4.4',
    standing: 'secondary',
  }
  const findings: Finding[] = []
  const report = (severity: Finding['severity'], id: string, message: string, where: string, fix: string): void => {
    findings.push({ severity, id: `structure.solar-${id}`, message, where, source, fix })
  }
  const { maxTiltToRoofDeg, maxTopHeightIn, maxGapSpacingFt } = ROOFTOP_SOLAR
  if (tiltToRoofDeg > maxTiltToRoofDeg) {
    report(
      'error',
      'tilt',
      `array '${array}': modules stand at ${tiltToRoofDeg.toFixed(1)} degrees to the roof, over ${maxTiltToRoofDeg} degrees, so the method for parallel modules does not hold`,
      `arrays.${array}.module_tilt_deg`,
      'Lay the modules parallel to the roof, or ask a structural engineer.',
    )
  }
  if (topHeightIn > maxTopHeightIn) {
    report(
      'error',
      'height',
      `array '${array}': the top of the modules is ${topHeightIn.toFixed(2)} in above the roof, over ${maxTopHeightIn} in`,
      `arrays.${array}.standoff_in`,
      'Lower the modules, or ask a structural engineer.',
    )
  }
  if (!hasClause) return findings
  if (moduleLengthFt > maxGapSpacingFt) {
    report(
      'warning',
      'module-length',
      `array '${array}': the module is ${moduleLengthFt.toFixed(2)} ft long, over the ${maxGapSpacingFt} ft between gaps that pressure equalisation presumes`,
      `arrays.${array}.module`,
      'Ask the authority or an engineer whether it accepts the equalisation factor for this module.',
    )
  }
  for (const { a, b, gapIn } of narrowGaps(geometry.modules)) {
    report(
      'error',
      'gap',
      `modules ${a} and ${b} are ${gapIn.toFixed(2)} in apart, under the ${ROOFTOP_SOLAR.minModuleGapIn} in that lets pressure equalise`,
      `arrays.${array}.arrangement`,
      'Leave a gap of at least 1/4 in, or use clamps that make one.',
    )
  }
  for (const { module, kind, distanceIn } of nearEdges(geometry)) {
    report(
      'error',
      'edge-distance',
      `module ${module} is ${distanceIn.toFixed(1)} in from the ${kind}, under 2 h2 = ${(ROOFTOP_SOLAR.edgeDistanceOverTopHeight * topHeightIn).toFixed(1)} in`,
      `arrays.${array}.arrangement`,
      'Move the array away from the edge or lower it.',
    )
  }
  return findings
}

/** Facing pairs that are closer than a quarter inch. */
function narrowGaps(modules: readonly ModulePlacement[]): { a: string; b: string; gapIn: Inches }[] {
  const narrow: { a: string; b: string; gapIn: Inches }[] = []
  for (const [index, a] of modules.entries()) {
    for (const b of modules.slice(index + 1)) {
      const dx = Math.max(a.xFt, b.xFt) - Math.min(a.xFt + a.widthFt, b.xFt + b.widthFt)
      const dy = Math.max(a.yFt, b.yFt) - Math.min(a.yFt + a.heightFt, b.yFt + b.heightFt)
      if (dx >= 0 && dy >= 0) continue
      const gapIn = inchesOf(Math.max(dx, dy))
      if (gapIn < ROOFTOP_SOLAR.minModuleGapIn - 1e-6) narrow.push({ a: a.id, b: b.id, gapIn })
    }
  }
  return narrow
}

const COUNTED: readonly PlaneEdgeKind[] = ['eave', 'rake', 'ridge', 'hip']

/** The nearest module to each edge that is too near. */
function nearEdges(geometry: SolarArrayGeometry): { module: string; kind: PlaneEdgeKind; distanceIn: Inches }[] {
  const least = ROOFTOP_SOLAR.edgeDistanceOverTopHeight * geometry.topHeightIn
  const near: { module: string; kind: PlaneEdgeKind; distanceIn: Inches }[] = []
  for (const edge of geometry.plane.edges) {
    if (!COUNTED.includes(edge.kind)) continue
    const [dx, dy] = [edge.to.xFt - edge.from.xFt, edge.to.yFt - edge.from.yFt]
    const length = Math.hypot(dx, dy)
    let worst: { module: string; kind: PlaneEdgeKind; distanceIn: Inches } | undefined
    for (const m of geometry.modules) {
      for (const [x, y] of [
        [m.xFt, m.yFt],
        [m.xFt + m.widthFt, m.yFt],
        [m.xFt, m.yFt + m.heightFt],
        [m.xFt + m.widthFt, m.yFt + m.heightFt],
      ] as const) {
        const along = ((x - edge.from.xFt) * dx + (y - edge.from.yFt) * dy) / length
        if (along < 0 || along > length) continue
        const distanceIn = inchesOf(Math.abs((x - edge.from.xFt) * dy - (y - edge.from.yFt) * dx) / length)
        if (distanceIn < least - 1e-6 && distanceIn < (worst?.distanceIn ?? Infinity)) {
          worst = { module: m.id, kind: edge.kind, distanceIn }
        }
      }
    }
    if (worst !== undefined) near.push(worst)
  }
  return near
}
