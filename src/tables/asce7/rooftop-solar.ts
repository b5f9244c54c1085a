import type { SourceStanding } from '../../worksheet/index.js'

/** How 29.4.4 of an edition decides that an array edge is exposed, and how far the edge factor reaches. */
export interface ExposedEdgeRule {
  /** The edge is exposed when the roof edge is farther away than this share of the mean roof height ... */
  readonly roofEdgeOverHeight: number
  /** ... and the next module is farther away than this: ft, or a multiple of h2. */
  readonly neighbour: { readonly ft: number } | { readonly timesTopHeight: number }
  /** Depth of the strip along the exposed edge that takes the edge factor. */
  readonly strip: { readonly timesModuleLength: number } | { readonly timesTopHeight: number }
  readonly standing: SourceStanding
}

/**
 * Limits and factors of ASCE 7 section 29.4.4, modules parallel to the roof surface (none in 7-10).
 *
 * @source ASCE 7-16 and 7-22 section 29.4.4 and figure 29.4-8 as quoted by secondary sources
 */
export const ROOFTOP_SOLAR = {
  maxTiltToRoofDeg: 2,
  maxTopHeightIn: 10,
  minModuleGapIn: 0.25,
  /** One source only, as the longest panel chord. */
  maxGapSpacingFt: 6.7,
  /** Array edge to roof edge, gable ridge or hip, as a multiple of h2. From memory for 7-16. */
  edgeDistanceOverTopHeight: 2,
  edgeFactor: 1.5,
  /** Pressure equalisation: 0.8 up to 10 ft2, 0.4 from 100 ft2, straight in log10(A). The upper end of 7-22 is uncertain by 0.05. */
  equalisation: { lowAreaFt2: 10, lowFactor: 0.8, highAreaFt2: 100, highFactor: 0.4 },
} as const

export const EXPOSED_EDGE_RULES: Readonly<Record<'ASCE 7-16' | 'ASCE 7-22', ExposedEdgeRule>> = {
  'ASCE 7-16': {
    roofEdgeOverHeight: 0.5,
    neighbour: { ft: 4 },
    strip: { timesModuleLength: 1.5 },
    standing: 'from memory',
  },
  'ASCE 7-22': {
    roofEdgeOverHeight: 0.5,
    neighbour: { timesTopHeight: 2 },
    strip: { timesTopHeight: 2 },
    standing: 'secondary',
  },
}

/** Steep-hip uplift of 7-16, coefficient = constant + perDeg * slope at two areas. */
export interface SteepHipLine {
  readonly zone: string
  readonly low: {
    readonly areaFt2: number
    readonly areaPerDeg: number
    readonly constant: number
    readonly perDeg: number
  }
  readonly high: {
    readonly areaFt2: number
    readonly areaPerDeg: number
    readonly constant: number
    readonly perDeg: number
  }
}

/** @source ASCE 7-16 figure 30.3-2H, hip roofs of 27 to 45 degrees (secondary; areas uncertain) */
export const STEEP_HIP_7_16: readonly SteepHipLine[] = [
  {
    zone: '1',
    low: { areaFt2: 10, areaPerDeg: 0, constant: -0.6175, perDeg: -0.02 },
    high: { areaFt2: 200, areaPerDeg: 0, constant: -0.095, perDeg: -0.0135 },
  },
  {
    zone: '2e',
    low: { areaFt2: 2, areaPerDeg: 0, constant: 0.2, perDeg: -0.067 },
    high: { areaFt2: 280, areaPerDeg: -5, constant: -0.8, perDeg: 0 },
  },
  {
    zone: '2r',
    low: { areaFt2: 5, areaPerDeg: 0, constant: 1.0, perDeg: -0.082 },
    high: { areaFt2: 100, areaPerDeg: 0, constant: -1.0, perDeg: 0 },
  },
  {
    zone: '3',
    low: { areaFt2: 9, areaPerDeg: -0.135, constant: 1.25, perDeg: -0.108 },
    high: { areaFt2: 50, areaPerDeg: 0, constant: -1.0, perDeg: 0 },
  },
]
