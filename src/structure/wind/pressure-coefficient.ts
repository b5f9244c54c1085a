import { PRESSURE_COEFFICIENTS, STEEP_HIP_7_16, type LoadEdition } from '../../tables/asce7/index.js'
import type { SourceStanding } from '../../worksheet/index.js'
import type { Degrees, SquareFeet } from '../../values/index.js'

/** Which figure is meant. */
export interface RoofShape {
  readonly edition: LoadEdition
  readonly roofKind: 'gable' | 'hip'
  readonly tiltDeg: Degrees
  /** Mean roof height over least width of the building; only 7-16 hip roofs up to 20 degrees need it. */
  readonly heightOverWidth: number
}

export interface PressureCoefficient {
  /** Negative is away from the roof. */
  readonly value: number
  readonly figure: string
  readonly standing: SourceStanding
}

interface Line {
  readonly lowAreaFt2: SquareFeet
  readonly lowCoefficient: number
  readonly highAreaFt2: SquareFeet
  readonly highCoefficient: number
  readonly figure: string
  readonly standing: SourceStanding
}

/**
 * External pressure coefficient GCp for a zone and an effective wind area.
 *
 * @param shape Edition, roof kind, slope (over 7, up to 45 degrees) and h/B.
 * @param zone Name of the zone in that edition's figure.
 * @param areaFt2 Effective wind area, ft2, over 0.
 * @returns Negative for uplift, positive for down; undefined when no figure covers the roof.
 * @source ASCE 7-10 figures 30.4-2B and 2C; ASCE 7-16 and 7-22 figures 30.3-2B to 2H (all secondary)
 */
export function pressureCoefficient(
  shape: RoofShape,
  zone: string,
  areaFt2: SquareFeet,
  direction: 'uplift' | 'down',
): PressureCoefficient | undefined {
  const { edition, roofKind, tiltDeg: slope } = shape
  if (slope <= 7 || slope > 45) return undefined
  if (edition === 'ASCE 7-16' && roofKind === 'hip' && slope > 27 && direction === 'uplift') {
    return steepHip(slope, zone, areaFt2)
  }
  if (edition === 'ASCE 7-22' && roofKind === 'hip' && slope > 27) {
    return blend(
      lineAt({ ...shape, tiltDeg: 27 }, zone, direction),
      lineAt({ ...shape, tiltDeg: 45 }, zone, direction),
      (slope - 27) / (45 - 27),
      areaFt2,
    )
  }
  if (edition === 'ASCE 7-16' && roofKind === 'hip' && slope <= 20 && direction === 'uplift') {
    return blend(
      lineAt(shape, zone, direction, '<=0.5'),
      lineAt(shape, zone, direction, '>=0.8'),
      Math.min(1, Math.max(0, (shape.heightOverWidth - 0.5) / (0.8 - 0.5))),
      areaFt2,
    )
  }
  const line = lineAt(shape, zone, direction)
  return line === undefined ? undefined : atArea(line, areaFt2)
}

function lineAt(
  shape: RoofShape,
  zone: string,
  direction: 'uplift' | 'down',
  heightOverWidth?: '>=0.8' | '<=0.5',
): Line | undefined {
  const steepest = shape.edition === 'ASCE 7-22' && shape.roofKind === 'hip' && shape.tiltDeg === 45
  return PRESSURE_COEFFICIENTS.find(
    (row) =>
      row.edition === shape.edition &&
      (row.roof === shape.roofKind || row.roof === 'gable or hip') &&
      (steepest ? row.slopeOverDeg === 45 : row.slopeOverDeg < shape.tiltDeg && shape.tiltDeg <= row.slopeToDeg) &&
      row.direction === direction &&
      (row.zones === 'all' || row.zones.includes(zone)) &&
      row.heightOverWidth === heightOverWidth,
  )
}

/** Value of a line at an area: constant at both ends, straight in log10(A) between. */
function atArea(line: Line, areaFt2: SquareFeet): PressureCoefficient {
  const { lowAreaFt2: a1, highAreaFt2: a2, lowCoefficient: g1, highCoefficient: g2 } = line
  const share = Math.min(1, Math.max(0, Math.log10(areaFt2 / a1) / Math.log10(a2 / a1)))
  return { value: g1 + (g2 - g1) * share, figure: line.figure, standing: line.standing }
}

function blend(
  from: Line | undefined,
  to: Line | undefined,
  share: number,
  areaFt2: SquareFeet,
): PressureCoefficient | undefined {
  if (from === undefined || to === undefined) return undefined
  const [a, b] = [atArea(from, areaFt2), atArea(to, areaFt2)]
  const figure = a.figure === b.figure ? a.figure : `${a.figure} and ${b.figure}`
  const standing = a.standing === 'from memory' || b.standing === 'from memory' ? 'from memory' : a.standing
  return { value: a.value + (b.value - a.value) * share, figure, standing }
}

function steepHip(tiltDeg: Degrees, zone: string, areaFt2: SquareFeet): PressureCoefficient | undefined {
  const row = STEEP_HIP_7_16.find((line) => line.zone === zone)
  if (row === undefined) return undefined
  const line: Line = {
    lowAreaFt2: row.low.areaFt2 + row.low.areaPerDeg * tiltDeg,
    lowCoefficient: row.low.constant + row.low.perDeg * tiltDeg,
    highAreaFt2: row.high.areaFt2 + row.high.areaPerDeg * tiltDeg,
    highCoefficient: row.high.constant + row.high.perDeg * tiltDeg,
    figure: '30.3-2H',
    standing: 'secondary',
  }
  return atArea(line, areaFt2)
}
